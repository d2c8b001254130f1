"""Plain look-ups on a sheet: what it says, the longest of several, and what nobody has read."""

import pytest

from rootcollar.shelf import (
    Active,
    Sheet,
    actives,
    ae_g_per_l,
    carriers,
    dose_each,
    entry_hours,
    parse_sheet,
    setback_words,
    sites,
    strength_range,
    wear,
)
from tests.shelf.sample import sample_sheet, sample_table

EMPTY = Sheet("jug", {})


def changed(block: str, **lines: object) -> Sheet:
    """Return the sample with some lines of a block changed."""
    table = sample_table()
    table[block] |= lines
    return parse_sheet("other", table)


def test_strength_is_acid_where_there_is_one_and_active_where_rates_go_by_it() -> None:
    (active,) = actives(sample_sheet())
    # 3.00 lb/gal x 453.59237 g/lb / 3.785411784 L/gal = 359.479 g/L; 4.18 lb/gal = 500.875 g/L (reckoned by hand)
    assert ae_g_per_l(active) == pytest.approx(359.479, abs=1e-3)
    assert ae_g_per_l(active, "ai") == pytest.approx(500.875, abs=1e-3)
    assert ae_g_per_l(Active(ai_lb_per_gal=2.0)) == pytest.approx(239.653, abs=1e-3)
    assert ae_g_per_l(Active(ae_lb_per_gal=2.0), "ai") is None


def test_directions_of_a_method_are_looked_up_in_its_block() -> None:
    sheet = sample_sheet()
    assert strength_range(sheet, "foliar") == (1.0, 2.0)
    assert strength_range(sheet, "wipe") == (None, None)
    assert carriers(sheet, "cut_stump") == ("none", "water")
    assert carriers(EMPTY, "foliar") == ()
    assert dose_each(sheet, "hack_squirt") == (1.0, "cut")
    assert dose_each(sheet, "cut_stump") is None
    assert [one.class_ for one in sites(sheet)] == ["forest", "natural_area", "aquatic"]


def test_the_longest_entry_of_all_products_counts_and_an_unknown_one_is_not_passed_over() -> None:
    longer = changed("entry", rei_hours=48)
    assert entry_hours([sample_sheet(), longer]) == 48
    assert entry_hours([sample_sheet(), EMPTY]) is None
    assert entry_hours([]) is None


def test_wear_for_a_task_is_everything_any_label_says() -> None:
    other = changed("ppe", applying=["coveralls", "long sleeves"])
    worn = wear([sample_sheet(), other], "applying")
    assert worn is not None and worn[-1] == "coveralls" and worn.count("long sleeves") == 1
    assert wear([sample_sheet(), EMPTY], "applying") is None


def test_words_for_paper_tell_silent_from_not_read() -> None:
    assert setback_words(sample_sheet()) == (
        "treating (foliar): 25 ft from surface water", "mixing: 50 ft from well", "mixing: 50 ft from surface water",
        "use in water: prohibited",
    )  # fmt: skip
    assert setback_words(EMPTY)[0] == "treating: not read on the label yet"
