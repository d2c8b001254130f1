"""The plan, the open questions and an answer of the bench as the door hands them out."""

from __future__ import annotations

from dataclasses import asdict

from rootcollar.choose import Choice, instruction, line_minutes, line_mix_ml, mix_words, way_words
from rootcollar.jobs.figure import Worked
from rootcollar.kernel.doubt import Worlds, band
from rootcollar.kernel.verdict import Level, Verdict, worst_first
from rootcollar.mix import Recipe
from rootcollar.web import door_models as told
from rootcollar.web.desk import Open, of_what_lies_open
from rootcollar.web.views.questions import questions

__all__ = ["answer_told", "plan_told", "questions_told"]

_NOTE = (
    "A plan, no permission: it says which rules were weighed, never that work is lawful or without harm. The label in "
    "hand is the law. Only lines in state work are work; print the packet before going out."
)


@of_what_lies_open
def plan_told(here: Open) -> told.Plan:
    """Return the plan; without units while nothing is counted."""
    ground = here.project.ground
    order, letters = (here.plan.order, here.plan.letters) if here.plan else ((), {})
    return told.Plan(
        name=ground.name,
        on=here.on.isoformat(),
        demo=ground.demo,
        units=[_unit(here, key, because) for key, because in order],
        mixes=[_mix(letter, one, here) for letter, one in letters.items()],
        note=_NOTE,
    )


@of_what_lies_open
def questions_told(here: Open) -> told.OpenQuestions:
    """Return the open questions."""
    return told.OpenQuestions(
        questions=[
            told.OpenQuestion(
                rule=one.rule,
                said=[told.Said.model_validate(said) for said in one.said],
                lines=one.lines,
                abouts=[told.About(key=key, name=name) for key, name in one.abouts],
                answerable=one.answerable,
            )
            for one in questions(here)
        ]
    )


def answer_told(worked: Worked) -> told.Answer:
    """Return an answer with its working."""
    answer = {name: value for name, value in asdict(worked.outcome.value).items() if name != "poured"}
    verdicts = [_said(one) for one in worst_first(worked.outcome.verdicts)]
    sources = [told.Source.model_validate(one) for one in worked.sources]
    working = told.Step.model_validate(worked.working)
    return told.Answer.model_validate({**answer, "verdicts": verdicts, "working": working, "sources": sources})


def _unit(here: Open, key: str, because: str) -> told.UnitOf:
    unit = here.project.ground.units[key]
    mine = [one for one in (here.plan.choices if here.plan else ()) if one.stand.unit == key]
    lines = sorted(mine, key=lambda one: (one.stand.species, one.stand.band_cm))
    return told.UnitOf(
        key=key, name=unit.name, area_m2=unit.area_m2, because=because, lines=[_line(one, here) for one in lines]
    )


def _line(line: Choice, here: Open) -> told.LineOf:
    stand, option, recipe = line.stand, line.option, line.recipe
    work = option is not None and line.level < Level.ASK
    state = "left" if option is None else {Level.STOP: "struck", Level.ASK: "held"}.get(line.level, "work")
    letters = here.plan.letters if here.plan else {}
    return told.LineOf.model_validate({
        "key": stand.key,
        "species": stand.species,
        "name": here.setting.reference.species[stand.species].common_name,
        "diameter_cm": stand.band_cm,
        "state": state,
        "method": option.way.visit.method if option else "",
        "instruction": ", ".join(filter(None, instruction(option.way))) if option else "Leave for now",
        "because": line.because,
        "fallback": f"{line.fallback.trigger}: {way_words(line.fallback.option.way)}" if line.fallback else "",
        "months": sorted(option.way.months) if option else [],
        "mix": next((letter for letter, one in letters.items() if one == recipe), "") if recipe else "",
        "stems": _band(stand.stems),
        "mix_ml": _band(line_mix_ml(stand.stems, option.per_stem.mix_ml)) if work and option and recipe else None,
        "minutes": _band(line_minutes(stand.stems, option.per_stem.minutes)) if work and option else None,
        "verdicts": [_said(one) for one in worst_first(line.verdicts) if one.level > Level.OK],
    })  # fmt: skip


def _mix(letter: str, recipe: Recipe, here: Open) -> told.MixOf:
    words = mix_words(recipe, here.setting.reference.formulations[recipe.formulation].words)
    return told.MixOf(
        letter=letter, words=words, product=recipe.product, formulation=recipe.formulation, carrier=recipe.carrier,
        strength_pct=recipe.strength_pct,
        partner=recipe.partner.key if recipe.partner else None,
        partner_pct=recipe.partner.strength_pct if recipe.partner else None,
    )  # fmt: skip


def _band(worlds: Worlds) -> told.BandOf:
    return told.BandOf.model_validate(band(worlds))


def _said(one: Verdict) -> told.Said:
    return told.Said.model_validate({
        "level": one.level.word, "because": one.because, "clear": one.clear, "rule": one.rule, "page": one.page,
    })  # fmt: skip
