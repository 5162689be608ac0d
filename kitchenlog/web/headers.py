"""Headers of every answer that Django's own middleware does not set (R72, R74)."""

from collections.abc import Callable

from django.conf import settings
from django.http import HttpRequest, HttpResponse


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
