"""The command `facts`: what is known of a thing, each fact with what it holds for, its mark and its source."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import asdict
from typing import TYPE_CHECKING, Any

import click

from rootcollar.cli.facts_text import show_contents, show_page
from rootcollar.cli.show import json_option, print_json, text
from rootcollar.kernel.sources import NOT_A_LABEL

if TYPE_CHECKING:
    from rootcollar.jobs.facts import Listing, Page

__all__ = ["facts"]


@click.command()
@click.argument("name", nargs=-1)
@json_option
def facts(name: tuple[str, ...], as_json: bool) -> None:
    """Show what is known, each fact with its source.

    NAME is a plant (common name, scientific name or PLANTS symbol), an ingredient, a formulation, a method, a rule
    (rules, rules water, L37a), a topic of mixing or hazards, conflicts, units, sources, or the key of a source.
    Without a name: everything there is to look up.

    \b
    Example: rootcollar facts rhca3
    """
    from rootcollar.jobs.facts import contents, look_up
    from rootcollar.reference import load

    reference = load()
    if not name:
        listings = contents(reference).value
        print_json("facts", _contents_body(listings)) if as_json else show_contents(listings)
        return
    pages = look_up(" ".join(name), reference).value
    if as_json:
        print_json("facts", {"pages": [_page_body(page) for page in pages], "note": NOT_A_LABEL})
        return
    for page in pages:
        show_page(page)
    click.echo()
    text(NOT_A_LABEL)


def _contents_body(listings: Iterable[Listing]) -> Mapping[str, Any]:
    entries = {one.kind: [{"key": key, "title": title} for key, title in one.entries] for one in listings}
    return {"contents": entries, "note": NOT_A_LABEL}


def _page_body(page: Page) -> Mapping[str, Any]:
    rows = [{"group": one.group, "name": one.name, "words": one.words, **asdict(one.figure)} for one in page.facts]
    return {
        "kind": page.kind,
        "key": page.key,
        "title": page.title,
        "about": list(page.about),
        "facts": rows,
        "sources": [asdict(source) for source in page.sources],
        "opening": page.opening,
        "sections": [asdict(section) for section in page.sections],
    }
