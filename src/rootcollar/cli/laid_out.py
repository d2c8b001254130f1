"""What the summaries of a plan share: lines as wide as each other, and an uncertain number as plain values."""

from __future__ import annotations

import textwrap
from typing import Any

from rootcollar.kernel.doubt import band

__all__ = ["band_json", "wrapped"]

_WIDTH = 96  # ours: columns, whatever the terminal, so that a plan kept as text looks the same everywhere
_HANG = "    "


def wrapped(words: str, indent: str) -> list[str]:
    """Return words in lines, all but the first of them set in further."""
    return textwrap.wrap(words, _WIDTH, initial_indent=indent, subsequent_indent=indent + _HANG)


def band_json(worlds: Any) -> dict[str, float]:
    """Return an uncertain number as its best figure and the ends of its 10-90 % band."""
    here = band(worlds)
    return {"best": here.best, "low": here.low, "high": here.high}
