"""Stricter and milder readings of a label's line, one at a time, in the direction that its field gives."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import timedelta
from typing import Any

from rootcollar.shelf import FIELDS, SILENT, Distance, Line, Sheet, SiteLine
from rootcollar.shelf.fields import Field

_FAR = 1_000
_FAR_FT = Distance("surface water", 500.0)
_OPEN = tuple(SiteLine(one, one, True) for one in ("natural_area", "residential"))
_WORDS = {
    "identity.states_ok": ("WI", "NY"),
    "pests.listed": ("common buckthorn", "an invented plant"),
    "methods.prohibited": ("foliar", "basal bark", "cut stump", "hack and squirt", "aerial"),
    "ppe.glove_types": ("barrier laminate", "latex"),
}
_MORE = ("an item nobody has", "long sleeves")


def path_of(sheet_path: str, in_method: bool) -> str:
    """Return the path in FIELDS of a line of a sheet, or of a method's block."""
    return f"method.{sheet_path}" if in_method else sheet_path


def directed(sheet: Sheet) -> Iterator[tuple[str, str, Any]]:
    """Yield every line of a sheet that says something and has a direction: its method ("" for none), path and words."""
    blocks = {"": sheet.lines, **sheet.methods}
    for method, lines in blocks.items():
        for path, line in lines.items():
            row = FIELDS.get(path_of(path, bool(method)))
            if row is not None and row.stricter != "none" and line.says is not SILENT:
                yield method, path, line.says


def with_line(sheet: Sheet, method: str, path: str, says: Any) -> Sheet:
    """Return the sheet with one line reading otherwise."""
    if not method:
        return replace(sheet, lines={**sheet.lines, path: Line(says)})
    return replace(sheet, methods={**sheet.methods, method: {**sheet.methods[method], path: Line(says)}})


def stricter(row: Field, says: Any) -> Iterator[Any]:
    """Yield readings of a line that are stricter."""
    yield from _moved(row, says, tighter=True)


def milder(row: Field, says: Any) -> Iterator[Any]:
    """Yield readings of a line that are milder."""
    yield from _moved(row, says, tighter=False)


def _moved(row: Field, says: Any, *, tighter: bool) -> Iterator[Any]:
    match row.stricter:
        case "lower" | "higher":
            yield from _figures(row, says, down=(row.stricter == "lower") is tighter)
        case "true" | "false":
            if says is not (to := (row.stricter == "true") is tighter):
                yield to
        case "first":
            at = row.among.index(says)
            yield from row.among[:at] if tighter else row.among[at + 1 :]
        case "fewer" | "more":
            fewer = (row.stricter == "fewer") is tighter
            yield from _shorter(row, says, tighter) if fewer else _longer(row, says, tighter)


def _figures(row: Field, says: Any, *, down: bool) -> Iterator[Any]:
    if row.kind == "date":
        yield says + timedelta(days=-_FAR if down else _FAR)
    elif down:
        yield from {one for one in (says // 2 if isinstance(says, int) else says / 2, says * 0) if one < says}
    else:
        most = 100.0 if row.kind == "percent" else says + _FAR
        yield from {one for one in (min(says * 2, most), most) if one > says}


def _shorter(row: Field, says: tuple[Any, ...], tighter: bool) -> Iterator[Any]:
    """Fewer items, or the same items with less of a distance; of places, fewer that are allowed."""
    if row.kind == "tables":
        for at, one in enumerate(says):
            if one.allowed:
                yield (*says[:at], replace(one, allowed=False), *says[at + 1 :])
        return
    for at in range(len(says)):
        yield (*says[:at], *says[at + 1 :])
    yield ()
    if row.kind == "distances":
        yield tuple(replace(one, ft=one.ft / 2) for one in says)
    assert tighter or row.stricter == "more"


def _longer(row: Field, says: tuple[Any, ...], tighter: bool) -> Iterator[Any]:
    if row.kind == "tables":
        for one in _OPEN:
            yield (*(line for line in says if line.class_ != one.class_), one)
        return
    if row.kind == "distances":
        yield (*says, _FAR_FT)
        yield tuple(replace(one, ft=one.ft * 3) for one in says)
        return
    for item in row.among or _WORDS.get(row.path, _MORE):
        if item not in says:
            yield (*says, item)
    assert tighter or row.stricter == "fewer"
