"""What libraries say that know nothing of this project: the second opinion behind each check of kind "library"."""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal
from fractions import Fraction

import numpy as np
import pint
from numpy.typing import NDArray
from scipy import optimize, stats
from shapely import LineString, Point, Polygon, box
from shapely.affinity import rotate, scale
from shapely.ops import unary_union

from tests.published.looking import *  # noqa: F403
from tests.published.sky import *  # noqa: F403

Array = NDArray[np.float64]
UNITS: pint.UnitRegistry = pint.UnitRegistry()
UNITS.define("money = [money]")
_SIDES = 400  # of a quarter circle
_STEPS = 100_000

_PINT = {
    "gal": "gallon", "ac": "acre", "fl oz": "fluid_ounce", "lb": "pound", "ha": "hectare", "in": "inch", "ft": "foot",
    "yd": "yard", "mi": "mile", "cm2": "centimeter ** 2", "m2": "meter ** 2", "sq in": "inch ** 2",
    "sq ft": "foot ** 2", "sq yd": "yard ** 2", "qt": "quart", "pt": "pint", "Tbsp": "tablespoon", "tsp": "teaspoon",
    "oz wt": "ounce", "ug": "microgram", "min": "minute", "h": "hour", "s": "second", "mph": "mile / hour",
    "%": "percent", "% v/v": "percent", "\u00b0C": "degC", "\u00b0F": "degF",
}  # fmt: skip


def _mean(of: Callable[[Array], Array], low: float, high: float) -> float:
    """The mean of a function over a span, by the middles of a hundred thousand narrow steps."""
    ends = np.linspace(low, high, _STEPS + 1)
    return float(of((ends[:-1] + ends[1:]) / 2).mean())


def _disc(diameter: float) -> float:
    return float(Point(0, 0).buffer(diameter / 2, quad_segs=_SIDES).area)


def pint_factor(value: float, from_: str, to: str) -> float:
    there = _spelled(to)
    if "deg" in there:
        return float(UNITS.Quantity(value, _spelled(from_)).to(there).magnitude)
    return float((value * UNITS(_spelled(from_))).to(there).magnitude)


def _spelled(unit: str) -> str:
    if unit in _PINT:
        return _PINT[unit]
    return " / ".join(f"({_counted(one)})" for one in unit.split("/"))


def _counted(unit: str) -> str:
    """A unit by pint's name, and so many of them where a number leads: `100 gal`."""
    count, gap, name = unit.partition(" ")
    return f"{count} * {_PINT.get(name, name)}" if gap and count.isdigit() else _PINT.get(unit, unit)


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


def pint_minutes(first: float, second: float) -> float:
    return float((first * UNITS("minute") + second * UNITS("minute")).to("minute").magnitude)


def pint_rate(active_g: float, area_m2: float) -> float:
    return float((active_g * UNITS.gram / (area_m2 * UNITS.meter**2)).to("kilogram / hectare").magnitude)


def pint_most_mix(mix_ml: float, room: float, rate: float) -> float:
    """Another road: the acid allowed on a fifth of an acre, and the 2 % mix of a 3 lb/gal product that holds it."""
    allowed = room * UNITS("kilogram / hectare") * 0.2 * UNITS.acre
    mix = allowed / (0.02 * 3 * UNITS("pound / gallon"))
    assert abs(float((mix_ml * UNITS.milliliter / mix).to("").magnitude) - rate / room) < 1e-4
    return float(mix.to("milliliter").magnitude)


def pint_least_area(area_m2: float, rate: float, limit: float) -> float:
    """Another road: the weight that is put down, by the weight an area may bear."""
    weight = rate * UNITS("kilogram / hectare") * area_m2 * UNITS.meter**2
    return float((weight / (limit * UNITS("kilogram / hectare"))).to("meter ** 2").magnitude)


def pint_spray(mix_gal: float, area_ac: float) -> float:
    """Another road: by litres and hectares."""
    per_ha = (mix_gal * UNITS.gallon).to("liter") / (area_ac * UNITS.acre).to("hectare")
    return float(per_ha.to("gallon / acre").magnitude)


