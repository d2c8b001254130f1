"""Amounts, sizes and times as a crew reads them: US customary, rounded to what anybody can use."""

from __future__ import annotations

import math
from collections.abc import Callable

from rootcollar.kernel.doubt import Band, Worlds, band
from rootcollar.kernel.units import convert, show

__all__ = ["acres", "count", "distance", "gallons", "hours", "money", "size", "span"]


def size(band_cm: tuple[float, float]) -> str:
    """Return a size band in inches: "1-2 in"."""
    low, high = (f"{round(convert(one, 'cm', 'in'), 2):g}" for one in band_cm)
    return f"{low}–{high} in"


def gallons(mix_ml: float) -> str:
    """Return a volume in gallons, or in fluid ounces where it is under a quart."""
    gallon = convert(mix_ml, "mL", "gal")
    return show(gallon, "gal", 3) if gallon >= 0.25 else show(convert(mix_ml, "mL", "fl oz"), "fl oz", 2)


def count(worlds: Worlds) -> str:
    """Return a count with its band where it has one: "412 (350–480)"."""
    return _with_band(band(worlds), lambda one: f"{one:,.0f}")


def hours(minutes: Worlds) -> str:
    """Return person-hours with their band."""
    return (
        f"{_with_band(band(minutes), lambda one: f'{one / 60:.2g}' if one < 600 else f'{one / 60:,.0f}')} person-hours"
    )


def money(worlds: Worlds) -> str:
    """Return money with its band, whole dollars."""
    return _with_band(band(worlds), lambda one: f"${one:,.0f}")


def span(worlds: Worlds) -> str:
    """Return the 10-90 % band of a volume, or nothing for a sure one: "1.9–3.4 gal"."""
    here = band(worlds)
    return "" if here.low == here.high else f"{gallons(here.low)}–{gallons(here.high)}"


def acres(area_m2: float | None) -> str:
    """Return an area in acres, or that it is not known."""
    return "not known" if area_m2 is None else show(convert(area_m2, "m2", "ac"), "ac", 3)


def distance(length_m: float | None) -> str:
    """Return a distance in feet; none there, or not looked for."""
    if length_m is None:
        return "not looked for"
    return "none there" if math.isinf(length_m) else show(round(convert(length_m, "m", "ft")), "ft")


def _with_band(here: Band, word: Callable[[float], str]) -> str:
    if here.low == here.high:
        return word(here.best)
    return f"{word(here.best)} ({word(here.low)}–{word(here.high)})"
