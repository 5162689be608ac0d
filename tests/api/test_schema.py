"""The OpenAPI document, and the API held to it by requests nobody would think of."""

from __future__ import annotations

from typing import Any

import pytest
import schemathesis
from hypothesis import HealthCheck, given, settings
from schemathesis.checks import not_a_server_error
from schemathesis.specs.openapi.checks import (
    content_type_conformance,
    response_schema_conformance,
    status_code_conformance,
)

from kitchenlog.config.wsgi import application
from kitchenlog.members.sessions import cookie_name
from tests.people import Kitchen, Phone

# Each answer closes the connection, as with a real server: a rollback would be lost.
pytestmark = pytest.mark.usefixtures("log_db", "no_limits")

EXAMPLES = 15
CHECKS = [
    not_a_server_error,
    status_code_conformance,
    content_type_conformance,
    response_schema_conformance,
]


@pytest.fixture
def phone(log_db: None, no_limits: None) -> Phone:
    """A coordinator may ask everything."""
    return Kitchen("hearth").phone("coordinator")


@pytest.mark.parametrize(
    ("path", "method"),
    [
        ("/api/v1/devices", "POST"),
        ("/api/v1/devices", "GET"),
        ("/api/v1/devices/{device}", "DELETE"),
        ("/api/v1/session", "POST"),
        ("/api/v1/join-codes", "POST"),
        ("/api/v1/sync/push", "POST"),
        ("/api/v1/sync/pull", "GET"),
        ("/api/v1/sync/have", "POST"),
        ("/api/v1/entries", "GET"),
        ("/api/v1/entries/{entry}", "GET"),
        ("/api/v1/quarantine", "GET"),
        ("/api/v1/lots/{code}", "GET"),
        ("/api/v1/lots/{code}/trace", "GET"),
    ],
)
def test_no_request_breaks_the_server_or_its_word(phone: Phone, path: str, method: str) -> None:
    described = schemathesis.openapi.from_wsgi("/api/v1/schema", application)
    # The client packs cookies itself and drops a header that holds them.
    headers = {**phone.headers, "Accept-Encoding": "identity"}
    cookies = {cookie_name(phone.device.id): phone.token}

    @given(case=described[path][method].as_strategy())
    @settings(
        max_examples=EXAMPLES,
        deadline=None,
        derandomize=True,
        suppress_health_check=list(HealthCheck),
    )
    def hold_to_its_word(case: Any) -> None:
        case.call_and_validate(headers=headers, cookies=cookies, checks=CHECKS)

    hold_to_its_word()


def test_the_document_names_every_address_and_its_refusals(phone: Phone) -> None:
    document = phone.get("schema").json()

    assert document["openapi"].startswith("3.1")
    assert set(document["paths"]) >= {
        "/api/v1/devices", "/api/v1/session", "/api/v1/join-codes", "/api/v1/sync/push",
        "/api/v1/sync/pull", "/api/v1/sync/have", "/api/v1/entries", "/api/v1/quarantine",
        "/api/v1/lots/{code}", "/api/v1/lots/{code}/trace",
    }  # fmt: skip
    for path, operations in document["paths"].items():
        for operation in operations.values():
            assert {"400", "401", "403", "404", "413", "429", "500"} <= set(
                operation["responses"]
            ), path


def test_the_document_says_how_a_device_is_named(phone: Phone) -> None:
    document = phone.get("schema").json()

    assert document["components"]["securitySchemes"]["device"]["name"] == "Kitchenlog-Device"
    assert document["paths"]["/api/v1/sync/pull"]["get"]["security"] == [{"device": []}]
