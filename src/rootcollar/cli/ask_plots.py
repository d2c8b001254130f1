"""Reading what was typed of plots: counts in a row, and shares that are neither nothing nor all."""

from __future__ import annotations

import re

from rootcollar.cli.ask import naming, share

__all__ = ["between", "counts"]

_NUMBER = re.compile(r"[0-9]{1,6}$")


def counts(option: str, text: str) -> tuple[int, ...]:
    """Return stems on each plot: `3 0 5 2` or `3, 0, 5, 2`; plots without any count too. Raises UnitError."""
    from rootcollar.kernel.errors import UnitError

    parts = re.split(r"[\s,;]+", text.strip().strip(",;"))
    with naming(option):
        for part in parts:
            if not _NUMBER.match(part):
                raise UnitError(part or text, "a whole number for each plot, such as 3 0 5 2")
        if len(parts) < 2:
            raise UnitError(text, "two plots or more: one alone tells no spread")
    return tuple(map(int, parts))


def between(option: str, text: str, most: float = 100) -> float:
    """Return a share [%] above 0 and below a most; a bare number is a percent. Raises UnitError."""
    from rootcollar.kernel.errors import UnitError

    found = share(option, text).amount
    with naming(option):
        if not found < most:
            raise UnitError(text, f"above 0, below {most:g} %")
    return found
