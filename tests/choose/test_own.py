"""A crew's own figures replace the guesses of their own mix and way, and of no other."""

from dataclasses import replace
from datetime import date

import pytest

from rootcollar.choose import Choice, Own, Price, Setting, decide, line_cost
from rootcollar.dose import Proving
from rootcollar.kernel.doubt import band, best
from rootcollar.mix import Container
from tests.choose.hobbin import at, hobbin, plan, setting_of

LINE = "bench/rhca3/2.5-5.1cm"
BATCH = Proving(
    "basal_bark", "triclopyr-ester-4-ec", 20.0, "oil", date(2026, 9, 1), "A. Steward", 600.0, ((3.0, 12), (4.5, 13))
)


def _line() -> Choice:
    return at(LINE)


def _own(**own: object) -> Setting:
    return replace(setting_of(hobbin()), own=Own(**own))


def _decided(setting: Setting) -> Choice:
    return decide(_line().stand, setting)


def _fitting() -> Proving:
    recipe = _line().recipe
    assert recipe is not None and _line().way.visit.method == "basal_bark"
    return replace(BATCH, strength_pct=recipe.strength_pct)


def test_an_own_proving_batch_changes_the_dose_and_narrows_its_band():
    found, guess = _decided(_own(proving=(_fitting(),))).per_stem, _line().per_stem
    wide = band(guess.mix_ml)
    assert wide.low < wide.best < wide.high
    assert found.mix_ml.tolist() == [pytest.approx(best(found.mix_ml))]
    assert best(found.mix_ml) != pytest.approx(best(guess.mix_ml), rel=0.01)
    assert found.dose_because.startswith("own proving batch of 2026-09-01")


def test_the_dose_is_what_the_batch_gave_by_the_diameter():
    """600 mL on 12 stems of 3 cm and 13 of 4.5 cm: bark goes with the diameter, so 600 / 94.5 mL a centimetre."""
    low, high = _line().stand.band_cm
    found = best(_decided(_own(proving=(_fitting(),))).per_stem.mix_ml)
    assert found == pytest.approx(600 / (12 * 3.0 + 13 * 4.5) * (low + high) / 2)


@pytest.mark.parametrize(
    "other", [{"method": "cut_stump"}, {"strength_pct": 25.0}, {"carrier": "water"}, {"product": "glyphosate-3-sl"}]
)
def test_a_batch_of_another_mix_or_way_changes_nothing(other):
    found = _decided(_own(proving=(replace(_fitting(), **other),))).per_stem
    assert found.mix_ml.tolist() == _line().per_stem.mix_ml.tolist()


def test_another_product_of_the_same_ingredient_in_the_same_carrier_counts():
    found = _decided(_own(proving=(replace(_fitting(), product="triclopyr-bee-4-ec-plant-oil"),))).per_stem
    assert found.dose_because.startswith("own proving batch")


def test_the_newest_batch_counts():
    newer = replace(_fitting(), on=date(2026, 9, 10), used_ml=900.0)
    found = _decided(_own(proving=(newer, _fitting()))).per_stem
    assert "2026-09-10" in found.dose_because


def test_own_prices_and_wage_replace_the_placeholders():
    guess = _line()
    own = _decided(_own(wage_per_h=2500.0)).per_stem
    assert best(own.cost) > 10 * best(guess.per_stem.cost)
    dear = Price("basal oil", Container("1 gal", 3785.41, 900.0)), Price("basal oil", Container("1 qt", 946.0))
    assert best(_decided(_own(prices=dear)).per_stem.cost) > best(guess.per_stem.cost)


def test_the_least_price_of_a_litre_counts_and_a_size_without_a_price_does_not():
    small, large = Container("1 L", 1000.0, 30.0), Container("10 L", 10_000.0, 200.0)
    own = Own(prices=(Price("x", small), Price("x", large), Price("x", Container("5 L", 5000.0))))
    assert own.price_per_l("x") == pytest.approx(20.0)
    assert own.price_per_l("y", "x") == pytest.approx(20.0)
    assert own.price_per_l("y") is None


def test_labour_and_mix_add_up_to_the_cost_a_line_was_chosen_by():
    setting = setting_of(hobbin())
    for one in plan().choices:
        if one.option is not None:
            cost = line_cost(one, setting)
            assert best(cost.total) == pytest.approx(best(one.stand.stems * one.per_stem.cost))
            assert band(cost.total).high == pytest.approx(band(one.stand.stems * one.per_stem.cost).high)
            assert (best(cost.mix) > 0) is (one.recipe is not None)
