"""A made-up cooperative for tests: its members and the devices they speak from."""

from __future__ import annotations

import json
from datetime import UTC, datetime
from typing import Any

from django.test import Client

from kitchenlog.members.models import Cooperative, Device, Member
from kitchenlog.members.scope import in_cooperative
from kitchenlog.members.sessions import cookie_name
from kitchenlog.sync import people

PASSPHRASE = "a spoon of thyme"
ROLES = ("processor", "seller", "coordinator")


class Phone:
    """One browser as used by one member, speaking as our own pages do."""

    def __init__(self, device: Device, token: str, **headers: str) -> None:
        self.device = device
        self.token = token
        self.client = Client(raise_request_exception=False)
        self.headers = {
            "Sec-Fetch-Site": "same-origin",
            "Kitchenlog-Device": str(device.id),
            **headers,
        }

    @property
    def member(self) -> Member:
        """Whose phone it is."""
        return self.device.member

    def get(self, path: str, **query: Any) -> Any:
        """GET below /api/v1/."""
        return self.ask("GET", path, query=query)

    def post(self, path: str, body: Any) -> Any:
        """POST JSON below /api/v1/; `body` as text or bytes is sent as it is."""
        return self.ask("POST", path, body=body)

    def delete(self, path: str) -> Any:
        """DELETE below /api/v1/."""
        return self.ask("DELETE", path)

    def ask(self, method: str, path: str, *, body: Any = None, query: Any = None) -> Any:
        """Any request, under this phone's cookie."""
        raw = body if isinstance(body, str | bytes) else json.dumps(body)
        # By hand: the client's own jar would swap the token for each that an answer brings.
        cookie = f"{cookie_name(self.device.id)}={self.token}"
        return self.client.generic(
            method,
            f"/api/v1/{path}",
            raw if body is not None else b"",
            content_type="application/json",
            headers={**self.headers, "Cookie": cookie},
            query_params=query or None,
        )


class Kitchen:
    """A cooperative with a processor, a seller and a coordinator."""

    def __init__(self, handle: str) -> None:
        self.at = datetime.now(UTC)
        self.cooperative: Cooperative = people.begin_cooperative(
            handle=handle,
            name=handle.title(),
            starts_with={"time_zone": "Europe/Dublin", "currency": "EUR", "language": "en"},
            at=self.at,
        )
        with in_cooperative(self.cooperative):
            self.members = {role: self.add_member(role, roles=[role]) for role in ROLES}

    def add_member(self, login: str, *, roles: list[str]) -> Member:
        """A member with PASSPHRASE."""
        newcomer = people.Newcomer(login.title(), login, PASSPHRASE)
        with in_cooperative(self.cooperative):
            return people.add_member(self.cooperative, newcomer, roles=roles, at=self.at)

    def phone(self, role: str = "processor") -> Phone:
        """A new phone of the member with this role (or login), signed in."""
        member = Member.objects.select_related("cooperative").get(
            cooperative=self.cooperative, login=role
        )
        with in_cooperative(self.cooperative):
            device, token = people.register_device(member, app_version="test", at=self.at)
        return Phone(device, token)
