"""The app's shell, its service worker and manifest, and what is missing."""

from pathlib import Path

from django.conf import settings
from django.http import HttpRequest, HttpResponse
from django.views.decorators.http import require_safe
from pwa.views import manifest as manifest_of_package  # type: ignore[import-untyped] # no stubs

from kitchenlog.web.errors import plain_sentence

NOT_BUILT = "The app is not built yet. Run make run, or npm run build in frontend/."


@require_safe
def app_shell(request: HttpRequest) -> HttpResponse:
    """The built index.html at any address of a screen; asked for anew each time.

    The page names its script by content: an old page kept by a browser would ask for
    scripts that are gone (R85).
    """
    return _built_file("index.html", "text/html; charset=utf-8")


@require_safe
def service_worker(request: HttpRequest) -> HttpResponse:
    """The built worker, from the root so that its scope is the whole app."""
    return _built_file("sw.js", "text/javascript; charset=utf-8")


@require_safe
def manifest(request: HttpRequest) -> HttpResponse:
    """The package's manifest, with the id that keeps an installed app one app."""
    response: HttpResponse = manifest_of_package(request)
    response["Content-Type"] = "application/manifest+json"
    response["Cache-Control"] = "no-cache"
    return response


@require_safe
def robots(request: HttpRequest) -> HttpResponse:
    """Nothing here is for search engines."""
    return plain_sentence("User-agent: *\nDisallow: /", 200)


@require_safe
def icon(request: HttpRequest) -> HttpResponse:
    """What browsers ask for unasked; without it each first visit logs an error."""
    return _built_file("icons/icon-192.png", "image/png")


def missing_file(request: HttpRequest) -> HttpResponse:
    """A script or picture that is not there; never the shell, which is no script (R87)."""
    return plain_sentence("There is no such file.", 404)


def _built_file(name: str, content_type: str) -> HttpResponse:
    path = Path(settings.STATIC_ROOT) / name
    if not path.is_file():
        return plain_sentence(NOT_BUILT, 503 if name == "index.html" else 404)
    response = HttpResponse(path.read_bytes(), content_type=content_type)
    response["Cache-Control"] = "no-cache"
    return response
