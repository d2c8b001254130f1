"""Loads add up, none is above the tank or the back that carries it; the container set is the cheapest there is."""

from __future__ import annotations

from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.units import convert
from rootcollar.mix import (
    Container,
    adding_order,
    air_gap_cm,
    cheapest,
    load_kg,
    mix_density_kg_per_l,
    plan_loads,
    tank_by_weight_ml,
)

GAL = convert(1, "gal", "mL")
steps_ml = st.sampled_from([GAL / 16, GAL / 128, 100.0, 10.0])
HAIR = 1e-9


@given(st.floats(1, 200 * GAL), st.floats(GAL / 8, 5 * GAL), steps_ml)
def test_loads_cover_the_need_within_a_step_and_none_is_above_the_tank(need_ml, tank_ml, step_ml):
    loads = plan_loads(need_ml, tank_ml, step_ml)
    assert max(loads.volumes_ml) <= tank_ml * (1 + HAIR)
    assert need_ml * (1 - HAIR) <= loads.total_ml < need_ml + step_ml * (1 + 1e-6)
    for volume in loads.volumes_ml:
        assert volume / step_ml == pytest.approx(round(volume / step_ml), abs=1e-6) and volume > 0


@given(st.floats(1, 200 * GAL), st.floats(GAL, 5 * GAL), steps_ml)
def test_only_the_last_load_is_partial(need_ml, tank_ml, step_ml):
    volumes = plan_loads(need_ml, tank_ml, step_ml).volumes_ml
    assert set(volumes[:-1]) <= {max(volumes)} and volumes[-1] <= max(volumes)
    if len(volumes) > 1:
        assert max(volumes) > tank_ml - step_ml  # the tank is used


@given(st.floats(1, 20 * GAL), st.floats(GAL, 5 * GAL), st.floats(0, GAL / 2))
def test_no_load_is_smaller_than_can_be_measured(need_ml, tank_ml, least_ml):
    volumes = plan_loads(need_ml, tank_ml, GAL / 16, least_ml).volumes_ml
    assert min(volumes) >= least_ml * (1 - HAIR)
    assert max(volumes) <= tank_ml * (1 + HAIR)
    assert sum(volumes) >= need_ml * (1 - HAIR)


@pytest.mark.parametrize(
    ("need", "tank", "loads"),
    [(37.5, 4, (4,) * 9 + (1.5,)), (80, 4, (4,) * 20), (0.3, 4, (0.3125,)), (2.51, 4, (2.5625,))],
)
def test_gallons_into_a_backpack(need, tank, loads):
    """37.5 gal: nine of 4 and one of 1.5; 80 gal (3.2 acres at 25 gallons an acre): twenty of 4."""
    found = plan_loads(need * GAL, tank * GAL, GAL / 16).volumes_ml
    assert found == pytest.approx([one * GAL for one in loads])


@pytest.mark.parametrize("need", [0.0, -1.0, float("nan")])
def test_no_need_makes_no_loads(need):
    with pytest.raises(Refusal, match="nothing to mix"):
        plan_loads(need, GAL, GAL / 16)


@pytest.mark.parametrize(("tank", "least"), [(10.0, 0.0), (0.0, 0.0), (GAL, 2 * GAL)])
def test_a_tank_too_small_is_refused(tank, least):
    with pytest.raises(Refusal, match="holds less than can be measured"):
        plan_loads(GAL, tank, GAL / 16, least)


weights = st.tuples(st.floats(5, 30), st.floats(0, 8), st.floats(0.5, 100), st.floats(0.85, 1.4), st.floats(0.75, 1))


@given(weights, st.floats(GAL, 200 * GAL))
def test_a_full_backpack_never_exceeds_what_its_carrier_accepts(weight, need_ml):
    carry_kg, empty_kg, pct, product, diluent = weight
    density = mix_density_kg_per_l(pct, product, diluent)
    tank_ml = tank_by_weight_ml(carry_kg, empty_kg, density)
    try:
        loads = plan_loads(need_ml, tank_ml, GAL / 16)
    except Refusal:
        assert load_kg(GAL / 16 / 1000, density, empty_kg) > carry_kg * (1 - HAIR)
        return
    assert all(load_kg(one / 1000, density, empty_kg) <= carry_kg * (1 + HAIR) for one in loads.volumes_ml)


def test_a_sprayer_heavier_than_its_carrier_accepts_holds_nothing():
    assert tank_by_weight_ml(5, 6, 1) == 0


@given(st.floats(0, 100), st.floats(0.85, 1.4), st.floats(0.75, 1))
def test_a_mix_weighs_between_its_parts(pct, product, diluent):
    density = mix_density_kg_per_l(pct, product, diluent)
    assert min(product, diluent) - HAIR <= density <= max(product, diluent) + HAIR


