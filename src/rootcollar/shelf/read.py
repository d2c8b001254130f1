"""What a sheet says, and what nobody has read on it yet: values, no rules."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from rootcollar.kernel.units import convert, show
from rootcollar.shelf.fields import FIELDS, Field
from rootcollar.shelf.sheet import SILENT, Active, Distance, Sheet, SiteLine

__all__ = [
    "NOT_READ", "actives", "ae_g_per_l", "carriers", "dose_each", "entry_hours",
    "setback_words",
    "sites", "strength_range", "unread", "wear",
]  # fmt: skip

NOT_READ = "not read on the label yet"


def actives(sheet: Sheet) -> tuple[Active, ...]:
    """Return the active ingredients; none while nobody has typed them."""
    return tuple(sheet.says("ingredient") or ())


def sites(sheet: Sheet) -> tuple[SiteLine, ...]:
    """Return the kinds of place the label speaks of; none while nobody has typed them."""
    return tuple(sheet.says("site") or ())


def ae_g_per_l(active: Active, basis: Literal["ae", "ai"] = "ae") -> float | None:
    """Return the strength by which rates go [g/L]: acid equivalent, or active ingredient.

    basis: "ai" where the label's limits count active ingredient. An active without an acid equivalent counts as
    active ingredient too. None while the figure is not on the sheet.
    """
    ae = None if basis == "ai" else active.ae_lb_per_gal
    strength = active.ai_lb_per_gal if ae is None else ae
    return None if strength is None else convert(strength, "lb/gal", "g/L")


def unread(sheet: Sheet, method: str) -> list[str]:
    """Return the paths of the lines nobody has read, of the sheet and of the method's block, in the sheet's order."""
    parts = {f"ingredient.{one}" for row in actives(sheet) for one in row.unread}
    parts |= {f"site.{one}" for row in sites(sheet) for one in row.unread}
    return [path for path, row in FIELDS.items() if path in parts or _unread(sheet, method, path, row)]


def _unread(sheet: Sheet, method: str, path: str, row: Field) -> bool:
    block, _, rest = path.partition(".")
    if block in {"ingredient", "site"}:
        return not rest and sheet.line(block) is None
    if block == "method":
        return row.belongs_to(method) and sheet.line(rest, method) is None
    return sheet.line(path) is None


def strength_range(sheet: Sheet, method: str) -> tuple[float | None, float | None]:
    """Return the weakest and strongest mix the label gives for a method [% v/v]; None where it does not say."""
    return sheet.says("concentration.low", method), sheet.says("concentration.high", method)


def carriers(sheet: Sheet, method: str) -> tuple[str, ...]:
    """Return what the product may be mixed with for a method: none, water, oil; empty where it does not say."""
    return tuple(sheet.says("carrier", method) or ())


def dose_each(sheet: Sheet, method: str) -> tuple[float, str] | None:
    """Return the most mix in one place [mL] and what that place is (cut, stump, stem, in dbh); None: not said."""
    amount, unit, per = (sheet.says(f"dose.{one}", method) for one in ("amount", "unit", "per"))
    return None if None in (amount, unit, per) else (convert(amount, unit, "mL"), per)


def entry_hours(sheets: Sequence[Sheet]) -> float | None:
    """Return the longest restricted entry of all the products used [h]; None while it is not known of any of them."""
    hours = [sheet.says("entry.rei_hours") for sheet in sheets]
    return None if None in hours else max(hours, default=None)


def wear(sheets: Sequence[Sheet], task: str) -> tuple[str, ...] | None:
    """Return all items to wear for a task (mixing, applying, cleaning, early_entry); None while one is not read."""
    lists = [sheet.line(f"ppe.{task}") for sheet in sheets]
    if any(line is None for line in lists):
        return None
    said = [sheet.says(f"ppe.{task}") or () for sheet in sheets]
    return tuple(dict.fromkeys(item for items in said for item in items))


def setback_words(sheet: Sheet) -> tuple[str, ...]:
    """Return the label's distances to keep as short sentences: when treating, then when mixing."""
    lines = []
    for path, doing in (("water.buffers_ft", "treating"), ("water.mixing_setback_ft", "mixing")):
        rows: tuple[Distance, ...] | None = sheet.says(path)
        if rows is None:
            lines.append(f"{doing}: {_word(sheet, path)}")
        for row in rows or ():
            what = f" ({', '.join(one.replace('_', ' ') for one in row.methods)})" if row.methods else ""
            lines.append(f"{doing}{what}: {show(row.ft, 'ft')} from {row.from_}")
    water = _word(sheet, "water.direct_to_water").replace("_", " ")
    return (*lines, f"use in water: {water}")


def _word(sheet: Sheet, path: str) -> str:
    line = sheet.line(path)
    if line is None:
        return NOT_READ
    if line.says is SILENT:
        return "label silent"
    return ", ".join(line.says) if isinstance(line.says, tuple) else str(line.says)
