"""Salts and esters of one acid are one ingredient: how much acid a product or a weight of active ingredient holds."""

from __future__ import annotations

from rootcollar.kernel.units import convert
from rootcollar.reference import Form, Formulation, Reference
from rootcollar.shelf import Active

__all__ = ["acid_in_formulation", "acid_in_product", "acid_share"]

_AS_IS = "as is"  # the form of an ingredient that has no acid, salts or esters: it counts as it is


def acid_share(active: Active | None, ingredient: str, reference: Reference, form: Form | None = None) -> float | None:
    """Return how much of a weight of active ingredient is acid; None where it is not known.

    The label's own pounds go first, then its percents, then the form's molecular weight.
    """
    if active is not None:
        for acid, whole in ((active.ae_lb_per_gal, active.ai_lb_per_gal), (active.ae_percent, active.ai_percent)):
            if acid and whole:
                return acid / whole
    if form is not None:
        return form.ae_factor.value
    return 1.0 if (ingredient, _AS_IS) in reference.forms else None


def acid_in_product(active: Active, ingredient: str, reference: Reference) -> tuple[float, bool] | None:
    """Return the acid in a product [g/L] and True; its active ingredient and False where its acid is not known.

    None where neither is on the sheet.
    """
    if active.ae_lb_per_gal is not None:
        return convert(active.ae_lb_per_gal, "lb/gal", "g/L"), True
    if active.ai_lb_per_gal is None:
        return None
    share = acid_share(active, ingredient, reference)
    whole = convert(active.ai_lb_per_gal, "lb/gal", "g/L")
    return (whole, False) if share is None else (whole * share, True)


def acid_in_formulation(one: Formulation) -> float:
    """Return the acid in a generic formulation [g/L]; 0 where its strength is not stated for a volume."""
    if one.ae_lb_per_gal is not None:
        return convert(one.ae_lb_per_gal.value, "lb/gal", "g/L")
    return 0.0 if one.ai_lb_per_gal is None else convert(one.ai_lb_per_gal.value, "lb/gal", "g/L") * one.ae_factor.value
