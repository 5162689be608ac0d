"""Good answers, with something in them, look as the description of the API says."""

from __future__ import annotations

from typing import Any

import pytest
import schemathesis
from schemathesis.specs.openapi.checks import response_schema_conformance

from kitchenlog.config.wsgi import application
from kitchenlog.members.sessions import cookie_name
from tests.people import Kitchen, Phone
from tests.writing import Pen, push_of, pushed, recompute_all

# Each answer closes the connection, as with a real server: a rollback would be lost.
pytestmark = pytest.mark.usefixtures("log_db", "no_limits")


def test_real_answers_are_as_described(kitchen: Kitchen) -> None:
    phone = kitchen.phone("coordinator")
    headers = {**phone.headers, "Accept-Encoding": "identity"}
    session = {cookie_name(phone.device.id): phone.token}
    good = Pen(phone).receipt("J1")
    pushed(phone, [good, {**good, "app_version": "other"}, {"id": "bad"}])
    pushed(phone, _costs(phone))
    recompute_all()
    described = schemathesis.openapi.from_wsgi("/api/v1/schema", application)
    of_lot = {"path_parameters": {"code": "J1"}}
    asked: list[tuple[str, str, dict[str, Any]]] = [
        ("GET", "entries", {"query": {"subject": "lot:J1"}}),
        ("GET", "entries/{entry}", {"path_parameters": {"entry": good["id"]}}),
        ("GET", "lots/{code}", of_lot),
        ("GET", "lots/{code}/trace", {**of_lot, "query": {"direction": "back"}}),
        ("GET", "batches/{batch}/cost", {"path_parameters": {"batch": "b1"}}),
        ("GET", "quarantine", {}),
        ("GET", "sync/pull", {}),
        ("GET", "sync/pull", {"query": {"cursor": "x"}}),
        ("POST", "sync/push", {"body": push_of(phone, [good, {"id": "bad"}, 7])}),
        ("POST", "sync/have", {"body": {"ids": [good["id"]]}}),
    ]

    for method, path, parts in asked:
        case = described[f"/api/v1/{path}"][method].Case(
            **{"media_type": "application/json", **parts}
        )
        response = case.call(headers=headers, cookies=session)
        assert response.status_code == 200, (path, response.content)
        case.validate_response(response, checks=[response_schema_conformance])


def _costs(phone: Phone) -> list[dict[str, Any]]:
    """Fuel, work nobody knows the pay of, and the end of a batch."""
    pen = Pen(phone)
    pen.seq = 50
    spent = {"batch": "b1", "part": "fuel", "amount": "85.00", "currency": "EUR"}
    return [
        pen.write("expense", spent),
        pen.write("labour", {"batch": "b1", "name": "Neighbour", "minutes": "30"}),
        pen.write("batch_finished", {"batch": "b1"}),
    ]
