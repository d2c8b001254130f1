"""What is treated alike stands together, and what is not does not."""

from dataclasses import replace

from rootcollar.choose import Choice, alike
from rootcollar.choose.option import plain
from tests.choose.hobbin import chosen, plain_setting, plan, stand


def test_no_line_is_lost_or_told_twice() -> None:
    lines = [one for one in plan().choices if one.stand.unit == "bench"]
    told = [one.stand.key for group in alike(lines) for one in group]
    assert sorted(told) == sorted(one.stand.key for one in lines)
    assert len(alike(lines)) < len(lines)


def test_lines_of_a_group_share_method_mix_months_fallback_and_level() -> None:
    for group in alike(plan().choices):
        for what in (
            lambda one: one.option and one.way.visit.method,
            lambda one: one.recipe,
            lambda one: one.option and one.way.visit.months,
            lambda one: one.fallback and one.fallback.option.way.visit.method,
            lambda one: one.level,
        ):
            assert len({what(one) for one in group}) == 1


def test_thin_stems_come_before_thick_ones() -> None:
    for group in alike([one for one in plan().choices if one.stand.species == "rhca3"]):
        bands = [one.stand.band_cm for one in group]
        assert bands == sorted(bands)


def left(plant: str, thin: float, thick: float) -> Choice:
    """Return a line on which nothing is open."""
    return chosen(stand(plant, thin, thick), plain_setting(permission=None))


def test_lines_left_for_different_reasons_do_not_hide_behind_one_reason() -> None:
    one = left("common buckthorn", 0.1, 0.4)
    other = replace(one, why=plain("another reason"), stand=replace(one.stand, key="plain/rhca3/other"))
    assert [len(group) for group in alike([one, other])] == [1, 1]


def test_lines_left_for_the_same_reason_stand_together() -> None:
    one = left("white mulberry", 6, 8)
    other = replace(one, stand=replace(one.stand, key="plain/moal/other", band_cm=(30.0, 40.0)))
    assert [len(group) for group in alike([one, other])] == [2]


def test_nothing_makes_no_group() -> None:
    assert alike([]) == ()
