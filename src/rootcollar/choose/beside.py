"""What is hit beside the stems: ground on which wanted plants are killed or hurt by what misses its mark."""

from __future__ import annotations

from rootcollar.choose.option import Piece, Way
from rootcollar.choose.setting import Setting
from rootcollar.kernel.doubt import Worlds, band, drawn, sure
from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.formula import formula, use
from rootcollar.kernel.units import convert
from rootcollar.reference import best, middle, spans

__all__ = ["line_side_m2", "side_area", "side_because", "side_words"]

_FEW_FT2 = 10  # ours: below it a tenth of a square foot is shown


def side_area(way: Way, setting: Setting) -> Worlds:
    """Return the ground round one stem on which other plants are killed or hurt by one visit [m2]; 0 without a mix.

    From the patches and reaches measured round treated trees (OFFT05), whatever the stem's size: thinner stems than
    those trees leave smaller ones. What goes on through roots or the air is not in it.
    Raises Refusal where nobody has published or guessed one.
    """
    recipe, method = way.visit.recipe, way.visit.method
    if recipe is None:
        return sure(0.0)
    rows = spans(setting.reference.methods[method].rows("side_area_m2", recipe.ingredient, recipe.carrier))
    if not rows:
        raise Refusal(f"ground hit beside a stem by {method}", limit="no figure is kept for it", do="take another way")
    row = best(rows, cautious="high")
    low, high, figure = row.value.low, row.value.high, use(middle(row))
    if low is None or high is None:
        return sure(figure)
    return drawn(setting.doubt, f"beside/{method}", low, figure, high)


@formula("stems * side_m2", gives="m2", source="arithmetic", stems=(0, 10000), side_m2=(0, 10))
def line_side_m2(stems: Worlds, side_m2: Worlds) -> Worlds:
    """Return the ground hit beside a stand by one visit [m2]; patches that overlap count twice.

    stems: its count. side_m2: round one stem [m2].
    """
    return stems * side_m2


def side_words(side_m2: Worlds) -> tuple[str, str]:
    """Return a ground hit beside [m2] in square feet, and its 10-90 % band, "" without doubt."""
    here = band(side_m2)
    low, high = (_bare(one) for one in (here.low, here.high))
    return f"{_bare(here.best)} sq ft", f"{low}–{high}" if low != high else ""


def side_because(side_m2: Worlds) -> tuple[Piece, ...]:
    """Return what is said of the ground hit beside a stem [m2] after a cost: never in it, so always beside it."""
    words, doubt = side_words(side_m2)
    return Piece("; beside each, "), Piece(words, "side"), Piece(f" hit{f' ({doubt})' if doubt else ''}")


def _bare(area_m2: float) -> str:
    feet = convert(area_m2, "m2", "sq ft")
    return f"{feet:,.1f}" if feet < _FEW_FT2 else f"{feet:,.0f}"
