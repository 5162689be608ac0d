"""What the database alone takes: the same columns, a hundred rows a transaction, no Django."""

from __future__ import annotations

import sqlite3
import tempfile
import time
import uuid
from pathlib import Path
from urllib.parse import parse_qs, urlsplit

import psycopg

ROWS_A_TRANSACTION = 100
TRANSACTIONS = 100
CANONICAL = "x" * 620  # about the length of a sale as stored

_ENTRY = """CREATE TABLE raw_entry (cooperative varchar(36), id varchar(36), seq bigint,
 kind text,
 author varchar(36), device varchar(36), device_seq int, happened_at text, canonical text,
 fingerprint text, chain_hash text, received_at text, skew_ms bigint,
 PRIMARY KEY (cooperative, id), UNIQUE (cooperative, seq))"""
_LINK = """CREATE TABLE raw_link (cooperative varchar(36), subject varchar(120), seq bigint,
 PRIMARY KEY (cooperative, subject, seq))"""


def raw_insert_rate(address: str | None) -> float:
    """Entries a second, each one row with two links, committed a hundred at a time."""
    if address is not None:
        asked = urlsplit(address)
        with psycopg.connect(
            host=parse_qs(asked.query)["host"][0], user=asked.username, dbname="postgres"
        ) as connection:
            return _rate(connection, "%s", is_sqlite=False)
    with tempfile.TemporaryDirectory(prefix="kl-raw-") as folder:
        connection = sqlite3.connect(Path(folder) / "raw.sqlite3", isolation_level=None)
        connection.execute("PRAGMA journal_mode=WAL")
        connection.execute("PRAGMA synchronous=FULL")
        return _rate(connection, "?", is_sqlite=True)


def _rate(
    connection: sqlite3.Connection | psycopg.Connection[tuple[object, ...]],
    place: str,
    *,
    is_sqlite: bool,
) -> float:
    cursor = connection.cursor()
    for table in (_ENTRY, _LINK):
        cursor.execute(table)
    connection.commit()
    entry = f"INSERT INTO raw_entry VALUES ({', '.join([place] * 13)})"
    link = f"INSERT INTO raw_link VALUES ({', '.join([place] * 3)})"
    start = time.perf_counter()
    for number in range(TRANSACTIONS):
        if is_sqlite:
            cursor.execute("BEGIN IMMEDIATE")
        rows = [_row(number * ROWS_A_TRANSACTION + n) for n in range(ROWS_A_TRANSACTION)]
        cursor.executemany(entry, rows)
        cursor.executemany(link, [("c", f"lot:{row[2]}", row[2]) for row in rows])
        cursor.executemany(link, [("c", "day:store:2026-06-06", row[2]) for row in rows])
        connection.commit()
    return TRANSACTIONS * ROWS_A_TRANSACTION / (time.perf_counter() - start)


def _row(seq: int) -> tuple[object, ...]:
    return (
        "c", str(uuid.uuid4()), seq, "sale", "a", "d", seq, "2026-06-06T08:00:00.000Z",
        CANONICAL, "f" * 64, "h" * 64, "2026-06-06T08:00:00.000Z", 0,
    )  # fmt: skip
