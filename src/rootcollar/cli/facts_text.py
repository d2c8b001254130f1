"""A fact page in the terminal: a paragraph, then sections whose names and amounts line up, and at last the sources."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence
from typing import TYPE_CHECKING

from rootcollar.cli.show import columns, heading, text
from rootcollar.kernel.sources import MARK_WORDS, Mark

if TYPE_CHECKING:
    from rootcollar.jobs.facts import Line, Listing, Page, Section, Seen

__all__ = ["show_contents", "show_page"]

_LOUD = MARK_WORDS[Mark.MEMORY][0]
_IN = 2  # columns of one step inwards
_NAME = 24  # columns a name may take beside the words
_AMOUNT = 3  # an amount may take one column in so many
_LEAST = 28  # columns of words beside them: less, and the words go beneath
_PSEUDO = frozenset({"practice", "ours"})  # sources that are their own mark
_EXAMPLES = ("rhca3", '"cut stump"', "conflicts")
_SHELVES = {
    "species": ("plants", "a plant by any of its names or its PLANTS symbol"),
    "ingredient": ("ingredients", "what it kills, where it goes, how much a year"),
    "method": ("ways of working", "how it is done, what it killed, what it costs"),
    "formulation": ("formulations", "generic products, by ingredient and strength"),
    "rule": ("rules", "`rootcollar facts rules` for all, `facts rules water` for a word, `facts L37a` for one"),
    "mixing": ("mixing", "`rootcollar facts mixing` for all"),
    "hazard": ("hazards", "`rootcollar facts hazards` for all"),
    "weather": ("weather", "`rootcollar facts weather` for all"),
    "emergency": (
        "when something goes wrong",
        "`rootcollar facts emergency` for all; `facts posting` for signs and notice",
    ),
    "practice": ("habits of the trade", "what needs no source"),
    "source": ("sources", "`rootcollar facts sources` for all; one by its key, with what rests on it"),
}
_NAMED = frozenset({"species", "ingredient", "method"})  # listed by name and key, because people look for these
_UNLISTED = frozenset({"rule", "source"})  # too many: they have a page of their own


def show_contents(listings: Sequence[Listing]) -> None:
    """Print what there is to look up, with counts, and three calls to try."""
    text("What is known, who says so, and how sure that is.", bold=True)
    text("Look up one thing: rootcollar facts NAME. For example:")
    for example in _EXAMPLES:
        text(f"rootcollar facts {example}", indent=4)
    for one in listings:
        title, how = _SHELVES[one.kind]
        heading(f"{title} ({len(one.entries)})")
        text(how, indent=2)
        if one.kind in _NAMED:
            text(", ".join(_named(key, title) for key, title in sorted(one.entries, key=_by_title)), indent=2)
        elif one.kind not in _UNLISTED:
            text(", ".join(key.replace("_", "\u00a0") for key, _ in one.entries), indent=2)
    heading("across all shelves")
    text("conflicts: every place where sources disagree. units: the exact factors.", indent=2)


def _by_title(entry: tuple[str, str]) -> str:
    return entry[1].casefold()


def _named(key: str, title: str) -> str:
    same = title.casefold() in (key, key.replace("_", " "), key.replace("-", ","))
    return (title if same else f"{title} ({key})").replace(" ", "\u00a0") if len(title) < _NAME else f"{title} ({key})"


def show_page(page: Page) -> None:
    """Print a page."""
    heading(page.title)
    if page.opening:
        text(page.opening, loud=_LOUD if _LOUD in page.opening else "")
    for section in page.sections:
        _show_section(section)
    _show_sources(page)


def _show_section(section: Section) -> None:
    heading(section.title)
    if section.note:
        text(section.note, indent=2)
    widths, above, indent = _widths(section.lines), "", _IN
    for line in section.lines:
        if line.name and not line.amount and not line.words:
            text(line.name, indent=_IN, bold=True)
            indent = 2 * _IN
        else:
            _show_line(line, "" if line.name == above else line.name, widths, indent)
        above = line.name


def _widths(lines: Sequence[Line]) -> tuple[int, int]:
    """The columns of names and of amounts, as wide as the widest that fits and no wider than is allowed."""
    told = [line for line in lines if line.amount or line.words]
    names = max((len(line.name) for line in told if len(line.name) <= _NAME), default=0)
    if any(len(line.name) > _NAME for line in told):
        names = max(names, 4)
    amounts = max((len(line.amount) for line in told if len(line.amount) <= columns() // _AMOUNT), default=0)
    return names, amounts


def _show_line(line: Line, name: str, widths: tuple[int, int], indent: int) -> None:
    """Print a line: name and amount in their columns, the words beside them or, where there is no room, beneath."""
    names, amounts = widths
    words = " ".join(part for part in (line.words, _cites(line.seen)) if part)
    loud = _LOUD if _LOUD in words else ""
    if len(name) > names:
        text(name, indent=indent, hang=_IN)
        name = ""
    lead = f"{name:<{names}}  " if names else ""
    if line.amount and len(line.amount) > amounts:
        words = f"{line.amount}  {words}"
    elif line.amount and words:
        lead += f"{line.amount:>{amounts}}  "
    elif line.amount:
        lead, words = lead + " " * (amounts - len(line.amount)), line.amount
    if columns() - indent - len(lead) < _LEAST and line.amount:
        text(lead.rstrip(), indent=0, lead=" " * indent)
        text(words, indent=indent + 2 * _IN, loud=loud)
        return
    text(words, indent=indent, hang=len(lead), loud=loud, lead=lead)


def _cites(seen: Sequence[Seen]) -> str:
    return f"[{'; '.join(_cite(one) for one in seen)}]" if seen else ""


def _cite(one: Seen) -> str:
    place = f" {one.locator}" if one.locator else ""
    return one.source if one.source in _PSEUDO else f"{one.source}{place}, {MARK_WORDS[one.mark][0]}"


def _show_sources(page: Page) -> None:
    told = sorted((one for one in page.sources if one.key not in _PSEUDO), key=lambda one: one.key.casefold())
    met = {seen.mark for section in page.sections for line in section.lines for seen in line.seen}
    if not met:
        return
    heading("Sources")
    marks = [f"{said} = {meaning}" for mark, (said, meaning) in MARK_WORDS.items() if mark in met]
    text(f"{'; '.join(marks)}.", indent=_IN)
    if page.kind == "source":
        return
    widest = max((len(one.key) for one in told), default=0)
    for source in told:
        room = columns() - widest - 2 * _IN
        text(textwrap.shorten(source.cite, room, placeholder=" …"), indent=_IN, lead=f"{source.key:<{widest}}  ")
    text("The address of a source, and all that rests on it: rootcollar facts KEY", indent=_IN)
