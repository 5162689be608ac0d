"""What every request and answer goes through besides Django's own middleware (R72, R74)."""

import contextlib
from collections.abc import Callable

from django.conf import settings
from django.http import HttpRequest, HttpResponse

READ_AT_ONCE = 65_536


class SafeAnswers:
    """Adds the content rules to every answer.

    It stands outermost, so that files and errors carry the headers too.
    """

    def __init__(self, get_response: Callable[[HttpRequest], HttpResponse]) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponse:
        """Answer with the headers in place."""
        response = self.get_response(request)
        response.headers.setdefault("Content-Security-Policy", settings.CONTENT_SECURITY_POLICY)
        if request.path.startswith("/api/"):
            response.headers["Cache-Control"] = "no-store"
        return response


class KnownHost:
    """Refuses a request that was sent to another name than ours."""

    def __init__(self, get_response: Callable[[HttpRequest], HttpResponse]) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponse:
        """Raise DisallowedHost, which becomes a 400 in the address's own form."""
        request.get_host()
        return self.get_response(request)


class ReadToTheEnd:
    """Reads what a refused request still holds, if it is not much.

    The server closes a connection whose request was not read, while the phone is already
    sending the next one on it: that one would be lost without an answer.
    """

    def __init__(self, get_response: Callable[[HttpRequest], HttpResponse]) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponse:
        """Answer, then read on."""
        response = self.get_response(request)
        with contextlib.suppress(OSError):  # the sender is gone
            left = settings.DATA_UPLOAD_MAX_MEMORY_SIZE
            while left > 0 and (part := request.read(min(left, READ_AT_ONCE))):
                left -= len(part)
        return response
