"""The shapes of a fact page: lines of amount, words and sources, in sections, and the flat list of facts."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Any

from rootcollar.kernel.sources import Cited, Mark, Source
from rootcollar.reference import Figure, Reference, Row

__all__ = ["DISAGREE", "Fact", "Line", "Listing", "Page", "Section", "Seen", "cited", "page", "sections"]

DISAGREE = "Where sources disagree"


@dataclass(frozen=True, slots=True)
class Fact:
    """One figure: what it is of, its value as it stands and in words, what it holds for, who says so."""

    group: str
    name: str
    figure: Figure
    words: str


@dataclass(frozen=True, slots=True)
class Seen:
    """Who says so, how it was seen, and where it stands in the source."""

    source: str
    mark: Mark
    locator: str = ""


@dataclass(frozen=True, slots=True)
class Line:
    """One line: a name on the left, an amount that lines up with its neighbours, words, and who says so.

    A line of a name only heads the lines beneath it. months: of a season, for each month of the year "named",
    "remembered" where only memory names it, or ""; of a season to keep out of, "shut" and "shut by memory".
    """

    name: str = ""
    amount: str = ""
    words: str = ""
    seen: tuple[Seen, ...] = ()
    months: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Section:
    """Lines under one title; note: a sentence said before them."""

    title: str
    lines: tuple[Line, ...]
    note: str = ""


@dataclass(frozen=True, slots=True)
class Page:
    """All that is told of one thing. opening: a paragraph to read first; sections: the same facts in order of the job;
    facts: every figure, flat; sources: those the facts rest on, in the order they are first met.
    """

    kind: str
    key: str
    title: str
    about: tuple[str, ...]
    facts: tuple[Fact, ...]
    sources: tuple[Source, ...]
    opening: str = ""
    sections: tuple[Section, ...] = ()


@dataclass(frozen=True, slots=True)
class Listing:
    """What there is to look up of one kind: (key, title) pairs."""

    kind: str
    entries: tuple[tuple[str, str], ...]


def cited(*rows: Cited[Any] | Row) -> tuple[Seen, ...]:
    """Return who says so of figures and rows, each source and mark once."""
    told = (Seen(row.source, row.mark, row.locator if isinstance(row, Cited) else "") for row in rows)
    return tuple(dict.fromkeys(told))


def sections(*told: tuple[str, Iterable[Line]] | tuple[str, Iterable[Line], str]) -> tuple[Section, ...]:
    """Return the sections that have a line, from (title, lines) or (title, lines, note)."""
    made = (Section(one[0], tuple(one[1]), one[2] if len(one) > 2 else "") for one in told)
    return tuple(one for one in made if one.lines)


def page(head: Page, told: tuple[Section, ...], reference: Reference) -> Page:
    """Return a page with its sections, and with every source that a fact or a line rests on."""
    keys = dict.fromkeys((*(one.figure.source for one in head.facts), *_keys(told)))
    sources = tuple(reference.sources[key] for key in keys)
    return Page(head.kind, head.key, head.title, head.about, head.facts, sources, head.opening, told)


def _keys(told: tuple[Section, ...]) -> Iterator[str]:
    yield from (seen.source for section in told for line in section.lines for seen in line.seen)
