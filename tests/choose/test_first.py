"""Which unit first: what is owed, then seed, room, lying apart, water and trails; what cannot be worked, last."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from datetime import date, timedelta
from functools import cache
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.choose import Choice, Own, Setting
from rootcollar.choose.first import Place, order_units, place_working, points
from rootcollar.choose.why_first import apart, carried, room
from rootcollar.kernel.doubt import sure
from rootcollar.kernel.formula import watch
from rootcollar.label import Applied, History
from tests.choose.hobbin import DAY, PLAIN, chosen, plain_setting, plan, stand

ACRE_M2 = 4046.8564224
SIDE_DEG = 0.0006  # of latitude, about 67 m


@cache
def _line(plant: str, allowed: bool) -> Choice:
    """A line to pull (no label needed); not allowed: a stop."""
    setting = plain_setting() if allowed else plain_setting(permission=None)
    return chosen(stand(plant, 0.1, 0.5), setting)


def line(
    unit: str, count: float, *, plant: str = "common buckthorn", allowed: bool = True, fruiting: bool | None = False
) -> Choice:
    one = _line(plant, allowed)
    key = f"{unit}/{one.stand.key}/{count}/{fruiting}"
    return replace(one, stand=replace(one.stand, key=key, unit=unit, stems=sure(count), fruiting=fruiting))


def square(east_deg: float) -> tuple[tuple[float, float], ...]:
    west, south = -89.9 + east_deg, 43.3
    return ((west, south), (west + SIDE_DEG, south), (west + SIDE_DEG, south + SIDE_DEG), (west, south + SIDE_DEG))


def setting(own: Own | None = None, rows: Sequence[Applied] = (), **units: Mapping[str, Any]) -> Setting:
    """Units a, b, c of an acre, far from water and trails, on no map; changed by facts."""
    base = plain_setting()
    ground = {
        key: replace(PLAIN, key=key, name=f"unit {key}", **{"area_m2": ACRE_M2, **units.get(key, {})})
        for key in ("a", "b", "c")
    }
    whole = replace(base, ground=replace(base.ground, units=ground), history=History(tuple(rows), complete=True))
    return replace(whole, own=own) if own else whole


def keys(lines: Iterable[Choice], of: Setting) -> list[str]:
    return [one.key for one in order_units(tuple(lines), of)]


def place(lines: Iterable[Choice], of: Setting, key: str) -> Place:
    return next(one for one in order_units(tuple(lines), of) if one.key == key)


LINES = (line("a", 50), line("b", 50), line("c", 50))


def test_equal_units_go_by_key() -> None:
    assert keys(reversed(LINES), setting()) == ["a", "b", "c"]


def test_seed_on_the_stems_moves_a_unit_up() -> None:
    lines = (line("a", 50), line("b", 50), line("c", 50, fruiting=True))
    assert keys(lines, setting()) == ["c", "a", "b"]
    assert "100% of its stems bear seed" in place(lines, setting(), "c").because


def test_thin_ground_comes_before_thick() -> None:
    lines = (line("a", 5000), line("b", 20), line("c", 300))
    assert keys(lines, setting()) == ["b", "c", "a"]
    assert "20 stems an acre" in place(lines, setting(), "b").because


def test_thickness_is_by_the_acre_not_by_the_count() -> None:
    assert keys((line("a", 300), line("b", 20)), setting(a={"area_m2": 100 * ACRE_M2})) == ["a", "b"]


def test_a_unit_far_from_thick_ground_comes_before_one_that_touches_it() -> None:
    drawn = {
        "a": {"polygon": square(SIDE_DEG)}, "b": {"polygon": square(20 * SIDE_DEG)}, "c": {"polygon": square(0)},
    }  # fmt: skip
    lines = (line("a", 50), line("b", 50), line("c", 5000))
    assert keys(lines, setting(**drawn))[:2] == ["b", "a"]
    told = place(lines, setting(**drawn), "a")
    assert "it touches thicker ground (unit c)" in [one.words for one in told.speaks]
    assert "touches" not in told.because  # what counts nothing is no reason
    assert "ft from thicker ground (unit c)" in place(lines, setting(**drawn), "b").because


def test_water_near_by_moves_a_unit_up_only_where_its_seed_goes_with_water() -> None:
    near = setting(b={"water_m": 5.0})
    floats = [line(key, 50, plant="common buckthorn") for key in ("a", "b")]
    winged = [line(key, 50, plant="Norway maple") for key in ("a", "b")]
    assert keys(floats, near) == ["b", "a"]
    assert "the water carries seed off" in place(floats, near, "b").because
    assert keys(winged, near) == ["a", "b"]


def test_a_trail_near_by_moves_a_unit_up_where_feet_carry_the_seed() -> None:
    lines = [line(key, 50, plant="garlic mustard") for key in ("a", "b")]
    assert keys(lines, setting(b={"trail_m": 5.0})) == ["b", "a"]
    assert "the trail carries seed off" in place(lines, setting(b={"trail_m": 5.0}), "b").because


def test_seed_goes_as_far_as_its_own_source_says() -> None:
    """Broom is thrown 6 m (fourcounty_broom); where no source gives a figure, ours of 60 m stands."""
    near = setting(a={"water_m": 30.0})
    for plant, says in (("Scotch broom", "fourcounty_broom"), ("common buckthorn", "ours")):
        lines = [line("a", 50, plant=plant)]
        found = place(lines, near, "a")
        with watch() as steps:
            place_working(found, lines, near)
        shares = [one for one in steps if one.formula.name.endswith("carried")]
        assert shares[0].inputs["far_m"] == {"fourcounty_broom": 6, "ours": 60}[says]


def test_a_unit_where_nothing_can_be_worked_comes_last_and_says_so() -> None:
    lines = (line("a", 1, allowed=False, fruiting=True), line("b", 2000))
    assert keys(lines, setting()) == ["b", "a"]
    last = place(lines, setting(), "a")
    assert "nothing can be worked" in last.because
    assert last.figure == ""


@pytest.mark.parametrize(
    ("lines", "facts", "words"),
    [
        ((line("a", 5, fruiting=None), line("b", 5)), {}, "whether its stems bear seed is not known"),
        ((line("a", 5), line("b", 5)), {"a": {"area_m2": None}}, "its area is not known"),
        ((line("a", 5), line("b", 900)), {}, "is not drawn"),
        ((line("a", 5), line("b", 5)), {"a": {"water_m": None}}, "how far water is"),
        ((line("a", 5), line("b", 5)), {"a": {"trail_m": None, "water_m": None}}, "how far water and trail is"),
    ],
)
def test_what_is_not_known_is_said_and_counts_as_the_middle_of_the_others(
    lines: tuple[Choice, ...], facts: dict[str, dict[str, Any]], words: str
) -> None:
    found = place(lines, setting(**facts), "a")
    assert words in found.because
    assert "(counted as the others' middle, " in found.because
    assert None in [one.share for one in found.speaks]


def test_the_age_of_the_first_fruit_is_told_to_whoever_goes_to_look() -> None:
    lines = [line(unit, 5, plant="Amur honeysuckle", fruiting=None) for unit in ("a", "b")]
    because = place(lines, setting(), "a").because
    assert "Amur honeysuckle first fruits at 5 to 8 years" in because


def treated(unit: str, on: date, **facts: Any) -> Applied:
    return Applied(on, unit, "triclopyr", 1.0, 100.0, species="rhca3", method="cut_stump", **facts)


def test_what_is_owed_comes_before_every_reason_and_the_longest_owed_first() -> None:
    lines = (line("a", 2, fruiting=True), line("b", 4000), line("c", 5000))
    rows = (treated("b", DAY - timedelta(days=400)), treated("c", DAY - timedelta(days=800)))
    assert keys(lines, setting()) == ["a", "b", "c"]
    assert keys(lines, setting(rows=rows)) == ["c", "b", "a"]
    found = place(lines, setting(rows=rows), "c")
    assert found.because.startswith("first, because common buckthorn was treated")


def test_what_is_not_yet_due_moves_nothing() -> None:
    lines = (line("a", 2, fruiting=True), line("b", 4000))
    assert keys(lines, setting(rows=[treated("b", DAY - timedelta(days=20))])) == ["a", "b"]


def test_own_weights_change_the_order_and_stand_in_the_working() -> None:
    lines = (line("a", 4000, fruiting=True), line("b", 2))
    assert keys(lines, setting()) == ["a", "b"]
    of = setting(Own(first=(("fruit", 0.0), ("room", 3.0))))
    assert keys(lines, of) == ["b", "a"]
    found = place(lines, of, "a")
    with watch() as steps:
        place_working(found, lines, of)
    weights = [one.result for one in steps if one.formula.name.startswith("weight of")]
    assert weights == [0.0, 3.0]


def test_the_working_comes_to_the_points_that_set_the_order() -> None:
    lines = (line("a", 4000, fruiting=True), line("b", 2, fruiting=None), line("c", 70))
    for one in order_units(lines, setting(b={"area_m2": None})):
        with watch() as steps:
            again = place_working(one, lines, setting(b={"area_m2": None}))
        assert again == pytest.approx(one.points)
        assert steps[-1].formula.name.endswith("points")


@given(st.permutations(range(4)))
def test_the_order_of_the_lines_changes_nothing(turn: list[int]) -> None:
    lines = (line("a", 40, fruiting=True), line("a", 7), line("b", 300, fruiting=None), line("c", 12))
    for one, other in zip(order_units(lines, SAME), order_units([lines[at] for at in turn], SAME), strict=True):
        assert (one.key, one.because) == (other.key, other.because)
        assert one.points == pytest.approx(other.points)


SAME = setting(b={"water_m": 5.0}, c={"area_m2": None})
WEIGHTS = st.tuples(*[st.floats(0, 1)] * 4)


@given(WEIGHTS, st.integers(0, 3), st.floats(0, 1))
def test_more_of_any_reason_never_lowers_the_points(shares: tuple[float, ...], at: int, more: float) -> None:
    raised = [max(one, more) if place_ == at else one for place_, one in enumerate(shares)]
    assert points(sum(raised), 4) >= points(sum(shares), 4)
    assert 0 <= points(sum(shares), 4) <= 100


@given(st.floats(0, 20000), st.floats(0, 20000), st.floats(100, 2000))
def test_thicker_ground_leaves_less_room(one: float, other: float, crowd: float) -> None:
    thin, thick = sorted((one, other))
    assert room(thick, crowd) <= room(thin, crowd) <= 1


@given(st.floats(0, 2000), st.floats(0, 2000), st.floats(5, 300))
def test_farther_off_stays_cleaner_and_less_is_carried(one: float, other: float, far: float) -> None:
    near, away = sorted((one, other))
    assert apart(near, far) <= apart(away, far) <= 1
    assert carried(1, away, far) <= carried(1, near, far) <= 1


def test_the_demo_puts_the_ridge_first_and_the_held_units_last() -> None:
    """Hobbin Wood: most seed-bearing stems on thin ground; the orchard side and the brook edge wait for answers."""
    found = [key for key, _ in plan().order]
    assert found[0] == "ridge"
    assert set(found[-2:]) == {"orchard-side", "brook-edge"}
    assert [one.key for one in plan().places] == found


def test_one_unit_alone_is_put_in_no_order() -> None:
    assert place([line("a", 5)], setting(), "a").because == "the only unit"


def test_what_speaks_most_for_a_unit_is_said_first() -> None:
    lines = [line("a", 5, fruiting=True), line("b", 5000)]
    because = place(lines, setting(), "a").because
    assert because.index("bear seed") < because.index("of the room")
