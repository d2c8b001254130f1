"""Whole-property plans side by side, for their page: the figures of each, which open, and what each leaves undone."""

from __future__ import annotations

from dataclasses import dataclass, replace

from rootcollar.choose import PLAN_FIGURES, PropertyPlan, mix_words, plan_figure, share_to_reach
from rootcollar.jobs.plans import side_by_side
from rootcollar.kernel.doubt import best
from rootcollar.kernel.errors import NotFound
from rootcollar.kernel.formula import watch
from rootcollar.kernel.units import convert
from rootcollar.web.desk import Open, of_what_lies_open
from rootcollar.web.views.working import Drawer, Run, Step, drawer_of
from rootcollar.work import text
from rootcollar.work.plan_words import PLAN_WORDS, figure_words, held_words, line_words, without_words

__all__ = ["PlanCard", "plan_cards", "plan_drawer", "share_words"]


@dataclass(frozen=True, slots=True)
class PlanCard:
    """A plan as its page shows it. figures: of each its name, its number that opens, and the doubt around it.

    without: the stands that have no way under it, each with the reason.
    """

    key: str
    name: str
    rule: str
    figures: tuple[tuple[str, Run, str], ...]
    mixes: tuple[str, ...]
    held: str
    left: str
    without: tuple[tuple[str, str], ...]


@of_what_lies_open
def _plans(here: Open) -> tuple[PropertyPlan, ...]:
    return side_by_side(here.project, here.setting, here.plan) if here.plan else ()


@of_what_lies_open
def plan_cards(here: Open) -> tuple[PlanCard, ...]:
    """Return the plans, as chosen first; none while nothing is counted."""
    return tuple(_card(here, one) for one in _plans(here))


def share_words(here: Open) -> str:
    """Return the share of the stems that every plan is taken to."""
    return f"{100 * share_to_reach(here.setting):.3g} %"


def _card(here: Open, plan: PropertyPlan) -> PlanCard:
    reference = here.setting.reference
    figures = []
    for what, name in PLAN_WORDS.items():
        said, doubt = figure_words(what, plan_figure(plan, what, here.setting))
        opens = Run(said, f"/choose/plans/working/{plan.key}/{what}", f"{name.lower()}, {plan.name.lower()}")
        figures.append((name, opens, doubt))
    mixes = tuple(mix_words(one, reference.formulations[one.formulation].words) for one in plan.mixes)
    without = tuple((line_words(line, here.setting), because) for line, because in plan.without)
    rule = f"{plan.rule[:1].upper()}{plan.rule[1:]}"
    return PlanCard(
        plan.key, plan.name, rule, tuple(figures), mixes, held_words(plan), without_words(plan), without
    )  # fmt: skip


def plan_drawer(here: Open, key: str, what: str) -> Drawer:
    """Return how a figure of a plan was added up. Raises NotFound for another plan or figure."""
    found = {one.key: one for one in _plans(here)}
    if key not in found:
        raise NotFound("plan", key, list(found))
    if what not in PLAN_FIGURES:
        raise NotFound("figure of a plan", what, list(PLAN_FIGURES))
    with watch() as steps:
        figure = plan_figure(found[key], what, here.setting)
    said, doubt = figure_words(what, figure)
    drawer = drawer_of(said, doubt, steps, here.setting.reference.sources)
    return replace(drawer, steps=(*drawer.steps, *_as_shown(what, best(figure))))


def _as_shown(what: str, figure: float) -> tuple[Step, ...]:
    """Return the last step, from a volume [mL] or a ground [m2] to the unit shown; other figures stay as they are."""
    volume = "gal" if text.gallons(figure).endswith("gal") else "fl oz"
    units = {"herbicide": ("mL", volume), "side": ("m2", "sq ft")}.get(what)
    if units is None:
        return ()
    unit, shown = units
    worked = f"{figure:.6g} {unit} / {convert(1, shown, unit):.6g} = {convert(figure, unit, shown):.6g} {shown}"
    return (Step("as shown", worked),)
