"""Laws of the strength of another product: the same acid, and never more than undiluted."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.choose.strength import same_acid_pct

acids, pcts = st.floats(90, 600), st.floats(0.25, 100)


@given(pcts, acids, acids)
def test_the_product_in_hand_brings_the_same_acid_or_is_undiluted(pct, named, have):
    found = same_acid_pct(pct, named, have)
    assert found == 100 or found * have == pytest.approx(pct * named)
    assert 0 < found <= 100


@given(pcts, acids)
def test_the_same_product_takes_the_same_strength(pct, acid):
    assert same_acid_pct(pct, acid, acid) == pytest.approx(pct)


@given(pcts, acids, acids, acids)
def test_a_stronger_product_is_thinned_more(pct, named, one, other):
    weak, strong = sorted((one, other))
    assert same_acid_pct(pct, named, strong) <= same_acid_pct(pct, named, weak)


def test_a_product_too_weak_is_taken_undiluted():
    assert same_acid_pct(75, 480, 300) == 100
