"""Which unit first: thinly held ground before thick, because the few far plants are the next thickets."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from rootcollar.choose.option import Choice
from rootcollar.choose.sums import stems
from rootcollar.kernel.doubt import Worlds, best
from rootcollar.kernel.units import convert
from rootcollar.site import Unit
from rootcollar.survey import stems_per_acre

__all__ = ["Place", "order_units", "place_of", "thickness"]


@dataclass(frozen=True, slots=True)
class Place:
    """Why a unit stands where it stands. per_acre: its stems an acre, "" where they did not count; before, after it."""

    before: str
    per_acre: str = ""
    after: str = ""

    @property
    def because(self) -> str:
        """The whole reason in words."""
        return f"{self.before}{self.per_acre}{self.after}"


def order_units(choices: Sequence[Choice], units: Mapping[str, Unit]) -> tuple[tuple[str, str], ...]:
    """Return (unit key, reason) in the order to work them.

    Units where something can be worked now come before units wholly struck out or held; among them the fewest stems
    an acre first: small outlying groups grow fastest for their number, and a unit kept clear stays cheap (Moody and
    Mack 1988, J. Appl. Ecol. 25:1009-1021, the idea; no figure of theirs is used). Units of unknown area come last of
    their kind. Ties go by key.
    """
    by_unit: dict[str, list[Choice]] = {}
    for choice in choices:
        by_unit.setdefault(choice.stand.unit, []).append(choice)

    def rank(key: str) -> tuple[bool, bool, float, str]:
        per_acre = _best_thickness(by_unit[key], units[key])
        return (not _workable(by_unit[key]), per_acre is None, per_acre or 0.0, key)

    ordered = sorted(by_unit, key=rank)
    return tuple((key, place_of(by_unit[key], units[key], place).because) for place, key in enumerate(ordered))


def thickness(choices: Sequence[Choice], unit: Unit) -> Worlds | None:
    """Return the stems an acre of all that was counted on a unit; None while its area is unknown."""
    if not unit.area_m2:
        return None
    return stems_per_acre(stems(choices), convert(unit.area_m2, "m2", "ac"))


def _best_thickness(choices: Sequence[Choice], unit: Unit) -> float | None:
    found = thickness(choices, unit)
    return None if found is None else best(found)


def _workable(choices: Sequence[Choice]) -> bool:
    return any(one.is_work for one in choices)


def place_of(choices: Sequence[Choice], unit: Unit, place: int) -> Place:
    """Return why a unit stands at a place of the order. choices: all its lines; place: 0 the first."""
    if not _workable(choices):
        return Place("nothing can be worked here until what is struck out or asked is settled")
    per_acre = _best_thickness(choices, unit)
    if per_acre is None:
        return Place("its area is not known, so it cannot be compared with the others")
    fruiting = any(one.stand.fruiting for one in choices)
    seeds = "; it holds fruiting stems" if fruiting else ""
    thin = "the thinnest infestation" if place == 0 else "next in thickness"
    return Place(f"{thin}: ", f"{per_acre:,.0f}", f" stems an acre{seeds}")
