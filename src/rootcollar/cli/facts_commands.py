"""The command `facts`: what is known of a thing, each fact with what it holds for, its mark and its source."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import asdict
from itertools import groupby
from typing import TYPE_CHECKING, Any

import click

from rootcollar.cli.show import heading, json_option, listed, print_json, text

if TYPE_CHECKING:
    from rootcollar.jobs.facts import Fact, Listing, Page
    from rootcollar.kernel.sources import Source

__all__ = ["facts"]

_MARKS = {
    "read": ("read", "the source named was seen to say so"),
    "practice": ("practice", "a habit of the trade"),
    "reckoned": ("reckoned", "worked out from other figures"),
    "ours": ("ours", "our own guess, to be replaced by yours"),
    "memory": ("from memory, confirm", "recalled, not seen: a default at most, it decides nothing alone"),
}
_LONGEST_LIST = 60  # entries: longer lists of the contents are counted, not printed
_NOT_A_LABEL = "No fact here permits anything: the label in your hand is the law."


@click.command()
@click.argument("name", nargs=-1)
@json_option
def facts(name: tuple[str, ...], as_json: bool) -> None:
    """Show what is known, each fact with its source.

    NAME is a plant (common name, scientific name or PLANTS symbol), an ingredient, a formulation, a method, a
    topic of mixing or the key of a source. Without a name: everything there is to look up.

    \b
    Example: rootcollar facts rhca3
    """
    from rootcollar.jobs.facts import contents, look_up
    from rootcollar.reference import load

    reference = load()
    if not name:
        listings = contents(reference).value
        print_json("facts", _contents_body(listings)) if as_json else _show_contents(listings)
        return
    pages = look_up(" ".join(name), reference).value
    if as_json:
        print_json("facts", {"pages": [_page_body(page) for page in pages], "note": _NOT_A_LABEL})
        return
    for page in pages:
        _show_page(page)
    click.echo()
    text(_NOT_A_LABEL)


def _contents_body(listings: Iterable[Listing]) -> Mapping[str, Any]:
    entries = {one.kind: [{"key": key, "title": title} for key, title in one.entries] for one in listings}
    return {"contents": entries, "note": _NOT_A_LABEL}


def _page_body(page: Page) -> Mapping[str, Any]:
    rows = [{"group": one.group, "name": one.name, "words": one.words, **asdict(one.figure)} for one in page.facts]
    sources = [asdict(source) for source in page.sources]
    about = list(page.about)
    return {"kind": page.kind, "key": page.key, "title": page.title, "about": about, "facts": rows, "sources": sources}


def _show_contents(listings: Iterable[Listing]) -> None:
    text("What there is to look up: rootcollar facts NAME")
    for one in listings:
        heading(f"{one.kind} ({len(one.entries)})")
        if len(one.entries) > _LONGEST_LIST:
            text("one key each: they stand behind the facts and can be looked up too", indent=2)
            continue
        widest = max(len(key) for key, _ in one.entries)
        for key, title in one.entries:
            text(f"{key.replace(' ', '_'):<{widest}}".replace(" ", "\u00a0") + f"  {title}", indent=2, hang=widest + 2)


def _show_page(page: Page) -> None:
    heading(f"{page.title}: {page.kind} {page.key}")
    listed(page.about, indent=0)
    ordered = {fact.group: None for fact in page.facts}
    for group in ordered:
        if group:
            heading(group)
        same = (fact for fact in page.facts if fact.group == group)
        for _, rows in groupby(same, key=lambda fact: fact.name):
            for fact in rows:
                _show_fact(fact)
    heading("sources")
    met = {fact.figure.mark for fact in page.facts}
    for mark, (said, meaning) in _MARKS.items():
        if mark in met:
            text(f"{said} = {meaning}", indent=2)
    for source in page.sources:
        _show_source(source)


def _show_fact(fact: Fact) -> None:
    figure = fact.figure
    mark, _ = _MARKS[figure.mark]
    said = f"{fact.name}: {fact.words}" if fact.name else fact.words
    holds = f" ({figure.holds_for})" if figure.holds_for else ""
    place = f", {figure.locator}" if figure.locator else ""
    text(
        f"{said}{holds} [{mark}: {figure.source}{place}]",
        indent=2,
        hang=2,
        loud=mark if figure.mark == "memory" else "",
    )


def _show_source(source: Source) -> None:
    text(f"{source.key}: {source.cite}", indent=2, hang=2)
    if source.url:
        text(source.url, indent=4)
