"""The invented sample sheet, as a table to change and as a parsed sheet."""

import tomllib
from pathlib import Path
from typing import Any

from rootcollar.shelf import Sheet, parse_sheet

_FILE = Path(__file__).with_name("sample.toml")


def sample_table() -> dict[str, Any]:
    """Return the sample as read from its file, free to be changed."""
    return tomllib.loads(_FILE.read_text(encoding="utf-8"))


def sample_sheet() -> Sheet:
    """Return the sample as a sheet."""
    return parse_sheet("sample", sample_table(), "sample.toml")
