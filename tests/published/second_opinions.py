"""What libraries say that know nothing of this project: the second opinion behind each check of kind "library"."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

import numpy as np
import pint
from numpy.typing import NDArray
from shapely import Point

Array = NDArray[np.float64]
_UNITS: pint.UnitRegistry = pint.UnitRegistry()
_UNITS.define("money = [money]")
_SIDES = 400  # of a quarter circle
_STEPS = 100_000

_PINT = {"gal": "gallon", "ac": "acre", "fl oz": "fluid_ounce", "lb": "pound", "ha": "hectare"}


def _mean(of: Callable[[Array], Array], low: float, high: float) -> float:
    """The mean of a function over a span, by the middles of a hundred thousand narrow steps."""
    ends = np.linspace(low, high, _STEPS + 1)
    return float(of((ends[:-1] + ends[1:]) / 2).mean())


def _disc(diameter: float) -> float:
    return float(Point(0, 0).buffer(diameter / 2, quad_segs=_SIDES).area)


def pint_factor(value: float, from_: str, to: str) -> float:
    return float(_UNITS.Quantity(value, _spelled(from_)).to(_spelled(to)).magnitude)


def _spelled(unit: str) -> str:
    return " / ".join(_PINT.get(one, one) for one in unit.split("/"))


def cuts_in_fractions(diameter_cm: float, cm_per_cut: float, min_cuts: int) -> float:
    steps = Fraction(str(round(diameter_cm, 9))) / Fraction(str(round(cm_per_cut, 9)))
    return max(-(-steps.numerator // steps.denominator), min_cuts)


def ring_of_buffers(diameter_cm: float, ring_cm: float) -> float:
    whole = Point(0, 0).buffer(diameter_cm / 2, quad_segs=_SIDES)
    return float(whole.difference(whole.buffer(-ring_cm)).area)


def circle_of_buffer(crown_m: float) -> float:
    return _disc(crown_m)


def band_of_buffer(diameter_cm: float, height_cm: float) -> float:
    return float(Point(0, 0).buffer(diameter_cm / 2, quad_segs=_SIDES).length * height_cm)


def mean_diameter_by_steps(low_cm: float, high_cm: float) -> float:
    return _mean(lambda d: d, low_cm, high_cm)


def mean_square_by_steps(low_cm: float, high_cm: float) -> float:
    return _mean(np.square, low_cm, high_cm)


def mean_face_by_steps(mean_square_cm2: float) -> float:
    """The mean square is that of stems from 1 to 3 inches, whose faces are averaged here."""
    assert abs(mean_square_by_steps(2.54, 7.62) - mean_square_cm2) < 1e-3
    return _mean(lambda d: np.pi * (d / 2) ** 2, 2.54, 7.62)


def mean_band_by_steps(mean_cm: float, height_cm: float) -> float:
    """The mean diameter is that of stems from 1 to 3 inches, whose bands are averaged here."""
    assert abs(mean_diameter_by_steps(2.54, 7.62) - mean_cm) < 1e-6
    return _mean(lambda d: np.pi * d * height_cm, 2.54, 7.62)


def mean_ring_by_steps(low_cm: float, high_cm: float, ring_cm: float) -> float:
    return _mean(lambda d: np.pi * ((d / 2) ** 2 - np.maximum(d / 2 - ring_cm, 0) ** 2), low_cm, high_cm)


def stairs_by_steps(size: float, least: int) -> float:
    return _mean(lambda x: np.maximum(np.ceil(x), least), 0, size) * size


def mean_cuts_by_steps(low: float, high: float, stairs_low: float, stairs_high: float) -> float:
    """The staircase never lower than two."""
    assert abs(stairs_by_steps(low, 2) - stairs_low) < 1e-3 > abs(stairs_by_steps(high, 2) - stairs_high)
    return _mean(lambda x: np.maximum(np.ceil(x), 2), low, high)


def weighted_mean(pct: float, product_kg_per_l: float, diluent_kg_per_l: float) -> float:
    return float(np.average([product_kg_per_l, diluent_kg_per_l], weights=[pct, 100 - pct]))


def pint_rate(active_g: float, area_m2: float) -> float:
    return float((active_g * _UNITS.gram / (area_m2 * _UNITS.meter**2)).to("kilogram / hectare").magnitude)


def pint_most_mix(mix_ml: float, room: float, rate: float) -> float:
    """Another road: the acid allowed on a fifth of an acre, and the 2 % mix of a 3 lb/gal product that holds it."""
    allowed = room * _UNITS("kilogram / hectare") * 0.2 * _UNITS.acre
    mix = allowed / (0.02 * 3 * _UNITS("pound / gallon"))
    assert abs(float((mix_ml * _UNITS.milliliter / mix).to("").magnitude) - rate / room) < 1e-4
    return float(mix.to("milliliter").magnitude)


def pint_least_area(area_m2: float, rate: float, limit: float) -> float:
    """Another road: the weight that is put down, by the weight an area may bear."""
    weight = rate * _UNITS("kilogram / hectare") * area_m2 * _UNITS.meter**2
    return float((weight / (limit * _UNITS("kilogram / hectare"))).to("meter ** 2").magnitude)


def pint_hours(stems: float, minutes: float) -> float:
    return float((stems * minutes * _UNITS.minute).to("minute").magnitude)


def pint_cost(
    minutes: float, wage_per_h: float, mix_l: float, strength_pct: float, product_per_l: float, carrier_per_l: float
) -> float:
    """Product and carrier poured apart, each at its own price."""
    product = mix_l * _UNITS.liter * strength_pct / 100
    carrier = mix_l * _UNITS.liter - product
    price = _UNITS("money / liter")
    pay = minutes * _UNITS.minute * wage_per_h * _UNITS("money / hour")
    return float((pay + product * product_per_l * price + carrier * carrier_per_l * price).to("money").magnitude)


def visits_one_by_one(cost: float, kill: float) -> float:
    """Each visit costs the same and is paid only for a stem that all visits before it have left alive."""
    return float(np.sum(cost * (1 - kill) ** np.arange(200)))


def hole_of_buffer(width_cm: float, depth_cm: float) -> float:
    return _disc(width_cm) * depth_cm


def holes_round_outline(diameter_cm: float, apart_cm: float) -> float:
    """Walk the outline in steps no longer than allowed, and count the places stepped on."""
    outline = Point(0, 0).buffer(diameter_cm / 2, quad_segs=_SIDES).length
    return float(len(np.arange(0, outline, apart_cm)))


def pint_weight_in_tank(total_ml: float, rate_kg_per_ha: float, volume_l_per_ha: float) -> float:
    """The ground that one tank covers, times the weight that goes on it."""
    ground = total_ml * _UNITS.milliliter / (volume_l_per_ha * _UNITS("liter / hectare"))
    return float((ground * rate_kg_per_ha * _UNITS("kilogram / hectare")).to("gram").magnitude)
