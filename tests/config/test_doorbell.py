"""The file broker with messages that are not there whole."""

from __future__ import annotations

from pathlib import Path

from kombu import Connection

from kitchenlog.config.celery import app

WAIT_S = 30
HALVES = (b"", b'{"body": "W1t', b"\xff\xfe")


def test_a_message_that_is_half_written_does_not_end_the_worker(tmp_path: Path) -> None:
    assert app.main == "kitchenlog"  # it says how files are read
    messages = tmp_path / "messages"
    messages.mkdir()
    folders = {"data_folder_in": str(messages), "data_folder_out": str(messages)}
    options = {**folders, "control_folder": str(tmp_path / "control"), "polling_interval": 0.01}
    with Connection("filesystem://", transport_options=options) as broker:
        queue = broker.SimpleQueue("bell")
        for number, half in enumerate(HALVES):
            (messages / f"0_half{number}.bell.msg").write_bytes(half)
        queue.put("ring")

        heard = queue.get(timeout=WAIT_S)

        assert heard.payload == "ring"
