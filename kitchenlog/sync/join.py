"""Where a device comes to be, signs in again, signs out and is shut out (R57, R63, R76)."""

from __future__ import annotations

from datetime import UTC, datetime
from typing import Any
from uuid import UUID

from django.conf import settings
from django.http import Http404, HttpRequest
from drf_spectacular.utils import PolymorphicProxySerializer, extend_schema
from rest_framework import serializers
from rest_framework.authentication import BaseAuthentication
from rest_framework.permissions import AllowAny, BasePermission
from rest_framework.request import Request
from rest_framework.response import Response

from kitchenlog.logbook.services import epoch_of
from kitchenlog.logbook.wire import wire_time
from kitchenlog.members.access import (
    IsCoordinator,
    IsSignedIn,
    device_of,
    member_of,
    plain_request,
)
from kitchenlog.members.limits import MINUTE_S, require_within
from kitchenlog.members.models import Device, Member
from kitchenlog.members.origin import client_address
from kitchenlog.members.refusals import Refused, answered
from kitchenlog.members.rest import KitchenlogView, body_of
from kitchenlog.members.scope import in_cooperative
from kitchenlog.members.sessions import give_cookie, named_device, take_cookie
from kitchenlog.sync import people
from kitchenlog.sync.serializers import (
    DevicesAnswer,
    DoneAnswer,
    JoinCodeAnswer,
    JoinCodeForm,
    JoinForm,
    SessionAnswer,
    SignInForm,
)

COMING_IN = PolymorphicProxySerializer(
    component_name="ComingIn", serializers=[SignInForm, JoinForm], resource_type_field_name=None
)


class DevicesView(KitchenlogView):
    """Sign in or join on a new device; list devices."""

    names_device = False

    def get_authenticators(self) -> list[BaseAuthentication]:
        """Signing in asks no device: the one at hand may be revoked, or not be yet."""
        return [] if _signs_in(self) else super().get_authenticators()

    def get_permissions(self) -> list[BasePermission]:
        """Anybody may try to come in; the list is the coordinator's."""
        return [AllowAny()] if _signs_in(self) else [IsCoordinator()]

    @extend_schema(request=COMING_IN, responses={201: SessionAnswer}, auth=[])
    def post(self, request: Request) -> Response:
        """Register a device by login and passphrase, or by a join code."""
        at = datetime.now(UTC)
        body = body_of(request)
        if "join_code" in body:
            device, token = _joined(_read(JoinForm, body), request, at)
        else:
            device, token = _signed_in(_read(SignInForm, body), request, at)
        return _session_answer(device, token, at=at, status=201)

    @extend_schema(responses={200: DevicesAnswer})
    def get(self, request: Request) -> Response:
        """Every device of the cooperative, as last told by itself."""
        devices = Device.objects.filter(cooperative=device_of(request).cooperative_id)
        ordered = devices.order_by("signed_in_at", "id")
        return answered({"devices": [_device_answer(device) for device in ordered]})


class DeviceView(KitchenlogView):
    """One device, for the coordinator to shut out."""

    permission_classes = (IsCoordinator,)

    @extend_schema(request=None, responses={200: DoneAnswer})
    def delete(self, request: Request, device: UUID) -> Response:
        """Revoke it, effective with its next request."""
        cooperative = device_of(request).cooperative_id
        found = Device.objects.filter(cooperative=cooperative, id=device).first()
        if found is None:
            raise Http404
        people.revoke(found, at=datetime.now(UTC))
        return answered({})


class SessionView(KitchenlogView):
    """The session of a known device."""

    def get_authenticators(self) -> list[BaseAuthentication]:
        """Its cookie may be gone: that is why it signs in again."""
        return [] if _signs_in(self) else super().get_authenticators()

    def get_permissions(self) -> list[BasePermission]:
        """Anybody may try to sign in; only who is in can go out."""
        return [AllowAny()] if _signs_in(self) else [IsSignedIn()]

    @extend_schema(request=SignInForm, responses={200: SessionAnswer}, auth=[])
    def post(self, request: Request) -> Response:
        """Sign in again, same device, same member."""
        at = datetime.now(UTC)
        device_id = named_device(plain_request(request))
        assert device_id is not None  # the base view refuses a change without the header
        said = _read(SignInForm, body_of(request))
        member = _member(said, request, at)
        with in_cooperative(member.cooperative):
            device, token = people.sign_in_again(
                device_id, member, app_version=said["app_version"], at=at
            )
        return _session_answer(device, token, at=at, status=200)

    @extend_schema(request=None, responses={200: DoneAnswer})
    def delete(self, request: Request) -> Response:
        """Sign out: this device's cookie goes, the other members' stay (R61)."""
        device = device_of(request)
        people.sign_out(device, at=datetime.now(UTC))
        response = answered({})
        take_cookie(response, device)
        response["Clear-Site-Data"] = '"cache"'
        return response


