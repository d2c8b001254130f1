"""Which unit first: what can be worked, the thinnest first; what nothing can be done on, last."""

from dataclasses import replace

import pytest

from rootcollar.choose import Choice
from rootcollar.choose.first import order_units
from rootcollar.kernel.doubt import sure
from tests.choose.hobbin import PLAIN, chosen, plain_setting, plan, stand

ACRE_M2 = 4046.8564224


def line(unit: str, count: float, *, allowed: bool = True, fruiting: bool | None = None) -> Choice:
    """Return a line to pull on a unit (no label needed); not allowed: a stop."""
    setting = plain_setting() if allowed else plain_setting(permission=None)
    one = chosen(stand("common buckthorn", 0.1, 0.5, count=count), setting)
    return replace(one, stand=replace(one.stand, unit=unit, stems=sure(count), fruiting=fruiting))


UNITS = {key: replace(PLAIN, key=key, area_m2=ACRE_M2) for key in ("a", "b", "c")}


def test_the_thinnest_infestation_comes_first() -> None:
    """moody1988: satellites before the core."""
    ordered = order_units([line("a", 300), line("b", 20), line("c", 100)], UNITS)
    assert [key for key, _ in ordered] == ["b", "c", "a"]
    assert "20 stems an acre" in ordered[0][1]


def test_thickness_is_by_the_acre_not_by_the_count() -> None:
    units = {**UNITS, "a": replace(PLAIN, key="a", area_m2=100 * ACRE_M2)}
    assert [key for key, _ in order_units([line("a", 300), line("b", 20)], units)] == ["a", "b"]


def test_a_unit_where_nothing_can_be_worked_comes_last_and_says_so() -> None:
    ordered = order_units([line("a", 1, allowed=False), line("b", 20)], UNITS)
    assert [key for key, _ in ordered] == ["b", "a"]
    assert "nothing can be worked" in ordered[1][1]


def test_a_unit_of_unknown_area_comes_after_the_known_ones_and_says_so() -> None:
    units = {**UNITS, "a": replace(PLAIN, key="a", area_m2=None)}
    ordered = order_units([line("a", 1), line("b", 9000)], units)
    assert [key for key, _ in ordered] == ["b", "a"]
    assert "area is not known" in ordered[1][1]


def test_equal_units_go_by_key() -> None:
    assert [key for key, _ in order_units([line("c", 5), line("a", 5), line("b", 5)], UNITS)] == ["a", "b", "c"]


def test_fruiting_stems_are_named() -> None:
    (_, because), (_, other) = order_units([line("a", 5, fruiting=True), line("b", 9)], UNITS)
    assert "fruiting" in because
    assert "fruiting" not in other


def test_the_demo_puts_the_ridge_first_and_the_held_units_last() -> None:
    """Hobbin Wood: 632 stems on 19.6 acres of ridge; the orchard side and the brook edge wait for answers."""
    keys = [key for key, _ in plan().order]
    assert keys[0] == "ridge"
    assert set(keys[-2:]) == {"orchard-side", "brook-edge"}


@pytest.mark.parametrize("count", [0.0, 12.0])
def test_the_density_is_stems_over_acres(count: float) -> None:
    ((_, because),) = order_units([line("a", count)], {"a": UNITS["a"]})  # an acre
    assert f": {count:g} stems an acre" in because
