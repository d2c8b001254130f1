"""How a plant is treated: its ways with strengths and seasons, what they killed, what fails, sizes they are for."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import replace

from rootcollar.jobs.facts_page import Line, cited
from rootcollar.jobs.facts_words import (
    calendar,
    ingredient_words,
    joined,
    length_words,
    method_words,
    number,
    spaced,
    span_words,
    strip,
    window_words,
    without_size,
)
from rootcollar.kernel.sources import Mark
from rootcollar.reference import EfficacyRow, FailRow, KillRow, MethodRow, NamedFigure, Reference, Span, Species

__all__ = [
    "SEEDLINGS",
    "fail_lines",
    "kill_line",
    "kill_lines",
    "limit_lines",
    "season_lines",
    "strength_words",
    "way_lines",
]

_UNITS = {
    "pct_vv": "% v/v", "g_ae_L": "g ae/L", "g_L": "g/L", "ml_per_inch_dbh": "mL/in", "ml_per_stem": "mL/stem",
    "kg_ai_ha": "kg ai/ha",
}  # fmt: skip
_PERCENT = re.compile(r" \([\d.]+ %\)")  # of a formulation's words: the strength beside it says enough
_CARRIED = {"water": "in water", "oil": "in oil", "none": "as sold"}
_BEST_FIRST = tuple(Mark)
_SHUT = {"named": "shut", "remembered": "shut by memory", "": ""}
SEEDLINGS = "seedlings_emerged"  # an outcome that is no kill: it tells how long to come back


def way_lines(one: Species, reference: Reference) -> Iterator[Line]:
    """Yield each way of the plant under its method, those read before those remembered."""
    for method in _in_order(one, reference):
        yield Line(method_words(method, reference))
        rows = [row for row in one.methods if row.method == method]
        for row in sorted(rows, key=lambda row: (_BEST_FIRST.index(row.mark), not row.strength)):
            name = ingredient_words(row.ingredients, reference)
            yield Line(name or "no herbicide named", "", _way(row, reference), cited(row))


def _in_order(one: Species, reference: Reference) -> list[str]:
    used = {row.method for row in one.methods}
    return [key for key in reference.vocab["method"] if key in used]


def strength_words(strength: Span | float | None, unit: str) -> str:
    """Return a strength with its unit: "20–25 % v/v"; nothing where none was given."""
    if strength is None:
        return ""
    said = span_words(strength) if isinstance(strength, Span) else number(strength)
    return f"{said} {_UNITS[unit]}"


def _way(row: MethodRow, reference: Reference) -> str:
    region = f"({spaced(row.region).capitalize()})" if row.region else ""
    mix = f"{strength_words(row.strength, row.strength_unit)} {_CARRIED.get(row.carrier, '')}".strip()
    parts = (mix, window_words(row.windows), row.applies_to, row.detail, _formulations(row, reference))
    told = "; ".join(part for part in parts if part) or "named, no more said"
    return f"{told} {region}".strip()


def _formulations(row: MethodRow, reference: Reference) -> str:
    """The formulation is our reading of the ingredient a source names, so it is told as that."""
    told = joined([_PERCENT.sub("", reference.formulations[key].words) for key in row.formulations], "or")
    return f"taken as {told}" if told and row.strength else ""


def season_lines(one: Species, reference: Reference) -> Iterator[Line]:
    """Yield the twelve months of every way that a source times, then of what is to be kept out of, then the untimed."""
    untimed = []
    for method in _in_order(one, reference):
        rows = [row for row in one.methods if row.method == method and row.windows]
        if not rows:
            untimed.append(method_words(method, reference))
            continue
        yield _timed(method_words(method, reference), rows)
    for row in one.fails:
        if row.windows:
            line = _timed(f"not {method_words(row.method, reference)}", [row])
            yield replace(line, months=tuple(_SHUT[state] for state in line.months))
    if untimed:
        yield Line("no month named", "", ", ".join(untimed), ())


def _timed(name: str, rows: Iterable[MethodRow | FailRow]) -> Line:
    rows = tuple(rows)
    seen = [window for row in rows for window in row.windows if row.mark is not Mark.MEMORY]
    remembered = [window for row in rows for window in row.windows if row.mark is Mark.MEMORY]
    both = sorted({*seen, *remembered}, key=lambda window: (window.start, window.end))
    year = calendar(seen, remembered)
    return Line(name, strip(year), window_words(both), cited(*rows), year)


def kill_lines(one: Species, reference: Reference) -> Iterator[Line]:
    """Yield what was measured on the plant, way by way; a prior that rests on the same trial is told with it."""
    priors = [row for row in reference.kill if row.species == one.key]
    for method in reference.vocab["method"]:
        own = [row for row in priors if row.method == method]
        rows = [row for row in one.efficacy if row.method == method and row.outcome != SEEDLINGS]
        if not own and not rows:
            continue
        yield Line(method_words(method, reference))
        left = list(own)
        for row in rows:
            same = next((prior for prior in left if _same(prior, row)), None)
            if same:
                left.remove(same)
            yield _measured(row, same, reference)
        yield from (kill_line(row, reference) for row in left)


def _same(prior: KillRow, row: EfficacyRow) -> bool:
    return prior.source == row.source and prior.share.best == row.value and prior.outcome == row.outcome


def _measured(row: EfficacyRow, prior: KillRow | None, reference: Reference) -> Line:
    with_ = ingredient_words(row.ingredients, reference)
    how = f"{with_} {strength_words(row.strength, row.strength_unit)} {_CARRIED.get(row.carrier, '')}".split()
    counted = _counted(row.n or (prior.n if prior else None), row.sites)
    parts = (
        " ".join(how),
        reference.vocab["outcome"][row.outcome],
        f"after {span_words(row.months)} months" if row.months else "",
        counted,
        row.applies_to,
        row.note,
        _belief(prior) if prior else "",
    )
    seen = cited(row, *([prior] if prior else []))
    return Line("", f"{100 * row.value:.3g} %", "; ".join(part for part in parts if part), seen)


def kill_line(row: KillRow, reference: Reference, *, whose: str = "") -> Line:
    """Return a prior of kill in one visit as a line: share, of what, by how many plants it stands. whose: the plant."""
    best = "" if row.share.best is None else f"{100 * row.share.best:.3g} %"
    with_ = ingredient_words(row.ingredients, reference) or ("any herbicide" if row.herbicide else "no herbicide")
    parts = (
        f"{with_} {_CARRIED.get(row.carrier, '')}".strip(),
        reference.vocab["outcome"][row.outcome],
        f"after {span_words(row.months)} months" if row.months else "",
        "" if row.mark is Mark.OURS else _counted(row.n, None),
        row.note,
        _belief(row),
    )
    return Line(whose, best, "; ".join(part for part in parts if part), cited(row))


def _belief(row: KillRow) -> str:
    low, high = row.share.low or 0.0, row.share.high or 0.0
    return f"counted here as {100 * low:.0f}–{100 * high:.0f} %"


def _counted(n: int | None, sites: int | None) -> str:
    told = [f"{n} plants" if n else "", f"{sites} sites" if sites else ""]
    return " on ".join(part for part in told if part) or "number of plants not told"


def fail_lines(rows: Iterable[FailRow], reference: Reference) -> Iterator[Line]:
    """Yield what a source says fails or makes matters worse."""
    for row in rows:
        with_ = ingredient_words(row.ingredients, reference)
        what = f"{method_words(row.method, reference)}, {with_}" if with_ else method_words(row.method, reference)
        when = f" ({window_words(row.windows)})" if row.windows else ""
        yield Line(what, "", f"{reference.vocab['fail_effect'][row.effect]}: {row.why}{when}", cited(row))


def limit_lines(one: Species, reference: Reference) -> Iterator[Line]:
    """Yield sizes for a way: what a source says of this plant, then what the method's sources say of any."""
    for method in _in_order(one, reference):
        name = method_words(method, reference)
        for row in one.methods:
            if row.method == method and (row.diameter_cm or row.height_m):
                yield Line(name, _size(row), row.applies_to or row.detail, cited(row))
        for known in reference.methods[method].figures:
            if known.name in ("stem_limit_cm", "height_limit_m") and _holds(known, one):
                unit = known.name.rsplit("_", 1)[-1]
                value = known.figure.value
                assert isinstance(value, Span | float)
                tall = " tall" if unit == "m" else ""
                held = without_size(known.figure.holds_for)
                words = held if known.species else f"any plant: {held}" if held else "any plant"
                yield Line(name, f"{length_words(value, unit)}{tall}", words, cited(known.figure))


def _size(row: MethodRow) -> str:
    thick = length_words(row.diameter_cm, "cm") if row.diameter_cm else ""
    tall = f"{length_words(row.height_m, 'm')} tall" if row.height_m else ""
    return ", ".join(part for part in (thick, tall) if part)


def _holds(known: NamedFigure, one: Species) -> bool:
    return not known.species or one.key in known.species
