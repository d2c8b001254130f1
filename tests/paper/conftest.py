"""The packets of `hobbin.py`, printed once and read by other programs."""

import shutil
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest

from rootcollar.paper import render_packet
from tests.paper.hobbin import MADE_ON, PACKETS


@pytest.fixture(scope="session")
def printed(tmp_path_factory: pytest.TempPathFactory) -> Callable[[str], Path]:
    """Return a function that prints a packet by its name, once, and gives the file."""
    folder = tmp_path_factory.mktemp("paper")

    def print_once(name: str) -> Path:
        file = folder / f"{name}.pdf"
        if not file.exists():
            file.write_bytes(render_packet(PACKETS[name](), made_on=MADE_ON))
        return file

    return print_once


@pytest.fixture(scope="session")
def poppler() -> Callable[..., str]:
    """Return a function that runs one of poppler's programs on a file and gives what it says."""
    missing = [name for name in ("pdfinfo", "pdftotext", "pdffonts") if shutil.which(name) is None]
    if missing:
        pytest.skip(f"poppler's {', '.join(missing)} is not installed (package poppler-utils)")

    def run(*words: str | Path) -> str:
        done = subprocess.run(
            [str(word) for word in words], capture_output=True, check=True, text=True, encoding="utf-8"
        )
        return done.stdout

    return run
