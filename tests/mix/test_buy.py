"""A need is met from the shed first, then by the cheapest containers: exactly; and more never costs less."""

from datetime import date
from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.kernel.errors import Refusal
from rootcollar.mix import Container, cheapest, sold, supply
from rootcollar.reference import load
from rootcollar.shelf import Lot

QT = 946.352946
prices = st.integers(1, 9999).map(lambda cents: cents / 100)
shops = st.lists(
    st.builds(lambda quarts, price: Container(f"{quarts} qt", quarts * QT, price), st.integers(1, 10), prices),
    min_size=1, max_size=4, unique_by=lambda one: one.name,
)  # fmt: skip
sheds = st.lists(
    st.builds(lambda quarts, day: Lot("ester", quarts * QT, not_after=day), st.floats(0.1, 4), st.none() | st.dates()),
    max_size=3,
)
needs = st.floats(0, 14).map(lambda quarts: quarts * QT)


def brute(need_ml: float, sizes: list[Container]) -> tuple[int, int, int]:
    """Return the least (cents, quarts, containers) of every set of containers that could be sensible."""
    wide = [round(one.volume_ml / QT) for one in sizes]
    cents = [round(100 * (one.price or 0)) for one in sizes]
    found = []
    for counts in product(*(range(int(need_ml // one.volume_ml) + 2) for one in sizes)):
        quarts = sum(n * width for n, width in zip(counts, wide, strict=True))
        if quarts * QT >= need_ml - 1e-3:
            found.append((sum(n * price for n, price in zip(counts, cents, strict=True)), quarts, sum(counts)))
    return min(found)


@given(needs, shops, sheds)
def test_what_the_shed_does_not_cover_is_bought_at_the_least_cost(need_ml, sizes, shed):
    met = supply(need_ml, shed, sizes)
    rest_ml = max(need_ml - sum(one.left_ml for one in shed), 0)
    cents, quarts, number = brute(rest_ml, sizes)
    assert met.purchase.cost == pytest.approx(cents / 100, abs=1e-6)
    assert met.purchase.bought_ml == pytest.approx(quarts * QT)
    assert sum(count for _, count in met.purchase.counts) == number


@given(needs, shops, sheds)
def test_nothing_is_lost_between_shed_need_and_shop(need_ml, sizes, shed):
    met = supply(need_ml, shed, sizes)
    taken = sum(part for _, part in met.taken)
    assert taken + sum(lot.left_ml for lot in met.left) == pytest.approx(sum(lot.left_ml for lot in shed))
    assert taken + met.purchase.bought_ml - met.purchase.leftover_ml == pytest.approx(need_ml, abs=1e-2)
    assert met.purchase.counts == () or met.left == ()


@given(needs, shops, sheds)
def test_lots_are_emptied_in_their_order(need_ml, sizes, shed):
    taken = supply(need_ml, shed, sizes).taken
    assert [lot for lot, _ in taken] == shed[: len(taken)]
    assert all(part == pytest.approx(lot.left_ml) for lot, part in taken[:-1])


@given(needs, needs, shops, sheds)
def test_more_never_costs_less(one_ml, other_ml, sizes, shed):
    less, more = (supply(need, shed, sizes).purchase.cost for need in sorted((one_ml, other_ml)))
    assert less <= more


def test_prices_that_add_up_to_the_same_leave_least_over():
    """In binary, three times 0.1 is a hair more than 0.3: the hair must not decide."""
    sizes = [Container("1 qt", QT, 0.1), Container("4 qt", 4 * QT, 0.3)]
    assert cheapest(3 * QT, sizes).counts == (("1 qt", 3),)


def test_where_a_price_is_not_known_least_left_over_decides():
    sizes = [Container("1 qt", QT, 30.0), Container("10 qt", 10 * QT)]
    found = supply(9 * QT, (), sizes).purchase
    assert (found.counts, found.cost) == ((("1 qt", 9),), None)


def test_a_need_of_too_many_small_units_is_refused_with_the_next_step():
    with pytest.raises(Refusal, match="sizes in one unit"):
        cheapest(900_000, [Container("1 L", 1000.0), Container("1 gal", 4 * QT)])


def test_the_sizes_sold_are_those_of_the_reference():
    assert [one.name for one in sold("oil", load())] == ["1 gal", "2.5 gal", "5 gal", "30 gal", "55 gal"]
    assert sold("dye", load())[0].volume_ml == pytest.approx(QT)


def test_the_day_a_lot_was_opened_changes_nothing():
    lots = [Lot("ester", QT, opened=day) for day in (None, date(2020, 1, 1))]
    assert supply(2 * QT, lots, [Container("1 qt", QT)]).purchase.counts == ()
