"""What is weighed once and told of many lines is what each line would have been told by itself."""

from dataclasses import replace

import pytest

from rootcollar.choose import line_verdicts
from rootcollar.choose.decide import decide
from rootcollar.kernel.verdict import Level, worst
from rootcollar.label import Answer, Weigher, place_facts, weigh_place, weigh_template
from rootcollar.label.answers import Answers, settle
from tests.choose.hobbin import DAY, hobbin, only, setting_of
from tests.label.sample import UNIT, facts_of

WHO = ("a steward", DAY)
LINE = "orchard-side/ambr7/1.3-2.5cm"
SETS: list[Answers] = [
    (),
    (Answer("L05", "*", True, *WHO),),
    (Answer("L05", "orchard-side", True, *WHO), Answer("L37a", "*", False, *WHO)),
    (Answer("L05", LINE, True, *WHO), Answer("L05", "orchard-side", False, *WHO)),
]


@pytest.mark.parametrize("answers", SETS)
def test_every_line_of_the_demo_hears_what_it_would_hear_alone(answers: Answers) -> None:
    project = replace(only(hobbin(), "orchard-side", "ridge", "brook-edge"), answers=answers)
    setting, weigher = setting_of(project), Weigher(answers, DAY)
    count = 0
    for stand in project.stands:
        choice = decide(stand, setting, weigher=weigher)
        for option in choice.options:
            species = setting.reference.species[stand.species]
            alone = line_verdicts(option.way, species, stand, option.per_stem, setting)
            told = tuple(option.verdicts)
            assert told[: len(alone)] == alone and all(one.rule == "" for one in told[len(alone) :])
            assert option.level is worst(told)
            count += len(alone)
    assert count > 100


def test_units_that_differ_in_what_a_rule_reads_are_not_told_the_same() -> None:
    facts = {path: line for path, line in facts_of().items() if path.split(".")[0] in {"sheet", "plan", "people"}}
    weigher = Weigher((), DAY)
    template = weigher.template(facts)
    near, far = replace(UNIT, key="near", water_m=1.0), replace(UNIT, key="far", water_m=90.0)
    for unit in (near, far, replace(near, key="near too"), replace(UNIT, key="nobody", water_m=None)):
        alone = (*weigh_template(facts, "x"), *weigh_place(place_facts(facts, unit, on=DAY), "x"))
        assert weigher.lines([template], unit, "x")[0].of("x") == alone
    by_rule = {one.rule: one.level for one in weigher.lines([template], near, "x")[0].said}
    assert by_rule["L37a"] is Level.STOP
    assert {one.rule: one.level for one in weigher.lines([template], far, "x")[0].said}["L37a"] < Level.STOP


def test_an_answer_about_one_line_does_not_leak_to_its_neighbour() -> None:
    facts = {path: line for path, line in facts_of().items() if path.split(".")[0] in {"sheet", "plan", "people"}}
    unit = replace(UNIT, site_class=None)
    answers = (Answer("L47a", "bench/a", True, *WHO), Answer("L37a", "bench/a", True, *WHO))
    weigher = Weigher(answers, DAY)
    template = weigher.template(facts)
    for about in ("bench/a", "bench/b", "bench/a"):
        said = (*weigh_template(facts, about), *weigh_place(place_facts(facts, unit, on=DAY), about))
        assert weigher.lines([template], unit, about)[0].of(about) == tuple(
            settle(one, answers, on=DAY) for one in said
        )
