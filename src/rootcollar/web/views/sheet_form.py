"""A label sheet as a form: the parts of a label in printed order, a field for each line, faults at their field."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from rootcollar.shelf import (
    METHODS,
    SECTIONS,
    SILENT_WORD,
    Again,
    Field,
    Section,
    Shape,
    block_of,
    field_at,
    form_of,
    in_order,
    page_words,
    shape_of,
    walk,
)

__all__ = ["Cell", "Group", "Part", "SheetForm", "again_parts", "cells_typed", "shape_typed", "sheet_form"]

_SILENT = "silent."  # before the address, the box that says so
_EITHER = "Either what the label says, or that it says nothing: not both."
_MOST = 40  # blocks of one kind (ours)
_ROWS = ("ingredient", "site")
_ADD = {"ingredient": "Another active ingredient", "site": "Another place"}


@dataclass(frozen=True, slots=True)
class Cell:
    """A field. picks: (value, word), where it is picked; silent: whether the box for silence is ticked.

    unread: neither typed nor silent. box: whether there is such a box; a page has none. note: said of it, no fault.
    """

    name: str
    words: str
    hint: str
    said: str
    silent: bool
    fault: str = ""
    picks: tuple[tuple[str, str], ...] = ()
    box: bool = True
    note: str = ""

    @property
    def unread(self) -> bool:
        """Whether nobody has read the line."""
        return not self.said and not self.silent


@dataclass(frozen=True, slots=True)
class Group:
    """Lines that have one page in common. title: where the block is there several times."""

    title: str
    page: Cell | None
    cells: tuple[Cell, ...]


@dataclass(frozen=True, slots=True)
class Part:
    """A part of the label. more: (button's value, its words) for another block of a kind."""

    key: str
    title: str
    place: str
    groups: tuple[Group, ...]
    more: tuple[str, str] | None = None

    @property
    def cells(self) -> tuple[Cell, ...]:
        """Return the lines of all groups."""
        return tuple(cell for group in self.groups for cell in group.cells)

    @property
    def read(self) -> int:
        """Return how many lines are read."""
        return sum(not cell.unread for cell in self.cells)


@dataclass(frozen=True, slots=True)
class SheetForm:
    """The whole form. ways: kinds of method that are not there yet, (key, words). faults: how many."""

    parts: tuple[Part, ...]
    shape: Shape
    ways: tuple[tuple[str, str], ...]
    faults: int
    first_fault: str

    @property
    def read(self) -> int:
        """Return how many lines are read."""
        return sum(part.read for part in self.parts)

    @property
    def lines(self) -> int:
        """Return how many lines there are."""
        return sum(len(part.cells) for part in self.parts)

    @property
    def left(self) -> tuple[tuple[str, tuple[Cell, ...]], ...]:
        """Return the lines nobody has read yet, by part."""
        found = ((part.title, tuple(one for one in part.cells if one.unread)) for part in self.parts)
        return tuple((title, cells) for title, cells in found if cells)


def shape_typed(typed: Mapping[str, str]) -> Shape:
    """Return the shape of a form that was sent, one block more where its button was pressed."""
    do = typed.get("do", "")
    counts = [_count(typed.get(f"{one}s", "")) + (do == f"more:{one}") for one in _ROWS]
    methods = [one for one in typed.get("methods", "").split() if one in METHODS]
    if do == "more:method" and typed.get("way") in METHODS:
        methods.append(typed["way"])
    return Shape(min(counts[0], _MOST), min(counts[1], _MOST), tuple(dict.fromkeys(methods)))


def _count(said: str) -> int:
    return int(said) if said.isdecimal() and len(said) <= len(str(_MOST)) and int(said) else 1


def cells_typed(typed: Mapping[str, str], addresses: Iterable[str]) -> tuple[dict[str, str], dict[str, str]]:
    """Return what was typed, and the faults of lines that are typed and said to be silent, both by address.

    Lines that the form did not hold are not among them.
    """
    cells: dict[str, str] = {}
    faults: dict[str, str] = {}
    for address in addresses:
        if address not in typed:
            continue
        said = " ".join(typed[address].split())
        silent = bool(typed.get(f"{_SILENT}{address}"))
        if silent and said and said.casefold() != SILENT_WORD:
            faults[address] = _EITHER
        cells[address] = SILENT_WORD if silent and not said else said
    return cells, faults


def sheet_form(cells: Mapping[str, str], faults: Mapping[str, str], shape: Shape | None = None) -> SheetForm:
    """Return the form of a sheet. cells, faults: by address, as typed. shape: blocks to show, at least those typed."""
    least = shape_of({one: said for one, said in cells.items() if said})
    shape = shape or Shape()
    shape = Shape(
        max(shape.ingredients, least.ingredients), max(shape.sites, least.sites),
        tuple(dict.fromkeys((*least.methods, *shape.methods))),
    )  # fmt: skip
    parts = tuple(_part(one, cells, faults, shape) for one in SECTIONS)
    left = tuple((one, one.replace("_", " ")) for one in METHODS if one not in shape.methods)
    first = next((one for one in in_order(shape) if one in faults), "")
    return SheetForm(parts, shape, left, len(faults), first)


def _part(section: Section, cells: Mapping[str, str], faults: Mapping[str, str], shape: Shape) -> Part:
    groups: list[Group] = []
    for address in walk(section, shape):
        field, block = field_at(address), block_of(address)
        title = _title(block, cells)
        if not groups or groups[-1].title != title or field is None:
            groups.append(Group(title, None, ()))
        cell = _cell(address, field, cells.get(address, ""), faults.get(address, ""))
        last = groups[-1]
        groups[-1] = Group(title, cell, ()) if field is None else Group(title, last.page, (*last.cells, cell))
    more = next(((f"more:{name}", _ADD[name]) for name in _ROWS if name in section.lines), None)
    return Part(section.key, section.title, section.place, tuple(one for one in groups if one.cells), more)


def _title(block: str, cells: Mapping[str, str]) -> str:
    name, _, which = block.partition(".")
    if name == "method":
        return which.replace("_", " ")
    by = {"ingredient": ("common_name", "Active ingredient"), "site": ("words", "Place")}.get(name)
    return f"{by[1]} {which}" if by else ""


def _cell(name: str, field: Field | None, said: str, fault: str, words: str = "", note: str = "") -> Cell:
    if field is None:
        return Cell(name, page_words(block_of(name)).capitalize(), "", said, False, fault, box=False)
    flag = field.kind == "flag"
    picks: tuple[tuple[str, str], ...] = ()
    if flag or field.kind == "choice":
        among = ("yes", "no") if flag else field.among
        picks = (*((one, one.replace("_", " ")) for one in among), (SILENT_WORD, "the label says nothing"))
    silent = said == SILENT_WORD
    words = words or field.words
    return Cell(
        name, words[:1].upper() + words[1:], "" if picks or field.kind == "text" else form_of(field),
        said if picks or not silent else "", silent, fault, picks, not picks, note,
    )  # fmt: skip


def again_parts(
    lines: Iterable[Again], typed: Mapping[str, str], faults: Mapping[str, str], differ: frozenset[str] = frozenset()
) -> tuple[Part, ...]:
    """Return the form of a second reading: nothing of what the sheet says stands in it.

    typed: by what is asked, as this reader has typed it. differ: lines that the two read differently.
    """
    parts: dict[str, list[Cell]] = {}
    for one in lines:
        note = "The two readings differ here: look at the label once more." if one.ask in differ else ""
        cell = _cell(one.ask, one.field, typed.get(one.ask, ""), faults.get(one.ask, ""), one.words, note)
        parts.setdefault(one.section, []).append(cell)
    keys = {one.title: (one.key, one.place) for one in SECTIONS}
    return tuple(Part(*keys[title][:1], title, keys[title][1], (Group("", None, tuple(cells)),))
                 for title, cells in parts.items())  # fmt: skip
