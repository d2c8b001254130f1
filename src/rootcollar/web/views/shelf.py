"""The shelf as its pages show it: what each label says, what nobody has read on it yet, and who has read it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import groupby

from rootcollar.choose import not_planned_with
from rootcollar.jobs.sheet import SheetLine, SheetPart, sheet_parts
from rootcollar.label import must_read
from rootcollar.shelf import FIELDS, Sheet, Twice, twice
from rootcollar.web.desk import Open, of_what_lies_open
from rootcollar.work import readers

__all__ = ["Jug", "SheetView", "Shown", "jugs", "sheet_view"]


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
    readers: str


@dataclass(frozen=True, slots=True)
class Shown:
    """A part of the label. groups: (of which row or way, its lines)."""

    part: SheetPart
    groups: tuple[tuple[str, tuple[SheetLine, ...]], ...]


@dataclass(frozen=True, slots=True)
class SheetView:
    """A whole label sheet. about: version, last day, photographs; needed: lines a rule asks for until they are read.

    read, lines: how many lines are read, of how many. demo: whether the label is invented.
    """

    key: str
    name: str
    readers: str
    version: str
    last_day: str
    photos: tuple[str, ...]
    parts: tuple[Shown, ...]
    needed: tuple[str, ...]
    read: int
    lines: int
    both: Twice
    demo: bool


@of_what_lies_open
def jugs(here: Open) -> tuple[Jug, ...]:
    """Return the products on the shelf, by key."""
    reasons = not_planned_with(here.project.shelf, here.setting.reference)
    return tuple(_jug(sheet, reasons) for _, sheet in sorted(here.project.shelf.items()))


def _jug(sheet: Sheet, reasons: tuple[str, ...]) -> Jug:
    ways = ", ".join(one.replace("_", " ") for one in sheet.methods) or "no directions typed yet"
    left = sum(len(part.unread) for part in sheet_parts(sheet))
    note = next((one for one in reasons if f"/{sheet.key}.toml" in one), "")
    number, word = sheet.says("identity.epa_reg_no"), sheet.says("hazard.signal_word")
    return Jug(
        sheet.key, sheet.product, str(number or "not read yet"), str(word or "not read yet"), ways, left, note,
        readers(sheet),
    )  # fmt: skip


@of_what_lies_open
def sheet_view(here: Open, key: str) -> SheetView:
    """Return a sheet's page."""
    sheet = here.project.shelf[key]
    parts = sheet_parts(sheet)
    needed = dict.fromkeys(
        FIELDS[path].words for method in sheet.methods or ("",) for path in must_read(sheet, method) if path in FIELDS
    )
    lines = sum(len(part.lines) for part in parts)
    last = sheet.says("identity.not_for_use_after")
    return SheetView(
        key=key,
        name=sheet.product,
        readers=readers(sheet),
        version=str(sheet.says("identity.label_version") or ""),
        last_day=last.isoformat() if last else "",
        photos=tuple(sheet.says("proof.photos") or ()),
        parts=tuple(Shown(part, tuple(_groups(part))) for part in parts),
        needed=tuple(needed),
        read=lines - sum(len(part.unread) for part in parts),
        lines=lines,
        both=twice(sheet),
        demo=here.project.ground.demo,
    )


def _groups(part: SheetPart) -> Iterator[tuple[str, tuple[SheetLine, ...]]]:
    for of, lines in groupby(part.lines, lambda one: one.of):
        yield of, tuple(lines)
