"""Every unit and every rate of two units that pint reads rightly comes out as pint says."""

from __future__ import annotations

from itertools import product

import pytest

from rootcollar.kernel.errors import UnitError
from rootcollar.kernel.units import convert
from rootcollar.kernel.units_table import UNITS, Kind, unit_of
from tests.published.second_opinions import pint_factor

BASE = {
    Kind.LENGTH: "m", Kind.AREA: "m2", Kind.VOLUME: "mL", Kind.MASS: "g", Kind.TIME: "s", Kind.SHARE: "%",
    Kind.SPEED: "m/s", Kind.TEMPERATURE: "\u00b0C", Kind.STRENGTH: "g/L", Kind.VOLUME_RATE: "L/ha",
    Kind.MASS_RATE: "kg/ha", Kind.FLOW: "mL/s", Kind.DOSE: "mg/kg",
}  # fmt: skip
# Read otherwise by pint, or not a unit of its own there: ppm is no weight in a volume, and a stem is no unit.
OTHERWISE = {"ppm"}
PLAIN = [unit for unit in UNITS if unit.kind in BASE and unit.symbol not in OTHERWISE]
SIMPLE = [unit.symbol for unit in PLAIN if "/" not in unit.symbol and unit.kind is not Kind.TEMPERATURE]


def rates() -> list[str]:
    """Every unit over every other that this program takes for a rate."""
    found = []
    for over, under in product(SIMPLE, (*SIMPLE, "100 gal", "1,000 sq ft")):
        try:
            unit_of(f"{over}/{under}")
        except UnitError:
            continue
        if under not in ("%", "mph"):
            found.append(f"{over}/{under}")
    return found


RATES = rates()
SURVEY_FOOT = 5e-6  # pint's acre is that of the survey foot, four parts in a million above the international one
EXACT = 1e-9


def near(unit: str) -> float:
    """How near a unit must come, as a share of it."""
    return SURVEY_FOOT if "ac" in unit.split("/") else EXACT


@pytest.mark.parametrize("symbol", [unit.symbol for unit in PLAIN])
def test_a_unit_is_worth_what_pint_says(symbol: str) -> None:
    base = BASE[unit_of(symbol).kind]
    assert convert(7.0, symbol, base) == pytest.approx(pint_factor(7.0, symbol, base), rel=near(symbol))


@pytest.mark.parametrize("rate", RATES)
def test_a_rate_is_worth_what_pint_says(rate: str) -> None:
    base = BASE[unit_of(rate).kind]
    plain = rate.replace("1,000 ", "1000 ")
    assert convert(7.0, rate, base) == pytest.approx(pint_factor(7.0, plain, base), rel=near(rate))


def test_nearly_all_units_and_some_hundred_rates_are_compared() -> None:
    assert len(PLAIN) >= 40
    assert len(RATES) >= 300
    assert {unit_of(rate).kind for rate in RATES} >= {
        Kind.STRENGTH, Kind.VOLUME_RATE, Kind.MASS_RATE, Kind.FLOW, Kind.SPEED, Kind.SHARE, Kind.DOSE,
    }  # fmt: skip
