"""The shelf as its pages show it: what each label says line by line, and what nobody has read on it yet."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from rootcollar.choose import not_planned_with
from rootcollar.label import must_read
from rootcollar.shelf import FIELDS, SILENT, Distance, Field, Line, Sheet, unread
from rootcollar.web.desk import Open, of_what_lies_open

__all__ = ["Block", "Jug", "SheetView", "jugs", "sheet_view"]


@dataclass(frozen=True, slots=True)
class Jug:
    """A product on the shelf, in a line: name, number, signal word, ways, how much of its label nobody has read."""

    key: str
    name: str
    number: str
    word: str
    ways: str
    unread: int
    note: str


@dataclass(frozen=True, slots=True)
class Block:
    """A part of the label: rows of (what, what the label says, page, state). state: said, silent or unread."""

    title: str
    rows: tuple[tuple[str, str, str, str], ...]


@dataclass(frozen=True, slots=True)
class SheetView:
    """A whole label sheet."""

    key: str
    name: str
    read_by: str
    blocks: tuple[Block, ...]
    needed: tuple[str, ...]


@of_what_lies_open
def jugs(here: Open) -> tuple[Jug, ...]:
    """Return the products on the shelf, by key."""
    reasons = not_planned_with(here.project.shelf, here.setting.reference)
    return tuple(_jug(sheet, reasons) for _, sheet in sorted(here.project.shelf.items()))


def _jug(sheet: Sheet, reasons: tuple[str, ...]) -> Jug:
    ways = ", ".join(one.replace("_", " ") for one in sheet.methods) or "no directions typed yet"
    left = {path for method in sheet.methods or ("",) for path in unread(sheet, method)}
    note = next((one for one in reasons if f"/{sheet.key}.toml" in one), "")
    number, word = sheet.says("identity.epa_reg_no"), sheet.says("hazard.signal_word")
    return Jug(
        sheet.key, sheet.product, str(number or "not read yet"), str(word or "not read yet"), ways, len(left), note
    )


@of_what_lies_open
def sheet_view(here: Open, key: str) -> SheetView:
    """Return a sheet's page."""
    sheet = here.project.shelf[key]
    blocks = [Block(_words(name), tuple(_rows(sheet, name))) for name in _blocks()]
    blocks += [Block(f"directions: {_words(method)}", tuple(_directions(sheet, method))) for method in sheet.methods]
    needed = dict.fromkeys(
        FIELDS[path].words for method in sheet.methods for path in must_read(sheet, method) if path in FIELDS
    )
    by, on = sheet.says("proof.read_by"), sheet.says("proof.read_on")
    said = f"read by {by}, {on.isoformat()}" if by and on else "nobody has said who read it"
    return SheetView(key, sheet.product, said, tuple(one for one in blocks if one.rows), tuple(needed))


def _blocks() -> tuple[str, ...]:
    return tuple(dict.fromkeys(path.partition(".")[0] for path, row in FIELDS.items() if not row.in_method))


def _rows(sheet: Sheet, block: str) -> Iterator[tuple[str, str, str, str]]:
    if block in ("ingredient", "site"):
        yield from _tables(sheet, block)
        return
    for path, row in FIELDS.items():
        if path.startswith(f"{block}."):
            yield _row(row, sheet.line(path))


def _tables(sheet: Sheet, block: str) -> Iterator[tuple[str, str, str, str]]:
    line = sheet.line(block)
    for one in sheet.says(block) or ():
        told = ", ".join(
            _value(getattr(one, name)) for name in one.__slots__ if name != "unread" and getattr(one, name) is not None
        )
        yield block, told, line.page if line else "", "said"
    if line is None:
        yield FIELDS[block].words, "not read yet", "", "unread"


def _directions(sheet: Sheet, method: str) -> Iterator[tuple[str, str, str, str]]:
    for path, row in FIELDS.items():
        if row.in_method and row.belongs_to(method):
            yield _row(row, sheet.line(path.removeprefix("method."), method))


def _row(field: Field, line: Line[Any] | None) -> tuple[str, str, str, str]:
    if line is None:
        return field.words, "not read yet", "", "unread"
    if line.says is SILENT:
        return field.words, "the label says nothing", line.page, "silent"
    unit = f" {field.unit}" if field.unit and not isinstance(line.says, tuple) else ""
    return field.words, f"{_value(line.says)}{unit}", line.page, "said"


def _value(value: object) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, tuple):
        return ", ".join(map(_value, value)) or "none"
    if isinstance(value, float):
        return f"{value:g}"
    if isinstance(value, Distance):
        return f"{value.ft:g} ft from {value.from_}" + (
            f" ({_words(', '.join(value.methods))})" if value.methods else ""
        )
    return _words(str(value)) if "_" in str(value) else str(value)


def _words(name: str) -> str:
    return name.replace("_", " ")
