"""Every line of every demo label moved one at a time, the plan held fixed; every rule flipped by a fact it reads."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cache
from typing import Any

import pytest

from rootcollar.kernel.doubt import sure
from rootcollar.kernel.verdict import Level
from rootcollar.label import (
    RULES,
    Applied,
    Facts,
    History,
    Planned,
    UnitTotal,
    place_facts,
    template_facts,
    total_facts,
    weigh,
)
from rootcollar.label.examples import EXAMPLES
from rootcollar.mix.recipe import Recipe
from rootcollar.shelf import FIELDS, Line, Sheet, actives, ae_g_per_l
from tests.choose.hobbin import DAY, hobbin
from tests.label.mutations import directed, milder, path_of, stricter

SHEETS = sorted(hobbin().shelf)
PLANTS = (("common buckthorn", "European buckthorn", "Rhamnus cathartica"), ("an invented plant",))
BANDS = ((0.25, 1.2), (2.5, 5.0), (10.0, 40.0))


@cache
def plans(key: str) -> tuple[tuple[Planned, UnitTotal], ...]:
    """Return plans with a sheet: each of its methods, weak and strong, on small and large stems, little and much."""
    sheet = hobbin().shelf[key]
    (active,) = actives(sheet)
    name, strength = str(active.common_name), ae_g_per_l(active)
    assert strength is not None
    found = []
    for at, (method, lines) in enumerate(sheet.methods.items()):
        carriers = lines["carrier"].says
        low, high = lines["concentration.low"].says, lines["concentration.high"].says
        for nth, pct in enumerate((low * 0.9, (low + high) / 2, min(high * 1.01, 100.0))):
            recipe = Recipe(key, key, name, strength, pct, carriers[0])
            band = BANDS[(at + nth) % len(BANDS)]
            planned = Planned(method, PLANTS[nth % 2], recipe, band, 1.0, "cut", height_m=1.5 + nth)
            product = 2_000.0 * (1 + 8 * nth)
            found.append(
                (
                    planned,
                    UnitTotal(
                        "bench", name, strength, pct, sure(product * 100 / pct), sure(product), 4046.86, 1, ("a",),
                        None if nth == 1 else 2_000.0, key,
                    ),
                )
            )  # fmt: skip
    return tuple(found)


def facts_of(sheet: Sheet, planned: Planned, total: UnitTotal, unit: str) -> Facts:
    """Return the facts of a plan on a unit of the demo, after some work in spring."""
    project, known = hobbin(), hobbin().ground.units[unit]
    before = Applied(DAY.replace(month=3), "bench", total.ingredient, 400.0, 2_000.0)
    template = template_facts(planned, sheet, state="WI", demo=True, wear=project.crew.wear, people=project.crew.people)
    place = place_facts(template, replace(known, area_m2=total.area_m2), on=DAY)
    return total_facts(place, total, History((before,), complete=True), on=DAY)


UNITS = ("bench", "brook-edge", "orchard-side")


@dataclass(frozen=True)
class Move:
    """What a rule said before and after one line of a label was moved, everything else held fixed."""

    rule: str
    path: str
    says: Any
    moved_to: Any
    tighter: bool
    before: Level
    after: Level


@cache
def moves(key: str) -> tuple[Move, ...]:
    """Return what every rule that reads a line says when the line is moved, for each plan with a sheet."""
    sheet, found = hobbin().shelf[key], []
    for at, (planned, total) in enumerate(plans(key)):
        facts = facts_of(sheet, planned, total, UNITS[at % len(UNITS)])
        for method, line, says in directed(sheet):
            row = FIELDS[path_of(line, bool(method))]
            fact = f"sheet.{row.path}"
            readers = [one for one in RULES.values() if fact in one.paths and method in {"", planned.method}]
            before = {one.number: weigh(one, facts, "x").level for one in readers}
            both = [(True, one) for one in stricter(row, says)] + [(False, one) for one in milder(row, says)]
            for tighter, moved_to in both if readers else ():
                moved = {**facts, fact: Line(moved_to)}
                for one in readers:
                    after = weigh(one, moved, "x").level
                    found.append(Move(one.number, row.path, says, moved_to, tighter, before[one.number], after))
    return tuple(found)


@pytest.mark.parametrize("key", SHEETS)
def test_a_stricter_line_lowers_no_rules_level_and_a_milder_one_raises_none(key: str) -> None:
    wrong = [one for one in moves(key) if (one.after < one.before if one.tighter else one.after > one.before)]
    assert not wrong, wrong[0]


@pytest.mark.parametrize("key", SHEETS)
def test_every_directed_line_of_the_sheet_that_a_rule_reads_was_moved(key: str) -> None:
    read = {path.removeprefix("sheet.") for known in RULES.values() for path in known.paths}
    there = {path_of(path, bool(method)) for method, path, _ in directed(hobbin().shelf[key])} & read
    assert there and there == {one.path for one in moves(key)}


def test_among_the_moves_are_some_that_make_a_stop_and_some_that_lift_one() -> None:
    """The first test would pass if nothing ever moved a rule."""
    every = [one for key in SHEETS for one in moves(key)]
    made = {one.rule for one in every if one.before < one.after is Level.STOP}
    lifted = {one.rule for one in every if one.after < one.before is Level.STOP}
    assert {"L04", "L05", "L06", "L07", "L08", "L09", "L12", "L13", "L14", "L15", "L22"} <= made
    assert {"L08", "L12"} <= lifted


def as_facts(number: str, given: Mapping[str, Any]) -> dict[str, Line[Any]]:
    """Return an example's facts by path."""
    facts: dict[str, Line[Any]] = {}
    for name, path in RULES[number].reads.items():
        some = [(path, given[name])] if isinstance(path, str) else list(zip(path, given[name], strict=True))
        facts |= {one: Line(says) for one, says in some}
    return facts


@pytest.mark.parametrize("number", RULES)
def test_every_rule_is_flipped_by_one_fact_that_it_reads(number: str) -> None:
    """From the plan that passes it, one fact at a time is made that of the plan that fails it."""
    known, shown = RULES[number], EXAMPLES[number]
    passes, fails = as_facts(number, shown.passes.facts), as_facts(number, shown.fails.facts)
    assert weigh(known, passes, "x").level is Level.OK
    changed = [path for path in known.paths if passes[path] != fails[path]]
    flips = [path for path in changed if weigh(known, {**passes, path: fails[path]}, "x").level > Level.OK]
    assert flips, (changed, "no one fact flips it")


@pytest.mark.parametrize("number", RULES)
def test_what_a_rule_does_not_read_cannot_flip_it(number: str) -> None:
    known = RULES[number]
    facts = as_facts(number, EXAMPLES[number].fails.facts)
    found = weigh(known, facts, "x")
    others = {path: Line("anything") for path in ("plan.demo", "place.site_class", "sheet.soil.root_uptake")}
    more = weigh(known, {**{one: line for one, line in others.items() if one not in facts}, **facts}, "x")
    assert more == found
