"""What speaks for a unit to come early: seed, room for seedlings, lying apart, water and trails. Each a share."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from rootcollar.choose.option import Choice
from rootcollar.choose.setting import Setting
from rootcollar.choose.sums import stems
from rootcollar.kernel.doubt import Worlds, best
from rootcollar.kernel.formula import add_up, formula, note, unwatched, use
from rootcollar.kernel.sources import Cited
from rootcollar.kernel.units import convert
from rootcollar.reference import Span
from rootcollar.reference import best as chosen
from rootcollar.site import LonLat, Unit, distance_m
from rootcollar.survey import stems_per_acre

__all__ = ["REASONS", "Speaks", "apart", "carried", "fruit", "room", "speaks_for", "thickness", "thicknesses"]

REASONS = ("fruit", "room", "apart", "carried")
_DIGITS = 6  # ours: distances are compared to so many places, so that the last bit decides nothing
_WAYS_OFF = {"water": ("water",), "trail": ("people", "vehicle", "mower", "equipment")}  # words of `dispersal`


@dataclass(frozen=True, slots=True)
class Speaks:
    """How much one reason speaks for a unit. share: from 0 to 1; None: not known. words: the same said."""

    reason: str
    share: float | None
    words: str


@formula("fruiting / looked", gives="share", source="ours", fruiting=(0, 1000), looked=(1, 1000))
def fruit(fruiting: float, looked: float) -> float:
    """Return the share of stems that bear seed. looked: stems of which somebody wrote whether they do."""
    return fruiting / looked


@formula("1 / (1 + per_ha / crowd)", gives="share", source="ours", per_ha=(0, 20000), crowd=(100, 2000))
def room(per_ha: float, crowd: float) -> float:
    """Return the share of seedlings that find room, of those on empty ground. crowd: stems a hectare that halve it."""
    return 1 / (1 + per_ha / crowd)


@formula("1 - exp(-gap_m / far_m)", gives="share", source="ours", gap_m=(0, 1000), far_m=(5, 300))
def apart(gap_m: float, far_m: float) -> float:
    """Return the share of seed of the thicker ground that does not reach a unit. gap_m: between them [m]."""
    return float(1 - np.exp(-gap_m / far_m))


@formula("share * exp(-away_m / far_m)", gives="share", source="ours", share=(0, 1), away_m=(0, 1000), far_m=(5, 300))
def carried(share: float, away_m: float, far_m: float) -> float:
    """Return how much of a unit's seed is carried off. share: of its stems, whose seed goes so. away_m: to it [m]."""
    return float(share * np.exp(-away_m / far_m))


def thicknesses(by_unit: Mapping[str, Sequence[Choice]], setting: Setting) -> Mapping[str, float | None]:
    """Return the best figure of the stems an acre of each unit; None while its area is unknown. by_unit: all lines."""
    with unwatched():
        found = {key: thickness(lines, setting.ground.units[key]) for key, lines in by_unit.items()}
    return {key: None if one is None else best(one) for key, one in found.items()}


def speaks_for(
    unit: Unit, by_unit: Mapping[str, Sequence[Choice]], thick: Mapping[str, float | None], setting: Setting
) -> tuple[Speaks, ...]:
    """Return what speaks for a unit, one of each of `REASONS`. by_unit: lines of all units; thick: `thicknesses`."""
    lines = by_unit[unit.key]
    return (
        _fruit(lines, setting), _room(lines, unit, setting), _apart(unit, by_unit, thick, setting),
        _carried(lines, unit, setting),
    )  # fmt: skip


def thickness(choices: Sequence[Choice], unit: Unit) -> Worlds | None:
    """Return the stems an acre of all that was counted on a unit; None while its area is unknown."""
    if not unit.area_m2:
        return None
    return stems_per_acre(stems(choices), convert(unit.area_m2, "m2", "ac"))


def _fruit(lines: Sequence[Choice], setting: Setting) -> Speaks:
    looked = [one.stand for one in lines if one.stand.fruiting is not None]
    whole = sum(best(one.stems) for one in looked)
    if not whole:
        return Speaks("fruit", None, f"whether its stems bear seed is not known{_first_fruit(lines, setting)}")
    bearing = sum(best(one.stems) for one in looked if one.fruiting)
    share = fruit(
        note("stems that bear seed", " + ".join(f"{best(one.stems):.6g}" for one in looked if one.fruiting) or "none",
             bearing, "stems"),
        note("stems looked at", " + ".join(f"{best(one.stems):.6g}" for one in looked), whole, "stems"),
    )  # fmt: skip
    of = "of its stems" if len(looked) == len(lines) else "of the stems looked at"
    return Speaks("fruit", share, f"{share:.0%} {of} bear seed" if share else f"none {of} bears seed")


def _first_fruit(lines: Sequence[Choice], setting: Setting) -> str:
    """Return from which age the plants here fruit, in brackets; "" where no source says so of any of them.

    An age says nothing of stems that were measured, not dated: it helps whoever goes to look.
    """
    told = []
    for key in sorted({one.stand.species for one in lines}):
        species = setting.reference.species[key]
        spans = [row for row in species.first_fruit_years if isinstance(row.value, Span)]
        if spans and isinstance(row := chosen(spans).value, Span):
            ends = dict.fromkeys(f"{end:g}" for end in (row.low, row.high) if end is not None)
            told.append(f"{species.common_name} first fruits at {' to '.join(ends)} years")
    return f" ({'; '.join(told)})" if told else ""


