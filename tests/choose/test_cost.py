"""Laws of cost: what a stem costs, and what a dead one does."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.choose.cost import cost_per_kill, cost_per_stem, expected
from rootcollar.kernel.doubt import sure

MINUTES, MIX = sure(3.0), sure(0.05)
prices = st.floats(0, 100)


@given(st.floats(0.1, 60), prices, st.floats(0, 5), st.floats(0, 100), prices, prices)
def test_a_stem_costs_no_less_than_its_labour_and_more_with_every_price(minutes, wage, mix_l, pct, product, carrier):
    def cost(wage=wage, product=product, carrier=carrier):
        return cost_per_stem(sure(minutes), wage, sure(mix_l), pct, product, carrier)[0]

    assert cost() >= minutes / 60 * wage
    assert cost() <= cost(wage=wage + 1) and cost() <= cost(product=product + 1) and cost() <= cost(carrier=carrier + 1)


@given(st.floats(0, 100))
def test_without_mix_only_labour_costs(pct):
    assert cost_per_stem(sure(30.0), 20, sure(0.0), pct, 50, 5)[0] == 10


@given(prices, prices)
def test_undiluted_needs_no_carrier_and_plain_carrier_no_product(product, carrier):
    assert cost_per_stem(MINUTES, 0, MIX, 100, product, carrier)[0] == pytest.approx(0.05 * product)
    assert cost_per_stem(MINUTES, 0, MIX, 0, product, carrier)[0] == pytest.approx(0.05 * carrier)


@given(st.floats(0.05, 100), st.floats(0.02, 1), st.floats(0.02, 1))
def test_a_surer_kill_is_a_cheaper_one(cost, one, other):
    weak, strong = sorted((one, other))
    assert cost_per_kill(sure(cost), sure(strong))[0] <= cost_per_kill(sure(cost), sure(weak))[0]
    assert cost_per_kill(sure(cost), sure(1.0))[0] == pytest.approx(cost)


def test_worlds_of_cost_meet_worlds_of_kill_one_by_one():
    found = cost_per_kill(np.array([1.0, 2.0, 3.0]), np.array([0.5, 0.5, 1.0]))
    assert found.tolist() == [2, 4, 3]


def test_the_expected_cost_is_the_mean_of_the_doubt_and_not_the_best_figure():
    assert expected(np.array([100.0, 1.0, 3.0])) == 2
    assert expected(sure(7.0)) == 7
