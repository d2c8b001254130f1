"""Plot sizes: the usual plot with nearest to ten stems, and a slope's circle of the right level area."""

from math import atan, cos, pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.survey.design import PARTS_OF_ACRE, fit_size
from rootcollar.survey.plots import one_radius_m, radius_m


@pytest.mark.parametrize(("per_acre", "parts", "fits"), [(200, 20, True), (1000, 100, True), (3, 5, False)])
def test_the_plot_that_holds_about_ten_stems(per_acre: float, parts: int, fits: bool) -> None:
    assert (fit_size(per_acre).parts, fit_size(per_acre).fits) == (parts, fits)


@given(st.floats(1, 20000))
def test_denser_stems_never_take_a_larger_plot(per_acre: float) -> None:
    assert fit_size(per_acre).parts in PARTS_OF_ACRE
    assert fit_size(1.5 * per_acre).parts >= fit_size(per_acre).parts


def test_no_density_no_plot() -> None:
    with pytest.raises(ValueError, match="above 0"):
        fit_size(0)


@given(st.floats(1, 4000), st.floats(0, 150))
def test_the_circle_on_the_slope_covers_the_level_area(area_m2: float, slope_pct: float) -> None:
    along = one_radius_m(radius_m(area_m2), slope_pct)
    assert pi * along**2 * cos(atan(slope_pct / 100)) == pytest.approx(area_m2)
    # The other published way stretches by 1 / cos, straight up the slope: the two must not be mixed.
    assert along <= radius_m(area_m2) / cos(atan(slope_pct / 100)) + 1e-9
