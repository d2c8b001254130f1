"""Amounts, sizes and times as a crew reads them: US customary, rounded to what anybody can use."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

from rootcollar.kernel.doubt import Band, Worlds, band, best
from rootcollar.kernel.rounding import to_step
from rootcollar.kernel.units import convert, jug, show

_MIN_PER_H = 60  # definition
_LEAST_GAL = 1 / 4  # ours: under a quart, fluid ounces are easier to measure
_LEAST_MARK_GAL = 1 / 2  # ours: a jug smaller than that is marked in fluid ounces

__all__ = [
    "acres", "best_gallons", "count", "distance", "down", "gallons", "hours", "joined", "mark", "money", "purpose",
    "size", "span",
]  # fmt: skip


def size(band_cm: tuple[float, float]) -> str:
    """Return a size band in inches: "1-2 in"."""
    low, high = (f"{round(convert(one, 'cm', 'in'), 2):g}" for one in band_cm)
    return f"{low}–{high} in"


def joined(bands_cm: Sequence[tuple[float, float]]) -> tuple[float, float]:
    """Return the band that spans several."""
    return min(low for low, _ in bands_cm), max(high for _, high in bands_cm)


def gallons(mix_ml: float) -> str:
    """Return a volume in gallons, or in fluid ounces where it is under a quart."""
    gallon = convert(mix_ml, "mL", "gal")
    return show(gallon, "gal", 3) if gallon >= _LEAST_GAL else show(convert(mix_ml, "mL", "fl oz"), "fl oz", 2)


def best_gallons(mix_ml: Worlds) -> str:
    """Return the best figure of a volume that is in doubt, as `gallons` has it."""
    return gallons(best(mix_ml))


def mark(batch_ml: float) -> str:
    """Return the mark a batch is filled to: gallons, or fluid ounces where it is under half a gallon."""
    gallon = convert(batch_ml, "mL", "gal")
    return show(gallon, "gal", 3) if gallon >= _LEAST_MARK_GAL else show(convert(batch_ml, "mL", "fl oz"), "fl oz", 3)


def down(volume_ml: float) -> str:
    """Return a volume rounded down: whole gallons where there are many, tenths of a few, else a mark of a jug."""
    gallon = convert(volume_ml, "mL", "gal")
    if gallon >= 1:
        return show(to_step(gallon, 1 if gallon >= 10 else 1 / 10, "down"), "gal", 4)
    return jug(volume_ml, direction="down").text.partition(" (")[0]


def count(worlds: Worlds) -> str:
    """Return a count with its band where it has one: "412 (350–480)"."""
    return _with_band(band(worlds), lambda one: f"{one:,.0f}")


def hours(minutes: Worlds) -> str:
    """Return person-hours with their band."""
    return f"{_with_band(band(minutes), _hours)} person-hours"


def _hours(minutes: float) -> str:
    hours = minutes / _MIN_PER_H
    return f"{hours:.2g}" if hours < 10 else f"{hours:,.0f}"


def money(worlds: Worlds) -> str:
    """Return money with its band, whole dollars."""
    return _with_band(band(worlds), lambda one: f"${one:,.0f}")


def span(worlds: Worlds) -> str:
    """Return the 10-90 % band of a volume, two figures, or nothing for a sure one: "1.9–3.4 gal"."""
    here = band(worlds)
    if here.low == here.high:
        return ""
    unit = "gal" if convert(here.best, "mL", "gal") >= _LEAST_GAL else "fl oz"  # as `gallons` prints the best
    low, high = (show(convert(one, "mL", unit), unit, 2) for one in (here.low, here.high))
    return f"{low.removesuffix(f' {unit}')}–{high}"


def acres(area_m2: float | None) -> str:
    """Return an area in acres, or that it is not known."""
    return "not known" if area_m2 is None else show(convert(area_m2, "m2", "ac"), "ac", 3)


def distance(length_m: float | None) -> str:
    """Return a distance in feet; none there, or not looked for."""
    if length_m is None:
        return "not looked for"
    return "none there" if math.isinf(length_m) else show(round(convert(length_m, "m", "ft")), "ft")


_PURPOSES = {
    "produce": "timber or other plants for sale or research",
    "nature": "nature",
    "grounds": "grounds kept for their looks",
    "right_of_way": "a right of way",
    "pasture": "pasture",
    "public_programme": "a public pest control programme",
}


def purpose(key: str) -> str:
    """Return in words what ground is worked for."""
    return _PURPOSES[key]


def _with_band(here: Band, word: Callable[[float], str]) -> str:
    if here.low == here.high:
        return word(here.best)
    return f"{word(here.best)} ({word(here.low)}–{word(here.high)})"
