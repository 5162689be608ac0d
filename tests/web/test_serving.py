"""What browsers are given: the shell, the worker, the manifest, and what is missing."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from django.test import Client

PAGE = "<!doctype html><title>kitchenlog</title>"


@pytest.fixture
def built(tmp_path: Path, settings: Any) -> Path:
    """A built app, as small as can be."""
    (tmp_path / "assets").mkdir()
    (tmp_path / "index.html").write_text(PAGE)
    (tmp_path / "sw.js").write_bytes("/* Brühe */".encode())
    (tmp_path / "assets" / "main-Ab12Cd34.js").write_text("export {};")
    (tmp_path / "plain.js").write_text("export {};")
    settings.STATIC_ROOT = tmp_path
    return tmp_path


@pytest.mark.parametrize("address", ["/", "/weigh-in", "/lots/MJ-261110-K7-1", "/a/b/c?d=e"])
def test_every_screens_address_gives_the_shell(built: Path, address: str) -> None:
    answer = Client().get(address)

    assert answer.status_code == 200
    assert answer.content.decode() == PAGE
    assert answer["Content-Type"] == "text/html; charset=utf-8"
    assert answer["Cache-Control"] == "no-cache"


def test_the_shell_answers_no_change(built: Path) -> None:
    assert Client().post("/").status_code == 405


def test_the_service_worker_comes_from_the_root_with_every_byte_of_it(built: Path) -> None:
    answer = Client().get("/serviceworker.js")

    assert answer.content == "/* Brühe */".encode()
    assert answer["Content-Type"].startswith("text/javascript")
    assert answer["Cache-Control"] == "no-cache"


def test_assets_named_by_content_are_kept_for_ever_and_others_are_not(built: Path) -> None:
    named = Client().get("/static/assets/main-Ab12Cd34.js")
    plain = Client().get("/static/plain.js")

    assert named.status_code == 200
    assert "immutable" in named["Cache-Control"]
    assert "immutable" not in plain["Cache-Control"]


@pytest.mark.parametrize(
    "address",
    [
        "/static/assets/main-Zz99Zz99.js",
        "/static/",
        "/static/../manage.py",
        "/favicon.ico",
        "/assets/old.js",
        "/some/page.css",
    ],
)
def test_a_missing_file_is_missing_and_never_the_shell(built: Path, address: str) -> None:
    answer = Client().get(address)

    assert answer.status_code == 404
    assert answer["Content-Type"].startswith("text/plain")
    assert PAGE not in answer.content.decode()


def test_an_app_that_was_not_built_says_so_in_a_sentence(tmp_path: Path, settings: Any) -> None:
    settings.STATIC_ROOT = tmp_path

    shell, worker = Client().get("/"), Client().get("/serviceworker.js")

    assert (shell.status_code, worker.status_code) == (503, 404)
    assert "The app is not built yet." in shell.content.decode()


def test_the_icon_browsers_ask_for_unasked_is_served_once_it_is_built(built: Path) -> None:
    before = Client().get("/favicon.ico")
    (built / "icons").mkdir()
    (built / "icons" / "icon-192.png").write_bytes(b"\x89PNG")

    after = Client().get("/favicon.ico")

    assert before.status_code == 404
    assert (after.status_code, after["Content-Type"]) == (200, "image/png")


def test_the_manifest_makes_the_app_installable(built: Path) -> None:
    answer = Client().get("/manifest.json")

    manifest = answer.json()
    assert answer["Content-Type"] == "application/manifest+json"
    assert (manifest["start_url"], manifest["scope"], manifest["display"]) == (
        "/",
        "/",
        "standalone",
    )
    sizes = {(icon["sizes"], icon.get("purpose", "any")) for icon in manifest["icons"]}
    assert sizes == {("192x192", "any"), ("512x512", "any"), ("512x512", "maskable")}


def test_nothing_is_for_search_engines(built: Path) -> None:
    answer = Client().get("/robots.txt")

    assert answer.content.decode() == "User-agent: *\nDisallow: /\n"


@pytest.mark.django_db
def test_the_health_page_tells_of_the_database_and_the_worker(settings: Any) -> None:
    settings.WORKER_SEEN_FILE.unlink(missing_ok=True)
    unknown = Client().get("/healthz")
    settings.WORKER_SEEN_FILE.touch()
    known = Client().get("/healthz")

    assert unknown.status_code == 200
    assert (unknown.json()["database"], unknown.json()["worker"]) == ("answers", "unknown")
    assert known.json()["worker"] == "working"
    assert known.json()["logs_behind"] == 0


@pytest.mark.django_db
@pytest.mark.parametrize(
    "address",
    ["/", "/static/assets/main-Ab12Cd34.js", "/static/missing.js", "/healthz", "/api/v1/none"],
)
def test_every_answer_carries_the_content_rules(built: Path, address: str) -> None:
    answer = Client().get(address)

    rules = dict(
        rule.strip().partition(" ")[::2]
        for rule in answer["Content-Security-Policy"].split(";")
    )
    assert rules["default-src"] == "'none'"
    assert rules["script-src"] == "'self'"
    assert rules["object-src"] == rules["base-uri"] == rules["frame-ancestors"] == "'none'"
    assert rules["require-trusted-types-for"] == "'script'"
    assert "unsafe" not in answer["Content-Security-Policy"]
    assert answer["X-Content-Type-Options"] == "nosniff"
    assert answer["Referrer-Policy"] == "same-origin"
    assert answer["Cross-Origin-Opener-Policy"] == "same-origin"


def test_a_name_that_is_not_ours_is_refused_in_the_form_of_the_address(built: Path) -> None:
    page = Client(raise_request_exception=False).get("/", headers={"Host": "evil.example"})
    api = Client(raise_request_exception=False).get(
        "/api/v1/sync/pull", headers={"Host": "evil.example"}
    )

    assert (page.status_code, api.status_code) == (400, 400)
    assert page["Content-Type"].startswith("text/plain")
    assert api.json()["code"] == "unreadable"
