"""Amounts as a crew reads them: one unit for a figure and its band, no false digits."""

import math
import re

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.kernel.doubt import Worlds, sure
from rootcollar.work import text

GAL_ML, FL_OZ_ML = 3785.411784, 29.5735295625


def worlds(best: float, low: float, high: float) -> Worlds:
    """Return worlds whose doubt lies evenly between low and high."""
    return np.concatenate(([best], np.linspace(low, high, 101)))


@given(st.floats(1, 1e6), st.floats(0.1, 1), st.floats(1, 10))
def test_a_band_is_told_in_the_unit_of_its_best_figure(best_ml: float, down: float, up: float) -> None:
    band = text.span(worlds(best_ml, best_ml * down, best_ml * up))
    if band:
        assert band.rsplit(" ", 1)[1] == text.gallons(best_ml).rsplit(" ", 1)[1]


@pytest.mark.parametrize(
    ("ml", "words"),
    [(GAL_ML, "1 gal"), (2.5 * GAL_ML, "2.5 gal"), (8 * FL_OZ_ML, "8 fl oz"), (GAL_ML / 4, "0.25 gal"), (0, "0 fl oz")],
)
def test_volumes_turn_to_fluid_ounces_under_a_quart(ml: float, words: str) -> None:
    assert text.gallons(ml) == words


def test_a_sure_volume_has_no_band() -> None:
    assert text.span(sure(500.0)) == ""


def test_sizes_are_in_inches() -> None:
    assert text.size((2.54, 5.08)) == "1–2 in"
    assert text.size((0.254, 1.27)) == "0.1–0.5 in"
    assert text.size(text.joined([(2.54, 5.08), (10.16, 15.24)])) == "1–6 in"


def test_counts_and_money_carry_their_band_where_they_have_one() -> None:
    assert text.count(sure(1400.0)) == "1,400"
    assert re.fullmatch(r"1,400 \(1,0\d\d–2,0\d\d\)", text.count(worlds(1400, 900, 2200)))
    assert text.money(sure(12.4)) == "$12"


@pytest.mark.parametrize(("minutes", "words"), [(30, "0.5"), (60, "1"), (174, "2.9"), (1234, "21")])
def test_hours_have_two_figures(minutes: float, words: str) -> None:
    assert text.hours(sure(float(minutes))) == f"{words} person-hours"


def test_what_nobody_looked_for_is_not_told_as_none() -> None:
    assert text.distance(None) == "not looked for"
    assert text.distance(math.inf) == "none there"
    assert text.distance(0.0) == "0 ft"
    assert text.acres(None) == "not known"
    assert text.acres(4046.8564224) == "1 ac"
