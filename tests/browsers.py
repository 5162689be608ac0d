"""Which browser tests and benches drive, and how it is started."""

from __future__ import annotations

import os
from pathlib import Path

BROWSER_FLAGS = [
    "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
    "--disable-background-networking", "--disable-component-update", "--disable-sync",
]  # fmt: skip


def chromium() -> str:
    """The machine's own Chromium; no browser is downloaded here."""
    candidates = [os.environ.get("KL_CHROMIUM", ""), "/usr/bin/chromium"]
    path = next((one for one in candidates if one and Path(one).exists()), None)
    assert path, (
        "No Chromium: set KL_CHROMIUM to one, or run "
        "`apt-get install chromium fonts-dejavu-core`."
    )
    return path
