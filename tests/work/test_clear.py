"""No road from a stop or an open question to a packet."""

from dataclasses import replace

import pytest

from rootcollar.choose import Choice
from rootcollar.kernel.errors import NotCleared
from rootcollar.kernel.verdict import Level
from rootcollar.label import heard_of
from rootcollar.work import Cleared, clear, still_standing
from tests.choose.hobbin import at, hobbin, only, plan, retyped, setting_of, with_units
from tests.work.packets import hobbin_setting

HELD = [one for one in plan().choices if one.level >= Level.ASK]
CLEAN = [one for one in plan().choices if one.level < Level.ASK]


def test_the_demo_has_both_kinds() -> None:
    assert HELD and CLEAN


def test_clearing_keeps_every_clean_line_and_no_other() -> None:
    assert clear(plan().choices, hobbin_setting()).lines == tuple(CLEAN)


@pytest.mark.parametrize("line", HELD, ids=lambda one: one.stand.key)
def test_a_held_line_cannot_be_cleared(line: Choice) -> None:
    with pytest.raises(NotCleared, match=line.stand.key):
        Cleared((line,), hobbin_setting())


def test_a_line_left_cannot_be_cleared() -> None:
    left = replace(CLEAN[0], option=None, fallback=None)
    with pytest.raises(NotCleared, match="no way is open"):
        Cleared((left,), hobbin_setting())


def test_a_line_whose_verdicts_were_wiped_is_weighed_again_all_the_same() -> None:
    held = HELD[0]
    assert held.option
    wiped = replace(held, option=replace(held.option, heard=heard_of(())), total_verdicts=())
    assert wiped.level is Level.OK
    with pytest.raises(NotCleared):
        clear([wiped], hobbin_setting())


def test_a_plan_made_with_permission_is_not_cleared_without() -> None:
    after = setting_of(with_units(hobbin(), permission=None))
    for line in CLEAN:
        with pytest.raises(NotCleared, match="P01"):
            Cleared((line,), after)


def test_a_fallback_that_would_be_stopped_keeps_its_line_from_being_cleared() -> None:
    line = next(one for one in CLEAN if one.fallback and one.fallback.option.way.visit.method == "cut_stump")
    recipe = line.fallback and line.fallback.option.way.visit.recipe
    assert recipe and recipe.product
    project = hobbin()
    sheet = retyped(project.shelf[recipe.product], methods__prohibited=("cut stump",))
    after = setting_of(replace(project, shelf={**project.shelf, recipe.product: sheet}))
    with pytest.raises(NotCleared, match="L07"):
        Cleared((line,), after)


def test_sums_are_weighed_over_the_lines_together() -> None:
    """Each line alone keeps to the yearly limit, both together do not."""
    one, other = at("hollow/loma6/1.3-2.5cm"), at("hollow/loma6/2.5-5.1cm")
    project = only(hobbin(), "hollow")
    key = "triclopyr-ester-4-ec"
    for tenths in range(1, 400):
        sheet = retyped(project.shelf[key], limits__per_application__amount=tenths / 1000)
        after = setting_of(replace(project, shelf={**project.shelf, key: sheet}))
        alone = [still_standing([replace(line, fallback=None)], after) for line in (one, other)]
        if not any(alone):
            break
    sheet = retyped(project.shelf[key], limits__per_application__amount=tenths / 1000)
    after = setting_of(replace(project, shelf={**project.shelf, key: sheet}))
    with pytest.raises(NotCleared, match="L12"):
        Cleared((replace(one, fallback=None), replace(other, fallback=None)), after)


def test_what_stands_is_named_with_line_and_rule() -> None:
    for said in still_standing(HELD, hobbin_setting()):
        assert said.level >= Level.ASK
        assert said.about in {one.stand.key for one in HELD}
