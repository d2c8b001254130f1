"""Gloves by what is in the mix: solvent groups, how long a material holds, the rule's own words, liners."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from enum import IntEnum

from rootcollar.kernel.formula import formula
from rootcollar.reference import NamedFigure, named

__all__ = ["Chart", "Rating", "liner_hours_left", "material_of", "read_chart", "solvent_groups", "weaker_rating"]

_WATER_BASED, _PETROLEUM = ("A",), ("E", "G")
_IN_WATER = frozenset({"SL", "WG", "GR", "WP", "SP", "DF", "AS", "L"})  # kinds without a solvent that eats gloves
_OTHER_NAMES = {
    "laminate": "barrier laminate", "butyl rubber": "butyl", "nitrile rubber": "nitrile", "neoprene rubber": "neoprene",
    "latex": "natural rubber", "rubber": "natural rubber", "polyvinyl chloride": "PVC", "vinyl": "PVC",
    "fkm": "fluoro-elastomer", "fluoroelastomer": "fluoro-elastomer", "pe": "polyethylene",
    "fluoro elastomer": "fluoro-elastomer",
}  # fmt: skip


class Rating(IntEnum):
    """How long a material holds a solvent group off, best last."""

    NONE = 0
    SLIGHT = 1
    MODERATE = 2
    HIGH = 3


_LETTERS = {"N": Rating.NONE, "S": Rating.SLIGHT, "M": Rating.MODERATE, "H": Rating.HIGH}


@dataclass(frozen=True, slots=True)
class Chart:
    """The chart of groups and materials, from memory. words: what a group's letter stands for."""

    materials: tuple[str, ...]
    ratings: Mapping[str, Mapping[str, Rating]]
    words: Mapping[str, str]

    def weakest(self, material: str, groups: Sequence[str]) -> Rating:
        """Return how a material holds against every one of the groups: as it does against the worst for it."""
        found = self.ratings[groups[0]][material]
        for group in groups[1:]:
            found = Rating(weaker_rating(found, self.ratings[group][material]))
        return found

    def rated(self, rating: Rating, groups: Sequence[str]) -> tuple[str, ...]:
        """Return the materials of just that rating against all of the groups, in the chart's order."""
        return tuple(one for one in self.materials if self.weakest(one, groups) is rating)


@formula("minimum(one, other)", gives="rating", source="ours", one=(0, 3), other=(0, 3))
def weaker_rating(one: int, other: int) -> int:
    """Return the weaker of two ratings, 0 to 3: a glove is as good as it is against the worst in the mix (ours)."""
    return min(one, other)


@formula(
    "minimum(most_used_h - used_h, most_since_h - since_h)",
    gives="h",
    source="CFR15",
    used_h=(0, 12),
    since_h=(0, 30),
    most_used_h=(8, 12),
    most_since_h=(20, 28),
)
def liner_hours_left(used_h: float, since_h: float, most_used_h: float, most_since_h: float) -> float:
    """Return how long a separable glove liner may still be used [h]; 0 and less: throw it away [CFR15, 170.240].

    used_h: hours of use so far. since_h: hours since it was first put on. most_used_h, most_since_h: the rule's limits.
    """
    return min(most_used_h - used_h, most_since_h - since_h)


def read_chart(rows: Sequence[NamedFigure]) -> Chart:
    """Return the chart from the topic `gloves_chart` of the facts."""
    (listed,) = named(rows, "materials")
    materials = listed.value if isinstance(listed.value, tuple) else ()
    cells = {row.name: row.figure for row in rows if row.name != "materials"}
    ratings = {
        name: dict(zip(materials, (_LETTERS[one] for one in figure.value), strict=True))
        for name, figure in cells.items()
        if isinstance(figure.value, tuple)
    }
    return Chart(materials, ratings, {name: figure.holds_for for name, figure in cells.items()})


def solvent_groups(kind: str, carrier: str) -> tuple[str, ...]:
    """Return the groups of the chart that a mix, or the jug it comes from, may belong to.

    kind: of the product, as SL, WG or EC; "" while not known. carrier: water, oil or none. Water-based and thinned only
    with water is group A. Oil and emulsifiable concentrates are petroleum of a kind that only the label or the safety
    sheet tells: E and G both. An unknown kind counts as petroleum.
    """
    return _WATER_BASED if carrier != "oil" and kind.upper() in _IN_WATER else _PETROLEUM


def material_of(words: str, materials: Iterable[str]) -> str:
    """Return the chart's material that some words name: "nitrile >= 14 mil gloves" is nitrile; "" for none of them."""
    flat = " ".join(words.lower().replace("-", " ").split())
    names = {name.lower().replace("-", " "): name for name in materials} | _OTHER_NAMES
    padded = f" {flat} "
    return next((names[one] for one in sorted(names, key=len, reverse=True) if f" {one} " in padded), "")
