"""Figures of one kind side by side: what each source says, and where they differ which one is taken and why."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from rootcollar.jobs.facts_page import Line, cited
from rootcollar.jobs.facts_words import amount_words
from rootcollar.reference import Figure, Reference, Span, best, why

__all__ = ["Kind", "differing", "kind_of", "side_by_side"]

Careful = Literal["low", "high"]
Words = Callable[[Figure], str]


@dataclass(frozen=True, slots=True)
class Kind:
    """What a group of figures is: its name in words; which end is the careful one; the words that tell rows apart as
    speaking of two things (a salt and an ester, trout and bluegill), which then do not disagree.
    """

    name: str
    careful: Careful
    things: tuple[str, ...] = ()


# Names of figures whose careful end is the high one: waits, distances, how long a thing lasts or harms.
_HIGH = frozenset({
    "soil_half_life_d", "solubility_mg_per_l", "vapour_pressure_mpa", "rain_free_h", "seed_bank_years",
    "followup_years", "seeds_per_year", "dispersal_distance_m", "band_height_cm", "root_reach_m", "side_reach_m",
    "side_area_m2", "lost_share", "stand_before_felling_d", "drying_h", "above_wanted_cm", "sucker_reach_m",
    "water_half_life_d", "gus", "drain_s", "pressure_s", "rinse_fill_share", "gap_min_in", "gap_in_inlets",
})  # fmt: skip
_FORMS = ("acid", "amine", "tea", "bee", "ester", "salt", "tipa", "choline", "ethyl", "iso-octyl", "2-ethylhexyl")
_FISH = ("trout", "bluegill", "daphnia", "minnow", "chinook", "chronic", "field", "product", "loaded", "oil-solvent")
_WHERE = ("grazed", "spot", "riparian", "injection", "aquatic", "broadcast", "massachusetts", "year")
_LEAVES = ("organosilicone", "no organo", "nutsedge", "ryegrass", "celandine", "relative", "emergent")
_THINGS: Mapping[str, tuple[str, ...]] = {
    "soil_half_life_d": ("mineralisation",),
    "koc_ml_per_g": _FORMS,
    "solubility_mg_per_l": (*_FORMS, "ph"),
    "vapour_pressure_mpa": (*_FORMS, "60", "35", "20"),
    "fish_lc50_mg_per_l": (*_FORMS, *_FISH, "butoxyethyl", "propylene"),
    "rain_free_h": (*_FORMS, *_LEAVES),
    "max_per_acre_year": (*_FORMS, *_WHERE),
    "rate_per_acre": (*_FORMS, *_WHERE),
    "gus": (*_FORMS, "koc"),
    "pka": ("first", "second", "third"),
    "kf": ("picloram",),
    "movement": ("deep", "downslope"),
    "granule_release": ("day",),
    "henry": (),
}


_SLIP = "not to be "  # said of a printed figure that is a slip: kept so that nobody copies it, never chosen


def kind_of(name: str, words: str) -> Kind:
    """Return the kind of a figure by the name it has in the data and the words it is told in."""
    return Kind(words, "high" if name in _HIGH else "low", _THINGS.get(name, ()))


def side_by_side(
    kind: Kind, rows: Sequence[Figure], reference: Reference, words: Words = amount_words
) -> Iterator[Line]:
    """Yield a line for each value, sources that say the same on one line; last, where they differ, what is taken."""
    alike: dict[tuple[str, str], list[Figure]] = {}
    for row in rows:
        alike.setdefault((words(row), row.holds_for), []).append(row)
    told = len(alike) > 1
    for (value, holds_for), same in alike.items():
        long = isinstance(same[0].value, str | bool | tuple)
        held = "" if holds_for in value else holds_for
        said = f"{value}; {held}" if long and held else value if long else held
        yield Line(kind.name, "" if long else value, said, cited(*same))
    if told:
        yield from (Line(kind.name, "", taken, ()) for taken in differing(kind, rows, reference, words))


def differing(kind: Kind, rows: Sequence[Figure], reference: Reference, words: Words = amount_words) -> Iterator[str]:
    """Yield for each thing on which two sources give different numbers which one is taken, and why."""
    for group in _things(kind, rows):
        told = {words(row) for row in group}
        if len(told) > 1 and len({row.source for row in group}) > 1:
            chosen = best(group, cautious=kind.careful, sources=reference.sources)
            because = why(group, cautious=kind.careful, sources=reference.sources)
            against = " against ".join(dict.fromkeys(words(row) for row in group))
            yield f"sources differ, {against}; taken here: {words(chosen)} [{chosen.source}], {because}"


def _things(kind: Kind, rows: Iterable[Figure]) -> Iterator[list[Figure]]:
    groups: dict[tuple[str, frozenset[str]], list[Figure]] = {}
    for row in rows:
        counts = isinstance(row.value, int | float | Span) and not isinstance(row.value, bool)
        if counts and _SLIP not in row.holds_for:
            held = row.holds_for.casefold()
            thing = frozenset(word for word in kind.things if word in held)
            groups.setdefault((row.unit, thing), []).append(row)
    yield from groups.values()
