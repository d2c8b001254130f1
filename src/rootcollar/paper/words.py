"""The words that the layout of the day sheet prints itself: what each of its languages has to give."""

from __future__ import annotations

import re
from functools import lru_cache
from pathlib import Path

__all__ = ["day_words"]

_SHEETS = Path(__file__).parent / "sheets"
_SAID = re.compile(r'say\((?:day, |page, )?"([^"]+)"\)')


@lru_cache(maxsize=1)
def day_words() -> tuple[str, ...]:
    """Return the name of every text that the day sheet's layout prints itself: the names in `DaySheet.words`."""
    laid = "".join((_SHEETS / name).read_text(encoding="utf-8") for name in ("day.typ", "sketch.typ"))
    return tuple(dict.fromkeys(_SAID.findall(laid)))
