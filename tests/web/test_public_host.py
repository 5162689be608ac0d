"""What changes where KITCHENLOG_HOST is set: HTTPS alone, and what the proxy says."""

from __future__ import annotations

from typing import Any

import pytest
from django.test import Client

pytestmark = pytest.mark.django_db
HOST = "kitchen.example.org"


@pytest.fixture(autouse=True)
def public(settings: Any) -> None:
    """As settings.py has it with a host."""
    settings.ALLOWED_HOSTS = [HOST, "localhost"]
    settings.SECURE_SSL_REDIRECT = True
    settings.SECURE_HSTS_SECONDS = 31_536_000
    settings.SECURE_PROXY_SSL_HEADER = ("HTTP_X_FORWARDED_PROTO", "https")
    settings.KITCHENLOG_BEHIND_PROXY = True


def test_plain_http_is_sent_to_https() -> None:
    answer = Client().get("/stock", headers={"Host": HOST})

    assert (answer.status_code, answer["Location"]) == (301, f"https://{HOST}/stock")


def test_https_is_to_be_kept_for_a_year() -> None:
    answer = Client().get("/robots.txt", headers={"Host": HOST, "X-Forwarded-Proto": "https"})

    assert answer.status_code == 200
    assert answer["Strict-Transport-Security"] == "max-age=31536000"


def test_the_health_page_answers_the_container_itself() -> None:
    assert Client().get("/healthz", headers={"Host": "localhost"}).status_code == 200


def test_an_old_browser_is_known_by_its_https_origin() -> None:
    answer = Client().post(
        "/api/v1/devices",
        {"login": "a@b", "passphrase": "c"},
        content_type="application/json",
        headers={"Host": HOST, "X-Forwarded-Proto": "https", "Origin": f"https://{HOST}"},
    )

    assert answer.status_code == 401
