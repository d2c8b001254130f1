"""Worked examples on a method's page: figures of its sources put to use, as a reader with a calculator would."""

from __future__ import annotations

from collections.abc import Iterator

from rootcollar.choose.by_ground import (
    acres_a_day,
    cost_by_cross_section,
    cover_lost_pct,
    goat_days_per_ha,
    hours_by_cover,
)
from rootcollar.dose import geometry
from rootcollar.jobs.facts_page import Line, cited
from rootcollar.jobs.facts_words import number
from rootcollar.kernel.formula import use
from rootcollar.kernel.units import convert
from rootcollar.reference import MethodFacts, Span, numbers, spans

__all__ = ["example_lines"]

_STEMS, _STEM_IN = 100, 4.0  # a round example: stems, and how thick [in]
_COVER_PCT = 10.0  # a round example: of the ground
_HOURS = 7.0  # a day in the field, as its source takes it


def example_lines(one: MethodFacts) -> Iterator[Line]:
    """Yield what a method's figures come to on a small example."""
    yield from _by_cover(one)
    yield from _cover_lost(one)
    yield from _by_cross_section(one)
    yield from _by_goats(one)
    yield from _by_day(one)


def _by_cover(one: MethodFacts) -> Iterator[Line]:
    for row in numbers(one.rows("labour_h_per_ha_per_pct")):
        hours = hours_by_cover(1, _COVER_PCT, use(row))
        words = f"1 ha with {_COVER_PCT:g} % of it covered: 1 x {_COVER_PCT:g} x {row.value:g}"
        yield Line("hours by cover", f"{number(hours)} h", words, cited(row))
    for row in numbers(one.rows("labour_h_per_acre_per_pct_cover")):
        hours = hours_by_cover(convert(1, "ac", "ha"), 3 * _COVER_PCT, convert(1, "ha", "ac") * use(row))
        words = f"an acre with {3 * _COVER_PCT:g} % of it covered: {3 * _COVER_PCT:g} x {row.value:g}"
        yield Line("hours by cover", f"{number(hours)} h", words, cited(row))


def _cover_lost(one: MethodFacts) -> Iterator[Line]:
    after = {row.source: row for row in numbers(one.rows("cover_after_pct"))}
    for before in numbers(one.rows("cover_before_pct")):
        lost = cover_lost_pct(use(before), use(after[before.source]))
        words = f"of the cover is gone: {before.value:g} % of the ground, then {after[before.source].value:g} %"
        yield Line("cover lost", f"{lost:.3g} %", words, cited(before))


def _by_cross_section(one: MethodFacts) -> Iterator[Line]:
    faces_cm2 = _STEMS * geometry.mean_face_cm2(convert(_STEM_IN, "in", "cm") ** 2)
    faces_ft2 = convert(faces_cm2, "cm2", "sq ft")
    for known in one.figures:
        if known.name == "cost_per_basal_area":
            (row,) = numbers([known.figure])
            usd = cost_by_cross_section(faces_ft2, use(row))
            who = ", ".join(known.ingredients)
            words = f"{_STEMS} stems of {_STEM_IN:g} in, {who}: {faces_ft2:.2f} sq ft x {row.value:g}; money of 2001"
            yield Line("money by stems", f"{usd:.2f} USD", words, cited(row))


def _by_goats(one: MethodFacts) -> Iterator[Line]:
    goats = {row.source: row for row in numbers(one.rows("animals_per_ha"))}
    for stay in spans(one.rows("stay_d")):
        herd = goats.get(stay.source)
        if herd and stay.value.low and stay.value.high:
            low, high = (goat_days_per_ha(use(herd), days) for days in (stay.value.low, stay.value.high))
            words = f"{herd.value:g} a hectare for {stay.value.low:g} to {stay.value.high:g} days; {stay.holds_for}"
            yield Line("goat-days a hectare", f"{number(low)}–{number(high)}", words, cited(stay, herd))


def _by_day(one: MethodFacts) -> Iterator[Line]:
    for row in spans(one.rows("production_acre_per_h")):
        words = f"{_HOURS:g} hours at {_rate(row.value)} acres an hour; {row.holds_for}"
        ends = [end for end in (row.value.low, row.value.best, row.value.high) if end is not None]
        acres = [number(acres_a_day(_HOURS, end)) for end in ends]
        yield Line("acres a day", " – ".join(acres), words, cited(row))


def _rate(span: Span) -> str:
    return " – ".join(f"{end:g}" for end in (span.low, span.best, span.high) if end is not None)
