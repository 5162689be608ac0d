"""A Django view that only parses a push and answers: what the framework alone costs."""

from __future__ import annotations

import json
import subprocess
import sys
import time
import urllib.error
import urllib.request

import django
from django.conf import settings
from django.core.wsgi import get_wsgi_application
from django.http import HttpRequest, HttpResponse, JsonResponse
from django.urls import path

from tests.servers import PROJECT, free_port

START_S_MAX = 20


def _answer(request: HttpRequest) -> HttpResponse:
    if request.method == "GET":
        return JsonResponse({})
    return JsonResponse({"entries": len(json.loads(request.body)["entries"])})


urlpatterns = [path("api/v1/bare", _answer)]


def application_of_this_file() -> object:
    """A Django of its own: no middleware, no database."""
    settings.configure(
        ROOT_URLCONF="tests.bench.bare", ALLOWED_HOSTS=["localhost"], MIDDLEWARE=[],
        SECRET_KEY="only for the bench", USE_TZ=True,
    )  # fmt: skip
    django.setup()
    return get_wsgi_application()


class BareView:
    """The view under the same web server, with the same workers, as kitchenlog."""

    def __enter__(self) -> BareView:
        self.port = free_port()
        self.process = subprocess.Popen(
            [sys.executable, "-m", "granian", "--interface", "wsgi", "--workers", "2",
             "--blocking-threads", "2", "--host", "127.0.0.1", "--port", str(self.port),
             "--factory", "tests.bench.bare:application_of_this_file"],
            cwd=PROJECT, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
        )  # fmt: skip
        until = time.monotonic() + START_S_MAX
        while not self._answers():
            assert time.monotonic() < until, "The bare view did not start."
            time.sleep(0.1)
        return self

    def _answers(self) -> bool:
        try:
            with urllib.request.urlopen(f"http://localhost:{self.port}/api/v1/bare", timeout=2):
                return True
        except (urllib.error.URLError, OSError):
            return False

    def __exit__(self, *_: object) -> None:
        self.process.terminate()
        self.process.wait()
