"""What every view of the API stands on: who asks, what they may, and in whose record."""

from datetime import UTC, datetime
from typing import Any

from django.http import HttpRequest
from django.http.response import HttpResponseBase
from rest_framework.authentication import BaseAuthentication
from rest_framework.exceptions import MethodNotAllowed
from rest_framework.permissions import BasePermission
from rest_framework.request import Request
from rest_framework.response import Response
from rest_framework.views import APIView

from kitchenlog.members.json_body import DUPLICATE_KEYS
from kitchenlog.members.models import Device, Member
from kitchenlog.members.origin import READING, require_own_page
from kitchenlog.members.refusals import Refused, answered
from kitchenlog.members.scope import in_cooperative
from kitchenlog.members.sessions import (
    cookie_name,
    give_cookie,
    holds_token,
    is_due_to_roll,
    named_device,
    roll_on,
)

__all__ = [
    "DeviceAuthentication",
    "IsCoordinator",
    "IsMember",
    "IsSignedIn",
    "KitchenlogView",
    "Nobody",
    "Refused",
    "answered",
    "body_of",
    "device_of",
    "member_of",
]


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
        return super().has_permission(request, view) and (
            "coordinator" in member_of(request).roles
        )


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


def body_of(request: Request) -> dict[str, Any]:
    """The body as one object, each key once."""
    found = request.data
    if not isinstance(found, dict) or DUPLICATE_KEYS in found:
        raise Refused("unreadable", 400, "The body must be one object with each key once.")
    return found


class KitchenlogView(APIView):
    """A view of one cooperative: it refuses strangers, then works in that scope alone.

    `names_device` is False only where a device comes to be: at sign-in.
    """

    names_device = True

    def initial(self, request: Request, *args: Any, **kwargs: Any) -> None:
        """Ask where the request comes from before asking who sends it."""
        plain = plain_request(request)
        require_own_page(plain)
        is_change = request.method not in READING
        if is_change and self.names_device and named_device(plain) is None:
            raise Refused("csrf", 403, "Name your device in the header Kitchenlog-Device.")
        super().initial(request, *args, **kwargs)

    def dispatch(self, request: HttpRequest, *args: Any, **kwargs: Any) -> HttpResponseBase:
        """As DRF does, with the view's own method inside the cooperative's scope."""
        self.args, self.kwargs = args, kwargs
        self.request = asked = self.initialize_request(request, *args, **kwargs)
        self.headers = self.default_response_headers
        try:
            self.initial(asked, *args, **kwargs)
            response = self._answer(asked, *args, **kwargs)
        except Exception as exception:  # the outermost edge of the API
            response = self.handle_exception(exception)
        self.response = self.finalize_response(asked, response, *args, **kwargs)
        return self.response

    def _answer(self, request: Request, *args: Any, **kwargs: Any) -> Response:
        method = str(request.method).lower()
        known = method in self.http_method_names
        run = getattr(self, method, None) if known else None
        if run is None:
            raise MethodNotAllowed(str(request.method))
        if not isinstance(request.auth, Device):
            response: Response = run(request, *args, **kwargs)
            return response
        writes = request.method not in READING
        with in_cooperative(request.auth.cooperative, writes=writes):
            response = run(request, *args, **kwargs)
            if writes:
                _roll_session(request, request.auth, response)
        return response


def _roll_session(request: Request, device: Device, response: Response) -> None:
    """Reads never write (R45), so a session rolls on with what a phone hands over."""
    now = datetime.now(UTC)
    token = request.COOKIES.get(cookie_name(device.id))
    if not token or cookie_name(device.id) in response.cookies:
        return
    if device.signed_out_at is None and is_due_to_roll(device, at=now):
        roll_on(device, at=now)
        device.save(update_fields=["last_contact_at", "expires_at"])
        give_cookie(response, device, token, at=now)
