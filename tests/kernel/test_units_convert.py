"""Factors: exact by definition, as published, and as another library has them."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.kernel.errors import UnitError
from rootcollar.kernel.units import Kind, convert, read
from rootcollar.kernel.units_table import unit_of
from tests.published.second_opinions import UNITS

EXACT = [
    # by definition: inch, foot, pound and US gallon [NIST-HB44]
    (1, "in", "cm", 2.54), (1, "ft", "m", 0.3048), (1, "mi", "ft", 5280), (1, "yd", "ft", 3), (1, "lb", "g", 453.59237),
    (1, "gal", "mL", 3785.411784), (1, "gal", "qt", 4), (1, "gal", "pt", 8), (1, "gal", "cup", 16),
    (1, "gal", "fl oz", 128), (1, "fl oz", "Tbsp", 2), (1, "fl oz", "tsp", 6), (1, "lb", "oz wt", 16),
    (1, "ac", "m2", 4046.8564224), (1, "ac", "sq ft", 43560), (1, "sq yd", "sq ft", 9), (1, "sq ft", "sq in", 144),
    (1, "ha", "m2", 10000), (1, "day", "h", 24), (1, "mph", "m/s", 0.44704), (1, "m/s", "km/h", 3.6),
    (212, "F", "C", 100), (32, "F", "C", 0), (-40, "F", "C", -40), (1, "L/min", "mL/s", 1000 / 60),
    (1, "gpm", "gal/min", 1), (1, "mps", "m/s", 1), (1, "kph", "km/h", 1), (1, "fpm", "ft/min", 1),
    (1, "g/L", "kg/L", 0.001), (1, "kg/ha", "g/m2", 0.1), (1, "L/ha", "mL/m2", 0.1),
    (1, "fl oz/gal", "%", 100 / 128), (1, "mm", "m", 0.001), (1, "km", "m", 1000), (1, "cm2", "m2", 0.0001),
]  # fmt: skip


@pytest.mark.parametrize(("value", "unit", "other", "expected"), EXACT)
def test_factors_are_exact_by_definition(value: float, unit: str, other: str, expected: float) -> None:
    assert convert(value, unit, other) == pytest.approx(expected, rel=1e-14, abs=1e-13)


PUBLISHED = [
    # "Math for Pesticide Applicators", Pesticide Safety Education, Univ. of Nebraska-Lincoln [UNL]
    (1, "gal", "L", 3.785, 0.0005), (1, "fl oz", "mL", 29.57, 0.005), (1, "pt", "mL", 473.2, 0.05),
    (1, "qt", "mL", 946.3, 0.1), (1, "lb", "g", 453.59, 0.005), (1, "kg", "lb", 2.2, 0.01),
    (1, "ac", "ha", 0.405, 0.0005), (1, "ha", "ac", 2.471, 0.0005), (1, "mph", "ft/min", 88, 1e-9),
    (1, "mph", "ft/s", 1.46, 0.01),
    # reckoned from the exact definitions, as printed to four figures
    (1, "gal/ac", "L/ha", 9.354, 0.0005), (1, "lb/gal", "g/L", 119.83, 0.005), (1, "fl oz/ac", "mL/ha", 73.08, 0.005),
    (1, "lb/ac", "kg/ha", 1.1209, 0.00005),
    # table 1 of [DITO07]
    (2, "lb ae/gal", "g ae/L", 239.7, 0.1),
    (3, "lb ae/gal", "g ae/L", 359.5, 0.1), (4, "lb ae/gal", "g ae/L", 479.3, 0.1),
    # [ENLOE-2023], 240 g/L products
    (240, "g ae/L", "lb ae/gal", 2.003, 0.002),
]  # fmt: skip


@pytest.mark.parametrize(("value", "unit", "other", "expected", "within"), PUBLISHED)
def test_published_conversions_are_met(value: float, unit: str, other: str, expected: float, within: float) -> None:
    assert convert(value, unit, other) == pytest.approx(expected, abs=within)


# Acres are left out, because pint's is of the survey foot, 4 parts in a million larger.
ORACLE = {
    "mm": "mm", "cm": "cm", "m": "m", "km": "km", "in": "inch", "ft": "foot", "yd": "yard", "mi": "mile",
    "cm2": "cm**2", "m2": "m**2", "ha": "hectare", "sq in": "inch**2", "sq ft": "foot**2", "sq yd": "yard**2",
    "mL": "mL", "L": "liter", "gal": "gallon", "qt": "quart", "pt": "pint", "cup": "cup", "fl oz": "fluid_ounce",
    "Tbsp": "tablespoon", "tsp": "teaspoon", "g": "g", "kg": "kg", "lb": "pound", "oz wt": "ounce", "s": "s",
    "min": "minute", "h": "hour", "day": "day", "m/s": "m/s", "km/h": "km/hour", "mph": "mile/hour",
    "ft/min": "foot/minute", "°C": "degC", "°F": "degF", "lb/gal": "pound/gallon", "g/L": "g/liter",
    "gal/min": "gallon/minute", "mL/s": "mL/s", "kg/ha": "kg/hectare", "L/ha": "liter/hectare",
    "fl oz/sq ft": "fluid_ounce/foot**2", "lb/sq ft": "pound/foot**2",
    "ug": "microgram", "mg": "mg", "grain": "grain", "ppm": "mg/liter", "grain/gal": "grain/gallon",
    "mg/kg": "mg/kg", "ug/lb": "microgram/pound",
}  # fmt: skip

PAIRS = [(unit, other) for unit in ORACLE for other in ORACLE if unit_of(unit).kind is unit_of(other).kind]
RATES = [("gal/ac", "L/ha"), ("qt/100 gal", "%"), ("lb/ac", "kg/ha"), ("gal/ac", "fl oz/1,000 sq ft")]
MORE = [*PAIRS, ("ac", "ha"), *RATES]


def test_the_table_of_pairs_covers_the_kinds_that_another_library_knows() -> None:
    kinds = {unit_of(unit).kind for unit, other in PAIRS if unit != other}
    assert kinds == set(Kind) - {Kind.COUNT, Kind.SHARE}


@pytest.mark.parametrize(("unit", "other"), PAIRS)
def test_plain_factors_agree_with_another_library(unit: str, other: str) -> None:
    theirs = UNITS.Quantity(7.0, ORACLE[unit]).to(ORACLE[other]).magnitude
    assert convert(7.0, unit, other) == pytest.approx(theirs, rel=1e-12)


@given(st.sampled_from(MORE), st.floats(-1e9, 1e9))
def test_there_and_back_is_where_it_began(pair: tuple[str, str], value: float) -> None:
    unit, other = pair
    there = convert(value, unit, other)
    assert convert(there, other, unit) == pytest.approx(value, rel=1e-12, abs=1e-10 if "°" in unit else 1e-300)


@given(st.sampled_from(MORE), st.floats(0, 1e6))
def test_a_quantity_and_a_plain_conversion_agree(pair: tuple[str, str], value: float) -> None:
    unit, other = pair
    typed = f"{value:.3f}" if unit_of(unit).kind is not Kind.SHARE else f"{value % 100:.3f}"
    assert read(f"{typed} {unit}").to(other) == pytest.approx(convert(float(typed), unit, other), rel=1e-12, abs=1e-10)


def test_ae_never_becomes_ai_and_a_plain_weight_says_neither() -> None:
    with pytest.raises(UnitError, match="ae cannot become ai"):
        convert(3, "lb ae/gal", "g ai/L")
    assert convert(3, "lb ae/gal", "g/L") == convert(3, "lb/gal", "g ae/L")


def test_kinds_are_never_mixed() -> None:
    with pytest.raises(UnitError, match=r"a volume, such as .*; 'lb' is a weight"):
        convert(3, "lb", "gal")
    with pytest.raises(UnitError, match="such as gal"):
        convert(3, "gal", "")
