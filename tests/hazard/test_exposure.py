"""What a handler takes up, with the agency's own table: gloves and masks count as they are printed."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.hazard import handler_dose_mg_per_kg, margin_of_exposure
from rootcollar.reference import load, named, numbers


def figure(name: str) -> float:
    """Return a figure of the handler table."""
    return numbers(named(load().hazard["handler_exposure"], name))[0].value


def test_gloves_take_five_sixths_of_the_dose_of_pouring() -> None:
    bare, gloved = (handler_dose_mg_per_kg(figure(one), 2, 1, figure("body_kg")) for one in (
        "liquid_no_gloves", "liquid_gloves",
    ))  # fmt: skip
    assert bare / gloved == pytest.approx(5.85, abs=0.05)  # 220 against 37.6 [EPA-OPHU-2020]
    assert bare == pytest.approx(0.0055, rel=0.01)


@given(st.floats(0.01, 100), st.floats(0.1, 50))
def test_twice_the_pounds_are_twice_the_dose_and_half_the_margin(exposure: float, pounds: float) -> None:
    once, twice = (handler_dose_mg_per_kg(exposure, many, 0.5, 80) for many in (pounds, 2 * pounds))
    assert twice == pytest.approx(2 * once)
    assert margin_of_exposure(5, twice) == pytest.approx(margin_of_exposure(5, once) / 2)
