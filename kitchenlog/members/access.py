"""Who asks, by the device's cookie, and the permissions a view may name."""

from __future__ import annotations

from datetime import UTC, datetime
from typing import TYPE_CHECKING

from django.http import HttpRequest
from rest_framework.authentication import BaseAuthentication
from rest_framework.permissions import BasePermission
from rest_framework.request import Request

from kitchenlog.members.models import Device, Member
from kitchenlog.members.refusals import Refused
from kitchenlog.members.sessions import holds_token, named_device

if TYPE_CHECKING:  # DRF's views read settings that name the classes of this file
    from rest_framework.views import APIView


class DeviceAuthentication(BaseAuthentication):
    """The device named in the header, if the request carries that device's own cookie."""

    def authenticate(self, request: Request) -> tuple[Member, Device] | None:
        """Member and device, or nobody; a revoked device is told so (R64)."""
        plain = plain_request(request)
        device_id = named_device(plain)
        if device_id is None:
            return None
        device = (
            Device.objects.select_related("member", "cooperative").filter(id=device_id).first()
        )
        if device is None or not holds_token(plain, device):
            return None
        if device.revoked_at is not None:
            raise Refused("device_revoked", 403, "This device was signed off by a coordinator.")
        if device.expires_at <= datetime.now(UTC):
            return None
        device.member.cooperative = device.cooperative
        return device.member, device


class Nobody(BasePermission):
    """The default: a view that names no permission answers nobody (R67)."""

    def has_permission(self, request: Request, view: APIView) -> bool:
        """Never."""
        return False


class IsSignedIn(BasePermission):
    """Any device with a session, also of a member who has left: sync tells them so itself."""

    def has_permission(self, request: Request, view: APIView) -> bool:
        """A device was recognised."""
        return isinstance(request.auth, Device)


class IsMember(BasePermission):
    """Whoever works here now."""

    def has_permission(self, request: Request, view: APIView) -> bool:
        """A device was recognised and its member has not left."""
        return isinstance(request.user, Member) and not request.user.has_left


class IsCoordinator(IsMember):
    """Those who look after people, recipes and devices."""

    def has_permission(self, request: Request, view: APIView) -> bool:
        """A member of today, with that role."""
        return super().has_permission(request, view) and member_of(request).is_coordinator


def member_of(request: Request) -> Member:
    """Who asks; the view's permission has seen to it that somebody does."""
    assert isinstance(request.user, Member)
    return request.user


def device_of(request: Request) -> Device:
    """The device they ask from."""
    assert isinstance(request.auth, Device)
    return request.auth


def plain_request(request: Request) -> HttpRequest:
    """Django's request inside DRF's."""
    inner: HttpRequest = request._request
    return inner
