"""Whether the server can do its work, for people and for whatever watches it."""

import time

from django.conf import settings
from django.db import DatabaseError, connection
from django.http import HttpRequest, JsonResponse
from django.views.decorators.http import require_safe

WORKER_SILENT_S = 60


@require_safe
def health(request: HttpRequest) -> JsonResponse:
    """200 while the database answers; the rest is told, not judged."""
    database = _database()
    seen_s = _worker_seen_s()
    answer = {
        "protocol": 1,
        "database": database,
        "worker": _worker(seen_s),
        "worker_seen_s": seen_s,
    }
    response = JsonResponse(answer, status=200 if database == "answers" else 503)
    response["Cache-Control"] = "no-store"
    return response


def _database() -> str:
    try:
        with connection.cursor() as cursor:
            cursor.execute("SELECT 1")
    except DatabaseError:
        return "silent"
    return "answers"


def _worker(seen_s: int | None) -> str:
    if seen_s is None:
        return "unknown"
    return "working" if seen_s < WORKER_SILENT_S else "silent"


def _worker_seen_s() -> int | None:
    """Seconds since the worker last did something; None where it shares no folder with us."""
    try:
        return max(0, int(time.time() - settings.WORKER_SEEN_FILE.stat().st_mtime))
    except OSError:
        return None
