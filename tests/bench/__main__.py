"""`make bench`: every section in a process of its own, or only those that are named."""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
from contextlib import ExitStack

from tests.bench.table import print_machine
from tests.servers import PROJECT, postgresql

SECTIONS = ("push", "rebuild", "trace", "readings", "phone", "heat")
ON_BOTH_DATABASES = ("trace", "readings")


def main(wanted: list[str]) -> int:
    """Run the sections; the exit code says whether any could not be measured."""
    print_machine()
    failed = [section for section in wanted or SECTIONS if not _run(section)]
    return len(failed)


def _run(section: str) -> bool:
    engines = ("sqlite", "postgresql") if section in ON_BOTH_DATABASES else ("sqlite",)
    return not [engine for engine in engines if not _run_on(section, engine)]


def _run_on(section: str, engine: str) -> bool:
    with ExitStack() as stack:
        folder = stack.enter_context(tempfile.TemporaryDirectory(prefix="kl-bench-"))
        environment = {
            **os.environ,
            "DJANGO_SETTINGS_MODULE": "kitchenlog.config.settings",
            "KITCHENLOG_DATA": folder,
            "KITCHENLOG_LIMITS": "off",
            "KITCHENLOG_DATABASE": f"sqlite:///{folder}/bench.sqlite3",
        }
        if engine == "postgresql":
            environment["KITCHENLOG_DATABASE"] = stack.enter_context(postgresql())
        script = f"import django; django.setup(); from tests.bench.{section} import measure"
        done = subprocess.run(
            [sys.executable, "-c", f"{script}; measure()"],
            cwd=PROJECT,
            env=environment,
            check=False,
        )
        return done.returncode == 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
