"""The second reading: which lines another person types again, blind, and where the two readings differ.

Asked again are strength, limits, places, wear and every line of which the first reader says that the label is silent.
Beside each silent line its neighbour is asked too, so that being asked tells nobody what the first reader typed.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import lru_cache

from rootcollar.shelf.fields import FIELDS, SITE_CLASSES, Field
from rootcollar.shelf.sheet import Sheet
from rootcollar.shelf.typed import SILENT_WORD, as_typed, cells_of, raw_of, shape_of
from rootcollar.shelf.values import NotAllowed
from rootcollar.shelf.walk import REPEATED, SECTIONS, Shape, field_at, walk

__all__ = ["Again", "Twice", "another", "asked_again", "first_reader", "same_person", "twice", "value_again"]

_STRENGTH = ("ai_percent", "ae_percent", "ai_lb_per_gal", "ae_lb_per_gal")
_OF_A_WAY = ("carrier", "concentration.", "less_than_low_forbidden", "dose.", "max_minutes_after_cut")
_NAMED = "site."  # a class of place, asked once: may it be used there


@dataclass(frozen=True, slots=True)
class Again:
    """A line asked a second time. ask: its name in the second reading; section: of the label. page: of the sheet.

    first, second: as typed; "" where that reader has not read it. field: how it is typed.
    """

    ask: str
    words: str
    section: str
    field: Field
    first: str = ""
    second: str = ""
    page: str = ""

    @property
    def agrees(self) -> bool:
        """Whether both have read it alike; case, order of a list and signs between words do not count."""
        return bool(self.second) and _flat(self.first) == _flat(self.second)


@dataclass(frozen=True, slots=True)
class Twice:
    """How two readings of a label stand. lines: in the label's order, every line that two people must read.

    first, second: who read; "" where nobody has said. same: whether that is one and the same person.
    """

    first: str
    second: str
    lines: tuple[Again, ...]
    same: bool = False

    @property
    def differ(self) -> tuple[Again, ...]:
        """Return the lines that the two read differently, or that the sheet has changed since."""
        return tuple(one for one in self.lines if one.second and not one.agrees)

    @property
    def left(self) -> tuple[Again, ...]:
        """Return the lines that nobody has read a second time."""
        return tuple(one for one in self.lines if not one.second)

    @property
    def agrees(self) -> bool:
        """Whether two different people have read every one of these lines, and alike."""
        return bool(self.first and self.second and self.lines) and not (self.same or self.differ or self.left)


def first_reader(sheet: Sheet) -> str:
    """Return who typed the sheet; "" where nobody has said."""
    return str(sheet.says("proof.read_by") or "")


def same_person(one: str, other: str) -> bool:
    """Return whether two names are the same, case and spaces aside."""
    return " ".join(one.split()).casefold() == " ".join(other.split()).casefold()


def another(sheet: Sheet, by: str) -> bool:
    """Return whether somebody is another person than the one who typed the sheet."""
    return bool(by.strip()) and bool(first_reader(sheet)) and not same_person(first_reader(sheet), by)


@lru_cache(maxsize=64)  # asked for every line of work with the product; a sheet never changes
def twice(sheet: Sheet) -> Twice:
    """Return how the two readings of a sheet stand, line by line."""
    second = sheet.second
    typed: Mapping[str, str] = second.lines if second else {}
    lines = tuple(_typed_again(one, typed) for one in asked_again(sheet))
    by = second.read_by if second else ""
    return Twice(first_reader(sheet), by, lines, bool(by) and same_person(by, first_reader(sheet)))


def asked_again(sheet: Sheet) -> tuple[Again, ...]:
    """Return the lines to read a second time, with what the sheet says, in the label's order.

    A line the first reader has not read is not asked: a rule that needs it asks for it already.
    """
    cells = cells_of(sheet)
    chosen = _chosen(cells, shape_of(cells))
    found: list[Again] = []
    for section in SECTIONS:
        for address in walk(section, shape_of(cells)):
            field = field_at(address)
            if field is not None and address in chosen:
                words = f"{_which(address, cells)}{field.words}"
                found.append(Again(address, words, section.title, field, cells[address], page=_page(sheet, address)))
        if "site" in section.lines and sheet.line("site") is not None:
            found += _places(sheet, section.title)
    return tuple(found)


def value_again(again: Again, text: str) -> str:
    """Return an answer as it is kept. Raises NotAllowed with how the line is typed."""
    said = raw_of(again.field, text)
    if said == SILENT_WORD or again.field.kind in ("text", "texts", "states", "choices", "distances"):
        return SILENT_WORD if said == SILENT_WORD else " ".join(text.split())
    return as_typed(float(said) if isinstance(said, (int, float)) and not isinstance(said, bool) else said)


def _typed_again(again: Again, typed: Mapping[str, str]) -> Again:
    """Return a line with what the second reader typed; what the line could not hold counts as not typed."""
    said = typed.get(again.ask, "")
    try:
        second = value_again(again, said) if said else ""
    except NotAllowed:
        second = ""
    return replace(again, second=second)


def _chosen(cells: Mapping[str, str], shape: Shape) -> set[str]:
    """Return the addresses asked again: what is always, every silent line, and beside each a line that is not."""
    chosen = {address for address in cells if _always(address)}
    for section in SECTIONS:
        there = [one for one in walk(section, shape) if one in cells and not one.startswith(("proof.", _NAMED))]
        silent = [one for one in there if cells[one] == SILENT_WORD]
        chosen |= set(silent)
        for one in silent:
            beside = (near for near in there[there.index(one) :] if _plain(near, cells) and near not in chosen)
            chosen |= set(list(beside)[:1])
    return chosen


def _always(address: str) -> bool:
    block, _, rest = address.partition(".")
    inner = rest.partition(".")[2]
    return (
        block in ("ppe", "limits")
        or (block == "ingredient" and inner in _STRENGTH)
        or (block == "method" and inner.startswith(_OF_A_WAY))
    )


def _plain(address: str, cells: Mapping[str, str]) -> bool:
    """Whether a line says something that two people would type alike: no words of their own."""
    field = field_at(address)
    return field is not None and cells[address] != SILENT_WORD and field.kind not in ("text", "texts", "distances")


def _places(sheet: Sheet, section: str) -> Iterator[Again]:
    """Yield for each class of place whether it may be used there: yes, no, or silent where the label names it not."""
    rows, page = sheet.says("site") or (), _page(sheet, "site")
    allowed = FIELDS["site.allowed"]
    for one in SITE_CLASSES:
        said = [row.allowed for row in rows if row.class_ == one]
        first = SILENT_WORD if not said else as_typed(False not in said and True in said)
        yield Again(f"{_NAMED}{one}", f"whether it may be used in: {one.replace('_', ' ')}", section, allowed, first,
                    page=page)  # fmt: skip


def _which(address: str, cells: Mapping[str, str]) -> str:
    """Return of what a line of a repeated block is, in words."""
    block, number, *_ = address.split(".")
    if block == "ingredient":
        return f"{cells.get(f'ingredient.{number}.common_name', f'ingredient {number}')}: "
    return f"{number.replace('_', ' ')}: " if block == "method" else ""


def _page(sheet: Sheet, address: str) -> str:
    block, kind, *rest = [*address.split("."), ""]
    line = sheet.line(".".join(rest[:-1]), kind) if block == "method" else sheet.line(address)
    if block in REPEATED[:2]:
        line = sheet.line(block)
    return line.page if line else ""


def _flat(said: str) -> tuple[str, ...]:
    """Return an answer for comparing: the parts of a list in any order, without case and signs between words."""
    parts = (re.sub(r"[^0-9a-z.%<>=+]+", " ", one.casefold()).strip() for one in re.split(r"[;,]", said))
    return tuple(sorted({one for one in parts if one}))
