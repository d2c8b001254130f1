"""Words for lines that are treated alike: whose they are, and when in the year their way is best."""

from __future__ import annotations

from collections.abc import Sequence

from rootcollar.choose import Choice, best_months, year_of
from rootcollar.kernel.days import name_months
from rootcollar.reference import load
from rootcollar.work import text

__all__ = ["best_words", "whose"]


def best_words(lines: Sequence[Choice]) -> str:
    """Say in which of its months a source finds the way of the lines best; "" where none does, or not for all alike."""
    found = {best_months(year_of(one.way, load().species[one.stand.species], load())) for one in lines}
    months = {one.months if one.sourced else frozenset() for one in found}
    (named, *others), open_ = {one & lines[0].way.visit.months for one in months}, lines[0].way.visit.months
    return "" if others or not named or named == open_ else f", best in {name_months(named)}"


def whose(lines: Sequence[Choice]) -> str:
    """Return plants and sizes of lines: "Amur honeysuckle 1-4 in"."""
    bands: dict[str, list[tuple[float, float]]] = {}
    for one in lines:
        bands.setdefault(one.stand.species, []).append(one.stand.band_cm)
    plants = load().species
    return "; ".join(f"{plants[key].common_name} {text.size(text.joined(one))}" for key, one in bands.items())
