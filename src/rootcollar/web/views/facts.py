"""A fact page as the app shows it: groups of named rows, the year in cells, sides that disagree, its sources."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import groupby
from urllib.parse import quote

from rootcollar.jobs.facts import Line, Page, Section, Seen, contents, look_up
from rootcollar.jobs.facts_page import DISAGREE
from rootcollar.kernel.days import MONTHS, name_months
from rootcollar.kernel.sources import MARK_WORDS, Mark
from rootcollar.reference import Reference, load

__all__ = ["Cell", "FactPage", "Group", "Part", "Row", "SectionView", "fact_pages", "where"]

Cell = tuple[str, str, str]  # letter, state, month

_PSEUDO = frozenset({"practice", "ours"})  # sources that are their own mark
_CALENDAR = (
    "A full cell is a month that a source names for the way; a hatched one is named from memory only; a hollow one "
    "with a bar is a month to keep out of. Read it by leaf-out, bloom and leaf-fall."
)
_LINK = re.compile(r"(?P<key>(?<=\[)[\w.-]+(?=\]))|(?P<url>https?://[^\s)]*[^\s).,;])")
_LONG = 3  # ours: fewer sections than that are seen at a glance


@dataclass(frozen=True, slots=True)
class Part:
    """Words, and where they lead; nowhere when `to` is empty."""

    words: str
    to: str = ""


@dataclass(frozen=True, slots=True)
class Cite:
    """Who says so. place: where in the source; mark: in words; memory: whether it was only recalled."""

    source: Part
    place: str
    mark: str
    memory: bool


@dataclass(frozen=True, slots=True)
class Row:
    """One line: its figure, its words, who says so, the year where it has a season, in cells and in words."""

    figure: str
    words: tuple[Part, ...]
    cites: tuple[Cite, ...]
    months: tuple[Cell, ...] = ()
    months_words: str = ""


@dataclass(frozen=True, slots=True)
class Entry:
    """Rows of one name, or of none."""

    name: Part
    rows: tuple[Row, ...]


@dataclass(frozen=True, slots=True)
class Group:
    """Entries under one head. figures: whether a column for figures is wanted; sides: what sources say against each
    other, and then `settled`: what is taken or advised.
    """

    head: str
    entries: tuple[Entry, ...]
    figures: bool
    sides: tuple[Row, ...] = ()
    settled: tuple[Row, ...] = ()


@dataclass(frozen=True, slots=True)
class SectionView:
    """A section with the anchor it is reached by."""

    anchor: str
    title: str
    note: str
    groups: tuple[Group, ...]


@dataclass(frozen=True, slots=True)
class FactPage:
    """One page. marks: (word, meaning) of the marks met on it; sources: (key, cite) it rests on; long: has an index."""

    kind: str
    key: str
    title: str
    opening: tuple[Part, ...]
    sections: tuple[SectionView, ...]
    marks: tuple[tuple[str, str], ...]
    sources: tuple[tuple[Part, str], ...]
    long: bool


@lru_cache(maxsize=128)
def fact_pages(name: str) -> tuple[FactPage, ...]:
    """Return a page for everything of that name. Raises NotFound with near names, BadInput where none is near."""
    reference = load()
    return tuple(_page(one, at, reference) for at, one in enumerate(look_up(name, reference).value))


def where(name: str) -> str:
    """Return the address of what has that name."""
    return f"/facts/{quote(name, safe='')}"


def _page(page: Page, at: int, reference: Reference) -> FactPage:
    met = {seen.mark for section in page.sections for line in section.lines for seen in line.seen}
    rests = sorted((one for one in page.sources if one.key not in _PSEUDO), key=lambda one: one.key.casefold())
    sources = () if page.kind == "source" else tuple((Part(one.key, where(one.key)), one.cite) for one in rests)
    return FactPage(
        page.kind,
        page.key,
        page.title[:1].upper() + page.title[1:],
        tuple(_parts(page.opening, reference)),
        tuple(_section(one, page, at, reference) for one in page.sections),
        tuple(told for mark, told in MARK_WORDS.items() if mark in met),
        sources if met else (),
        len(page.sections) > _LONG,
    )


def _section(section: Section, page: Page, at: int, reference: Reference) -> SectionView:
    against = DISAGREE in (section.title, page.title)
    anchor = "-".join(re.findall(r"\w+", section.title.casefold()))
    note = _CALENDAR if any(line.months for line in section.lines) else section.note
    groups = tuple(_group(head, lines, against, page, reference) for head, lines in _headed(section.lines))
    return SectionView(f"{anchor}-{at}" if at else anchor, section.title[:1].upper() + section.title[1:], note, groups)


def _headed(lines: Iterable[Line]) -> Iterator[tuple[str, list[Line]]]:
    """Yield the lines beneath each head; those before the first head have none."""
    head, beneath = "", list[Line]()
    for line in lines:
        if line.name and not line.amount and not line.words:
            if beneath:
                yield head, beneath
            head, beneath = line.name, []
        else:
            beneath.append(line)
    if beneath:
        yield head, beneath


def _group(head: str, lines: Sequence[Line], against: bool, page: Page, reference: Reference) -> Group:
    title = head[:1].upper() + head[1:]
    figures = any(line.amount and not line.months for line in lines)
    if against and head:
        settled = [line for line in lines if not line.seen] or [lines[-1]]
        sides = [line for line in lines if line not in settled]
        return Group(
            title, (), figures, tuple(_row(one, reference) for one in sides),
            tuple(_row(one, reference) for one in settled),
        )  # fmt: skip
    named: list[tuple[str, Line]] = []
    for line in lines:
        named.append((line.name or (named[-1][0] if named else ""), line))
    entries = tuple(
        Entry(_linked(name, page, reference), tuple(_row(line, reference) for _, line in same))
        for name, same in groupby(named, key=lambda pair: pair[0])
    )
    return Group(title, entries, figures)


def _row(line: Line, reference: Reference) -> Row:
    cells = tuple((name[:1], state, name) for name, state in zip(MONTHS, line.months, strict=False))
    cites = tuple(_cite(seen) for seen in line.seen)
    words = tuple(_parts(line.words, reference))
    return Row("" if cells else line.amount, words, cites, cells, _year(line.months))


def _year(states: Sequence[str]) -> str:
    told = {
        "named": "months named", "remembered": "from memory only", "shut": "months to keep out of",
        "shut by memory": "to keep out of, from memory only",
    }  # fmt: skip
    at = {state: frozenset(n for n, one in enumerate(states, 1) if one == state) for state in told}
    return "; ".join(f"{words}: {name_months(at[state])}" for state, words in told.items() if at[state])


def _cite(seen: Seen) -> Cite:
    key = "" if seen.source in _PSEUDO else seen.source
    word, _ = MARK_WORDS[seen.mark]
    return Cite(Part(key, where(key) if key else ""), seen.locator if key else "", word, seen.mark is Mark.MEMORY)


def _linked(name: str, page: Page, reference: Reference) -> Part:
    """Return a name that leads to the page it has, but not to the page it stands on."""
    key = _known(reference).get(name, "")
    return Part(name, where(key) if key and key != page.key else "")


def _parts(words: str, reference: Reference) -> Iterator[Part]:
    """Yield words with plants, source keys in brackets and addresses made into links."""
    plants = words.split(", ")
    known = _known(reference)
    if all(one in known for one in plants):
        for at, one in enumerate(plants):
            yield Part(", " if at else "")
            yield Part(one, where(known[one]))
        return
    at = 0
    for found in _LINK.finditer(words):
        key, url = found["key"], found["url"]
        if url or key in reference.sources:
            yield Part(words[at : found.start()])
            yield Part(found[0], url or where(key))
            at = found.end()
    yield Part(words[at:])


@lru_cache(maxsize=1)
def _known(reference: Reference) -> dict[str, str]:
    """Return the key of everything that has a page of its own, by the name it is told by."""
    by_key = ("rule", "source")
    return {
        key if shelf.kind in by_key else title: key
        for shelf in contents(reference).value
        if shelf.kind in ("species", "ingredient", "method", *by_key)
        for key, title in shelf.entries
    }
