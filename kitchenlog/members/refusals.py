"""How the API says no: one shape, stable codes, a sentence, and nothing of our insides (R4)."""

import logging
import uuid
from typing import Any

from django.core.exceptions import (
    PermissionDenied,
    RequestDataTooBig,
    SuspiciousOperation,
)
from django.http import Http404
from rest_framework import exceptions
from rest_framework.response import Response

PROTOCOL = 1
# The only codes there are; phones decide on them and never on a sentence.
CODES = (
    "unreadable",
    "not_authenticated",
    "csrf",
    "forbidden",
    "device_revoked",
    "not_found",
    "too_large",
    "rate_limited",
    "upgrade_required",
    "server_error",
)

logger = logging.getLogger(__name__)


class Refused(Exception):  # noqa: N818 a refusal is an answer, not an error of ours
    """Ends a request with one of CODES, a status and a sentence for the person."""

    def __init__(
        self,
        code: str,
        status: int,
        detail: str,
        field: str | None = None,
        *,
        retry_after_s: int | None = None,
    ) -> None:
        assert code in CODES, code
        super().__init__(code)
        self.code = code
        self.status = status
        self.detail = detail
        self.field = field
        self.retry_after_s = retry_after_s


def answered(payload: dict[str, Any], status: int = 200) -> Response:
    """A good answer: the payload and the protocol it is spoken in."""
    return Response({"protocol": PROTOCOL, **payload}, status=status)


def refusal_body(code: str, detail: str, field: str | None = None) -> dict[str, Any]:
    """The body of every answer that is not 2xx."""
    body: dict[str, Any] = {"protocol": PROTOCOL, "code": code, "detail": detail}
    if field is not None:
        body["field"] = field
    return body


def answer_to(exception: Exception, context: dict[str, Any]) -> Response:
    """The answer to whatever a view raised; DRF calls it for every exception."""
    refused = exception if isinstance(exception, Refused) else refusal_of(exception)
    if refused is None:
        return _answer_to_defect(exception)
    response = Response(
        refusal_body(refused.code, refused.detail, refused.field), status=refused.status
    )
    if refused.retry_after_s is not None:
        response["Retry-After"] = str(refused.retry_after_s)
    if refused.status == 401:
        response["WWW-Authenticate"] = "Device"
    return response


def refusal_of(exception: Exception) -> Refused | None:
    """What a framework's exception means in our words; None for a defect."""
    known: list[tuple[tuple[type[Exception], ...], tuple[str, int, str]]] = [
        (
            (exceptions.NotAuthenticated, exceptions.AuthenticationFailed),
            ("not_authenticated", 401, "Sign in on this device."),
        ),
        (
            (exceptions.PermissionDenied, PermissionDenied),
            ("forbidden", 403, "Your roles do not include this."),
        ),
        ((Http404, exceptions.NotFound), ("not_found", 404, "There is nothing here.")),
        (
            (exceptions.MethodNotAllowed,),
            ("not_found", 405, "This address is not asked in that way."),
        ),
        ((exceptions.Throttled,), ("rate_limited", 429, "Too often. Wait a minute.")),
        ((RequestDataTooBig,), ("too_large", 413, "Send less at once.")),
        (
            (SuspiciousOperation, exceptions.ParseError, exceptions.UnsupportedMediaType),
            ("unreadable", 400, "The request cannot be read."),
        ),
    ]
    if isinstance(exception, exceptions.ValidationError):
        return _invalid(exception)
    for types, (code, status, detail) in known:
        if isinstance(exception, types):
            return Refused(code, status, detail)
    return None


def _invalid(exception: exceptions.ValidationError) -> Refused:
    """The first field that is wrong, with its sentence."""
    found: Any = exception.detail
    path: list[str] = []
    while isinstance(found, dict | list) and found:
        if isinstance(found, dict):
            name, found = next(iter(found.items()))
            path.append(str(name))
        else:
            found = found[0]
    field = path[0] if path and path[0] != "non_field_errors" else None
    sentence = str(found)
    if field is not None and not sentence.startswith(field):
        sentence = f"{'.'.join(path)}: {sentence}"
    return Refused("unreadable", 400, sentence, field)


def _answer_to_defect(exception: Exception) -> Response:
    """A number to quote, the same in the log, and nothing else (R82)."""
    number = uuid.uuid4().hex[:12]
    logger.error("defect %s", number, exc_info=exception)
    body = refusal_body("server_error", f"Something broke on our side. Quote {number}.")
    return Response({**body, "id": number}, status=500)
