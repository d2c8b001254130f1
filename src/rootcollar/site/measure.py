"""Filling in what the map tells: areas, and distances to what binds the work."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from itertools import pairwise

from rootcollar.kernel.errors import BadInput, Fault
from rootcollar.kernel.formula import formula, use
from rootcollar.kernel.sources import Cited, Mark
from rootcollar.kernel.units import convert, show
from rootcollar.site.geometry import area_m2, nearest
from rootcollar.site.ground import Feature, Ground, Unit

__all__ = ["MEASURED", "Measured", "how_measured", "measure", "smaller_area_m2", "smaller_distance_m"]

MEASURED = {
    "area": "area_m2", "water": "water_m", "well": "well_m", "trail": "trail_m", "keep": "keep_m", "power": "power_m",
    "road": "road_m", "building": "building_m", "parking": "parking_m", "boundary": "boundary_m",
}  # fmt: skip

# Ours: a tape, a pace and a hand-drawn line agree no better; below this both mean the same.
_SAME_AREA = 5 / 100
_SAME_M = 3  # ours, as above
# Ours: beyond twice or half, one of the two is a slip of typing, not of measuring.
_SLIP = 2


@dataclass(frozen=True, slots=True)
class Measured:
    """A measure of a unit and how it was come by: an area [m2], or a distance [m] as `Unit` has it.

    typed, drawn: what the user wrote and what the map says, None where there is none. kept: which holds, the smaller
    of the two. note: a sentence where they differ by more than a tape does; "" else.
    """

    typed: float | None
    drawn: float | None
    kept: float | None
    note: str = ""


def measure(ground: Ground) -> Ground:
    """Return the ground with areas [m2] and distances [m] from its map, and notes on what did not agree.

    A feature counts for every unit, a neighbour's too. Where a measure was typed as well, the smaller is kept: a
    smaller area keeps the yearly limit, a smaller distance keeps the set-back.
    Raises BadInput with every area typed that is over twice, or under half, the area drawn, and with every worked
    ground that is larger than its unit.
    """
    units, notes, faults = {}, [*ground.notes], []
    for key, unit in ground.units.items():
        found = {what: _measured(unit, what, ground) for what in MEASURED}
        area_m2 = found["area"].kept
        faults += [fault for fault in (_slip(unit, found["area"].drawn), _too_wide(unit, area_m2)) if fault]
        filled = {MEASURED[what]: one.kept for what, one in found.items()}
        filled["worked_m2"] = _within(unit.worked_m2, area_m2)
        units[key] = replace(unit, **filled)  # type: ignore[arg-type]  # names of measures, checked by a test
        notes += [one.note for one in found.values() if one.note]
    if faults:
        raise BadInput(*faults)
    return replace(ground, units=units, notes=tuple(notes), typed=ground.units)


def how_measured(ground: Ground, key: str, what: str) -> Measured:
    """Return how a measure of a unit was come by, measured again as `measure` did; a watcher sees the steps.

    what: one of MEASURED. Raises KeyError for another, and for a unit that is not there.
    """
    unit = ground.typed.get(key) or ground.units[key]
    return _measured(unit, what, ground)


@formula("minimum(typed_m2, drawn_m2)", gives="m2", source="ours", typed_m2=(1, 1_000_000), drawn_m2=(1, 1_000_000))
def smaller_area_m2(typed_m2: float, drawn_m2: float) -> float:
    """Return the smaller of two measures of an area [m2]: it keeps what may be put on it in a year."""
    return min(typed_m2, drawn_m2)


@formula("minimum(typed_m, drawn_m)", gives="m", source="ours", typed_m=(0, 1000), drawn_m=(0, 1000))
def smaller_distance_m(typed_m: float, drawn_m: float) -> float:
    """Return the smaller of two measures of a distance [m], each infinite where there is none: it keeps a set-back."""
    return min(typed_m, drawn_m)


def _slip(unit: Unit, drawn_m2: float | None) -> Fault | None:
    if unit.area_m2 is None or drawn_m2 is None or drawn_m2 / _SLIP <= unit.area_m2 <= drawn_m2 * _SLIP:
        return None
    return Fault(
        f"area {_acres(unit.area_m2)} typed, {_acres(drawn_m2)} drawn",
        "an area near the one drawn; take the typed one out, or mend the corners (longitude first)",
        row=f"unit {unit.key}", field="area",
    )  # fmt: skip


def _too_wide(unit: Unit, area_m2: float | None) -> Fault | None:
    if unit.worked_m2 is None or area_m2 is None or unit.worked_m2 <= area_m2 * (1 + _SAME_AREA):
        return None
    return Fault(
        f"{_acres(unit.worked_m2)} worked in a unit of {_acres(area_m2)}",
        "the ground in the unit on which the stems stand, not larger than the unit",
        row=f"unit {unit.key}", field="worked",
    )  # fmt: skip


def _within(worked_m2: float | None, area_m2: float | None) -> float | None:
    return worked_m2 if worked_m2 is None or area_m2 is None else min(worked_m2, area_m2)


def _measured(unit: Unit, what: str, ground: Ground) -> Measured:
    return _area(unit) if what == "area" else _distance(unit, what, getattr(unit, MEASURED[what]), ground)


def _area(unit: Unit) -> Measured:
    typed, drawn = unit.area_m2, _drawn_m2(unit)
    if typed is None or drawn is None:
        return Measured(typed, drawn, drawn if typed is None else typed)
    same = abs(typed - drawn) <= _SAME_AREA * drawn
    note = "" if same else f"{unit.name}: {_acres(typed)} typed and {_acres(drawn)} drawn; the smaller is used"
    return Measured(typed, drawn, smaller_area_m2(typed, drawn), note)


def _drawn_m2(unit: Unit) -> float | None:
    if not unit.polygon:
        return None
    said = (
        f"within the outline of {len(unit.polygon)} corners, its sides geodesics on the WGS 84 ellipsoid, by the open "
        f"library PROJ (Karney 2013, J. Geodesy 87:43-55)"
    )
    return use(Cited(area_m2(unit.polygon), "m2", "geometry", Mark.RECKONED, said))


def _distance(unit: Unit, kind: str, typed: float | None, ground: Ground) -> Measured:
    drawn = _drawn_m(unit, kind, ground)
    if typed is None or drawn is None:
        return Measured(typed, drawn, drawn if typed is None else typed)
    same = typed == drawn or abs(typed - drawn) <= _SAME_M
    said = f"{kind} {_feet(typed)} away typed, {_feet(drawn)} drawn"
    note = "" if same else f"{unit.name}: {said}; the smaller is used"
    return Measured(typed, drawn, smaller_distance_m(typed, drawn), note)


def _drawn_m(unit: Unit, kind: str, ground: Ground) -> float | None:
    there = [one for whole in ground.features if whole.kind == kind for one in _sides(whole)]
    if not there:
        return math.inf if kind in ground.looked_for else None
    if not unit.polygon:
        return None
    found, at = nearest(unit.polygon, [one.line for one in there])
    which = f"the nearest of {len(there)} drawn" if len(there) > 1 else "the only one drawn"
    said = (
        f"from the outline of {len(unit.polygon)} corners to {there[at].name}, {which}, "
        f"on the plane around the unit's middle, WGS 84"
    )
    return use(Cited(found, "m", "geometry", Mark.RECKONED, said))


def _sides(feature: Feature) -> tuple[Feature, ...]:
    """Return a feature as it is measured to: a boundary by its sides, for within a closed one lies one's own ground."""
    if feature.kind != "boundary" or len(feature.line) < 2:
        return (feature,)
    return tuple(replace(feature, line=side) for side in pairwise(feature.line))


def _acres(area_m2_: float) -> str:
    return show(convert(area_m2_, "m2", "ac"), "ac")


def _feet(distance: float) -> str:
    return "none" if math.isinf(distance) else show(convert(distance, "m", "ft"), "ft")
