"""What every view of the API stands on: who asks, what they may, and in whose record."""

from datetime import UTC, datetime
from typing import Any

from django.http import HttpRequest
from django.http.response import HttpResponseBase
from rest_framework.exceptions import MethodNotAllowed
from rest_framework.request import Request
from rest_framework.views import APIView

from kitchenlog.members.access import plain_request
from kitchenlog.members.json_body import DUPLICATE_KEYS
from kitchenlog.members.models import Device
from kitchenlog.members.origin import READING, require_own_page
from kitchenlog.members.refusals import Refused
from kitchenlog.members.scope import in_cooperative
from kitchenlog.members.sessions import (
    cookie_name,
    give_cookie,
    is_due_to_roll,
    named_device,
    roll_on,
)


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
        self.response = self.finalize_response(
            asked,
            response,  # type: ignore[arg-type] # it takes any answer of Django's
            *args,
            **kwargs,
        )
        return self.response

    def _answer(self, request: Request, *args: Any, **kwargs: Any) -> HttpResponseBase:
        method = str(request.method).lower()
        known = method in self.http_method_names
        run = getattr(self, method, None) if known else None
        if run is None:
            raise MethodNotAllowed(str(request.method))
        if not isinstance(request.auth, Device):
            response: HttpResponseBase = run(request, *args, **kwargs)
            return response
        writes = request.method not in READING
        with in_cooperative(request.auth.cooperative, writes=writes):
            response = run(request, *args, **kwargs)
            if writes:
                _roll_session(request, request.auth, response)
        return response


def _roll_session(request: Request, device: Device, response: HttpResponseBase) -> None:
    """Reads never write (R45), so a session rolls on with what a phone hands over."""
    now = datetime.now(UTC)
    token = request.COOKIES.get(cookie_name(device.id))
    if not token or cookie_name(device.id) in response.cookies:
        return
    if device.signed_out_at is None and is_due_to_roll(device, at=now):
        roll_on(device, at=now)
        device.save(update_fields=["last_contact_at", "expires_at"])
        give_cookie(response, device, token, at=now)
