"""Whether the server can do its work, for people and for whatever watches it."""

import time

from django.conf import settings
from django.db import DatabaseError
from django.http import HttpRequest, JsonResponse
from django.views.decorators.http import require_safe

from kitchenlog.logbook.selectors import heads_with_work

WORKER_SILENT_S = 60


@require_safe
def health(request: HttpRequest) -> JsonResponse:
    """200 while the database answers; the rest is told, not judged."""
    logs_behind = _logs_behind()
    database = "silent" if logs_behind is None else "answers"
    seen_s = _worker_seen_s()
    answer = {
        "protocol": 1,
        "database": database,
        "logs_behind": logs_behind,
        "worker": _worker(seen_s),
        "worker_seen_s": seen_s,
    }
    response = JsonResponse(answer, status=200 if database == "answers" else 503)
    response["Cache-Control"] = "no-store"
    return response


def _logs_behind() -> int | None:
    """How many logs have sheets waiting for the worker; None when the database is silent."""
    try:
        return len(heads_with_work())
    except DatabaseError:
        return None


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
