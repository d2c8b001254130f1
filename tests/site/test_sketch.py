"""A unit drawn flat keeps its size, its place and what lies beside it."""

import pytest
from shapely import LineString, Polygon

from rootcollar.site import Feature, Unit, area_m2, sketch

SQUARE = ((-89.901, 43.299), (-89.899, 43.299), (-89.899, 43.301), (-89.901, 43.301))
UNIT = Unit("u", "U", polygon=SQUARE)
BROOK = Feature("water", "brook", ((-89.9013, 43.29), (-89.9013, 43.31)))  # 24 m west, far beyond north and south
OAK = Feature("keep", "oak", ((-89.9, 43.3),))
FAR = Feature("well", "far well", ((-89.88, 43.3),))


def test_a_unit_without_an_outline_has_no_sketch():
    assert sketch(Unit("u", "U"), [BROOK]) is None


def test_the_outline_keeps_its_area_and_lies_within_the_sheet():
    plan = sketch(UNIT)
    assert Polygon(plan.outline).area == pytest.approx(area_m2(SQUARE), rel=1e-5)
    assert all(0 < x < plan.width_m and 0 < y < plan.height_m for x, y in plan.outline)


def test_what_lies_beside_is_drawn_and_cut_at_the_edge():
    plan = sketch(UNIT, [BROOK, OAK, FAR])
    assert [(kind, name) for kind, name, _ in plan.lines] == [("water", "brook"), ("keep", "oak")]
    brook = plan.lines[0][2]
    assert {round(y) for _, y in brook} == {0, round(plan.height_m)}
    ((x, y),) = plan.lines[1][2]
    assert (x, y) == pytest.approx((plan.width_m / 2, plan.height_m / 2), abs=0.5)


def test_a_set_back_line_keeps_its_distance():
    plan = sketch(UNIT, [BROOK, OAK], [("water", 10, "10 m from water")])
    assert {words for words, _ in plan.keep_out} == {"10 m from water"}
    brook = LineString(plan.lines[0][2])
    for _, points in plan.keep_out:
        assert LineString(points).distance(brook) == pytest.approx(10, rel=0.01)


def test_a_patch_wholly_in_view_is_one_closed_line():
    ring = ((-89.9002, 43.2998), (-89.8998, 43.2998), (-89.8998, 43.3002), (-89.9002, 43.2998))
    plan = sketch(UNIT, [Feature("keep", "patch", ring)])
    ((_, _, points),) = plan.lines
    assert points[0] == points[-1]
    assert len(points) == 4
