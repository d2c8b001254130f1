"""From rows to stands: nothing counted is lost or doubled, and doubt belongs to its stand."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.kernel.doubt import Doubt, band
from rootcollar.survey import TallyRow, stand_key, stands, stems_per_acre, total

ROW = TallyRow("bench", "rhca3", (2.54, 5.08), 120, 80, 150)


def test_a_key_names_unit_species_and_band():
    assert stand_key("bench", "rhca3", (2.54, 5.08)) == "bench/rhca3/2.5-5.1cm"
    assert stand_key("bench", "rhca3", (0, 1.27)) == "bench/rhca3/0-1.3cm"
    assert stand_key("bench", "rhca3", (10.16, 152.4)) == "bench/rhca3/10.2-152.4cm"


def test_a_count_without_a_range_is_sure():
    (stand,) = stands([TallyRow("bench", "rhca3", (2.54, 5.08), 120)], Doubt(1))
    assert stand.stems.tolist() == [120]


def test_a_range_becomes_worlds_whose_band_is_the_range():
    (stand,) = stands([ROW], Doubt(1))
    assert stand.stems.size == 1001
    found = band(stand.stems)
    assert found.best == 120
    assert found.low == pytest.approx(80, rel=0.02)
    assert found.high == pytest.approx(150, rel=0.02)


def test_half_a_range_is_sure_on_its_other_side():
    (stand,) = stands([TallyRow("bench", "rhca3", (2.54, 5.08), 100, None, 140)], Doubt(1))
    assert stand.stems.min() == 100
    assert band(stand.stems).high == pytest.approx(140, rel=0.02)


def test_the_doubt_of_a_stand_is_its_own_whatever_else_was_counted():
    other = TallyRow("ridge", "moal", (2.54, 5.08), 50, 20, 90)
    alone = stands([ROW], Doubt(1))[0]
    among = stands([other, ROW], Doubt(1))[0]
    assert np.array_equal(alone.stems, among.stems)
    ranks = [stand.stems.argsort().tolist() for stand in stands([other, ROW], Doubt(1))]
    assert ranks[0] != ranks[1]
    assert not np.array_equal(alone.stems, stands([ROW], Doubt(2))[0].stems)


def test_two_rows_of_one_key_are_refused():
    with pytest.raises(ValueError, match="two rows"):
        stands([ROW, ROW], Doubt(1))


def test_none_for_sure_makes_no_stand_and_none_perhaps_does():
    none = TallyRow("bench", "moal", (2.54, 5.08), 0)
    perhaps = TallyRow("bench", "romu", (2.54, 5.08), 0, 0, 5)
    assert [stand.species for stand in stands([none, perhaps], Doubt(1))] == ["romu"]


counts = st.lists(st.integers(0, 5000), min_size=1, max_size=8)


@given(counts)
def test_a_total_holds_every_stem_and_stands_are_in_key_order(numbers):
    rows = [TallyRow(f"u{i}", "rhca3", (2.54, 5.08), n, n // 2, n * 2) for i, n in enumerate(numbers)]
    found = stands(reversed(rows), Doubt(1, n=50))
    assert [one.key for one in found] == sorted(one.key for one in found)
    assert total(found)[0] == sum(numbers)
    assert total(found).min() >= 0


def test_a_total_of_nothing_is_nothing():
    assert total([]).tolist() == [0]


def test_density_is_stems_over_acres_world_by_world():
    assert stems_per_acre(np.array([120.0, 60.0]), 2.0).tolist() == [60, 30]