def _room(lines: Sequence[Choice], unit: Unit, setting: Setting) -> Speaks:
    per_acre = thickness(lines, unit)
    if per_acre is None:
        return Speaks("room", None, "its area is not known, so neither is how thick its stems stand")
    per_ha = note("stems a hectare", "of the stems an acre", best(per_acre) / convert(1, "ac", "ha"), "stems/ha")
    share = room(per_ha, use(_figure("crowd", setting)))
    return Speaks("room", share, f"at {best(per_acre):,.0f} stems an acre seedlings find {share:.0%} of the room")


def _apart(
    unit: Unit, by_unit: Mapping[str, Sequence[Choice]], thick: Mapping[str, float | None], setting: Setting
) -> Speaks:
    """Return how far thicker ground lies: a small outlier stays clean, an edge of a thicket is sown again."""
    mine = thick[unit.key]
    if mine is None:
        return Speaks("apart", None, "how far it lies from thicker ground is not known")
    times = use(_figure("thicker", setting))
    others = {key: thick[key] for key in sorted(by_unit) if key != unit.key}
    thicker = [key for key, found in others.items() if found is not None and found >= times * mine]
    if None in others.values() and not thicker:
        return Speaks("apart", None, "whether thicker ground lies near is not known")
    if not thicker:
        share = note("lies apart", "no ground here is so much thicker", 0.0, "share", "ours")
        return Speaks("apart", share, "no thicker ground to lie apart from")
    outlines = {key: setting.ground.units[key].polygon for key in thicker}
    if unit.polygon is None or None in outlines.values():
        return Speaks("apart", None, "how far it lies from thicker ground is not drawn")
    gaps = {key: _gap_m(unit.polygon, outline) for key, outline in outlines.items() if outline}
    with unwatched():
        reached = {key: gaps[key] / _far(by_unit[key], setting) for key in thicker}
    key = min(thicker, key=lambda one: (round(reached[one], _DIGITS), one))
    name = setting.ground.units[key].name
    share = apart(note("gap", f"to {name}, on the map", gaps[key], "m"), _far(by_unit[key], setting))
    feet = f"{convert(gaps[key], 'm', 'ft'):,.0f} ft from thicker ground ({name})"
    return Speaks("apart", share, feet if share else f"it touches thicker ground ({name})")


def _carried(lines: Sequence[Choice], unit: Unit, setting: Setting) -> Speaks:
    """Return how much of the seed water, feet or wheels take on, by what the sources say carries each plant's seed."""
    away = {"water": unit.water_m, "trail": unit.trail_m}
    if None in away.values():
        missing = " and ".join(name for name, found in away.items() if found is None)
        return Speaks("carried", None, f"how far {missing} is, which carries seed off, is not known")
    found = [(_off(lines, name, metres, setting), name) for name, metres in sorted(away.items()) if metres is not None]
    share, name = max(found, key=lambda one: (round(one[0], _DIGITS), one[1]))
    if round(share, 2) <= 0:
        return Speaks("carried", share, "no water or trail near carries its seed off")
    return Speaks("carried", share, f"the {name} carries seed off ({share:.0%})")


def _off(lines: Sequence[Choice], name: str, away_m: float, setting: Setting) -> float:
    species = setting.reference.species
    whole = best(stems(lines))
    keys = sorted({
        one.stand.species for one in lines if set(species[one.stand.species].dispersal.value) & set(_WAYS_OFF[name])
    })  # fmt: skip
    if not whole or not keys or away_m == float("inf"):
        return 0.0
    shares = []
    for key in keys:
        use(species[key].dispersal)
        mine = [one for one in lines if one.stand.species == key]
        part = note(
            f"stems whose seed goes with {'water' if name == 'water' else 'feet or wheels'}", species[key].common_name,
            best(stems(mine)) / whole, "share",
        )  # fmt: skip
        away = note(f"to the nearest {name}", "from the unit's edge", away_m, "m")
        shares.append(carried(part, away, _far(mine, setting)))
    return add_up(shares, "share", f"carried off by the {name}")


def _far(lines: Sequence[Choice], setting: Setting) -> float:
    """Return how far seed goes that leaves where it fell [m]: of the plants the farthest; ours where none is known."""
    of = [setting.reference.species[key].dispersal_distance_m for key in sorted({one.stand.species for one in lines})]
    known = [
        (row.value.high or row.value.low or 0.0, row) for rows in of for row in rows if isinstance(row.value, Span)
    ]
    ours = _figure("far", setting)
    metres, row = max(known, key=lambda one: (one[0], one[1].source), default=(ours.value, None))
    if row is None or (metres < ours.value and not all(of)):
        return use(ours)
    told = f"{row.mark}: {row.holds_for}" if row.holds_for else f"{row.mark}"
    return note("how far seed goes", told, metres, "m", row.source)


def _figure(name: str, setting: Setting) -> Cited[float]:
    return setting.reference.after["order"][name]


@lru_cache(maxsize=4096)
def _gap_m(one: tuple[LonLat, ...], other: tuple[LonLat, ...]) -> float:
    """Return how far two outlines are apart [m]; kept, because a map changes less often than a plan."""
    return distance_m(one, [(*other, other[0])])
