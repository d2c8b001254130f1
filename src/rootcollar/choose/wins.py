"""What would make a dearer way win: the kill, the cost, the work, the mix or the price at which it costs no more."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from rootcollar.choose.cost import cost_per_kill, cost_per_stem, expected, share_needed
from rootcollar.choose.option import PerStem, Piece, joined
from rootcollar.kernel.doubt import Worlds, best, sure
from rootcollar.kernel.formula import formula
from rootcollar.kernel.units import convert
from rootcollar.mix.recipe import Recipe

__all__ = ["AtMost", "most_to_win", "wins", "wins_at"]


@dataclass(frozen=True, slots=True)
class AtMost:
    """A figure of a way at which it costs no more than another, all else as it is. most: at most; now: as reckoned.

    what: "minutes" of work on a stem, "mix" on a stem [mL], or "price" of the product [money/L]. part: what this
    figure brings to the cost of a stem killed; rest: what all else does; theirs: of the other way [money].
    """

    what: str
    now: float
    most: float
    part: float
    rest: float
    theirs: float

    def words(self, figure: float) -> str:
        """Return a figure of this kind in words, as it is shown."""
        if self.what == "minutes":
            return f"{figure:.2g} minutes"
        if self.what == "mix":
            return f"{convert(figure, 'mL', 'fl oz'):.2g} fl oz"
        return _dollars(figure * convert(1, "gal", "L"))


@formula(
    "now * (theirs - rest) / part", gives="as now", source="ours", now=(0.1, 1000), theirs=(10, 100),
    rest=(0, 10), part=(0.1, 100),
)  # fmt: skip
def most_to_win(now: float, theirs: float, rest: float, part: float) -> float:
    """Return how great a figure may be for a way to cost no more than another, when its cost goes by the figure.

    now: the figure as reckoned. theirs: what the other way costs per stem killed. part: what the figure brings to the
    cost of this way, above 0; rest: what all else does [money].
    """
    return now * (theirs - rest) / part


def wins_at(figures: PerStem, recipe: Recipe | None, theirs: float) -> tuple[AtMost, ...]:
    """Return the work, the mix and the price of product at which a dearer way would cost as little as another.

    theirs: what the other costs per stem killed [money]. Left out is what no amount above nothing would bring about.
    """
    wage, product_per_l, carrier_per_l = figures.rates
    pct = recipe.products_pct if recipe else 0.0
    mix_l = figures.mix_ml / 1000

    def each(minutes: Worlds, mix: Worlds, product: float, carrier: float) -> float:
        return expected(cost_per_kill(cost_per_stem(minutes, wage, mix, pct, product, carrier), figures.kill))

    nothing = sure(0.0)
    work = each(figures.minutes, nothing, 0.0, 0.0)
    product, carrier = each(nothing, mix_l, product_per_l, 0.0), each(nothing, mix_l, 0.0, carrier_per_l)
    parts = (
        ("minutes", best(figures.minutes), work, product + carrier),
        ("mix", best(figures.mix_ml), product + carrier, work),
        ("price", product_per_l, product, work + carrier),
    )
    return tuple(
        AtMost(what, now, most_to_win(now, theirs, rest, part), part, rest, theirs)
        for what, now, part, rest in parts
        if part > 0 and now > 0 and rest < theirs
    )


def wins(figures: PerStem, recipe: Recipe | None, theirs: float) -> tuple[Piece, ...]:
    """Return what would make a dearer way win, each by itself. theirs: of the chosen, per stem killed [money]."""
    told = [_of_all(figures, theirs), *(_pieces(one) for one in wins_at(figures, recipe, theirs))]
    kept = {joined(one): one for one in told if one}  # what rounds to the same words is told once
    out: list[Piece] = []
    for one in kept.values():
        out += [*([Piece("; or ")] if out else []), *one]
    return tuple(out)


def _of_all(figures: PerStem, theirs: float) -> tuple[Piece, ...]:
    """Say at which kill it would win, or, where no kill is enough, at which cost of a visit."""
    cost = figures.mean_cost
    needed = share_needed(cost, theirs) if theirs else 1.0
    if needed > 1:
        first, own = Piece(_dollars(theirs), "first"), Piece(_dollars(cost), "cost")
        return Piece("a visit cost "), first, Piece(" a stem or less (reckoned "), own, Piece(")")
    counted = share_needed(cost, figures.mean_cost_per_kill)
    share, own = Piece(f"{needed:.0%}", "needed"), Piece(f"{counted:.0%}", "counted")
    return Piece("it killed "), share, Piece(" of stems a visit (reckoned "), own, Piece(" with its doubt)")


def _pieces(one: AtMost) -> tuple[Piece, ...]:
    before, unit, figure = _WORDS[one.what]
    most = Piece(one.words(one.most), figure)
    return Piece(before), most, Piece(f"{unit} or less (reckoned {one.words(one.now)})")


_WORDS: Mapping[str, tuple[str, str, Literal["minutes_at", "mix_at", "price_at"]]] = {
    "minutes": ("its work took ", " a stem", "minutes_at"),
    "mix": ("it took ", " of mix a stem", "mix_at"),
    "price": ("its product cost ", " a gallon", "price_at"),
}


def _dollars(amount: float) -> str:
    return f"${amount:,.2f}"