def pint_load_hours(work_h: float, load_ml: float, mix_ml: float) -> float:
    """Another road: the load by the speed at which the mix is put out."""
    speed = mix_ml * UNITS.milliliter / (work_h * UNITS.hour)
    return float((load_ml * UNITS.milliliter / speed).to("hour").magnitude)


def pint_hours(stems: float, minutes: float) -> float:
    return float((stems * minutes * UNITS.minute).to("minute").magnitude)


def pint_ground(stems: float, side_m2: float) -> float:
    return float((stems * side_m2 * UNITS.meter**2).to("meter ** 2").magnitude)


def pint_cost(
    minutes: float, wage_per_h: float, mix_l: float, strength_pct: float, product_per_l: float, carrier_per_l: float
) -> float:
    """Product and carrier poured apart, each at its own price."""
    product = mix_l * UNITS.liter * strength_pct / 100
    carrier = mix_l * UNITS.liter - product
    price = UNITS("money / liter")
    pay = minutes * UNITS.minute * wage_per_h * UNITS("money / hour")
    return float((pay + product * product_per_l * price + carrier * carrier_per_l * price).to("money").magnitude)


def pint_money(stems: float, cost: float) -> float:
    return float((stems * cost * UNITS.money).to("money").magnitude)


def visits_one_by_one(cost: float, kill: float) -> float:
    """Each visit costs the same and is paid only for a stem that all visits before it have left alive."""
    return float(np.sum(cost * (1 - kill) ** np.arange(200)))


def pint_walk(apart_m: float, up_kmh: float, down_kmh: float, in_brush: float) -> float:
    """The way up and the way down walked one after the other, each at its own speed, and shared by two."""
    ways = [in_brush * apart_m * UNITS.meter / (kmh * UNITS.kilometer / UNITS.hour) for kmh in (up_kmh, down_kmh)]
    return float(((ways[0] + ways[1]) / 2).to("minute").magnitude)


def share_by_halving(cost: float, per_kill: float) -> float:
    """The share dying of a visit at which visits paid one by one come to that much, found by halving."""
    low, high = 0.05, 1.0
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if visits_one_by_one(cost, middle) > per_kill else (low, middle)
    return low


def years_one_by_one(stays: float, left: float) -> float:
    """Whole years while more than enough is left, and of the last one the part in which the rest goes, even in logs."""
    seed, years = 1.0, 0
    while seed * stays > left:
        seed, years = seed * stays, years + 1
    return years + float(np.interp(np.log10(left), np.log10([seed * stays, seed]), [1.0, 0.0]))


def left_of_each_visit(stems: float, kill: float, visits: int) -> float:
    """The dead taken off after each visit."""
    for _ in range(visits):
        stems -= kill * stems
    return stems


def room_at_rest(per_ha: float, crowd: float) -> float:
    """The share of recruits at which the yearly rates neither grow nor shrink, by halving; neither figure is used."""
    assert per_ha > crowd
    low, high = 0.0001, 1.0
    for _ in range(60):
        middle = (low + high) / 2
        rates = np.array([
            [0.44, 0, 0, 141.72], [middle * 0.004, 0.21, 0, middle * 16.1], [0, middle * 0.44, 0.83, 0.18],
            [0, 0, 0.15, 0.82],
        ])  # fmt: skip
        low, high = (low, middle) if max(np.linalg.eigvals(rates).real) > 1 else (middle, high)
    return low


def share_fallen_by(gap_m: float, far_m: float) -> float:
    """The ground under the density of distances, up to the gap, by the middles of narrow steps."""
    return gap_m * _mean(lambda metres: np.exp(-metres / far_m) / far_m, 0, gap_m)


def share_carried_past(share: float, away_m: float, far_m: float) -> float:
    """The same density beyond the way, to where nothing is left of it."""
    most = away_m + 40 * far_m
    return share * (most - away_m) * _mean(lambda metres: np.exp(-metres / far_m) / far_m, away_m, most)


