"""What to buy for a mix: product, carrier and additives, in the sizes that are sold."""

from __future__ import annotations

from dataclasses import replace

from rootcollar.kernel.units import convert, show
from rootcollar.mix import Container, Recipe, cheapest, product_in_ml
from rootcollar.reference import Reference
from rootcollar.work import text

__all__ = ["to_buy"]


def to_buy(recipe: Recipe, total_ml: float, reference: Reference) -> tuple[tuple[str, str], ...]:
    """Return (what, how much of it in which containers) for so much finished mix [mL].

    Sizes are those usually sold (from memory, put your own in), so it is a list to check against the shop's.
    """
    product_ml = product_in_ml(total_ml, recipe.strength_pct)
    parts = [("product", product_ml, "liquid")]
    oil_ml = total_ml - product_ml if recipe.carrier == "oil" else 0.0
    parts += [("basal oil", oil_ml, "oil")] if oil_ml else []
    surfactant_ml = product_in_ml(total_ml, recipe.surfactant_pct) if recipe.surfactant_pct else 0.0
    parts += [("surfactant", surfactant_ml, "surfactant")] if surfactant_ml else []
    return tuple((name, _line(need_ml, kind, reference)) for name, need_ml, kind in parts)


def _line(need_ml: float, kind: str, reference: Reference) -> str:
    sizes = [
        replace(Container("", convert(float(value), "gal", "mL")), name=_size(float(value)))
        for row in reference.mixing["container"]
        for value in [row.figure.value]
        if row.name == kind and isinstance(value, (int, float))
    ]
    found = cheapest(need_ml, sizes)
    counts = " and ".join(f"{count} × {name}" for name, count in found.counts)
    return f"{text.gallons(need_ml)}: {counts}, {text.gallons(found.leftover_ml)} left over"


def _size(gallons: float) -> str:
    return show(gallons, "gal") if gallons >= 1 else show(convert(gallons, "gal", "qt"), "qt")
