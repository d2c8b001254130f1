"""Ways of working: figures as printed, reckoned ones reckoned anew, guesses that say so."""

from __future__ import annotations

import math
from statistics import NormalDist

import pytest

from rootcollar.kernel.sources import Mark
from rootcollar.reference import Reference, Span, numbers

INCH_CM = 2.54
GAL_ML = 3785.411784


def test_every_known_method_has_its_figures_or_says_why(facts: Reference) -> None:
    told = set(facts.vocab["method"]) - {"any", "other"}
    assert set(facts.methods) == told


@pytest.mark.parametrize(
    ("ingredient", "value", "source"),
    [("glyphosate", 1.0, "PNW-STEM"), ("imazapyr", 1 / 3, "PNW-STEM"), ("", 1.0, "PSU-HS")],
)
def test_cuts_an_inch_as_printed(facts: Reference, ingredient: str, value: float, source: str) -> None:
    """PNW handbook, hack and squirt: 1 cut an inch for glyphosate, 1 for each 3 inches for imazapyr."""
    rows = numbers(facts.methods["hack_squirt"].rows("cuts_per_inch", ingredient))
    assert any(row.value == pytest.approx(value) and row.source == source for row in rows)


def test_a_row_bound_to_another_ingredient_is_not_given(facts: Reference) -> None:
    rows = facts.methods["hack_squirt"].rows("cuts_per_inch", "triclopyr")
    assert rows
    assert all(row.value == 1.0 for row in rows)


def test_a_row_bound_to_another_carrier_or_plant_is_not_given(facts: Reference) -> None:
    stump = facts.methods["cut_stump"]
    water, oil = (stump.rows("max_delay_min", carrier=carrier) for carrier in ("water", "oil"))
    assert {row.value for row in oil} == {1440.0}
    assert {row.value for row in water} == {0.0, 1.0, 5.0, 30.0, 60.0, 120.0, 5760.0}
    assert 120.0 in {row.value for row in stump.rows("max_delay_min", carrier="water", species="rhca3")}
    assert 120.0 not in {row.value for row in stump.rows("max_delay_min", carrier="water", species="aial")}


def test_the_flooding_figure_follows_from_its_manual(facts: Reference) -> None:
    """MO-314, sec. 3-9: 1 gal treats about 50 stems of 2 inches, lowest 12 inches."""
    band_cm2 = math.pi * 2 * INCH_CM * 12 * INCH_CM
    ml = GAL_ML / 50
    high = facts.coverage["basal_high_volume_oil"]
    assert high.ml_per_cm2.value.best == pytest.approx(ml / band_cm2, abs=5e-4)
    assert high.strength_pct == Span(1, 5)
    rows = numbers(facts.methods["basal_bark"].rows("ml_per_inch_dbh"))
    assert [row.value for row in rows] == [pytest.approx(ml / 2, abs=0.05)]


def test_low_volume_lies_between_the_nozzle_saving_and_half_the_flooding(facts: Reference) -> None:
    flood = facts.coverage["basal_high_volume_oil"].ml_per_cm2.value.best
    saving = numbers(facts.methods["basal_bark"].rows("nozzle_saving_share"))[0].value
    low = facts.coverage["basal_low_volume_oil"].ml_per_cm2
    assert flood is not None
    assert low.mark is Mark.OURS
    assert low.value.low == pytest.approx(flood * (1 - saving), abs=5e-4)
    assert low.value.high == pytest.approx(flood / 2, abs=5e-4)


def test_coverages_of_one_method_and_carrier_never_share_a_strength(facts: Reference) -> None:
    every = list(facts.coverage.values())
    for place, one in enumerate(every):
        for other in every[place + 1 :]:
            if set(one.methods) & set(other.methods) and one.carrier == other.carrier:
                assert (one.strength_pct.high or 100) < (other.strength_pct.low or 0), (one.key, other.key)


def test_what_no_source_gave_says_that_a_proving_batch_must_replace_it(facts: Reference) -> None:
    ours = [one for one in facts.coverage.values() if one.ml_per_cm2.mark is Mark.OURS]
    assert len(ours) == 3
    assert all("proving batch must replace it" in one.words for one in ours)


def test_the_drilled_hole_holds_less_than_is_printed(facts: Reference) -> None:
    rows = {
        one.name: one.figure.value for one in facts.methods["injection"].figures if "conifers" in "".join(one.species)
    }
    width, depth = rows["hole_width_mm"], rows["hole_depth_mm"]
    assert isinstance(width, float) and isinstance(depth, float)
    assert rows["hole_volume_ml"] == pytest.approx(math.pi / 4 * width**2 * depth / 1000, abs=0.05)
    assert rows["ml_per_hole_printed"] == 25.0


def test_cost_a_stem_follows_from_cost_an_acre(facts: Reference) -> None:
    """Kochenderfer and others 2004: 159 stems $39.28, 396 stems $80.32, 3,743 stems $230.09 an acre."""
    for method, acre, stems in (("hack_squirt", 39.28, 159), ("basal_bark", 80.32, 396), ("basal_bark", 230.09, 3743)):
        costs = [row.value for row in numbers(facts.methods[method].rows("cost_per_stem"))]
        assert any(cost == pytest.approx(acre / stems, abs=0.005) for cost in costs)
        assert acre in [row.value for row in numbers(facts.methods[method].rows("cost_per_acre"))]


