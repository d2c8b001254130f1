"""What stands in the shed may be used to its last day, and the oldest first."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.shelf import Line, Lot, Sheet, Stock

ON = date(2026, 9, 15)
days = st.dates(date(2025, 1, 1), date(2028, 1, 1))
lots = st.lists(
    st.builds(Lot, st.sampled_from(["ester", "salt"]), st.sampled_from([0.0, 500.0]), not_after=st.none() | days),
    max_size=6,
)


@given(lots, days)
def test_each_lot_with_something_in_it_is_either_at_hand_or_past_its_date(found: list[Lot], on: date) -> None:
    stock = Stock(tuple(found))
    at_hand = [lot for what in ("ester", "salt") for lot in stock.at_hand(what, on)]
    full = [lot for lot in found if lot.left_ml]
    assert sorted(map(repr, [*at_hand, *stock.past(on)])) == sorted(map(repr, full))
    assert all(lot.not_after is None or lot.not_after >= on for lot in at_hand)


@given(lots, days)
def test_the_oldest_last_day_comes_first_and_no_date_last(found: list[Lot], on: date) -> None:
    last = [lot.not_after or date.max for lot in Stock(tuple(found)).at_hand("ester", on)]
    assert last == sorted(last)


@pytest.mark.parametrize(("last", "counted"), [(date(2026, 9, 15), True), (date(2026, 9, 14), False), (None, True)])
def test_the_last_day_itself_is_a_day_of_use(last: date | None, counted: bool) -> None:
    assert bool(Stock((Lot("ester", 500, not_after=last),)).at_hand("ester", ON)) is counted


@pytest.mark.parametrize("own", [None, date(2027, 1, 1)])
def test_a_date_that_the_label_prints_counts_where_it_is_earlier(own: date | None) -> None:
    sheet = Sheet("ester", {"identity.not_for_use_after": Line(date(2026, 9, 1))})
    stock = Stock((Lot("ester", 500, not_after=own),)).by_label({"ester": sheet})
    assert stock.at_hand("ester", ON) == () and len(stock.past(ON)) == 1
