"""One cookie a device: how its token is made, checked, rolled on and taken away (R57)."""

import hashlib
import secrets
import uuid
from datetime import datetime, timedelta

from django.conf import settings
from django.http import HttpRequest
from django.http.response import HttpResponseBase
from django.utils.crypto import constant_time_compare

from kitchenlog.members.models import Device

DEVICE_HEADER = "Kitchenlog-Device"
TOKEN_BYTES = 32
# Rolling a cookie on is a write; once an hour is often enough for 90 days.
ROLL_AFTER = timedelta(hours=1)


def cookie_name(device_id: uuid.UUID) -> str:
    """`__Host-` makes the browser insist on Secure, Path=/ and no Domain."""
    return f"__Host-device-{device_id}"


def named_device(request: HttpRequest) -> uuid.UUID | None:
    """The device the request says it is from, by its header."""
    try:
        return uuid.UUID(request.headers.get(DEVICE_HEADER, ""))
    except ValueError:
        return None


def token_hash(token: str) -> str:
    """SHA-256, unsalted: the token is 256 bits of chance, not a word to be guessed."""
    return hashlib.sha256(token.encode()).hexdigest()


def holds_token(request: HttpRequest, device: Device) -> bool:
    """Whether the request carries the device's own cookie."""
    token = request.COOKIES.get(cookie_name(device.id), "")
    return bool(device.token_hash) and constant_time_compare(
        token_hash(token), device.token_hash
    )


def open_session(device: Device, *, at: datetime) -> str:
    """Give the device a new token and its full time; the caller saves it.

    The answer is the only place where the token stands in clear.
    """
    token = secrets.token_urlsafe(TOKEN_BYTES)
    device.token_hash = token_hash(token)
    device.signed_in_at = at
    device.signed_out_at = None
    roll_on(device, at=at)
    return token


def roll_on(device: Device, *, at: datetime) -> None:
    """Count 90 quiet days anew, but never past 365 days after sign-in."""
    device.last_contact_at = at
    device.expires_at = min(
        at + timedelta(days=settings.DEVICE_QUIET_DAYS),
        device.signed_in_at + timedelta(days=settings.DEVICE_DAYS),
    )


def is_due_to_roll(device: Device, *, at: datetime) -> bool:
    """Whether the last contact on record is old enough to be written anew."""
    return at - device.last_contact_at >= ROLL_AFTER


def give_cookie(
    response: HttpResponseBase, device: Device, token: str, *, at: datetime
) -> None:
    """Put the token where no script can read it, for as long as the session may last."""
    response.set_cookie(
        cookie_name(device.id),
        token,
        max_age=device.expires_at - at,
        path="/",
        secure=True,
        httponly=True,
        samesite="Lax",
    )


def take_cookie(response: HttpResponseBase, device: Device) -> None:
    """Remove this device's cookie and no other's.

    Not `Clear-Site-Data: "cookies"`: other members' devices live in the same browser (R61).
    """
    response.set_cookie(
        cookie_name(device.id),
        "",
        max_age=0,
        path="/",
        secure=True,
        httponly=True,
        samesite="Lax",
    )