def mean_under_the_curve(dead: float, alive: float) -> float:
    """The balance point of the density, by the middles of narrow steps."""

    def density(share: Array) -> Array:
        return share ** (dead - 1) * (1 - share) ** (alive - 1)

    return _mean(lambda share: share * density(share), 0, 1) / _mean(density, 0, 1)


def hole_of_buffer(width_cm: float, depth_cm: float) -> float:
    return _disc(width_cm) * depth_cm


def holes_round_outline(diameter_cm: float, apart_cm: float) -> float:
    """Walk the outline in steps no longer than allowed, and count the places stepped on."""
    outline = Point(0, 0).buffer(diameter_cm / 2, quad_segs=_SIDES).length
    return float(len(np.arange(0, outline, apart_cm)))


def pint_weight_in_tank(total_ml: float, rate_kg_per_ha: float, volume_l_per_ha: float) -> float:
    """The ground that one tank covers, times the weight that goes on it."""
    ground = total_ml * UNITS.milliliter / (volume_l_per_ha * UNITS("liter / hectare"))
    return float((ground * rate_kg_per_ha * UNITS("kilogram / hectare")).to("gram").magnitude)


def gus_in_decimals(half_life_d: float, koc_ml_per_g: float) -> float:
    """The same logarithms to 28 figures."""
    return float(Decimal(half_life_d).log10() * (4 - Decimal(koc_ml_per_g).log10()))


def left_step_by_step(days: float, half_life_d: float) -> float:
    """A loss in a hundred thousand short steps, each of what the one before has left."""
    step = days / _STEPS
    return float(np.prod(np.full(_STEPS, 1 - np.log(2) * step / half_life_d)))


def sunk_step_by_step(
    depth_m: float, retardation: float, water_share: float, recharge_m_per_d: float, half_life_d: float
) -> float:
    """The days that the ingredient takes to sink, and what they leave."""
    speed_m_per_d = recharge_m_per_d / water_share / retardation
    return left_step_by_step(depth_m / speed_m_per_d, half_life_d)


def exact_ratio(**two: float) -> float:
    above, below = (Fraction(str(one)) for one in two.values())
    return float(above / below)


def exact_product(**two: float) -> float:
    one, other = (Fraction(str(each)) for each in two.values())
    return float(one * other)


def exact_off_pct(said: float, reckoned: float) -> float:
    return float((Fraction(said) - Fraction(reckoned)) / Fraction(reckoned) * 100)


def pint_mm_hg(pressure_mm_hg: float, pa_per_mm_hg: float) -> float:
    """The registry's own millimetre of mercury."""
    return float((pressure_mm_hg * UNITS.mmHg).to("millipascal").magnitude)


def pint_times(times: int, each_ml: float) -> float:
    return float(sum(each_ml * UNITS.milliliter for _ in range(times)).to("milliliter").magnitude)


def rinsed_one_by_one(left_ml: float, rinse_ml: float, times: int) -> float:
    """Product and water kept apart: each rinse is mixed whole, and all but what clings is poured out."""
    product, water = left_ml, 0.0
    for _ in range(times):
        water += rinse_ml
        clings = left_ml / (product + water)
        product, water = product * clings, water * clings
    return product


_CACO3, _CA, _MG = Fraction("100.086"), Fraction("40.078"), Fraction("24.305")  # weights of the standard


def hardness_by_moles(calcium_ppm: float, magnesium_ppm: float, per_calcium: float, per_magnesium: float) -> float:
    """Each ion in moles, and as many moles of calcium carbonate."""
    return float((Fraction(calcium_ppm) / _CA + Fraction(magnesium_ppm) / _MG) * _CACO3)


def calcium_by_moles(hardness_ppm: float, per_ion: float) -> float:
    return float(Fraction(hardness_ppm) / _CACO3 * _CA)


def ams_by_product_of_rows(potassium: float, sodium: float, calcium: float, magnesium: float, iron: float) -> float:
    """The whole equation at once, from the ppm of the ions that the parts stand for."""
    ppm, per_ppm = np.array([5, 30, 100, 20, 0.5]), np.array([0.002, 0.005, 0.009, 0.014, 0.042])
    assert np.allclose(ppm * per_ppm, [potassium, sodium, calcium, magnesium, iron])
    return float(ppm @ per_ppm)


