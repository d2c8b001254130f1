"""Topping up: what is added to what is left in a tank, so that the whole has the strength that is wanted."""

from __future__ import annotations

from rootcollar.kernel.formula import formula

__all__ = ["topped_up_pct", "topup_product_ml"]


@formula(
    "(total_ml * pct - left_ml * left_pct) / 100",
    gives="mL",
    source="arithmetic",
    left_ml=(500, 10000),
    left_pct=(0.5, 30),
    total_ml=(10000, 20000),
    pct=(0.5, 30),
)
def topup_product_ml(left_ml: float, left_pct: float, total_ml: float, pct: float) -> float:
    """Return the product to add [mL]: what the whole needs, less what is left holds. Below 0: it holds too much.

    left_ml: in the tank [mL]. left_pct: its strength [%]. total_ml: wanted [mL]. pct: strength wanted [%].
    """
    return (total_ml * pct - left_ml * left_pct) / 100


@formula(
    "(left_ml * left_pct + 100 * product_ml) / total_ml",
    gives="%",
    source="arithmetic",
    left_ml=(500, 10000),
    left_pct=(0.5, 30),
    product_ml=(1, 2000),
    total_ml=(10000, 20000),
)
def topped_up_pct(left_ml: float, left_pct: float, product_ml: float, total_ml: float) -> float:
    """Return the true strength after topping up [%].

    left_ml: in the tank [mL]. left_pct: its strength [%]. product_ml: added [mL]. total_ml: filled to [mL].
    """
    return (left_ml * left_pct + 100 * product_ml) / total_ml
