"""Filling in what the map tells: areas, and distances to what binds the work."""

from __future__ import annotations

import math
from dataclasses import replace

from rootcollar.kernel.errors import BadInput, Fault
from rootcollar.kernel.units import convert, show
from rootcollar.site.geometry import area_m2, distance_m
from rootcollar.site.ground import Ground, Unit

__all__ = ["measure"]

MEASURED = {"water": "water_m", "well": "well_m", "trail": "trail_m", "keep": "keep_m", "power": "power_m"}

# Ours: a tape, a pace and a hand-drawn line agree no better; below this both mean the same.
_SAME_AREA = 5 / 100
_SAME_M = 3  # ours, as above
# Ours: beyond twice or half, one of the two is a slip of typing, not of measuring.
_SLIP = 2


def measure(ground: Ground) -> Ground:
    """Return the ground with areas [m2] and distances [m] from its map, and notes on what did not agree.

    A feature counts for every unit, a neighbour's too. Where a measure was typed as well, the smaller is kept: a
    smaller area keeps the yearly limit, a smaller distance keeps the set-back.
    Raises BadInput with every area typed that is over twice, or under half, the area drawn.
    """
    units, notes, faults = {}, [*ground.notes], []
    for key, unit in ground.units.items():
        drawn = area_m2(unit.polygon) if unit.polygon else None
        fault = _slip(unit, drawn)
        faults += [fault] if fault else []
        units[key], said = _measured(unit, drawn, ground)
        notes += said
    if faults:
        raise BadInput(*faults)
    return replace(ground, units=units, notes=tuple(notes))


def _slip(unit: Unit, drawn_m2: float | None) -> Fault | None:
    if unit.area_m2 is None or drawn_m2 is None or drawn_m2 / _SLIP <= unit.area_m2 <= drawn_m2 * _SLIP:
        return None
    return Fault(
        f"area {_acres(unit.area_m2)} typed, {_acres(drawn_m2)} drawn",
        "an area near the one drawn; take the typed one out, or mend the corners (longitude first)",
        row=f"unit {unit.key}", field="area",
    )  # fmt: skip


def _measured(unit: Unit, drawn_m2: float | None, ground: Ground) -> tuple[Unit, list[str]]:
    area, notes = _area(unit, drawn_m2)
    found: dict[str, float | None] = {"area_m2": area}
    for kind, name in MEASURED.items():
        found[name], note = _nearest(unit, kind, getattr(unit, name), ground)
        notes += [note] if note else []
    return replace(unit, **found), notes  # type: ignore[arg-type]  # names of distances, checked by a test


def _area(unit: Unit, drawn_m2: float | None) -> tuple[float | None, list[str]]:
    typed = unit.area_m2
    if typed is None or drawn_m2 is None:
        return (drawn_m2 if typed is None else typed), []
    if abs(typed - drawn_m2) <= _SAME_AREA * drawn_m2:
        return min(typed, drawn_m2), []
    note = f"{unit.name}: {_acres(typed)} typed and {_acres(drawn_m2)} drawn; the smaller is used"
    return min(typed, drawn_m2), [note]


def _nearest(unit: Unit, kind: str, typed_m: float | None, ground: Ground) -> tuple[float | None, str]:
    lines = [one.line for one in ground.features if one.kind == kind]
    drawn = None
    if lines and unit.polygon:
        drawn = distance_m(unit.polygon, lines)
    elif not lines and kind in ground.looked_for:
        drawn = math.inf
    if typed_m is None or drawn is None:
        return (drawn if typed_m is None else typed_m), ""
    smaller = min(typed_m, drawn)
    if typed_m == drawn or abs(typed_m - drawn) <= _SAME_M:
        return smaller, ""
    said = f"{kind} {_feet(typed_m)} away typed, {_feet(drawn)} drawn"
    return smaller, f"{unit.name}: {said}; the smaller is used"


def _acres(area_m2_: float) -> str:
    return show(convert(area_m2_, "m2", "ac"), "ac")


def _feet(distance: float) -> str:
    return "none" if math.isinf(distance) else show(convert(distance, "m", "ft"), "ft")
