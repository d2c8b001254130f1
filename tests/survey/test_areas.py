"""Three areas kept apart: each no larger than the one around it, and the rules of the record kept."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import Polygon

from rootcollar.kernel.units import convert
from rootcollar.survey.areas import Patch, areas, gaps_m, outline_doubt_m2, patch_faults

ACRE = convert(1, "ac", "m2")


def test_twelve_acres_two_fifths_infested_a_quarter_cover() -> None:
    found = areas(Patch(12 * ACRE, 40, 25))
    assert found.infested_m2 == pytest.approx(4.8 * ACRE)
    assert found.canopy_m2 == pytest.approx(1.2 * ACRE)


@given(st.floats(500, 1e6), st.floats(1, 100), st.none() | st.floats(0, 100))
def test_each_is_within_the_one_around_it(gross: float, infested: float, cover: float | None) -> None:
    found = areas(Patch(gross, infested, cover))
    assert 0 < found.infested_m2 <= found.gross_m2 * (1 + 1e-12)
    assert (found.canopy_m2 is None) == (cover is None)  # what nobody judged is not nought
    assert found.canopy_m2 is None or 0 <= found.canopy_m2 <= found.infested_m2 * (1 + 1e-12)


@pytest.mark.parametrize(
    ("patch", "words"),
    [
        (Patch(0, 100), "above 0"),
        (Patch(1000, 101), "0 to 100 % infested"),
        (Patch(1000, 50, -1), "0 to 100 % cover"),
        (Patch(1000, 0), "visited again"),
        (Patch(1000, 50, gone=True), "visited again"),
        (Patch(ACRE / 10, 60), "infested whole"),
    ],
)
def test_what_the_record_does_not_allow_is_told(patch: Patch, words: str) -> None:
    assert any(words in one for one in patch_faults(patch))
    with pytest.raises(ValueError, match=words.split()[0]):
        areas(patch)


def test_a_patch_that_is_gone_and_a_small_one_that_is_whole_pass() -> None:
    gone = areas(Patch(ACRE, 0, gone=True))
    assert (gone.infested_m2, gone.canopy_m2) == (0, 0)
    assert areas(Patch(ACRE / 20, 100)).infested_m2 == ACRE / 20
    assert areas(Patch(ACRE / 20, 0, gone=True)).infested_m2 == 0


def test_the_doubt_of_a_walked_outline_is_that_of_many_walks() -> None:
    corners = np.array([(0, 0), (100, 0), (130, 60), (100, 100), (0, 100)], dtype=float)
    luck = np.random.default_rng(1)
    walks = [Polygon(corners + luck.normal(0, 2, corners.shape)).area for _ in range(3000)]
    assert outline_doubt_m2(2, gaps_m(corners)) == pytest.approx(np.std(walks), rel=0.06)
    square = [(0, 0), (100, 0), (100, 100), (0, 100)]
    assert outline_doubt_m2(5, gaps_m(square)) == pytest.approx(707, abs=0.5)
    with pytest.raises(ValueError, match="3 corners"):
        gaps_m(square[:2])
