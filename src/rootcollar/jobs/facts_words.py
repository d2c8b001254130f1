"""Facts in the words a person writes: values, spans, sizes in both systems, seasons, names instead of keys."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Sequence
from decimal import Decimal
from typing import Any

from rootcollar.jobs.facts_page import Fact
from rootcollar.kernel.days import MONTHS, Window, months
from rootcollar.kernel.sources import Cited
from rootcollar.kernel.units import convert
from rootcollar.reference import Reference, Span, figures

__all__ = [
    "amount_words", "calendar", "flat", "ingredient_words", "joined", "length_words", "method_words", "number",
    "sentence", "span_words", "spaced", "strip", "value_words", "window_words", "without_size",
]  # fmt: skip

_CODE = re.compile(r"(?<=[a-z])_(?=[a-z])")  # the joint in a word of the vocabulary: no_kill
_STRENGTH = re.compile(r"strength: ([^;]+); strength unit: pct_vv")
_OPENING_SIZE = re.compile(
    r"^at once(?:; |, |$)|^(?:about |under |within )?[\d.]+(?: to [\d.]+)? (?:inch(?:es)?|minutes?|hours?|ft)(?:, |$)"
)
_SHELVES = ("figures", "more")  # fields that only hold other names
_ONE_OF_MANY = re.compile(r"(?:up to |at least )?1 [a-z]+s")
_BLINDING = 1e-7  # below this nobody counts the zeros
_NEARLY = 50  # a fiftieth: nearer than a tape on bark
_MIN_PER_H = 60  # definition


def value_words(figure: Cited[Any]) -> str:
    """Return the value with its unit as a person writes it: "1–2 years", "at least 5 cm", "yes"."""
    value = figure.value
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, tuple):
        return ", ".join(spaced(one) for one in value)
    if isinstance(value, str):
        return spaced(value)
    if not figure.unit and isinstance(value, float | int) and value == int(value):
        return f"{value:.0f}"  # a number that names something, or a count
    unit = figure.unit if figure.unit.startswith("%") else f" {figure.unit}"
    return f"{span_words(value) if isinstance(value, Span) else number(value)}{unit}".strip()


def spaced(word: str) -> str:
    """Return a key as words: underscores are gaps; a text that has gaps already stays as it is."""
    return word if " " in word else word.replace("_", " ")


def number(value: float) -> str:
    """Return a number with at most six figures, thousands parted by commas; a power of ten only where zeros blind."""
    return f"{value:.6g}" if 0 < abs(value) < _BLINDING else f"{Decimal(f'{value:.6g}'):,f}"


def span_words(span: Span) -> str:
    """Return a span in words: "1–2", "at least 5", "up to 6", "0.045 (0.031–0.078)"."""
    ends = tuple(None if end is None else number(end) for end in (span.low, span.high))
    match ends:
        case None, None:
            around = ""
        case None, high:
            around = f"up to {high}"
        case low, None:
            around = f"at least {low}"
        case low, high:
            around = f"{low}–{high}" if low != high else str(low)
    if span.best is None:
        return around
    return f"{number(span.best)} ({around})" if around else number(span.best)


def amount_words(figure: Cited[Any]) -> str:
    """Return a figure as a person reads it: lengths in both systems, shares in percent, long waits in hours."""
    value, unit = figure.value, figure.unit
    if unit in ("cm", "mm", "m") and isinstance(value, Span | float):
        return length_words(value, unit)
    if unit.startswith("share") and isinstance(value, Span | float):
        span = value if isinstance(value, Span) else Span(value, value)
        percent = span_words(_each(span, lambda end: float(f"{100 * end:.3g}")))
        return f"{percent} %{unit.removeprefix('share')}"
    if unit == "min" and isinstance(value, float):
        return _wait_words(value)
    if " per inch of " in unit and isinstance(value, float):
        return f"{value:g} an inch" if value >= 1 else f"1 for each {1 / value:.3g} in"
    said = value_words(figure)
    return said.removesuffix("s") if _ONE_OF_MANY.fullmatch(said) else said


def _wait_words(minutes: float) -> str:
    if minutes == 0:
        return "at once"
    return f"{minutes:g} min" if minutes < 2 * _MIN_PER_H else f"{minutes / _MIN_PER_H:g} h"


def length_words(value: Span | float, unit: str) -> str:
    """Return a length in both systems: "up to 2.5 in (6.35 cm)", "8 ft (2.44 m)". unit: mm, cm or m."""
    other = "ft" if unit == "m" else "in"
    span = value if isinstance(value, Span) else Span(value, value)
    there = span_words(_each(span, lambda end: _snapped(convert(end, unit, other))))
    here = span_words(_each(span, lambda end: float(f"{end:.3g}")))
    here = f"{here.removeprefix('at least ').removeprefix('up to ')} {unit}"
    return f"{there} {other} ({here})" if span.best is None else f"{there} {other}, {here}"


def _each(span: Span, turn: Callable[[float], float]) -> Span:
    low, high, best = (None if end is None else turn(end) for end in (span.low, span.high, span.best))
    return Span(low, high, best)


def _snapped(value: float) -> float:
    """A half unit where the value is as near as rounding takes it, else two figures: 15 cm is six inches on bark."""
    half = round(2 * value) / 2
    return half if half and abs(half - value) <= value / _NEARLY else float(f"{value:.2g}")


def window_words(windows: Iterable[Window]) -> str:
    """Return windows of the year as people write them: "1 Sep–15 Dec, 1 Apr–30 Jun"."""
    return ", ".join(f"{_day(one.start)}–{_day(one.end)}" for one in windows)


def _day(month_day: tuple[int, int]) -> str:
    month, day = month_day
    return f"{day} {MONTHS[month - 1][:3]}"


def calendar(seen: Iterable[Window], remembered: Iterable[Window] = ()) -> tuple[str, ...]:
    """Return for each month whether a window holds a day of it: "named", "remembered" by memory only, or ""."""
    sure = frozenset(month for window in seen for month in months(window))
    maybe = frozenset(month for window in remembered for month in months(window))
    return tuple("named" if at in sure else "remembered" if at in maybe else "" for at, _ in enumerate(MONTHS, 1))


def strip(year: Iterable[str]) -> str:
    """Return a calendar as twelve letters, a point where nothing is open, a small letter where only memory says so."""
    small = ("remembered", "shut by memory")
    letters = (
        (name[0].lower() if state in small else name[0], state) for name, state in zip(MONTHS, year, strict=True)
    )
    return " ".join(letter if state else "." for letter, state in letters)


def without_size(held: str) -> str:
    """Return what a figure holds for without the size it opens with, because the amount beside it says that."""
    return _OPENING_SIZE.sub("", held)


def joined(words: Sequence[str], last: str = "and") -> str:
    """Return words as a list in a sentence: "a, b and c"."""
    return f" {last} ".join([", ".join(words[:-1]), words[-1]] if len(words) > 1 else words)


def sentence(words: str) -> str:
    """Return words as a sentence: a capital first, a full stop last."""
    told = words.strip()
    return f"{told[:1].upper()}{told[1:]}{'' if told.endswith(('.', '!', '?')) else '.'}" if told else ""


def method_words(key: str, reference: Reference) -> str:
    """Return a way of working by its title."""
    if key in reference.methods:
        return reference.methods[key].title
    return "any way" if key == "any" else "other work"


def ingredient_words(keys: Iterable[str], reference: Reference) -> str:
    """Return ingredients by name, joined by "or"."""
    known = reference.ingredients
    return joined([str(known[key].name.value) if key in known else key for key in keys] or [""], "or")


def flat(thing: object, group: str = "") -> Iterator[Fact]:
    """Yield every fact in a thing, grouped by the first word of its path unless a group is given."""
    if isinstance(thing, dict):
        yield from (Fact(group, name, figure, value_words(figure)) for name, figure in thing.items())
        return
    for path, figure in figures(thing):
        words = [one for one in path.replace(".", " ").split() if not one.isdigit() and one not in _SHELVES]
        first, name = (group, " ".join(words)) if group or not words else (words[0], " ".join(words[1:]))
        said = _row_words(value_words(figure), name)
        yield Fact(spaced(_bare(first, figure.unit)), spaced(_bare(name, figure.unit)), figure, said)


def _row_words(words: str, name: str) -> str:
    """Return the words of a row without what its name says already, strength and unit side by side."""
    for lead in (f"method: {name}; ", f"name: {name}; ", f"kind: {name}; ", "detail: "):
        words = words.removeprefix(lead)
    return _CODE.sub(" ", _STRENGTH.sub(r"strength: \1 % v/v", words)) if ": " in words else words


def _bare(name: str, unit: str) -> str:
    """Return a name without the unit that it ends in, because the unit stands behind the value."""
    written = "pct" if unit.startswith("%") else unit.casefold().replace("/", "_per_").replace(" ", "_")
    return name.removesuffix(f"_{written}") if written else name
