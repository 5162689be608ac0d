"""Answers when no view could answer: JSON under /api/, one plain sentence elsewhere (R4)."""

import logging
import uuid
from typing import Any

from django.core.exceptions import RequestDataTooBig
from django.http import HttpRequest, HttpResponse, JsonResponse

from kitchenlog.members.refusals import refusal_body

logger = logging.getLogger(__name__)


def plain_sentence(sentence: str, status: int) -> HttpResponse:
    """One sentence as plain text."""
    return HttpResponse(
        sentence + "\n", status=status, content_type="text/plain; charset=utf-8"
    )


def unreadable(request: HttpRequest, exception: Exception) -> HttpResponse:
    """Django's 400, which for too large a body must come out as 413 (R32)."""
    if isinstance(exception, RequestDataTooBig):
        return _refused(request, "too_large", 413, "Send less at once.")
    return _refused(request, "unreadable", 400, "The request cannot be read.")


def forbidden(request: HttpRequest, exception: Exception) -> HttpResponse:
    """Django's 403."""
    return _refused(request, "forbidden", 403, "This is not open to you.")


def not_found(request: HttpRequest, exception: Exception) -> HttpResponse:
    """Django's 404."""
    return _refused(request, "not_found", 404, "There is nothing here.")


def unknown_api_address(request: HttpRequest) -> HttpResponse:
    """Any address under /api/ that no view has."""
    return _refused(request, "not_found", 404, "There is nothing here.")


def broken(request: HttpRequest) -> HttpResponse:
    """Django's 500; Django has logged the trace, the number ties the answer to a line."""
    number = uuid.uuid4().hex[:12]
    logger.error("defect %s at %s", number, request.path)
    sentence = f"Something broke on our side. Quote {number}."
    if _is_api(request):
        body = {**refusal_body("server_error", sentence), "id": number}
        return JsonResponse(body, status=500)
    return plain_sentence(sentence, 500)


def _refused(request: HttpRequest, code: str, status: int, detail: str) -> HttpResponse:
    if _is_api(request):
        body: dict[str, Any] = refusal_body(code, detail)
        return JsonResponse(body, status=status)
    return plain_sentence(detail, status)


def _is_api(request: HttpRequest) -> bool:
    return request.path == "/api" or request.path.startswith("/api/")
