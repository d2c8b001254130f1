"""Printing amounts: plain figures for reading, jug marks for pouring."""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from rootcollar.kernel.errors import UnitError
from rootcollar.kernel.rounding import to_step
from rootcollar.kernel.units_table import Kind, unit_of

__all__ = ["Jug", "jug", "show"]

_EIGHTHS = frozenset({"in", "fl oz", "cup", "Tbsp", "tsp"})  # read off marks, so printed as 1 1/2
_HAIR = 1e-9  # closer to an eighth than this is that eighth: floating point is not a measurement
_SPELLED = frozenset({"day", "cup"})  # words, not symbols: they take a plural

# Marks a person can pour to: (below this volume, in steps of), both in the unit named (ours).
_ML_STEPS = ((5.0, 0.1), (30.0, 0.5), (100.0, 1.0), (250.0, 5.0), (1000.0, 10.0), (10000.0, 50.0), (math.inf, 500.0))
_FL_OZ_STEPS = ((4.0, 1 / 8), (8.0, 1 / 4), (16.0, 1 / 2), (128.0, 1.0), (math.inf, 4.0))
_TSP_STEP = 1 / 8

_FL_OZ, _TSP = (float(unit_of(name).factor) for name in ("fl oz", "tsp"))  # [mL]
_QT_FL_OZ, _GAL_FL_OZ = 32, 128

Direction = Literal["nearest", "down", "up"]


@dataclass(frozen=True, slots=True)
class Jug:
    """What to pour, in words for a measuring cup, and exactly how much the first of those words is [mL]."""

    text: str
    ml: float


def show(value: float, unit: str, digits: int = 3) -> str:
    """Return a value in the given unit as people write it: `2.5 gal`, `1 1/2 in`, `20%`, `43,560 sq ft`.

    digits: figures kept; whole numbers are never cut, and nothing is printed as a power of ten.
    Eighths of an inch, fluid ounce, cup or spoon print as fractions when the value is one.
    Raises UnitError for an unknown unit or a value that is not finite, ValueError for digits below 1.
    """
    if digits < 1:
        raise ValueError(f"want at least 1 digit, got {digits}")
    if not math.isfinite(value):
        raise UnitError(str(value), "a number a person can measure")
    known = unit_of(unit)
    figure = (_eighths(value) if known.symbol in _EIGHTHS else "") or _decimal(value, digits)
    if known.symbol.startswith("%"):
        return figure + known.symbol
    spelled = known.symbol in _SPELLED or (known.kind is Kind.COUNT and "/" not in known.symbol)
    return f"{figure} {known.label}{'s' if spelled and figure != '1' and not 0 < value <= 1 else ''}"


def jug(volume_ml: float, system: Literal["us", "metric"] = "us", direction: Direction = "nearest") -> Jug:
    """Return a volume [mL] at the nearest mark of a measuring cup, and the exact volume of that mark [mL].

    us: below 1 fl oz in mL (from 1 tsp also in tsp), to 16 fl oz in fl oz (and mL), above in gal, qt and fl oz (and L).
    direction: down never passes a maximum, up never falls short; the volume in brackets keeps to it too.
    Raises ValueError for a negative or unbounded volume.
    """
    if not 0 <= volume_ml < math.inf:
        raise ValueError(f"want a volume of 0 mL or more, got {volume_ml}")
    if system == "metric":
        ml = _mark(volume_ml, _ML_STEPS, direction)
        return Jug(_metric(ml), ml)
    if volume_ml < _FL_OZ * (1 - _HAIR):
        ml = _mark(volume_ml, _ML_STEPS, direction)
        if ml < _FL_OZ:
            tsp = to_step(ml / _TSP, _TSP_STEP, direction)
            return Jug(_metric(ml) + (f" ({show(tsp, 'tsp')})" if ml >= _TSP else ""), ml)  # a spoon is coarse
        volume_ml = _FL_OZ
    fl_oz = _mark(volume_ml / _FL_OZ, _FL_OZ_STEPS, direction)
    ml = fl_oz * _FL_OZ
    small = 10.0 ** max(0, math.floor(math.log10(ml)) - 2)  # three figures
    return Jug(f"{_gal_qt_fl_oz(fl_oz)} ({_metric(to_step(ml, small, direction))})", ml)


def _mark(value: float, steps: tuple[tuple[float, float], ...], direction: Direction) -> float:
    step = next(step for below, step in steps if value < below * (1 - _HAIR))
    return to_step(value, step, direction)


def _gal_qt_fl_oz(fl_oz: float) -> str:
    if fl_oz <= 16:
        return show(fl_oz, "fl oz")
    gal, left = divmod(fl_oz, _GAL_FL_OZ)
    qt, left = divmod(left, _QT_FL_OZ)
    parts = ((gal, "gal"), (qt, "qt"), (left, "fl oz"))
    return " ".join(show(amount, unit) for amount, unit in parts if amount)


def _metric(ml: float) -> str:
    return show(ml / 1000, "L", 6) if ml >= 1000 else show(ml, "mL", 6)


def _eighths(value: float) -> str:
    eighths = round(value * 8) if abs(value) < 100 else 0
    if eighths % 8 == 0 or abs(value * 8 - eighths) > _HAIR:
        return ""
    whole, part = divmod(Fraction(abs(eighths), 8), 1)
    return ("-" if value < 0 else "") + (f"{whole} {part}" if whole else f"{part}")


def _decimal(value: float, digits: int) -> str:
    places = max(0, digits - 1 - math.floor(math.log10(abs(value)))) if value else 0
    figure = f"{value:,.{places}f}"
    if "." in figure:
        figure = figure.rstrip("0").rstrip(".")
    return "0" if figure == "-0" else figure
