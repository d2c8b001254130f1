"""The shopping list: the first days now, the rest later, the shed first, nothing beyond its date."""

from dataclasses import replace
from datetime import date

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from rootcollar.choose import Own, Price, Setting, prescribe
from rootcollar.dose import Proving
from rootcollar.kernel.doubt import best
from rootcollar.mix import Container, parts_of
from rootcollar.shelf import Lot, Stock
from rootcollar.work import PacketAsked, Shopping, clear, shopping
from rootcollar.work.packet import Page
from rootcollar.work.shopping_page import shopping_page
from tests import draws
from tests.choose.hobbin import DAY, hobbin, plan, setting_of
from tests.work.packets import hobbin_packet

GAL = 3785.411784


def _asked(stock: Stock | None = None, setting: Setting | None = None, *units: str) -> PacketAsked:
    setting = setting or setting_of(hobbin())
    whole = plan() if setting.own == Own() else prescribe(hobbin().stands, setting)
    wanted = units or tuple(key for key, _ in whole.order)
    lines = tuple(one for one in whole.choices if one.stand.unit in wanted)
    return PacketAsked(clear(lines, setting), lines, wanted, whole, setting, hobbin().crew, None, DAY, stock)


def _with(**own: object) -> Setting:
    return replace(setting_of(hobbin()), own=Own(**own))


def _needs(found: Shopping) -> dict[str, float]:
    needs: dict[str, float] = {}
    for one in (*found.now, *found.rest):
        needs[one.what] = needs.get(one.what, 0.0) + best(one.need_ml)
    return needs


def _page(asked: PacketAsked) -> Page:
    page = shopping_page(asked)
    assert page is not None
    return page


def _text(page: Page) -> str:
    return "\n".join(" | ".join(row) for part in page.parts for row in (*part.rows, (part.title, part.note)))


def test_the_needs_are_what_the_lines_pour_in_all():
    """Each mix's parts, summed over the lines; loads of the first days are rounded up to a mark, so a little more."""
    asked = _asked()
    poured: dict[str, float] = {}
    for line in asked.cleared.lines:
        for what, pct in parts_of(line.recipe) if line.recipe else ():
            mix_ml = best(line.stand.stems) * best(line.per_stem.mix_ml)
            poured[what] = poured.get(what, 0.0) + mix_ml * pct / 100
    needs = _needs(shopping(asked))
    assert set(needs) == set(poured)
    for what, need in needs.items():
        assert poured[what] * (1 - 1e-9) <= need <= poured[what] * 1.1


def test_the_first_days_are_the_first_unit_and_a_quart_of_every_mix_that_wants_proving():
    asked = _asked()
    found = shopping(asked)
    assert found.first == asked.units[0]
    letters = {letter for letter, recipe in asked.prescription.letters.items()
               if any(one.recipe == recipe for one in asked.cleared.lines)}  # fmt: skip
    assert set(found.proving) == letters
    assert {letter for one in found.now for letter in one.letters} == letters


def test_what_is_bought_now_is_at_hand_for_the_rest_and_bought_once():
    found = shopping(_asked())
    for one in found.rest:
        before = next(now for now in found.now if now.what == one.what)
        taken = sum(part for _, part in one.supply.taken)
        assert taken <= before.supply.purchase.leftover_ml + 1e-6
        bought = before.supply.purchase.bought_ml + one.supply.purchase.bought_ml
        assert bought - one.left_over_ml == pytest.approx(best(before.need_ml) + best(one.need_ml))


@given(st.floats(0, 4), st.floats(0, 4))
@settings(max_examples=draws.of(12))
def test_more_in_the_shed_never_buys_more(one_gal, other_gal):
    def bought(gallons: float) -> float:
        found = shopping(_asked(Stock((Lot("basal oil", gallons * GAL),))))
        return sum(one.supply.purchase.bought_ml for one in (*found.now, *found.rest) if one.what == "basal oil")

    less, more = sorted((one_gal, other_gal))
    assert bought(more) <= bought(less) + 1e-6


def test_a_lot_past_its_date_is_listed_and_never_counted():
    last = date(2026, 9, 14)  # the day before the plan's
    stock = Stock((Lot("triclopyr-ester-4-ec", 9 * GAL, "OLD", not_after=last),))
    found = shopping(_asked(stock))
    assert [one.lot for one in found.past] == ["OLD"]
    taken = [lot.lot for one in (*found.now, *found.rest) for lot, _ in one.supply.taken]
    assert "OLD" not in taken
    page = _page(_asked(stock))
    (part,) = [one for one in page.parts if one.title.startswith("Past its date")]
    assert "OLD" in part.rows[0][0] and "2026-09-14" in part.rows[0][0] and "get rid of it" in part.note


