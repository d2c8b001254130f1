"""Ways that no other way beats in everything: money, visits, ground hit beside and products, until the share is dead.

Every way is taken to the same share of dead stems, so what it kills of a visit counts by the visits that it needs.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TypeVar

from rootcollar.choose.cost import expected
from rootcollar.choose.option import Figured, Option, PerStem, Way
from rootcollar.choose.visits import all_visits, stem_visits, visits_to_share
from rootcollar.choose.words import way_words
from rootcollar.kernel.doubt import best
from rootcollar.kernel.units import convert

__all__ = ["ToShare", "beaten_by", "better_at", "on_front", "products_in", "taken_by", "to_share"]

AnyWay = TypeVar("AnyWay", Figured, Option)

_CM2 = 10_000  # in a square metre


@dataclass(frozen=True, slots=True)
class ToShare:
    """What one stem takes until the share is dead, in whole numbers, so that the same ways are equal on any machine.

    cents: expected cost [1/100 of the money]. visits: best figure. side_cm2: expected ground hit beside [cm2], patches
    of several visits added up. products: herbicides in the mix.
    """

    cents: int
    visits: int
    side_cm2: int
    products: int = 0

    def beats(self, other: ToShare) -> bool:
        """Return whether it is no worse in anything, and better in something."""
        return self != other and (
            self.cents <= other.cents
            and self.visits <= other.visits
            and self.side_cm2 <= other.side_cm2
            and self.products <= other.products
        )


def to_share(figures: PerStem, share: float, products: int = 0) -> ToShare:
    """Return what one stem takes until a share of them is dead. share: below 1. products: herbicides in the mix."""
    visits = visits_to_share(figures.kill, share)
    times = stem_visits(figures.kill, visits)
    cents = round(100 * expected(all_visits(figures.cost, times)))
    side = round(_CM2 * expected(all_visits(figures.side_m2, times)))
    return ToShare(cents, round(best(visits)), side, products)


def taken_by(one: Figured | Option, share: float) -> ToShare:
    """Return what one stem takes by a way until a share of the stems is dead."""
    return to_share(one.per_stem, share, products_in(one.way))


def products_in(way: Way) -> int:
    """Return how many herbicides the mix of a way holds; a fertiliser is none."""
    recipe = way.visit.recipe
    if recipe is None:
        return 0
    return 1 if recipe.partner is None or recipe.partner.fertiliser else 2


def on_front(ways: Sequence[AnyWay], share: float) -> tuple[AnyWay, ...]:
    """Return the ways that no other one of them beats, in their order. share: to be dead at the end."""
    taken = tuple(taken_by(one, share) for one in ways)
    return tuple(one for one, stays in zip(ways, _unbeaten(taken), strict=True) if stays)


def _unbeaten(taken: tuple[ToShare, ...]) -> tuple[bool, ...]:
    return tuple(not any(other.beats(one) for other in taken) for one in taken)


def better_at(mine: ToShare, theirs: ToShare) -> str:
    """Return in a few words what a way is better at than another until the share is dead; nothing: at nothing."""
    told = (
        ("costs less to the target", mine.cents < theirs.cents),
        ("fewer visits", mine.visits < theirs.visits),
        ("hits less beside", mine.side_cm2 < theirs.side_cm2),
        ("fewer products", mine.products < theirs.products),
    )
    return ", ".join(words for words, better in told if better)


def beaten_by(one: AnyWay, ways: Sequence[AnyWay], share: float) -> str:
    """Return one sentence on which of some ways beats this one in everything, and by what; nothing: none does.

    The first of those that do, in their order, is named.
    """
    mine = taken_by(one, share)
    for other in ways:
        theirs = taken_by(other, share)
        if theirs.beats(mine):
            return _beaten(mine, theirs, other.way)
    return ""


def _beaten(mine: ToShare, theirs: ToShare, way: Way) -> str:
    """Say by what a way is beaten by another."""
    visits, products = mine.visits - theirs.visits, mine.products - theirs.products
    money, feet = (mine.cents - theirs.cents) / 100, convert((mine.side_cm2 - theirs.side_cm2) / _CM2, "m2", "sq ft")
    more = (
        f"costs ${money:,.2f} more" if mine.cents > theirs.cents else "",
        f"takes {visits} visit{'' if visits == 1 else 's'} more" if visits else "",
        f"hits {feet:.2g} sq ft more beside" if mine.side_cm2 > theirs.side_cm2 else "",
        f"needs {products} product{'' if products == 1 else 's'} more" if products else "",
    )
    return f"better than {way_words(way)} in nothing: to the target a stem {' and '.join(filter(None, more))}"