@given(st.floats(0.1, 20), st.floats(1, 20))
def test_the_gap_of_air_is_never_under_the_least_nor_under_two_inlets(inlet_cm, least_cm):
    gap = air_gap_cm(inlet_cm, least_cm)
    assert gap >= least_cm and gap >= 2 * inlet_cm and gap in (least_cm, 2 * inlet_cm)


def test_the_labels_own_order_of_adding_comes_first():
    assert adding_order("water", ("water", "product"))[:2] == ("water", "product")
    assert adding_order("oil")[0] == "dry sprayer: no water"
    assert adding_order("water")[1:] != adding_order("oil")[1:]


quarts = st.sampled_from([1.0, 2.0, 4.0, 10.0, 20.0]).map(lambda qt: qt * GAL / 4)
sizes = st.lists(st.builds(Container, st.just("x"), quarts, st.integers(1, 60)), min_size=1, max_size=4)


def brute(need_ml: float, kinds: list[Container], priced: bool) -> tuple[float, float, int]:
    """The least cost, volume and number of all sets that cover the need, one after the other."""
    most = [int(need_ml // one.volume_ml) + 2 for one in kinds]
    best = (float("inf"), float("inf"), 0)
    for counts in product(*(range(one) for one in most)):
        volume = sum(count * one.volume_ml for count, one in zip(counts, kinds, strict=True))
        if volume >= need_ml - 1e-3:
            cost = sum(count * one.price for count, one in zip(counts, kinds, strict=True)) if priced else 0.0
            best = min(best, (cost, round(volume, 3), sum(counts)))
    return best


@given(st.floats(0.1, 4 * GAL), sizes, st.booleans())
def test_the_purchase_is_the_cheapest_of_all_that_cover_the_need(need_ml, kinds, priced):
    named = [Container(f"{place}", one.volume_ml, one.price if priced else None) for place, one in enumerate(kinds)]
    found = cheapest(need_ml, named)
    counts = dict(found.counts)
    cost, volume, number = brute(need_ml, kinds, priced)
    assert found.bought_ml == pytest.approx(
        sum(counts[one.name] * one.volume_ml for one in named if one.name in counts)
    )
    assert found.cost == (pytest.approx(cost) if priced else None)
    assert found.bought_ml == pytest.approx(volume)
    assert sum(counts.values()) == number
    assert found.leftover_ml == pytest.approx(found.bought_ml - need_ml, abs=1e-3) and found.leftover_ml >= 0


liquids = st.lists(st.sampled_from([946.352946, 1000.0, 3785.411784, 5000.0]), min_size=1, max_size=4, unique=True)


@given(st.floats(1, 20_000), liquids)
def test_litres_and_gallons_on_one_shelf_are_counted_in_whole_millilitres_and_cover_the_need(need_ml, volumes):
    found = cheapest(need_ml, [Container(f"{volume}", volume) for volume in volumes])
    assert found.bought_ml >= need_ml - 1e-3
    floored = [Container("", float(int(volume))) for volume in volumes]
    most_containers = need_ml // min(volumes) + 1
    assert found.bought_ml <= brute(need_ml, floored, False)[1] + most_containers


def test_a_gallon_and_three_quarts_are_left_with_least():
    """3.2 acres at 25 gallons an acre and 2 %: 204.8 fl oz, that is 1.6 gal."""
    kinds = [Container(name, size * GAL) for name, size in (("1 qt", 0.25), ("1 gal", 1), ("2.5 gal", 2.5))]
    found = cheapest(1.6 * GAL, kinds)
    assert found.counts == (("1 qt", 3), ("1 gal", 1))
    assert found.leftover_ml == pytest.approx(0.15 * GAL)
    assert found.cost is None


def test_price_comes_before_what_is_left():
    kinds = [Container("1 qt", 0.25 * GAL, 30), Container("2.5 gal", 2.5 * GAL, 100)]
    found = cheapest(1.6 * GAL, kinds)
    assert (found.counts, found.cost) == ((("2.5 gal", 1),), 100)
    assert found.leftover_ml == pytest.approx(0.9 * GAL)


def test_nothing_needed_is_nothing_bought():
    assert cheapest(0, [Container("1 gal", GAL, 60)]).counts == ()


@pytest.mark.parametrize(
    ("need", "kinds"),
    [
        (1, []), (1, [Container("x", 0)]), (1, [Container("x", 100, -1)]), (float("inf"), [Container("x", 100)]),
        (-1, [Container("x", 100)]), (float("nan"), [Container("x", 100)]),
    ],
)  # fmt: skip
def test_a_shelf_or_a_need_that_is_none_is_refused(need, kinds):
    with pytest.raises(Refusal):
        cheapest(need, kinds)
