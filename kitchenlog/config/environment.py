"""How settings are read from the environment: addresses, switches and the secret key."""

import contextlib
import os
import secrets
import tempfile
from collections.abc import Mapping
from pathlib import Path
from typing import Any
from urllib.parse import parse_qs, unquote, urlsplit

from django.core.exceptions import ImproperlyConfigured

SECRET_KEY_BYTES = 50
SQLITE_WAIT_S = 20


def database_settings(address: str, *, root: Path) -> dict[str, Any]:
    """Django's settings for `sqlite:///path` (from the project's root) or `postgres://...`.

    SQLite: IMMEDIATE, because a write that begins as a read fails under others' writes;
    WAL and synchronous FULL, because a power cut must lose nothing that was answered.
    """
    parts = urlsplit(address)
    if parts.scheme == "sqlite":
        return {
            "ENGINE": "django.db.backends.sqlite3",
            "NAME": str(root / unquote(parts.path.removeprefix("/"))),
            "OPTIONS": {
                "transaction_mode": "IMMEDIATE",
                "timeout": SQLITE_WAIT_S,
                "init_command": "PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL",
            },
        }
    if parts.scheme in ("postgres", "postgresql"):
        return _postgresql_settings(address)
    raise ImproperlyConfigured(
        "KITCHENLOG_DATABASE must begin with sqlite:/// or postgres://, for example "
        "sqlite:///data/kitchenlog.sqlite3."
    )


def _postgresql_settings(address: str) -> dict[str, Any]:
    parts = urlsplit(address)
    asked = {name: values[-1] for name, values in parse_qs(parts.query).items()}
    # A folder as host is a Unix socket; it cannot stand before the path of an address.
    host = asked.pop("host", "") or parts.hostname or ""
    return {
        "ENGINE": "django.db.backends.postgresql",
        "NAME": unquote(parts.path.removeprefix("/")),
        "USER": unquote(parts.username or ""),
        "PASSWORD": unquote(parts.password or ""),
        "HOST": host,
        "PORT": str(parts.port or ""),
        "CONN_MAX_AGE": 60,
        "CONN_HEALTH_CHECKS": True,
        "OPTIONS": asked,
    }


def is_on(environment: Mapping[str, str], name: str, *, otherwise: bool) -> bool:
    """Whether a switch is on; only `on` and `off` are understood."""
    said = environment.get(name, "on" if otherwise else "off")
    if said not in ("on", "off"):
        raise ImproperlyConfigured(f"{name} must be on or off, not {said!r}.")
    return said == "on"


def secret_key(environment: Mapping[str, str], *, host: str, data: Path) -> str:
    """The key from the environment, or on a machine of one's own the one kept in `data/`."""
    given = environment.get("KITCHENLOG_SECRET_KEY", "")
    if given:
        return given
    if host:
        raise ImproperlyConfigured(
            "KITCHENLOG_SECRET_KEY must be set where KITCHENLOG_HOST is: at least 50 "
            "characters by chance, the same on every machine of this installation."
        )
    return _kept_key(data / "secret_key")


def _kept_key(path: Path) -> str:
    if not path.exists():
        path.parent.mkdir(parents=True, exist_ok=True)
        handle, fresh = tempfile.mkstemp(dir=path.parent)  # made with mode 0600
        with os.fdopen(handle, "w") as file:
            file.write(secrets.token_urlsafe(SECRET_KEY_BYTES))
        # Linking a whole file decides between two processes that start at once.
        with contextlib.suppress(FileExistsError):
            os.link(fresh, path)
        Path(fresh).unlink()
    return path.read_text().strip()
