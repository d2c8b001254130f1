"""The most mix under a label's rates: the rule and the figure must not part."""

from dataclasses import replace
from datetime import date

import pytest

from rootcollar.kernel.doubt import sure
from rootcollar.kernel.units import convert
from rootcollar.kernel.verdict import Level
from rootcollar.label import Applied, History, Past, UnitTotal, Work, most_mix, total_facts, weigh
from rootcollar.label.rule import RULES
from rootcollar.shelf import Sheet
from tests.choose.hobbin import hobbin, retyped

ACRE_M2 = 4046.8564224
GAL_ML = 3785.411784
LB_GAL_G_L = 119.826427
ESTER = "triclopyr-ester-4-ec"  # 6 lb ae an acre in one treatment, 8 in a calendar year


def total(gallons: float, pct: float = 20, acres: float | None = 2) -> UnitTotal:
    """Return so much mix on a unit."""
    mix = sure(gallons * GAL_ML)
    area = None if acres is None else acres * ACRE_M2
    return UnitTotal("bench", "triclopyr", 4 * LB_GAL_G_L, pct, mix, mix * (pct / 100), area, 1, ("x",))


def sheet(**says: object) -> Sheet:
    """Return the demo's ester label with other lines."""
    return retyped(hobbin().shelf[ESTER], **says)


NOTHING = Past((), complete=True, on=date(2026, 9, 15))


def test_two_acres_take_fifteen_gallons_of_a_fifth_of_four_pounds() -> None:
    """By hand: 6 lb/ac x 2 ac / (4 lb/gal x 0.2) = 15 gal in one treatment; 8 x 2 / 0.8 = 20 in a year."""
    found = most_mix(sheet(), Work(total(3)), NOTHING)
    assert [convert(one.mix_ml or 0, "mL", "gal") for one in found] == pytest.approx([15, 20], rel=1e-6)
    assert "in one treatment" in found[0].words and "in a year" in found[1].words


def test_a_label_that_counts_product_is_counted_so() -> None:
    """By hand: 1 gal/ac x 2 ac / 0.2 = 10 gal of mix."""
    by_product = sheet(
        limits__basis="product", limits__per_application__unit="gal/acre", limits__per_application__amount=1.0
    )
    assert convert(most_mix(by_product, Work(total(3)), NOTHING)[0].mix_ml or 0, "mL", "gal") == pytest.approx(10)


def test_other_work_and_earlier_work_leave_less() -> None:
    """5 gal beside leave 10 of 15; 4 lb an acre this year leave (8 - 4 - 2) x 2 / 0.8 = 5 of the year's."""
    earlier = Applied(date(2026, 4, 1), "bench", "triclopyr", 4 * 453.59237 * 2, 2 * ACRE_M2)
    work = Work(total(3), (total(5),))
    once, year = most_mix(sheet(), work, replace(NOTHING, rows=(earlier,)))
    assert convert(once.mix_ml or 0, "mL", "gal") == pytest.approx(10, rel=1e-6)
    assert convert(year.mix_ml or 0, "mL", "gal") == pytest.approx(5, rel=1e-6)


@pytest.mark.parametrize("rule, place", [("L12", 0), ("L13", 1)])
def test_the_rule_objects_just_above_it_and_not_at_it(rule: str, place: int) -> None:
    most = most_mix(sheet(), Work(total(3)), NOTHING)[place].mix_ml
    assert most is not None
    for share, level in ((1.0, Level.OK), (1.001, Level.STOP)):
        one = total(share * most / GAL_ML)
        lines = {f"sheet.{path}": line for path, line in sheet().lines.items()}
        facts = total_facts(lines, one, History((), complete=True), on=NOTHING.on)
        assert weigh(RULES[rule], facts, "x").level is level


@pytest.mark.parametrize(
    "says, work, words",
    [
        ({"limits__per_application__amount": None}, total(3), "not read"),
        ({}, total(3, acres=None), "size of the unit"),
        ({"limits__basis": "product"}, total(3), "counts product"),
    ],
)
def test_what_cannot_be_reckoned_gives_no_figure_and_says_why(
    says: dict[str, object], work: UnitTotal, words: str
) -> None:
    found = most_mix(sheet(**says), Work(work), NOTHING)
    assert found[0].mix_ml is None
    assert words in found[0].words


def test_nothing_is_left_where_the_year_is_full() -> None:
    earlier = Applied(date(2026, 4, 1), "bench", "triclopyr", 9 * 453.59237 * 2, 2 * ACRE_M2)
    assert most_mix(sheet(), Work(total(3)), replace(NOTHING, rows=(earlier,)))[1].mix_ml == 0
