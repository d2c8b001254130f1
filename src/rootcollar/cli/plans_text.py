"""Whole-property plans side by side, told in the terminal: what each takes, what it leaves, which mixes it carries."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from rootcollar.choose import PLAN_FIGURES, PropertyPlan, Setting, expected, mix_words, plan_figure, share_to_reach
from rootcollar.cli.laid_out import wrapped
from rootcollar.kernel.doubt import band
from rootcollar.work import Project
from rootcollar.work.plan_words import PLAN_WORDS, figure_words, held_words, line_words, way_of_line, without_words

__all__ = ["as_json", "summary"]

_WORDS, _FIGURE = 20, 14  # columns of a figure's name, and of the figure


def summary(project: Project, plans: Sequence[PropertyPlan], setting: Setting) -> Iterator[str]:
    """Yield the lines of the comparison, a block for each plan."""
    yield f"{project.ground.name}: plans side by side, each to {100 * share_to_reach(setting):.3g} % of the stems dead"
    for place, plan in enumerate(plans, start=1):
        yield ""
        yield from wrapped(f"{place}. {plan.name}: {plan.rule}.", "")
        for what, name in PLAN_WORDS.items():
            said, doubt = figure_words(what, plan_figure(plan, what, setting))
            yield f"   {name:<{_WORDS}}{said:<{_FIGURE}} {doubt}".rstrip()
        for recipe in plan.mixes:
            product = setting.reference.formulations[recipe.formulation].words
            yield from wrapped(f"carries {mix_words(recipe, product)}", "   ")
        yield from _under(plan, setting)
    yield ""
    yield from wrapped(_NOTE, "")


def _under(plan: PropertyPlan, setting: Setting) -> Iterator[str]:
    """Say what a question holds, and name each stand without a way."""
    if held_words(plan):
        yield from wrapped(f"(?) {held_words(plan)}.", "   ")
    if without_words(plan):
        yield from wrapped(f"[-] {without_words(plan)}:", "   ")
    for line, because in plan.without:
        yield from wrapped(f"{line_words(line, setting)}. {because}", "       ")


_NOTE = (
    "Best figures, and beside them the range in which four of five draws of the doubt lie. Plans are picked by what is "
    "expected over the doubt. Cost has work, mix, setting up and travel where own.toml says them, and each mix after "
    "the first; a year is one visit to a line. Gates and rules are the same for every plan. Amounts, minutes and "
    "prices are guesses until your own replace them."
)


def as_json(project: Project, plans: Sequence[PropertyPlan], setting: Setting) -> dict[str, Any]:
    """Return the plans as plain values. herbicide in mL, side in m2, cost in money; expected: mean over the doubt."""
    return {
        "property": project.ground.name,
        "share_to_reach": share_to_reach(setting),
        "plans": [_plan_json(one, setting) for one in plans],
    }


def _plan_json(plan: PropertyPlan, setting: Setting) -> dict[str, Any]:
    return {
        "plan": plan.key,
        "name": plan.name,
        "rule": plan.rule,
        "figures": {what: _figure(plan, what, setting) for what in PLAN_FIGURES},
        "mixes": [
            mix_words(one, setting.reference.formulations[one.formulation].words) for one in plan.mixes
        ],
        "lines": [
            {"line": one.stand.key, "way": way_of_line(one), "level": one.level.word} for one in plan.lines
        ],
        "without": [{"line": one.stand.key, "because": because} for one, because in plan.without],
    }  # fmt: skip


def _figure(plan: PropertyPlan, what: str, setting: Setting) -> dict[str, float]:
    worlds = plan_figure(plan, what, setting)
    here = band(worlds)
    return {"best": here.best, "low": here.low, "high": here.high, "expected": expected(worlds)}