def test_the_oldest_lot_in_date_is_used_first():
    lots = [Lot("triclopyr-ester-4-ec", 100.0, name, not_after=day) for name, day in
            (("new", date(2029, 1, 1)), ("undated", None), ("old", date(2027, 1, 1)))]  # fmt: skip
    found = shopping(_asked(Stock(tuple(lots))))
    (item,) = [one for one in found.now if one.what == "triclopyr-ester-4-ec"]
    assert [lot.lot for lot, _ in item.supply.taken] == ["old", "new", "undated"]


def _batches(asked: PacketAsked) -> tuple[Proving, ...]:
    """A batch for every mix and way of the plan, beside those it has."""
    found = list(asked.setting.own.proving)
    for method, recipe in {(one.way.visit.method, one.recipe) for one in asked.cleared.lines if one.recipe}:
        sizes = ((90.0, 12),) if method == "foliar" else ((3.0, 25),)
        product, strength = recipe.product or recipe.formulation, recipe.strength_pct
        found.append(Proving(method, product, strength, recipe.carrier, DAY, "A. Steward", 500.0, sizes, 1.0))
    return tuple(dict.fromkeys(found))


def test_with_own_batches_nothing_is_left_to_prove_and_the_page_says_whose_figures_they_are():
    asked = _asked()
    for _ in range(3):  # what is measured may make another way the cheaper one, which then wants proving
        asked = _asked(None, _with(proving=_batches(asked)))
    found = shopping(asked)
    assert found.proving == ()
    assert any("By your own proving batches" in one.note for one in _page(asked).parts)
    assert "proving batch, a quart" not in _text(_page(asked))


def test_a_batch_that_fits_no_line_is_named():
    stray = Proving("basal_bark", "triclopyr-ester-4-ec", 33.0, "oil", DAY, "A. Steward", 500.0, ((3.0, 25),))
    assert "No line rests on the own proving batch of 2026-09-15" in _text(_page(_asked(None, _with(proving=(stray,)))))


def test_own_prices_choose_the_containers_and_are_added_up():
    prices = tuple(Price("basal oil", Container(name, size * GAL, price))
                   for name, size, price in (("1 gal", 1, 20.0), ("5 gal", 5, 41.0)))  # fmt: skip
    asked = _asked(None, _with(prices=prices))
    oil = [one for one in shopping(asked).rest if one.what == "basal oil"]
    assert oil[0].priced and not oil[0].usual
    spent = [one.supply.purchase.cost for one in oil]
    assert spent == [sum(count * {"1 gal": 20.0, "5 gal": 41.0}[name] for name, count in oil[0].supply.purchase.counts)]
    text = _text(_page(asked))
    assert f"${spent[0]:,.2f}" in text and "Not every price is known of" in text


def test_without_prices_the_page_says_so_and_shows_none():
    page = _page(_asked())
    assert "No price is known: the containers are those that leave least over" in _text(page)
    assert all("Price" not in one.heads for one in page.parts)


def test_an_empty_stock_file_says_that_nobody_has_looked():
    assert "look into the shed first" in _text(_page(_asked(None)))
    assert "look into the shed first" not in _text(_page(_asked(Stock((Lot("basal oil", 1.0),)))))


def test_a_lot_long_open_without_a_date_is_counted_with_a_note():
    lot = Lot("basal oil", GAL, "OIL", opened=date(2020, 5, 1))
    text = _text(_page(_asked(Stock((lot,)))))
    assert "OIL has no date and was opened 2020-05-01" in text and "memory" in text
    fresh = _text(_page(_asked(Stock((replace(lot, opened=date(2026, 5, 1)),)))))
    assert "has no date" not in fresh


def test_the_costs_are_of_the_cleared_lines_and_add_up():
    asked = _asked()
    (part,) = [one for one in _page(asked).parts if one.title == "Cost by line of the plan"]
    assert len(part.rows) == len(asked.cleared.lines) + 1
    whole = [float(one[5].strip("$").replace(",", "")) for one in part.rows]
    assert whole[-1] == pytest.approx(sum(whole[:-1]), abs=len(part.rows) / 2 + 1)
    assert "Guesses (ours) until your own stand in own.toml: minutes, the wage" in part.note
    assert "Struck and held lines are not in it" in part.note


def test_the_mix_cards_point_to_the_page_and_list_no_containers():
    packet = hobbin_packet()
    assert any(one.title == "Shopping" for one in packet.pages)
    for card in packet.cards:
        assert all(do == "See the page Shopping." and "×" not in what for what, do in card.buy)
