"""Pieces of a packet as a page shows them: the day sheet in plain parts, tape to draw, lines to write on."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import accumulate, count

from rootcollar.work.packet import DaySheet, Page, Part
from rootcollar.work.worked import Number, Worked, within

__all__ = ["Drawn", "bars_of", "day_page", "figures", "runs", "written"]

_LINE = re.compile(r"(_{3,})")  # as the printed sheets have it
_FIGURE = re.compile(r"\$?[0-9][0-9.,]*|–|")
_HIGH = {1: 4, 2: 12}  # a narrow and a wide bar of tape, and what lies between two, in units of the drawing
_APART = 5


@dataclass(frozen=True, slots=True)
class Drawn:
    """Tape as it sits on the vessel. bars: (top, height) of each; height: of the whole."""

    bars: tuple[tuple[int, int], ...]
    height: int


def bars_of(bars: tuple[int, ...]) -> Drawn:
    """Return a pattern of tape to draw, bar under bar. bars: 1 narrow, 2 wide."""
    high = [_HIGH[one] for one in bars]
    tops = list(accumulate(high, lambda top, one: top + one + _APART, initial=0))
    return Drawn(tuple(zip(tops, high, strict=False)), tops[-1] - _APART)


def written(words: str) -> tuple[tuple[str, bool], ...]:
    """Return a text in runs, (text, whether it is a line to write on): where ___ stands, a hand writes."""
    return tuple((run, run.startswith("___")) for run in _LINE.split(words) if run)


def runs(words: str) -> tuple[tuple[str, int | None], ...]:
    """Return a text in runs: (text, which number of it this is, from 0, or None where nothing opens)."""
    if not isinstance(words, Worked):
        return ((words, None),)
    places = count()
    return tuple((one.words, next(places)) if isinstance(one, Number) else (one, None) for one in words.runs)


def figures(rows: Sequence[Sequence[str]]) -> tuple[bool, ...]:
    """Return, for each column of a table, whether bare figures stand in it, which line up at their right edge."""
    return tuple(any(column) and all(_FIGURE.fullmatch(cell) for cell in column) for column in zip(*rows, strict=True))


def day_page(day: DaySheet) -> Page:
    """Return the day sheet in plain parts, under its own headings; sketch, look-alikes and loads are on the paper."""
    return Page(day.title, " · ".join(one for one in (day.when, day.season) if one), tuple(_parts(day)))


def _parts(day: DaySheet) -> Iterator[Part]:
    say = dict(day.words)
    heads = (say["size"], say["plant"], say["do"], say["mix"], say["stems"], say["instead"])
    sizes = tuple(
        (one.size, one.plant, ", ".join(filter(None, (one.verb, one.rest))), one.mix, one.stems, one.fallback)
        for one in day.sizes
    )
    mixes = tuple(
        (one.letter, one.what, one.steps, within(_with_band(one.total, one.band), one.total)) for one in day.mixes
    )
    struck = tuple(
        (say[one.level], one.what, ". ".join(map(_begun, filter(None, (one.because, one.clear))))) for one in day.struck
    )
    made = (
        Part(say["who"], "pairs", day.roles),
        Part(say["treat"], "table", sizes, heads),
        Part(say["struck"], "table", struck),
        Part(say["mix"], "table", mixes, (say["mix"], "What", "One load", "In all"), day.proving),
        Part(say["weather"], "pairs", day.weather),
        Part("To tick before starting", "ticks", tuple((one,) for one in day.boxes)),
        Part(say["wear"], "pairs", day.wear, note=day.wear_note),
        Part(say["after"], "text", tuple((one,) for one in (day.entry,) if one)),
        Part(say["wrong"], "pairs", day.emergency),
    )
    yield from (one for one in made if one.rows)


def _begun(words: str) -> str:
    return words[:1].upper() + words[1:]


def _with_band(total: str, band: str) -> str:
    return f"{total} ({band})" if band else total
