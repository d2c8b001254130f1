"""Laws of the mix on stems: thicker takes more, a class lies between its ends, sums add up."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from rootcollar.dose import per_stem_ml, stems_ml, surface_cm2, total_ml
from rootcollar.kernel.doubt import band
from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.formula import watch
from tests.dose.rules import BASAL, BY_STEM, CUTS, CUTS_BY_THREE, IN, LEAVES, STUMP, STUMP_IN_OIL

rules = st.sampled_from(list(BY_STEM.values()))
SPAN = {id(BASAL): (0.1, 15.0), id(CUTS): (5.08, 80.0), id(CUTS_BY_THREE): (5.08, 80.0)}


def sizes_of(rule) -> st.SearchStrategy[float]:
    return st.floats(*SPAN.get(id(rule), (1.27, 80.0)))


@st.composite
def rule_and_class(draw):
    rule = draw(rules)
    low, high = sorted((draw(sizes_of(rule)), draw(sizes_of(rule))))
    assume(high - low > 1e-3)
    return rule, low, high


@st.composite
def rule_and_stems(draw):
    rule = draw(rules)
    return rule, np.array(draw(st.lists(sizes_of(rule), min_size=1, max_size=30)))


def one(rule, size_cm: float) -> float:
    return float(stems_ml(rule, np.array([size_cm]))[0])


@given(rule_and_class())
def test_a_thicker_stem_takes_no_less(case):
    rule, low, high = case
    assert one(rule, low) <= one(rule, high)


@given(rule_and_class(), st.floats(0, 1), st.floats(0, 1))
def test_a_class_of_thicker_stems_takes_no_less(case, first, second):
    rule, low, high = case
    one_end, other = sorted((low + first * (high - low), low + second * (high - low)))
    assert per_stem_ml(rule, (low, one_end))[0] <= per_stem_ml(rule, (low, other))[0] * (1 + 1e-6)
    assert per_stem_ml(rule, (one_end, high))[0] <= per_stem_ml(rule, (other, high))[0] * (1 + 1e-6)


@given(rule_and_class())
def test_a_class_lies_between_its_ends(case):
    rule, low, high = case
    mean = per_stem_ml(rule, (low, high))[0]
    assert one(rule, low) * (1 - 1e-6) <= mean <= one(rule, high) * (1 + 1e-6)


@given(rule_and_class())
def test_the_mean_of_a_class_is_that_of_very_many_stems_spread_evenly_over_it(case):
    rule, low, high = case
    ends = np.linspace(low, high, 20_001)
    brute = stems_ml(rule, (ends[:-1] + ends[1:]) / 2).mean()
    assert per_stem_ml(rule, (low, high))[0] == pytest.approx(brute, rel=5e-4)


@given(rules, st.data())
def test_a_class_of_no_width_is_one_size(rule, data):
    size = data.draw(sizes_of(rule))
    assert per_stem_ml(rule, (size, size))[0] == pytest.approx(one(rule, size))


@given(rule_and_stems())
def test_the_total_is_the_sum_in_every_world(case):
    rule, stems = case
    total = total_ml(rule, stems)
    assert total[0] == pytest.approx(stems_ml(rule, stems).sum())
    rate = rule.ml_per_cut if rule.ml_per_cut is not None else rule.ml_per_cm2
    assert total / total[0] == pytest.approx(rate / rate[0])


@given(rule_and_stems(), st.randoms())
def test_stems_in_another_order_take_the_same(case, shuffle):
    rule, stems = case
    mixed = list(stems)
    shuffle.shuffle(mixed)
    assert sorted(stems_ml(rule, np.array(mixed))) == pytest.approx(sorted(stems_ml(rule, stems)))


@given(rule_and_stems())
def test_twice_the_coverage_is_twice_the_mix(case):
    rule, stems = case
    assume(rule.ml_per_cm2 is not None)
    twice = replace(rule, ml_per_cm2=rule.ml_per_cm2 * 2)
    assert total_ml(twice, stems)[0] == pytest.approx(2 * total_ml(rule, stems)[0])


def test_the_table_of_cuts_and_mix():
    """Reckoned from the rules of Penn State and the PNW handbook: 1 mL a cut."""
    inches = np.array([2, 4, 6, 8, 10, 12]) * IN
    assert stems_ml(CUTS, inches).tolist() == [2, 4, 6, 8, 10, 12]
    assert stems_ml(CUTS_BY_THREE, inches).tolist() == [2, 2, 2, 3, 4, 4]


@given(st.integers(2, 30))
def test_whole_inches_are_whole_cuts_whatever_floating_point_says(inches):
    sizes = np.array([inches * 2.54, inches * 2.54 + 1e-12, sum([0.254] * 10 * inches)])
    assert stems_ml(CUTS, sizes).tolist() == [inches] * 3


def test_the_mean_of_cuts_from_2_to_4_inches():
    assert per_stem_ml(CUTS, (2 * IN, 4 * IN))[0] == pytest.approx(3.5)  # half of them 3, half of them 4


def test_a_stump_in_oil_is_wetted_on_face_and_side():
    side = np.pi * 12 * IN * 10
    assert surface_cm2(STUMP_IN_OIL, np.array([12 * IN]))[0] == pytest.approx(
        surface_cm2(STUMP, np.array([12 * IN]))[0] + side
    )


def test_leaves_go_by_the_crown():
    """50 to 100 gallons an acre of crown; a crown of 4 feet is 1.17 m2."""
    each = band(per_stem_ml(LEAVES, (0, 0), crown_m=1.2192))
    assert each.best == pytest.approx(11674.5 * 0.00701, rel=1e-3)
    assert per_stem_ml(LEAVES, (0, 5), crown_m=2)[0] == pytest.approx(4 * per_stem_ml(LEAVES, (0, 5), crown_m=1)[0])
    for crown in (None, 0.0, -1.0, float("nan")):
        with pytest.raises(Refusal, match="width of the crown"):
            per_stem_ml(LEAVES, (0, 0), crown_m=crown)
    with pytest.raises(Refusal, match="by the crown"):
        stems_ml(LEAVES, np.array([3.0]))


@pytest.mark.parametrize("rule", [CUTS, LEAVES], ids=["cuts", "leaves"])
def test_a_surface_that_the_dose_does_not_go_by_is_refused(rule):
    with pytest.raises(Refusal, match="does not go by it"):
        surface_cm2(rule, np.array([8.0]))


@pytest.mark.parametrize("sizes", [[-1.0, 5.0], [float("nan"), 5.0], [float("inf")]])
def test_a_size_that_is_none_is_refused(sizes):
    with pytest.raises(Refusal, match="size is 0 or more"):
        stems_ml(BASAL, np.array(sizes))


def test_a_class_the_wrong_way_round_is_refused():
    with pytest.raises(Refusal, match="thinner end first"):
        per_stem_ml(BASAL, (5, 3))


def test_no_stems_take_nothing():
    assert total_ml(BASAL, np.array([])).max() == 0


@pytest.mark.parametrize("rule", BY_STEM.values(), ids=BY_STEM)
def test_a_dose_opens_into_its_steps(rule):
    with watch() as steps:
        amount = per_stem_ml(rule, (3 * IN, 5 * IN))
    assert steps[-1].result is amount
    assert all(step.formula.says for step in steps) and len(steps) >= 2
