"""Which unit first: follow-up that is owed, then what seed, room, lying apart, water and trails speak for."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from rootcollar.choose.option import Choice
from rootcollar.choose.owed import Owed, owed_soon
from rootcollar.choose.setting import Setting
from rootcollar.choose.why_first import REASONS, Speaks, speaks_for, thicknesses
from rootcollar.kernel.formula import add_up, formula, note, use

__all__ = ["Place", "order_units", "place_working", "points", "weighed"]

_DIGITS = 6  # ours: points are compared to so many places, so that the last bit of a sum decides nothing


@dataclass(frozen=True, slots=True)
class Place:
    """Why a unit stands where it stands. points: of 100; per reason what it counted as, and what is owed.

    works: whether anything can be worked. counted: of each reason, the share that went in; of one not known, the mean
    of the units of which it is known. alone: whether there is no other unit to go before or after.
    """

    key: str
    works: bool
    speaks: tuple[Speaks, ...] = ()
    counted: tuple[float, ...] = ()
    owed: tuple[Owed, ...] = ()
    points: float = 0.0
    alone: bool = False

    @property
    def before(self) -> str:
        """The reason up to its points."""
        if not self.works:
            shut = "nothing can be worked here until what is struck out or asked is settled"
            return "; ".join([shut, *(one.words for one in self.owed)])
        told = [f"{'first, because ' if not place else ''}{one.words}" for place, one in enumerate(self.owed)]
        if self.alone:
            return "; ".join(told) or "the only unit"
        return "".join(f"{one}; " for one in told)

    @property
    def figure(self) -> str:
        """Its points, "" where nothing can be worked, or nothing is to be put in order."""
        return f"{self.points:.0f} of 100" if self.works and not self.alone else ""

    @property
    def after(self) -> str:
        """The reason after its points: what speaks most for it first, what is not known last."""
        if not self.figure:
            return ""
        both = sorted(
            zip(self.speaks, self.counted, strict=True),
            key=lambda one: (one[0].share is None, -round(one[1], _DIGITS), one[0].reason),
        )
        told = [
            f"{one.words} (counted as the others' middle, {share:.0%})" if one.share is None else one.words
            for one, share in both
            if one.share is None or round(share, 2) > 0
        ]
        return f" points: {'; '.join(told) or 'nothing known speaks for it'}"

    @property
    def because(self) -> str:
        """The whole reason in words."""
        return f"{self.before}{self.figure}{self.after}"


@formula("share * counts", gives="weighed", source="ours", share=(0, 1), counts=(0, 5))
def weighed(share: float, counts: float) -> float:
    """Return what a reason brings. share: how much it speaks for a unit, 0 to 1. counts: its weight."""
    return share * counts


@formula("100 * whole / counts", gives="of 100", source="ours", whole=(0, 5), counts=(1, 20))
def points(whole: float, counts: float) -> float:
    """Return the weighed mean of what speaks for a unit, of 100. whole: of all reasons. counts: their weights' sum."""
    return 100 * whole / counts


def order_units(choices: Sequence[Choice], setting: Setting) -> tuple[Place, ...]:
    """Return the units in the order to work them, each with why.

    Units where something can be worked come before units wholly struck out or held. Among them those to which
    follow-up is owed, the longest owed first: what is missed there is lost with all that was spent. Then the most
    points: small, thinly held ground far from a thicket, seed on the stems, water or feet that carry it off (the idea
    of Moody and Mack 1988, J. Appl. Ecol. 25:1009-1021; no figure of theirs is used). What is not known of a unit
    counts as the middle of the others: it neither helps nor hurts. Ties go by key.
    """
    by_unit = _by_unit(choices)
    units = setting.ground.units
    owed = owed_soon(setting)
    thick = thicknesses(by_unit, setting)
    told = {key: speaks_for(units[key], by_unit, thick, setting) for key in by_unit}
    middles = _middles(tuple(told.values()))
    places = []
    for key, lines in by_unit.items():
        counted = tuple(middles[one.reason] if one.share is None else one.share for one in told[key])
        works = any(one.is_work for one in lines)
        place = Place(key, works, told[key], counted, owed.get(key, ()))
        places.append(replace(place, points=_points(counted, setting), alone=len(by_unit) == 1))
    return tuple(sorted(places, key=_rank))


def place_working(place: Place, choices: Sequence[Choice], setting: Setting) -> float:
    """Return the points of a place again, to be watched. choices: all lines of the plan."""
    by_unit = _by_unit(choices)
    speaks_for(setting.ground.units[place.key], by_unit, thicknesses(by_unit, setting), setting)
    counted = []
    for one, share in zip(place.speaks, place.counted, strict=True):
        says = "not known: counted as the mean of the others" if one.share is None else one.words
        counted.append(note(one.reason, says, share, "share", "ours"))
    return _points(counted, setting)


def _rank(place: Place) -> tuple[bool, bool, str, float, str]:
    since = min((one.due.isoformat() for one in place.owed), default="")
    return not place.works, not place.owed, since, -round(place.points, _DIGITS), place.key


def _by_unit(choices: Sequence[Choice]) -> dict[str, list[Choice]]:
    found: dict[str, list[Choice]] = {}
    for choice in choices:
        found.setdefault(choice.stand.unit, []).append(choice)
    return found


def _middles(told: Sequence[tuple[Speaks, ...]]) -> Mapping[str, float]:
    """Return the mean of each reason over the units of which it is known; 0 where it is known of none."""
    found = {}
    for reason in REASONS:
        known = sorted(one.share for each in told for one in each if one.reason == reason and one.share is not None)
        found[reason] = sum(known) / len(known) if known else 0.0
    return found


def _points(counted: Sequence[float], setting: Setting) -> float:
    """Return the points of a unit. counted: of each reason in order, the share that goes in."""
    counts = [_weight(reason, setting) for reason in REASONS]
    parts = [weighed(share, weight) for share, weight in zip(counted, counts, strict=True)]
    return points(add_up(parts, "weighed", "of all reasons"), add_up(counts, "weight", "all weights"))


def _weight(reason: str, setting: Setting) -> float:
    """Return what a reason counts for: the crew's own figure, or ours."""
    own = dict(setting.own.first).get(reason)
    if own is not None:
        return note(f"weight of {reason}", "[first] in own.toml", own, "weight", "ours")
    return use(setting.reference.after["order"][reason])
