"""Who has read a label, in a sentence for pages and paper."""

from __future__ import annotations

from collections.abc import Iterable

from rootcollar.shelf import Sheet, twice

__all__ = ["readers", "readers_of"]


def readers(sheet: Sheet) -> str:
    """Return who typed a sheet, who read the label a second time, and whether the two agree."""
    both, on = twice(sheet), sheet.says("proof.read_on")
    first = (
        f"Read by {both.first}{f', {on.isoformat()}' if on else ''}" if both.first else "Nobody has said who read it"
    )
    if sheet.second is None:
        return f"{first}. Nobody has read it a second time."
    again = f"{first}; a second time by {both.second}, {sheet.second.read_on.isoformat()}"
    if both.same:
        return f"{again}, who is the same person."
    if both.agrees:
        return f"{again}: the two agree."
    told = [f"{len(lines)} {'line' if len(lines) == 1 else 'lines'} {words}" for lines, words in (
        (both.differ, "read differently"), (both.left, "not read a second time")) if lines]  # fmt: skip
    return f"{again}: {' and '.join(told)}." if told else f"{again}."


def readers_of(sheets: Iterable[Sheet]) -> tuple[tuple[str, str], ...]:
    """Return (product, who has read its label) for each sheet, as a packet prints it."""
    return tuple((sheet.product, readers(sheet)) for sheet in sheets)
