"""The numbers of a packet's page that open: where each stands, and how it was worked out."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from difflib import get_close_matches

import numpy as np

from rootcollar.kernel.doubt import band
from rootcollar.kernel.errors import NotFound
from rootcollar.kernel.formula import watch
from rootcollar.kernel.sources import Source
from rootcollar.web.views.prepare import PacketView
from rootcollar.web.views.working import Drawer, Step, drawer_of
from rootcollar.work.packet import Card, Part
from rootcollar.work.worked import Number, Worked

__all__ = ["card_rows", "number_drawer", "numbers_of", "part_rows"]

Rows = Sequence[Sequence[str]]


def part_rows(part: Part) -> Rows:
    """Return the rows of a part of a page, its note as one more."""
    return (*part.rows, (part.note,))


def card_rows(card: Card) -> Rows:
    """Return a mix card in rows: what was asked for; each batch with its steps and percent; what its loads
    take; what to mind.
    """
    return (
        (card.asked,),
        *((name, *steps, percent) for name, steps, percent in card.batches),
        *card.buy,
        card.cautions,
    )


def numbers_of(view: PacketView) -> Mapping[str, Number]:
    """Return every number that opens by its place: section, part, row, cell, which number of the cell."""
    found: dict[str, Number] = {}
    for anchor, parts in _sections(view):
        for at, rows in enumerate(parts):
            found |= {f"{anchor}/{at}/{place}": one for place, one in _numbers(rows)}
    return found


def number_drawer(view: PacketView, place: str, cites: Mapping[str, Source]) -> Drawer:
    """Return how the number at a place was worked out; its last step is the number as it is shown.

    Raises NotFound where no number stands that opens.
    """
    numbers = numbers_of(view)
    one = numbers.get(place)
    if one is None:
        raise NotFound("number of the packet", place, get_close_matches(place, numbers) or list(numbers)[:3])
    with watch() as steps:
        value = one.again()
    worlds = np.atleast_1d(np.asarray(value, dtype=np.float64))
    here = band(worlds)
    shown = [Step("as it is shown", f"{here.best:.6g} {one.unit} = {one.words}")]
    if here.low != here.high:
        doubt = f"{here.low:.6g} to {here.high:.6g} {one.unit} hold the middle 80 % of what is believed (ours)"
        shown.insert(0, Step("doubt", doubt))
    drawer = drawer_of(one.words, "", steps, cites)
    return replace(drawer, steps=(*drawer.steps, *shown))


def _sections(view: PacketView) -> Iterator[tuple[str, Iterable[Rows]]]:
    yield "day-sheet", map(part_rows, view.day.parts)
    yield "mix-cards", map(card_rows, view.packet.cards)
    yield from ((anchor, map(part_rows, page.parts)) for anchor, page in view.pages)
    yield "signs", [one.lines for one in view.packet.signs]


def _numbers(rows: Rows) -> Iterator[tuple[str, Number]]:
    for row, cells in enumerate(rows):
        for cell, words in enumerate(cells):
            if isinstance(words, Worked):
                yield from ((f"{row}/{cell}/{at}", one) for at, one in enumerate(words.numbers))
