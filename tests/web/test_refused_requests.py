"""A request that is refused before anybody reads it must not cost the next one its answer."""

from __future__ import annotations

import http.client
from pathlib import Path

from tests.servers import KitchenlogServer

REQUESTS = 100
BODY = b"x" * 200_000


def test_a_connection_lives_on_after_a_request_nobody_read(tmp_path: Path) -> None:
    server = KitchenlogServer(tmp_path)
    server.start()
    try:
        line = http.client.HTTPConnection("127.0.0.1", server.port, timeout=20)
        headers = {"Host": f"localhost:{server.port}", "Content-Type": "application/json"}
        said = set()
        for _ in range(REQUESTS):
            line.request("POST", "/api/v1/sync/push", BODY, headers)
            answer = line.getresponse()
            answer.read()
            said.add(answer.status)
    finally:
        server.stop()

    assert said <= {401, 403}
