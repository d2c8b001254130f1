"""The order of adding, and the gap of air over the tank."""

from __future__ import annotations

from collections.abc import Sequence

from rootcollar.kernel.formula import formula
from rootcollar.mix.recipe import Carrier

__all__ = ["adding_order", "air_gap_cm"]


@formula("maximum(2 * inlet_cm, least_cm)", gives="cm", source="HILLS", inlet_cm=(0.5, 10), least_cm=(1, 20))
def air_gap_cm(inlet_cm: float, least_cm: float) -> float:
    """Return the air gap from hose to tank rim [cm]: twice the inlet, never under the least, 1 inch [HILLS, SANM]."""
    return max(2 * inlet_cm, least_cm)


def adding_order(carrier: Carrier, label_order: Sequence[str] = ()) -> tuple[str, ...]:
    """Return the order of adding: the label's own where it gives one, else the trade's for the carrier."""
    if label_order:
        return tuple(label_order)
    return _TRADE[carrier]


_TRADE: dict[Carrier, tuple[str, ...]] = {
    "none": ("product as sold, nothing added",),
    "oil": ("dry sprayer: no water", "about half the oil", "product", "oil-soluble dye, if any", "rest of the oil"),
    "water": ("half the clear water", "water conditioner, if any", "product", "surfactant", "dye", "rest of the water"),
}
