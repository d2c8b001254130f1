"""The figures of a dose: published ones for the case, a coverage for its own strength only, the crew's own first."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.dose import Asked, per_stem_ml, proved, rule_for, surface_cm2, total_ml
from rootcollar.kernel.doubt import band
from rootcollar.kernel.errors import Refusal
from tests.dose.rules import (
    BASAL,
    BY_STEM,
    CUTS,
    CUTS_BY_THREE,
    DOUBT,
    IN,
    LEAVES,
    REFERENCE,
    STUMP,
    STUMP_IN_OIL,
    VINE,
    rule,
)  # fmt: skip


@pytest.mark.parametrize(
    ("cuts", "inches", "least"),
    [(CUTS, 1, 2), (CUTS_BY_THREE, 3, 2), (rule("hack_squirt", "triclopyr", "water", 50), 1, 2)],
)
def test_the_spacing_of_cuts_goes_by_the_herbicide(cuts, inches, least):
    """PNW handbook: one cut an inch, for imazapyr one for each 3 inches; Penn State: never fewer than two."""
    assert cuts.cm_per_cut == pytest.approx(inches * IN)
    assert cuts.min_cuts == least
    assert (cuts.dose_ml, cuts.dose_per) == (1.0, "cut")
    assert f"one for each {inches} in of diameter" in cuts.words


def test_no_figure_of_another_scheme_is_used():
    """Shrubs of many stems, 240 g/L products: one hack a stem, 0.5 mL; 1.5 mL a cut is only from memory."""
    once = rule("hack_squirt", "aminopyralid", "water", 100)
    assert once.dose_ml == 0.5 and "one cut a stem" in once.words
    assert per_stem_ml(once, (6, 40)).tolist() == [0.5]
    assert total_ml(once, np.array([6.0, 20.0, 40.0])).tolist() == [1.5]
    assert per_stem_ml(rule("hack_squirt", "aminopyralid", "water", 100, own=0.8), (6, 40)).tolist() == [0.8]
    assert CUTS.dose_ml == 1.0


def test_cuts_take_water_mixes_as_strong_as_a_source_gives():
    with pytest.raises(Refusal, match="water mixes"):
        rule("hack_squirt", "triclopyr", "oil", 50)
    with pytest.raises(Refusal, match="use a stronger mix"):
        rule("hack_squirt", "glyphosate", "water", 2)


def test_the_label_lowers_a_cut_and_never_raises_it():
    facts = REFERENCE.methods["hack_squirt"]

    def of(label_ml: float) -> float | None:
        asked = Asked("hack_squirt", "glyphosate", "water", 50, label_ml=label_ml, label_per="cut")
        return rule_for(asked, facts=facts, coverages=(), doubt=DOUBT).dose_ml

    assert (of(0.5), of(3.0)) == (0.5, 1.0)


def test_cuts_an_inch_may_be_given():
    asked = Asked("hack_squirt", "glyphosate", "water", 50, cuts_per_inch=0.5)
    found = rule_for(asked, facts=REFERENCE.methods["hack_squirt"], coverages=(), doubt=DOUBT)
    assert found.cm_per_cut == pytest.approx(2 * IN)


def test_water_goes_on_the_ring_and_oil_on_ring_and_side():
    """Beech trials: the outer 2 inches of the stump."""
    assert (STUMP.ring_cm, STUMP.height_cm) == (5.08, 0.0)
    assert (STUMP_IN_OIL.ring_cm, STUMP_IN_OIL.height_cm) == (5.08, 10.0)
    assert VINE.ring_cm is None and BASAL.height_cm == pytest.approx(12 * IN)


@pytest.mark.parametrize("one", [BASAL, STUMP, STUMP_IN_OIL, LEAVES], ids=["basal", "stump", "oil", "leaves"])
def test_an_unpublished_coverage_is_a_wide_band_that_a_proving_batch_replaces(one):
    wide = band(one.ml_per_cm2)
    assert wide.low < wide.best < wide.high
    assert "a proving batch replaces it" in one.words
    own = proved(one, 400.0, 10_000.0)
    assert own.ml_per_cm2.tolist() == [0.04]
    assert own.words == "own proving batch"
    assert (own.height_cm, own.ring_cm, own.limit) == (one.height_cm, one.ring_cm, one.limit)


def test_a_proving_batch_gives_back_what_was_used():
    """25 stems treated, what is gone from the bottle is what the rule then says for them."""
    stems = np.linspace(3, 9, 25)
    own = proved(BASAL, 500.0, float(surface_cm2(BASAL, stems).sum()))
    assert total_ml(own, stems).tolist() == pytest.approx([500.0])


def test_own_figures_stand_where_nothing_was_published():
    with pytest.raises(Refusal, match="run a proving batch"):
        rule("foliar", "glyphosate", "water", 2.7)
    own = rule("foliar", "glyphosate", "water", 2.7, own=0.005)
    assert own.ml_per_cm2.tolist() == [0.005]
    cut = rule("hack_squirt", "glyphosate", "water", 50, own=2.0)
    assert cut.dose_ml == 2.0 and "own figure" in cut.words
    assert rule("basal_bark", "triclopyr", "oil", 20, own=0.04).height_cm == BASAL.height_cm


@pytest.mark.parametrize("own", [0.0, -1.0, float("inf"), float("nan")])
def test_an_own_figure_is_an_amount(own):
    with pytest.raises(Refusal, match="amount above 0"):
        rule("basal_bark", "triclopyr", "oil", 20, own=own)


@pytest.mark.parametrize(("used", "area"), [(0, 100), (100, 0), (-1, 100), (float("nan"), 100)])
def test_a_proving_batch_of_nothing_is_refused(used, area):
    with pytest.raises(Refusal, match="nothing was used"):
        proved(BASAL, used, area)


def test_a_dose_by_the_cut_has_no_proving_batch():
    with pytest.raises(Refusal, match="syringe"):
        proved(CUTS, 100, 100)


@given(
    st.sampled_from(["basal_bark", "cut_stump", "foliar", "vine_cut"]),
    st.sampled_from(["oil", "water", "none"]),
    st.floats(0.1, 100),
)
def test_a_strength_never_gets_the_coverage_of_another(method, carrier, strength_pct):
    kept = [
        one
        for one in REFERENCE.coverage.values()
        if method in one.methods
        and (one.carrier == carrier or (carrier, one.carrier) == ("none", "water"))
        and one.strength_pct.low <= strength_pct <= one.strength_pct.high
    ]
    try:
        found = rule(method, "triclopyr", carrier, strength_pct)
    except Refusal as refusal:
        assert not kept
        assert "no coverage is kept for this strength" in refusal.limit
    else:
        assert [one.ml_per_cm2.value.best for one in kept] == [found.ml_per_cm2[0]]


@pytest.mark.parametrize("method", ["pull", "cut", "girdle", "flame", "leave"])
def test_a_method_that_pours_nothing_has_no_dose(method):
    with pytest.raises(Refusal, match="nothing is poured"):
        rule(method, "", "", 0)


@pytest.mark.parametrize(
    ("one", "band_in", "beyond"),
    [(BASAL, (5, 8), "hack-and-squirt"), (CUTS, (1, 3), "basal bark"), (STUMP, (0.2, 1), "basal bark")],
)
def test_stems_of_another_size_are_refused_with_the_next_method(one, band_in, beyond):
    with pytest.raises(Refusal) as caught:
        per_stem_ml(one, (band_in[0] * IN, band_in[1] * IN))
    assert beyond in caught.value.do
    assert one.limit.source in caught.value.limit
    with pytest.raises(Refusal):
        total_ml(one, np.array([3 * IN, band_in[0] * IN, band_in[1] * IN]))


def test_six_inches_written_as_fifteen_centimetres_are_the_same_limit():
    assert per_stem_ml(BASAL, (10, 15.24))[0] > 0
    with pytest.raises(Refusal):
        per_stem_ml(BASAL, (10, 16))


def test_a_limit_published_for_the_species_comes_first():
    """Tree-of-heaven: basal bark under 10 cm."""
    own = rule("basal_bark", "triclopyr", "oil", 20, species="aial")
    assert (own.limit.value.high, own.limit.source) == (10, "DITO07")
    with pytest.raises(Refusal, match="DITO07"):
        per_stem_ml(own, (10, 14))
    assert BASAL.limit.value.high == 15


@pytest.mark.parametrize("one", BY_STEM.values(), ids=BY_STEM)
def test_the_working_names_where_the_figure_comes_from(one):
    assert any(source in one.words for source in ("PNW-STEM", "ours", "MO-314"))