def pint_ams(ams_g_per_l: float, tank_l: float) -> float:
    return float((ams_g_per_l * UNITS("gram / liter") * tank_l * UNITS.liter).to("gram").magnitude)


def pint_active(density_g_per_ml: float, active_pct: float) -> float:
    product = density_g_per_ml * UNITS("gram / milliliter")
    return float((product * active_pct / 100).to("gram / liter").magnitude)


def pint_cost_by_cross_section(cross_section_ft2: float, usd_per_ft2: float) -> float:
    """The price turned to the square metre, the wood to square centimetres."""
    price = (usd_per_ft2 * UNITS("money / foot ** 2")).to("money / meter ** 2")
    return float((price * (cross_section_ft2 * UNITS("foot ** 2")).to("centimeter ** 2")).to("money").magnitude)


def pint_goat_days(goats_per_ha: float, days: float) -> float:
    """Goats on a square metre, times hours, and back."""
    stay = (days * UNITS.day).to("hour")
    return float((stay * (goats_per_ha / UNITS.hectare).to("1 / meter ** 2")).to("day / hectare").magnitude)


def pint_acres_a_day(hours: float, acres_per_h: float) -> float:
    """Square feet a minute, minute after minute."""
    speed = (acres_per_h * UNITS("acre / hour")).to("foot ** 2 / minute")
    return float((speed * hours * UNITS.hour).to("acre").magnitude)


def pint_output(volume_ml: float, area_m2: float) -> float:
    return float((volume_ml * UNITS.milliliter / (area_m2 * UNITS.meter**2)).to("liter / hectare").magnitude)


def pint_in_time(flow_ml_per_s: float, seconds: float) -> float:
    return float((flow_ml_per_s * UNITS("milliliter / second") * seconds * UNITS.second).to("milliliter").magnitude)


def pint_per_plant(volume_ml: float, plants: float) -> float:
    """As many equal parts as there are plants."""
    return float(np.full(int(plants), volume_ml / plants).mean())


def pint_on_plants(each_ml: float, plants: float) -> float:
    """One plant after the other, in gallons."""
    each = (each_ml * UNITS.milliliter).to("gallon").magnitude
    return float((np.full(int(plants), each).sum() * UNITS.gallon).to("milliliter").magnitude)


def pint_on_area(area_m2: float, output_l_per_ha: float) -> float:
    output = output_l_per_ha * UNITS("liter / hectare")
    return float((area_m2 * UNITS.meter**2 * output).to("milliliter").magnitude)


def pint_treated(each_cm2: float, stems: float) -> float:
    """One stem after the other, in square inches."""
    each = (each_cm2 * UNITS("centimeter ** 2")).to("inch ** 2").magnitude
    return float((np.full(int(stems), each).sum() * UNITS("inch ** 2")).to("centimeter ** 2").magnitude)


def pint_tank_area(tank_ml: float, output_l_per_ha: float) -> float:
    output = output_l_per_ha * UNITS("liter / hectare")
    return float((tank_ml * UNITS.milliliter / output).to("meter ** 2").magnitude)


def pint_tank_time(tank_ml: float, flow_ml_per_s: float) -> float:
    flow = flow_ml_per_s * UNITS("milliliter / second")
    return float((tank_ml * UNITS.milliliter / flow).to("second").magnitude)


def pint_above_new(flow_ml_per_s: float, new_ml_per_s: float) -> float:
    """What comes out beyond the new flow, as a share of it."""
    flow, new = flow_ml_per_s * UNITS("milliliter / second"), new_ml_per_s * UNITS("milliliter / second")
    return float(((flow - new) / new).to("percent").magnitude)


