"""A label sheet in the label's order, line by line; and what on it does not fit together, told at its line.

The label may print it just so: then it is typed so, and whoever types it says that it is.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Literal

from rootcollar.hazard import ROUTES, Category, Route, SignalWord, signal_word
from rootcollar.label import figure_doubts
from rootcollar.shelf import (
    SECTIONS,
    SILENT_WORD,
    Sheet,
    actives,
    block_of,
    cells_of,
    field_at,
    is_epa_reg_no,
    shape_of,
    walk,
)

__all__ = ["SheetLine", "SheetPart", "sheet_doubts", "sheet_parts"]

State = Literal["said", "silent", "unread"]

_WORDS = {"none": SignalWord.NONE, "CAUTION": SignalWord.CAUTION, "WARNING": SignalWord.WARNING,
          "DANGER": SignalWord.DANGER}  # fmt: skip


@dataclass(frozen=True, slots=True)
class SheetLine:
    """A line in words. of: the row or the way it belongs to, where its block is there several times."""

    address: str
    of: str
    words: str
    says: str
    page: str
    state: State


@dataclass(frozen=True, slots=True)
class SheetPart:
    """A part of the label. key, title, place: of the section."""

    key: str
    title: str
    place: str
    lines: tuple[SheetLine, ...]

    @property
    def unread(self) -> tuple[SheetLine, ...]:
        """Return the lines nobody has read yet."""
        return tuple(one for one in self.lines if one.state == "unread")


def sheet_parts(sheet: Sheet) -> tuple[SheetPart, ...]:
    """Return a sheet in the order in which a label prints it, read or not; parts without a line are left out."""
    cells = cells_of(sheet)
    shape = shape_of(cells)
    parts = (
        SheetPart(
            one.key,
            one.title,
            one.place,
            tuple(_line(sheet, cells, address) for address in walk(one, shape) if not address.endswith(".page")),
        )
        for one in SECTIONS
    )
    return tuple(part for part in parts if part.lines)


def _line(sheet: Sheet, cells: Mapping[str, str], address: str) -> SheetLine:
    field, said = field_at(address), cells.get(address, "")
    assert field is not None
    block, kind, *rest = [*address.split("."), ""]
    line = sheet.line(".".join(rest[:-1]), kind) if block == "method" else sheet.line(address) or sheet.line(block)
    state: State = "unread" if not said else "silent" if said == SILENT_WORD else "said"
    words = {"unread": "not read yet", "silent": "the label says nothing"}.get(state, said)
    if state == "said" and field.unit and field.kind != "distances":
        words = f"{words} {field.unit}"
    if field.among:
        words = words.replace("_", " ")
    page = line.page if line and said else ""
    return SheetLine(address, _of(block_of(address), cells), field.words, words, page, state)


def _of(block: str, cells: Mapping[str, str]) -> str:
    name, _, which = block.partition(".")
    if name == "method":
        return which.replace("_", " ")
    by = {"ingredient": "common_name", "site": "words"}.get(name)
    return cells.get(f"{block}.{by}", f"{name} {which}") if by else ""


def sheet_doubts(sheet: Sheet) -> Mapping[str, str]:
    """Return, by address, what contradicts another line of the sheet, or has the form of another line.

    Weighed are a number typed where the registration number belongs; toxicity categories against the signal word
    [CFR15, 156.64]; percents against pounds in a gallon and density.
    """
    figures = figure_doubts(
        actives(sheet),
        sheet.says("formulation.other_ingredients_percent"),
        sheet.says("formulation.density_lb_per_gal"),
    )
    found: dict[str, str] = {}
    for address, words in (*_number(sheet), *_signal(sheet), *figures):
        found[address] = f"{found[address]}; {words}" if address in found else words
    return {address: words[:1].upper() + words[1:] for address, words in found.items()}


def _number(sheet: Sheet) -> Iterator[tuple[str, str]]:
    number, kind = sheet.says("identity.epa_reg_no"), sheet.says("identity.registration")
    if number is None or kind not in ("epa", None) or is_epa_reg_no(number):
        return
    what = "the establishment number, behind EPA Est. No." if any(map(str.isalpha, number)) else "another number"
    yield "identity.epa_reg_no", f"{number} looks like {what}; wanted is company-product, figures only: 12345-67"


def _signal(sheet: Sheet) -> Iterator[tuple[str, str]]:
    typed = _WORDS.get(str(sheet.says("hazard.signal_word")))
    read = {route: sheet.says(f"hazard.category.{route}") for route in ROUTES}
    known: dict[Route, Category] = {route: Category[said] for route, said in read.items() if said}
    if typed is None or not known:
        return
    wanted = min(signal_word(known), SignalWord.DANGER)
    worst = min(known, key=lambda route: known[route])
    words = f"category {known[worst].name} leads to the signal word {wanted.label}; {typed.label} was typed"
    if typed < wanted:
        yield f"hazard.category.{worst}", words
    elif typed > max(wanted, SignalWord.CAUTION) and len(known) == len(ROUTES):
        yield "hazard.signal_word", f"the worst {words}"