class JoinCodesView(KitchenlogView):
    """Codes that let people in."""

    permission_classes = (IsCoordinator,)

    @extend_schema(request=JoinCodeForm, responses={201: JoinCodeAnswer})
    def post(self, request: Request) -> Response:
        """A code for a new member with these roles, or for one who forgot the passphrase."""
        at = datetime.now(UTC)
        said = _read(JoinCodeForm, body_of(request))
        cooperative = member_of(request).cooperative
        member = None
        if "member" in said:
            member = Member.objects.filter(cooperative=cooperative, id=said["member"]).first()
            if member is None or member.has_left:
                raise Refused("unreadable", 400, "member: nobody here has this id.", "member")
        code, kept = people.make_join_code(
            cooperative,
            roles=member.roles if member else said.get("roles", []),
            member=member,
            made_by=device_of(request),
            at=at,
        )
        return answered({"code": code, "expires_at": wire_time(kept.expires_at)}, status=201)


def _signs_in(view: KitchenlogView) -> bool:
    """Whether somebody comes in; while the API is described nobody asks."""
    return view.request is not None and view.request.method == "POST"


def _signed_in(said: dict[str, Any], request: Request, at: datetime) -> tuple[Device, str]:
    member = _member(said, request, at)
    if member.has_left:
        raise Refused("not_authenticated", 401, people.NOT_TOGETHER)
    with in_cooperative(member.cooperative):
        return people.register_device(member, app_version=said["app_version"], at=at)


def _joined(said: dict[str, Any], request: Request, at: datetime) -> tuple[Device, str]:
    _count_try(request, "", at)
    kept = people.open_join_code(said["join_code"], at=at)
    if kept.member is None:
        for field in ("name", "login"):
            if not said[field].strip():
                raise Refused("unreadable", 400, f"{field}: fill this in.", field)
    newcomer = people.Newcomer(said["name"], said["login"], said["passphrase"])
    with in_cooperative(kept.cooperative):
        member = people.join_by_code(kept, newcomer, at=at)
        return people.register_device(member, app_version=said["app_version"], at=at)


def _member(said: dict[str, Any], request: Request, at: datetime) -> Member:
    _count_try(request, said["login"], at)
    return people.member_who_signs_in(said["login"], said["passphrase"])


def _count_try(request: Request, login: str, at: datetime) -> None:
    """Count before looking, and outside any transaction that could take the count back."""
    plain: HttpRequest = plain_request(request)
    address = client_address(plain, is_behind_proxy=settings.KITCHENLOG_BEHIND_PROXY)
    keys = [f"address:{address}"[:200]]
    if login:
        keys.append(f"login:{login.strip().lower()}")
    for key in keys:
        require_within(key, at_most=settings.SIGN_INS_PER_MINUTE, per_s=MINUTE_S, now=at)


def _read(form: type[serializers.Serializer[Any]], body: dict[str, Any]) -> dict[str, Any]:
    found = form(data=body)
    found.is_valid(raise_exception=True)
    said: dict[str, Any] = found.validated_data
    return said


def _session_answer(device: Device, token: str, *, at: datetime, status: int) -> Response:
    member, cooperative = device.member, device.cooperative
    response = answered(
        {
            "device": str(device.id),
            "mark": device.mark,
            "epoch": epoch_of(cooperative.id),
            "server_time": wire_time(at),
            "member": {
                "id": str(member.id),
                "name": member.name,
                "login": member.full_login,
                "roles": member.roles,
            },
            "cooperative": {
                "id": str(cooperative.id),
                "handle": cooperative.handle,
                "name": cooperative.name,
                "starts_with": cooperative.starts_with,
            },
        },
        status=status,
    )
    give_cookie(response, device, token, at=at)
    return response


def _device_answer(device: Device) -> dict[str, Any]:
    return {
        "device": str(device.id),
        "mark": device.mark,
        "member": str(device.member_id),
        "app_version": device.app_version,
        "signed_in_at": wire_time(device.signed_in_at),
        "last_contact_at": wire_time(device.last_contact_at),
        "highest_device_seq": device.highest_device_seq,
        "waiting_count": device.waiting_count,
        "is_revoked": device.revoked_at is not None,
        "is_signed_out": device.signed_out_at is not None,
    }
