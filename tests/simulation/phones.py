"""The phones: the app's own entries, store, sync and sheets in one Node process."""

from __future__ import annotations

import json
import os
import subprocess
from collections.abc import Callable
from pathlib import Path
from typing import Any

FRONTEND = Path(__file__).parents[2] / "frontend"
BUNDLE = FRONTEND / "dist-phones" / "phones.mjs"
NODE = Path(__file__).parents[2] / ".venv" / "bin" / "node"

# Answers one request of a phone: an answer, "lost" (no answer came) or "off" (the phone died).
Network = Callable[[str, dict[str, Any]], "dict[str, Any] | str"]


class PhoneError(AssertionError):
    """A defect inside a phone, with its own account of it."""


def build_phones() -> None:
    """Bundle the phones as the app is now."""
    tools = {**os.environ, "PATH": f"{NODE.parent}:{os.environ['PATH']}"}
    command = ["npm", "run", "--silent", "phones", "--", "--logLevel", "warn"]
    subprocess.run(command, cwd=FRONTEND, env=tools, check=True)


class Phones:
    """Orders to phones, and their requests to the network in between."""

    def __init__(self, bundle: Path = BUNDLE) -> None:
        node = str(NODE) if NODE.exists() else "node"
        self.process = subprocess.Popen(
            [node, str(bundle)], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
        )
        self.network: Network = _nobody
        self.order_count = 0

    def stop(self) -> None:
        """End the process."""
        self.process.kill()
        self.process.wait()

    def order(self, phone: str, do: str, **given: Any) -> Any:
        """Have one phone do something; its requests are answered meanwhile, in their order."""
        self.order_count += 1
        self._say({"id": self.order_count, "phone": phone, "do": do, **given})
        while True:
            line = self._hear()
            if "wire" in line:
                answer = self.network(line["phone"], line["request"])
                self._say({"wire": line["wire"], "answer": answer})
            elif line["id"] == self.order_count:
                if "failed" in line:
                    raise PhoneError(line["failed"])
                return line["done"]

    def _say(self, line: dict[str, Any]) -> None:
        assert self.process.stdin is not None
        self.process.stdin.write(json.dumps(line) + "\n")
        self.process.stdin.flush()

    def _hear(self) -> dict[str, Any]:
        assert self.process.stdout is not None
        text = self.process.stdout.readline()
        if not text:
            raise PhoneError("the phones' process ended")
        heard: dict[str, Any] = json.loads(text)
        return heard


def _nobody(phone: str, request: dict[str, Any]) -> str:
    raise AssertionError(f"{phone} asked for {request['path']} before there was a network")
