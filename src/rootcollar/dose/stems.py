"""The mix on stems: the mean over a size band, and one by one over arrays of diameters."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from rootcollar.dose.amount import in_cuts_ml, on_area_ml, on_diameter_ml
from rootcollar.dose.geometry import (
    band_area_cm2,
    circle_area_m2,
    cuts,
    mean_band_area_cm2,
    mean_cuts,
    mean_diameter_cm,
    mean_face_cm2,
    mean_ring_area_cm2,
    mean_square_cm2,
    ring_area_cm2,
)  # fmt: skip
from rootcollar.dose.rule import BY_CUTS, DoseRule
from rootcollar.kernel.doubt import Worlds
from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.units import convert, show

__all__ = ["per_stem_ml", "stems_ml", "surface_cm2", "total_ml"]

_GIVE = 0.98  # ours: 6 in is 15.24 cm, often printed as 15


def per_stem_ml(rule: DoseRule, band_cm: tuple[float, float], crown_m: float | None = None) -> Worlds:
    """Return the mean mix on one stem of a band [mL], worlds. crown_m: width of a plant to be leaf-sprayed [m].

    The band is taken as even within. Raises Refusal outside the stems the method is for, naming the next method, and
    for leaves without a crown.
    """
    if rule.asked.method == "foliar":
        assert rule.ml_per_cm2 is not None
        return on_area_ml(_crown_cm2(crown_m), rule.ml_per_cm2)
    low, high = band_cm
    _inside(rule, low, high)
    if rule.ml_per_cut is not None:
        return in_cuts_ml(mean_cuts(low, high, rule.cm_per_cut, rule.min_cuts), rule.ml_per_cut)
    assert rule.ml_per_cm2 is not None
    mean = mean_diameter_cm(low, high)
    if rule.asked.method == "basal_bark":
        return on_area_ml(mean_band_area_cm2(mean, rule.height_cm), rule.ml_per_cm2)
    face = (
        mean_face_cm2(mean_square_cm2(low, high))
        if rule.ring_cm is None
        else mean_ring_area_cm2(low, high, rule.ring_cm)
    )
    side = mean_band_area_cm2(mean, rule.height_cm) if rule.height_cm else 0.0
    return on_area_ml(face + side, rule.ml_per_cm2)


def surface_cm2(rule: DoseRule, diameters_cm: NDArray[np.float64]) -> NDArray[np.float64]:
    """Return the surface to be wetted on each stem [cm2], shape (n,). diameters_cm: shape (n,) [cm].

    Raises Refusal where the dose does not go by the stem's surface: cuts, and leaves.
    """
    if rule.asked.method in BY_CUTS or rule.asked.method == "foliar":
        raise Refusal(
            f"surface of stems, {rule.asked.method.replace('_', ' ')}",
            limit="this dose does not go by it",
            do="count cuts, or measure crowns",
        )
    if rule.asked.method == "basal_bark":
        return np.asarray(band_area_cm2(diameters_cm, rule.height_cm))
    ring = ring_area_cm2(diameters_cm, np.inf if rule.ring_cm is None else rule.ring_cm)
    side = band_area_cm2(diameters_cm, rule.height_cm) if rule.height_cm else 0.0
    return np.asarray(ring + side)


def stems_ml(rule: DoseRule, diameters_cm: NDArray[np.float64]) -> NDArray[np.float64]:
    """Return the best figure of the mix on each stem [mL], shape (n,). diameters_cm: shape (n,) [cm].

    Raises Refusal when any stem is outside what the method is for, and for leaves, which go by crowns.
    """
    if rule.asked.method == "foliar":
        raise Refusal("leaf spray by diameter", limit="leaves go by the crown", do="give crown widths")
    if diameters_cm.size:
        _inside(rule, float(diameters_cm.min()), float(diameters_cm.max()))
    if rule.ml_per_cut is not None:
        return np.asarray(in_cuts_ml(cuts(diameters_cm, rule.cm_per_cut, rule.min_cuts), rule.ml_per_cut[:1]))
    assert rule.ml_per_cm2 is not None
    if rule.asked.method == "basal_bark":  # by the diameter, because a million areas would be made only to be scaled
        ml_per_cm = on_area_ml(band_area_cm2(1.0, rule.height_cm), rule.ml_per_cm2[:1])
        return on_diameter_ml(diameters_cm, ml_per_cm)
    return on_area_ml(surface_cm2(rule, diameters_cm), rule.ml_per_cm2[:1])


def total_ml(rule: DoseRule, diameters_cm: NDArray[np.float64]) -> Worlds:
    """Return the mix for all stems [mL], worlds: what wets one stem too much wets all of them too much.

    diameters_cm: shape (n,) [cm]. Raises as `stems_ml`.
    """
    rate = rule.ml_per_cut if rule.ml_per_cut is not None else rule.ml_per_cm2
    assert rate is not None
    return np.asarray(stems_ml(rule, diameters_cm).sum() * (rate / rate[0]))


def _crown_cm2(crown_m: float | None) -> float:
    if crown_m is None or not 0 < crown_m < np.inf:
        raise Refusal("leaf spray", limit="it goes by the width of the crown", do="give the crown, such as 4 ft")
    return circle_area_m2(crown_m) * 100 * 100


def _inside(rule: DoseRule, low_cm: float, high_cm: float) -> None:
    if not 0 <= low_cm <= high_cm < np.inf:  # false for what is not a number, too
        raise Refusal(
            f"stems of {low_cm:g} to {high_cm:g} cm",
            limit="a size is 0 or more, the thinner end first",
            do="measure again",
        )
    limit = rule.limit
    if limit is None:
        return
    least, most = limit.value.low, limit.value.high
    if least is not None and low_cm < least * _GIVE:
        raise _outside(rule, low_cm, f"needs stems of at least {_inches(least)}")
    if most is not None and high_cm > most / _GIVE:
        raise _outside(rule, high_cm, f"is for stems of at most {_inches(most)}")


def _outside(rule: DoseRule, found_cm: float, words: str) -> Refusal:
    assert rule.limit is not None
    method = rule.asked.method.replace("_", " ")
    return Refusal(
        f"{method} on a stem of {_inches(found_cm)}",
        limit=f"this way {words} ({rule.limit.source}, {rule.limit.mark})",
        do=f"Next: {rule.beyond}",
    )


def _inches(length_cm: float) -> str:
    return show(convert(length_cm, "cm", "in"), "in", 2)