def topup_by_solving(left_ml: float, left_pct: float, total_ml: float, pct: float) -> float:
    """Two unknowns, product and diluent; two equations, of volume and of product."""
    found = np.linalg.solve([[1, 1], [1, 0]], [total_ml - left_ml, (total_ml * pct - left_ml * left_pct) / 100])
    assert np.isclose((found[0] + left_ml * left_pct / 100) / (left_ml + found.sum()), pct / 100)
    return float(found[0])


def topped_up_by_mean(left_ml: float, left_pct: float, product_ml: float, total_ml: float) -> float:
    diluent_ml = total_ml - left_ml - product_ml
    return float(np.average([left_pct, 100, 0], weights=[left_ml, product_ml, diluent_ml]))


def oval_by_scaling(length_m: float, width_m: float) -> float:
    """A circle, stretched."""
    return float(scale(Point(0, 0).buffer(1, quad_segs=_SIDES), length_m / 2, width_m / 2).area)


def triangle_by_corners(a_m: float, b_m: float, c_m: float) -> float:
    """Two corners on a line, the third where circles of the other sides meet."""
    x = (b_m**2 + c_m**2 - a_m**2) / (2 * c_m)
    triangle = Polygon([(0, 0), (c_m, 0), (x, np.sqrt(b_m**2 - x**2))])
    assert np.isclose(triangle.length, a_m + b_m + c_m)
    return float(triangle.area)


def level_by_shadow(along_m2: float, slope_pct: float) -> float:
    """A square laid on the slope, and the rectangle that is its shadow at noon."""
    side = np.sqrt(along_m2)
    return float(box(0, 0, side, side * np.cos(np.arctan(slope_pct / 100))).area)


def slope_by_tangent(degrees: float) -> float:
    return float(100 * np.tan(np.deg2rad(degrees)))


def pint_liquid(volume_ml: float, density_g_per_ml: float) -> float:
    liquid = volume_ml * UNITS.milliliter * density_g_per_ml * UNITS("gram / milliliter")
    return float(liquid.to("kilogram").magnitude)


def pint_still_needed(need_ml: float, at_hand_ml: float) -> float:
    """Both turned to gallons, the difference turned back."""
    short = (need_ml * UNITS("milliliter")).to("gallon") - (at_hand_ml * UNITS("milliliter")).to("gallon")
    return float((max(short.magnitude, 0) * UNITS("gallon")).to("milliliter").magnitude)


def pint_left_over(bought_ml: float, need_ml: float) -> float:
    return pint_still_needed(bought_ml, need_ml)


def up_by_sides(level_m: float, slope_pct: float) -> float:
    """The long side over the level one and the rise."""
    return float(np.hypot(level_m, level_m * slope_pct / 100))


def level_by_turning(along_m: float, slope_pct: float) -> float:
    """A line laid level, turned up to the slope, and its shadow measured."""
    turned = rotate(LineString([(0, 0), (along_m, 0)]), np.arctan(slope_pct / 100), origin=(0, 0), use_radians=True)
    return float(turned.bounds[2])


def cover_by_lines(covered_m: float, length_m: float) -> float:
    """Three pieces on the line, two of which overlap."""
    pieces = unary_union([LineString([(low, 0), (high, 0)]) for low, high in ((1, 3), (2, 4.5), (20, 23))])
    assert np.isclose(pieces.length, covered_m)
    return float(100 * pieces.length / LineString([(0, 0), (length_m, 0)]).length)


def poisson_upper(missed: float, plots: float) -> float:
    """The exact upper limit of a Poisson mean with none counted: half a chi-squared point with 2 degrees of freedom."""
    return float(stats.chi2.ppf(1 - missed, 2) / 2 / plots)


def clumped_upper(missed: float, plots: float, clumping: float) -> float:
    """The mean at which so many empty plots have just that chance, found by bisection on SciPy's own distribution."""

    def empty(mean: float) -> float:
        return float(stats.nbinom.pmf(0, clumping, clumping / (clumping + mean)) ** plots)

    return float(optimize.bisect(lambda mean: empty(mean) - missed, 1e-6, 10, xtol=1e-12))


def clumped_variance(mean: float, k: float) -> float:
    return float(stats.nbinom.var(k, k / (k + mean)))
