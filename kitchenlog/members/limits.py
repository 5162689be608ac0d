"""Counting what is limited, by one statement in the database (R76)."""

from datetime import datetime

from django.db import connection

from kitchenlog.members.models import Attempt
from kitchenlog.members.refusals import Refused

MINUTE_S = 60
DAY_S = 24 * 60 * 60
KEPT_S = 2 * DAY_S

# One statement on both databases, so that twenty requests at once cannot count as one.
_COUNT = """
INSERT INTO members_attempt (key, window_from_s, count) VALUES (%(key)s, %(now)s, %(by)s)
ON CONFLICT (key) DO UPDATE SET
  count = CASE WHEN members_attempt.window_from_s <= %(now)s - %(per)s
               THEN %(by)s ELSE members_attempt.count + %(by)s END,
  window_from_s = CASE WHEN members_attempt.window_from_s <= %(now)s - %(per)s
               THEN %(now)s ELSE members_attempt.window_from_s END
RETURNING window_from_s, count
"""


def wait_s(key: str, *, at_most: int | None, per_s: int, now: datetime, by: int = 1) -> int:
    """Count one more attempt (or `by`) and say how long to wait: 0 while within the limit.

    A window opens with its first attempt and lasts `per_s`. `at_most` None: no limit.
    """
    if at_most is None:
        return 0
    now_s = int(now.timestamp())
    with connection.cursor() as cursor:
        cursor.execute(_COUNT, {"key": key, "now": now_s, "per": per_s, "by": by})
        window_from_s, count = cursor.fetchone()
    return 0 if count <= at_most else max(1, window_from_s + per_s - now_s)


def require_within(
    key: str, *, at_most: int | None, per_s: int, now: datetime, by: int = 1
) -> None:
    """Refuse with 429 and Retry-After once the limit is passed."""
    wait = wait_s(key, at_most=at_most, per_s=per_s, now=now, by=by)
    if wait:
        raise Refused(
            "rate_limited", 429, f"Too often. Try again in {wait} s.", retry_after_s=wait
        )


def forget_old_attempts(*, now: datetime) -> None:
    """Drop counts that no longer limit anything."""
    Attempt.objects.filter(window_from_s__lt=int(now.timestamp()) - KEPT_S).delete()
