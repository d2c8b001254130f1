"""Distances in quarters and cover: the worked examples of Mitchell 2015 (read) and of Rangelands Gateway (read)."""

import numpy as np
import pytest

from rootcollar.kernel.errors import BadInput, Refusal
from rootcollar.survey.estimate import QuarterPoint, limits, lines_cover, quadrats_cover, quarters, vacant_factor
from rootcollar.survey.estimate.cover import SCALES, Quadrat
from rootcollar.survey.estimate.quarters import cottam_per_ha
from rootcollar.survey.plots import Line

FIVE = "1.1 1.6 2.3 3.0 / 2.8 3.7 .9 2.2 / 2.8 1.1 3.2 1.4 / 1.3 .8 .7 3.1 / 1.5 2.4 3.3 1.7"
LAMINGTON = (
    "1.5 1.2 2.3 1.9 / 3.3 .7 2.5 2.0 / 3.3 2.3 2.3 2.4 / 1.8 3.4 1.0 4.3 / .9 .9 2.9 1.4 / 2.0 1.3 1.0 .7 / "
    ".7 2.0 2.7 2.5 / 2.6 4.8 1.1 1.2 / 1.0 2.5 1.9 1.1 / 1.6 .7 3.4 3.2 / 1.8 1.0 1.4 3.6 / 4.2 .6 3.2 2.6 / "
    "4.1 3.9 .2 2.0 / 1.7 4.2 4.0 1.1 / 1.8 2.2 1.2 2.8"
)


def points(text, vacant=()):
    """vacant: pairs of point and quarter, both counted from 1."""
    rows = [[float(one) for one in part.split()] for part in text.split("/")]
    return [
        QuarterPoint(str(i), tuple(None if (i, j) in vacant else one for j, one in enumerate(row, 1)), f"row {i}")
        for i, row in enumerate(rows, 1)
    ]


def test_five_points():
    found = quarters(points(FIVE))
    assert found.figure == pytest.approx(2402, abs=0.5)
    mean = np.mean([one for point in points(FIVE) for one in point.metres])
    assert cottam_per_ha(mean) == pytest.approx(2391.19, abs=5e-3)


def test_fifteen_points_and_their_two_kinds_of_limits():
    """The paper prints both for the same data; the kind says which."""
    exact, normal = quarters(points(LAMINGTON)), quarters(points(LAMINGTON), exact=False)
    assert exact.figure == normal.figure == pytest.approx(2160.95, abs=5e-3)
    said, other = limits(exact, 0.95), limits(normal, 0.95)
    assert (said.low, said.high) == (pytest.approx(1676.98, abs=5e-3), pytest.approx(2787.47, abs=5e-3))
    assert (other.low, other.high) == (pytest.approx(1669, abs=0.5), pytest.approx(2778, abs=0.5))
    assert said.kind != other.kind
    # Pollard's variance
    assert exact.standard_error == pytest.approx(exact.figure / np.sqrt(4 * 15 - 2))


def test_vacant_quarters_thin_the_density():
    found = quarters(points(LAMINGTON, vacant={(9, 4), (13, 2)}))
    assert found.figure == pytest.approx(2024.03, abs=0.01)
    assert "thinned" in limits(found).kind
    assert limits(found).low < found.figure < limits(found).high


@pytest.mark.parametrize(("share", "factor"), [(0, 1), (0.05, 0.8737), (0.1, 0.784), (0.25, 0.5816), (0.3, 0.5263)])
def test_what_vacant_quarters_leave(share, factor):
    assert vacant_factor(share) == pytest.approx(factor, abs=5e-5)


def test_the_exact_limits_hold_the_truth_as_often_as_they_say_for_stems_by_chance():
    rng = np.random.default_rng(5)
    held = 0
    for _ in range(400):
        # the area searched in a quarter to its nearest stem is exponential when stems stand by chance
        metres = np.sqrt(rng.exponential(4 / (np.pi * 0.05), (6, 4)))
        said = limits(quarters([QuarterPoint(str(i), tuple(row)) for i, row in enumerate(metres.tolist())]), 0.8)
        held += said.low <= 500 <= said.high
    assert held / 400 == pytest.approx(0.8, abs=0.05)


def test_wrong_points_are_named_by_row():
    with pytest.raises(BadInput, match="row 2.*-3"):
        quarters([QuarterPoint("a", (1, 2, 3, 4), "row 1"), QuarterPoint("b", (1, -3, 2, 2), "row 2")])
    with pytest.raises(BadInput, match="point a twice"):
        quarters([QuarterPoint("a", (1, 2, 3, 4)), QuarterPoint("a", (1, 2, 3, 4))])
    with pytest.raises(BadInput, match="fewer than two"):
        quarters([QuarterPoint("a", (1, None, None, None))])
    with pytest.raises(Refusal, match="exact"):
        quarters(points(FIVE), exact=False)


def test_quadrats_by_class():
    placed = [name for name, many in {"1": 8, "2": 6, "3": 4, "4": 2}.items() for _ in range(many)]
    found = quadrats_cover([Quadrat(str(i), name) for i, name in enumerate(placed)])
    assert found.figure == 19.25
    assert [one.middle_pct for one in SCALES["Daubenmire"]] == [2.5, 15, 37.5, 62.5, 85, 97.5]
    with pytest.raises(BadInput, match="row 4.*'7'.*1, 2, 3"):
        quadrats_cover([Quadrat("a", "1"), Quadrat("b", "7", "row 4")])


def test_cover_never_passes_the_whole():
    found = quadrats_cover([Quadrat("a", "6"), Quadrat("b", "6"), Quadrat("c", "3")])
    assert limits(found, 0.99).high == 100
    assert "5 %" in limits(found).falls_short


def test_cover_on_lines_weighs_long_lines_more():
    lines = [Line("a", 10, ((0, 5),)), Line("b", 30, ((0, 6), (3, 9)))]
    assert lines_cover(lines).figure == pytest.approx(100 * 14 / 40)
