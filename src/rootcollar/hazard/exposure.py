"""What a person who pours and sprays takes up, by the agencies' tables. It ranks tasks; it clears none."""

from __future__ import annotations

from rootcollar.kernel.formula import formula

__all__ = ["behind_respirator_ug_per_lb", "handler_dose_mg_per_kg", "margin_of_exposure", "shortcut_dose_mg_per_kg"]


@formula(
    "exposure_ug_per_lb / 1000 * handled_lb * absorbed_share / body_kg",
    gives="mg/kg",
    source="EPA-OPHU-2020",
    exposure_ug_per_lb=(0.001, 100000),
    handled_lb=(0.01, 100),
    absorbed_share=(0.01, 1),
    body_kg=(50, 100),
)
def handler_dose_mg_per_kg(
    exposure_ug_per_lb: float, handled_lb: float, absorbed_share: float, body_kg: float
) -> float:
    """Return what a handler takes up in a day, for each kilogram of body weight [mg/kg].

    exposure_ug_per_lb: what reaches skin or lungs from each pound handled, by the table of the task. handled_lb: active
    ingredient in the day. absorbed_share: that goes through [0 to 1]. body_kg: body weight.
    """
    return exposure_ug_per_lb / 1000 * handled_lb * absorbed_share / body_kg


@formula(
    "exposure_ug_per_lb / protection_factor",
    gives="ug/lb",
    source="EPA-OPHU-2020",
    exposure_ug_per_lb=(0.001, 100),
    protection_factor=(1, 100),
)
def behind_respirator_ug_per_lb(exposure_ug_per_lb: float, protection_factor: float) -> float:
    """Return what is breathed in behind a respirator [ug/lb]; a half-face mask counts as 10, a full-face one as 50."""
    return exposure_ug_per_lb / protection_factor


@formula(
    "handled_lb * rate_mg_per_kg_per_lb",
    gives="mg/kg",
    source="SERA-SETH",
    handled_lb=(0.01, 100),
    rate_mg_per_kg_per_lb=(0.00001, 0.01),
)
def shortcut_dose_mg_per_kg(handled_lb: float, rate_mg_per_kg_per_lb: float) -> float:
    """Return a worker's absorbed dose by the Forest Service's shortcut [mg/kg]: pounds handled in a day times a rate.

    rate_mg_per_kg_per_lb: of the way of working, with its low and high ends [SERA-SETH].
    """
    return handled_lb * rate_mg_per_kg_per_lb


@formula(
    "no_harm_mg_per_kg / dose_mg_per_kg",
    gives="times",
    source="EPA-REG",
    no_harm_mg_per_kg=(0.1, 1000),
    dose_mg_per_kg=(0.0001, 10),
)
def margin_of_exposure(no_harm_mg_per_kg: float, dose_mg_per_kg: float) -> float:
    """Return how many times a handler's dose goes into the dose that did no harm in trials. Both [mg/kg a day]."""
    return no_harm_mg_per_kg / dose_mg_per_kg
