"""The lawful departures of FIFRA 2(ee), and what none of them covers."""

from typing import Any

import pytest

from rootcollar.kernel.verdict import Level
from rootcollar.label import DEPARTURES, NEVER, RULES, Partnered, departures
from rootcollar.shelf import SILENT, SiteLine
from tests.label.sample import applied, lines, said, total, whole
from tests.label.test_rules import JUNE_1, past, work

LOWER = "sheet__limits__deviation_forbidden"
FERTILISER = Partnered(("ammonium sulfate",), label_known=False, fertiliser=True)

# the departure, what the plan does, what the label says beside it, the rule and its word
WEIGHED: list[tuple[str, Any, Any, str, Level]] = [
    ("lower_concentration", {"plan__strength_pct": 0.8}, {}, "L09", Level.WARN),
    ("lower_concentration", {"plan__strength_pct": 0.8}, {LOWER: ("lower_concentration",)}, "L09", Level.STOP),
    ("lower_dose", {"plan__dose": (0.5, "cut")}, {}, "L11", Level.OK),  # half the label rate, label silent
    ("lower_dose", {"plan__dose": (0.5, "cut")}, {LOWER: ("lower_dose",)}, "L11", Level.STOP),
    ("unlisted_plant", {"plan__species": ("other shrub",)}, {}, "L06", Level.WARN),
    ("unlisted_plant", {"plan__species": ("other shrub",)}, {"sheet__pests__only_listed": True}, "L06", Level.STOP),
    ("unlisted_method", {"plan__method": "wipe"}, {}, "L07", Level.ASK),
    ("unlisted_method", {"plan__method": "wipe"}, {"sheet__methods__only_listed": True}, "L07", Level.STOP),
    ("fertiliser", {"plan__partner": FERTILISER}, {}, "L46", Level.OK),
    (
        "fertiliser", {"plan__partner": FERTILISER}, {"sheet__mixing__tank_mix_forbidden": ("fertilizer",)}, "L46",
        Level.STOP,
    ),
]  # fmt: skip


@pytest.mark.parametrize(("name", "plan", "label", "rule", "word"), WEIGHED)
def test_a_departure_is_lawful_unless_the_label_takes_it_away(
    name: str, plan: Any, label: Any, rule: str, word: Level
) -> None:
    assert said(whole() | lines(**plan, **label))[rule].level is word
    assert rule in next(one.rules for one in DEPARTURES if one.name == name)


@pytest.mark.parametrize(("name", "plan"), [(name, plan) for name, plan, label, *_ in WEIGHED if not label])
def test_a_departure_that_a_plan_makes_is_gathered_with_its_law(name: str, plan: Any) -> None:
    made = departures(whole() | lines(**plan))
    assert [(one.name, bool(words)) for one, words in made] == [(name, True)]
    assert made[0][0].law.startswith("FIFRA 2(ee)(")


def test_a_plan_that_keeps_to_the_label_departs_in_nothing() -> None:
    assert departures(whole()) == ()
    assert departures({}) == ()


MORE: dict[str, Any] = {
    "a stronger mix": lines(plan__strength_pct=2.5),
    "more in one place": lines(plan__dose=(1.5, "cut")),
    "more on an acre": work(3_800.0),
    "more in a year": past(applied(JUNE_1, 2_700.0)),
    "more treatments": work(passes=3),
    "treatments sooner after another": past(applied(JUNE_1.replace(month=7))),
    "a place not listed": lines(place__site_class="residential"),
}


@pytest.mark.parametrize(("what", "rule"), NEVER.items())
def test_more_than_the_label_gives_is_never_a_departure(what: str, rule: str) -> None:
    facts = whole() | MORE[what]
    assert said(facts)[rule].level is Level.STOP
    assert departures(facts) == ()


def test_every_departure_names_rules_that_are_weighed() -> None:
    assert {rule for one in DEPARTURES for rule in one.rules} | set(NEVER.values()) <= set(RULES)
    assert all(one.words and one.lost_when for one in DEPARTURES)


def test_nothing_lawful_covers_a_place_the_label_is_silent_of() -> None:
    facts = whole() | lines(sheet__site=(SiteLine("lawns", "residential", True),))
    assert said(facts)["L05"].level is Level.STOP
    assert said(whole() | lines(sheet__site=SILENT))["L05"].level is Level.STOP
    assert total().passes == 1
