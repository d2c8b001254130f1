"""A proving batch gives the crew's own figure for its own mix, and gives back what was used."""

from dataclasses import replace
from datetime import date

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.dose import Asked, Proving, own_figure, rule_for, total_ml
from rootcollar.kernel.errors import Refusal
from tests.dose.rules import DOUBT, REFERENCE

BATCH = Proving("basal_bark", "ester-4", 20, "oil", date(2026, 10, 2), "A. Steward", 700.0, ((2.54, 12), (5.08, 13)))
KINDS = [("basal_bark", "triclopyr", "oil", 20), ("cut_stump", "glyphosate", "water", 50),
         ("cut_stump", "triclopyr", "oil", 20), ("vine_cut", "glyphosate", "water", 50)]  # fmt: skip


def _figure(batch: Proving, method: str, ingredient: str, carrier: str, strength_pct: float) -> tuple[float, Asked]:
    asked = Asked(method, ingredient, carrier, strength_pct)
    return own_figure(batch, asked, REFERENCE.methods[method]), asked


@pytest.mark.parametrize(("method", "ingredient", "carrier", "strength_pct"), KINDS)
@given(
    used=st.floats(50, 2000), sizes=st.lists(st.tuples(st.floats(1, 12), st.integers(1, 30)), min_size=1, max_size=4)
)
def test_the_stems_of_the_batch_take_what_was_used(method, ingredient, carrier, strength_pct, used, sizes):
    batch = replace(BATCH, method=method, carrier=carrier, used_ml=used, sizes=tuple(sizes))
    own, asked = _figure(batch, method, ingredient, carrier, strength_pct)
    rule = rule_for(asked, facts=REFERENCE.methods[method], coverages=(), doubt=DOUBT, own=own, whose=batch.words)
    diameters = np.repeat([size for size, _ in sizes], [count for _, count in sizes])
    assert total_ml(replace(rule, limit=None), diameters).tolist() == pytest.approx([used])
    assert rule.words == "own proving batch of 2026-10-02"


def test_leaves_go_by_the_crown():
    """Ten plants of 2 m cover 10 pi square metres."""
    batch = replace(BATCH, method="foliar", carrier="water", used_ml=1000, sizes=((200.0, 10),))
    own, _ = _figure(batch, "foliar", "glyphosate", "water", 2)
    assert own == pytest.approx(1000 / (10 * np.pi * 1e4))


def test_cuts_go_by_what_went_into_one():
    batch = replace(BATCH, method="hack_squirt", carrier="water", strength_pct=50, ml_per_cut=1.3)
    own, asked = _figure(batch, "hack_squirt", "glyphosate", "water", 50)
    rule = rule_for(
        asked, facts=REFERENCE.methods["hack_squirt"], coverages=(), doubt=DOUBT, own=own, whose=batch.words
    )
    assert rule.dose_ml == 1.3 and "1.3 mL a cut, own proving batch of 2026-10-02" in rule.words
    with pytest.raises(Refusal, match="syringe"):
        _figure(replace(batch, ml_per_cut=None), "hack_squirt", "glyphosate", "water", 50)


@pytest.mark.parametrize("change", [{"used_ml": 0.0}, {"sizes": ()}])
def test_a_batch_of_nothing_is_refused(change):
    with pytest.raises(Refusal, match="nothing was used"):
        _figure(replace(BATCH, **change), "basal_bark", "triclopyr", "oil", 20)


@pytest.mark.parametrize(
    ("method", "strength_pct", "carrier", "same"),
    [("basal_bark", 20.0, "oil", True), ("basal_bark", 20.0 + 1e-9, "oil", True), ("basal_bark", 20.1, "oil", False),
     ("cut_stump", 20.0, "oil", False), ("basal_bark", 20.0, "water", False)],
)  # fmt: skip
def test_a_batch_never_crosses_over_to_another_way_strength_or_carrier(method, strength_pct, carrier, same):
    assert BATCH.same_mix(method, strength_pct, carrier) is same
