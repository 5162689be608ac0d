"""Between phones and server: whole, or as bad as real ones are."""

from __future__ import annotations

import json
from random import Random
from typing import Any

from django.test import Client

Request = dict[str, Any]
Answer = dict[str, Any]

PORTAL = "<html><body>Welcome. Accept the terms to go on.</body></html>"

# Words that must not empty an outbox (R14): a status, and the code it carries.
REFUSALS: tuple[tuple[int, str], ...] = (
    (400, "csrf"),
    (401, "not_authenticated"),
    (403, "forbidden"),
    (404, "not_found"),
    (409, "server_error"),
    (413, "too_large"),
    (422, "server_error"),
    (429, "rate_limited"),
    (500, "server_error"),
    (502, "server_error"),
    (503, "server_error"),
)


class Network:
    """Answers phones' requests; to a share of them, `badness`, something happens."""

    def __init__(self, chance: Random) -> None:
        self.chance = chance
        self.badness = 0.0
        self.client = Client(raise_request_exception=False)
        self.cookies: dict[str, dict[str, str]] = {}
        self.delayed: list[tuple[str, Request]] = []
        self.happened: list[str] = []

    def __call__(self, phone: str, request: Request) -> Answer | str:
        """What becomes of one request."""
        if self.chance.random() >= self.badness:
            return self.deliver(phone, request)
        fault = self.chance.choice(FAULTS)
        self.happened.append(fault.__name__.strip("_"))
        return fault(self, phone, request)

    def deliver(self, phone: str, request: Request) -> Answer:
        """Ask the server, in this process, as a browser would: cookies, header, origin."""
        jar = self.cookies.setdefault(phone, {})
        headers = {
            "Sec-Fetch-Site": "same-origin",
            "Cookie": "; ".join(f"{name}={token}" for name, token in jar.items()),
        }
        if request["device"] is not None:
            headers["Kitchenlog-Device"] = request["device"]
        response = self.client.generic(
            request["method"],
            request["path"],
            request["body"] or "",
            content_type="application/json",
            headers=headers,
        )
        self.client.cookies.clear()
        for name, morsel in response.cookies.items():
            jar[name] = morsel.value
        return {
            "status": response.status_code,
            "retry_after": response.headers.get("Retry-After"),
            "text": response.content.decode(),
        }

    def deliver_delayed(self) -> None:
        """What hung somewhere arrives at last; nobody waits for the answers any more."""
        late, self.delayed = self.delayed, []
        for phone, request in late:
            self.deliver(phone, request)


def _lost_request(network: Network, phone: str, request: Request) -> str:
    return "lost"


def _lost_answer(network: Network, phone: str, request: Request) -> str:
    network.deliver(phone, request)
    return "lost"


def _doubled(network: Network, phone: str, request: Request) -> Answer:
    network.deliver(phone, request)
    return network.deliver(phone, request)


def _delayed(network: Network, phone: str, request: Request) -> str:
    network.delayed.append((phone, request))
    return "lost"


def _garbled(network: Network, phone: str, request: Request) -> Answer:
    answer = network.deliver(phone, request)
    cut = network.chance.randrange(max(1, len(answer["text"])))
    return {**answer, "text": answer["text"][:cut]}


def _portal(network: Network, phone: str, request: Request) -> Answer:
    return {"status": 200, "retry_after": None, "text": PORTAL}


def _refused(network: Network, phone: str, request: Request) -> Answer:
    status, code = network.chance.choice(REFUSALS)
    if network.chance.random() < 0.3:
        return {"status": status, "retry_after": "7", "text": PORTAL}
    text = json.dumps({"protocol": 1, "code": code, "detail": "as it happens"})
    return {"status": status, "retry_after": None, "text": text}


def _battery_before(network: Network, phone: str, request: Request) -> str:
    return "off"


def _battery_after(network: Network, phone: str, request: Request) -> str:
    network.deliver(phone, request)
    return "off"


FAULTS = (
    _lost_request,
    _lost_answer,
    _doubled,
    _delayed,
    _garbled,
    _portal,
    _refused,
    _battery_before,
    _battery_after,
)