def wilson(share: float, n: int) -> tuple[float, float]:
    """Wilson's score interval, 80 %."""
    z = NormalDist().inv_cdf(0.9)
    middle = (share + z * z / (2 * n)) / (1 + z * z / n)
    half = z / (1 + z * z / n) * math.sqrt(share * (1 - share) / n + z * z / (4 * n * n))
    return max(0.0, middle - half), min(1.0, middle + half)


def test_the_ends_of_a_kill_are_come_by_as_they_say(facts: Reference) -> None:
    seen = set()
    for row in facts.kill:
        seen.add(row.spread)
        assert (row.spread == "ours") == (row.mark is Mark.OURS), row.key
        if row.spread in ("binomial", "guess"):
            assert (row.n is not None) == (row.spread == "binomial"), row.key
            assert row.share.best is not None
            low, high = wilson(row.share.best, row.n or 10)
            assert row.share.low == pytest.approx(min(low, row.share.best), abs=6e-4), row.key
            assert row.share.high == pytest.approx(max(high, row.share.best), abs=6e-4), row.key
    assert seen == set(facts.vocab["spread"])


def test_a_kill_of_a_trial_holds_what_the_plant_page_says(facts: Reference) -> None:
    checked = 0
    for row in facts.kill:
        if not row.species:
            continue
        assert row.growth_form == facts.species[row.species].growth_form, row.key
        same = [
            one.value
            for one in facts.species[row.species].efficacy
            if (one.source, one.method, one.ingredients, one.outcome)
            == (row.source, row.method, row.ingredients, row.outcome)
        ]
        if same and row.growing_season != 1:  # the page has the later look-back, which stands
            assert any((row.share.low or 0) <= value <= (row.share.high or 0) for value in same), row.key
            checked += 1
    assert checked == 33


def test_kill_keys_are_not_shared(facts: Reference) -> None:
    keys = [row.key for row in facts.kill]
    assert len(keys) == len(set(keys))


def test_every_woody_form_has_a_wide_prior_for_every_herbicide_way(facts: Reference) -> None:
    for form in ("tree", "shrub", "vine"):
        for method in ("hack_squirt", "injection", "cut_stump", "basal_bark", "foliar"):
            wide = [
                row for row in facts.kill
                if (row.growth_form, row.method, row.spread) == (form, method, "ours") and row.herbicide
            ]  # fmt: skip
            assert len(wide) == 1
            assert (wide[0].share.high or 0) - (wide[0].share.low or 0) >= 0.3


def test_minutes_grow_with_the_stem_and_leave_no_size_out(facts: Reference) -> None:
    methods = {row.method for row in facts.labour}
    assert methods == set(facts.methods) - {"graze", "burn"}  # no work by the stem
    for method in methods:
        rows = [row for row in facts.labour if row.method == method]
        ends = [row.diameter_cm for row in rows]
        assert ends[0].low == 0 and ends[-1].high is None
        assert [one.high for one in ends[:-1]] == [one.low for one in ends[1:]]
        minutes = [row.minutes.best for row in rows]
        assert minutes == sorted(minutes, key=lambda one: one or 0)
        assert all(row.words == "guess until own times" and row.mark is Mark.OURS for row in rows)


def test_placeholders_tell_the_user_to_put_in_their_own(facts: Reference) -> None:
    every = {**facts.placeholders, **facts.price_usd_per_gal}
    assert every
    assert all("put your own in" in one.holds_for and one.mark is Mark.OURS for one in every.values())
    assert set(facts.price_usd_per_gal) <= set(facts.formulations)


def test_habits_of_the_trade_are_marked_as_such(facts: Reference) -> None:
    assert len(facts.practice) == 20
    for one in facts.practice.values():
        assert one.mark is Mark.PRACTICE and one.source == "practice"
    band = facts.practice["basal_band"].figures
    assert [(one.value, one.unit) for one in band] == [(12.0, "in"), (Span(None, 6.0), "in")]


def test_rinsing_as_the_federal_rule_prints_it(facts: Reference) -> None:
    """40 CFR 156.146(b)(1): fill a quarter, shake 10 s, drain 10 s, three times in all."""
    rule = {
        one.name: one.figure.value for one in facts.mixing["rinse"]
        if one.figure.source == "CFR15" and one.figure.locator == "156.146(b)(1)"
    }  # fmt: skip
    assert rule == {"rinse_times": 3.0, "rinse_fill_share": 0.25, "drain_s": 10.0, "shake_s": 10.0}


def test_the_calibration_plot_is_a_hundred_and_twenty_eighth_of_an_acre(facts: Reference) -> None:
    rows = {one.name: one.figure.value for one in facts.mixing["calibration"]}
    assert rows["plot_ft2"] == 43560 / 128
    assert rows["gpa_inches"] == 43560 * 60 * 12 / 5280
    assert rows["gpa_feet"] == 43560 * 60 / 5280
