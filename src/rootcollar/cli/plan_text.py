"""A prescription told in the terminal: what first, how, when, how much, what is struck out, what is still asked."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Mapping
from typing import Any

from rootcollar.choose import Choice, Prescription, instruction, line_mix_ml, mix_words, sum_worlds, way_words
from rootcollar.kernel.days import name_months
from rootcollar.kernel.doubt import band, best
from rootcollar.kernel.verdict import Level, Verdict, worst_first
from rootcollar.mix import Recipe
from rootcollar.reference import load
from rootcollar.work import Project, text

__all__ = ["as_json", "summary"]

_WIDTH = 96
_MARK: Mapping[Level, str] = {Level.STOP: "[-]", Level.ASK: "(?)", Level.WARN: "(!)", Level.OK: "(o)"}


def summary(project: Project, plan: Prescription) -> Iterator[str]:
    """Yield the lines of the summary."""
    yield f"{project.ground.name}: what to treat, how, with what"
    yield ""
    for place, (key, because) in enumerate(plan.order, start=1):
        unit = project.ground.units[key]
        yield from _wrap(f"{place}. {unit.name} ({text.acres(unit.area_m2)}). {because[:1].upper()}{because[1:]}.", "")
        for choice in (one for one in plan.choices if one.stand.unit == key):
            yield from _line(choice, plan)
        yield ""
    yield from _mixes(plan)
    yield from _struck(plan)
    yield from _asked(plan)
    yield from _wrap(
        "Amounts, minutes and prices are guesses until a proving batch and your own times replace them. "
        "Rootcollar says which rules it weighed, never that a plan is lawful: the label in your hand does.",
        "",
    )


def _line(choice: Choice, plan: Prescription) -> Iterator[str]:
    species = load().species[choice.stand.species].common_name
    head = f"{species}, {text.size(choice.stand.band_cm)}, {text.count(choice.stand.stems)} stems"
    if choice.option is None:
        yield from _wrap(f"{_MARK[Level.STOP]} {head}: leave for now. {choice.because}", "   ")
        return
    if choice.level >= Level.ASK:
        word = "struck out" if choice.level is Level.STOP else "held until a question is answered"
        yield from _wrap(f"{_MARK[choice.level]} {head}: {way_words(choice.option.way)}: {word}, see below", "   ")
        return
    verb, rest = instruction(choice.option.way)
    poured = line_mix_ml(choice.stand.stems, choice.option.per_stem.mix_ml)
    mix = f", mix {_letter(choice.recipe, plan)}: {_amount(poured)}" if choice.recipe else ""
    months = choice.option.way.visit.months
    when = "" if len(months) == 12 else f" {name_months(months)}."
    yield from _wrap(
        f"{_MARK[choice.level]} {head}: {verb}, {rest}{mix}.{when} "
        f"{text.hours(choice.stand.stems * choice.option.per_stem.minutes)}.",
        "   ",
    )
    if choice.fallback:
        back = choice.fallback
        letter = _letter(back.option.way.visit.recipe, plan)
        mixed = f", mix {letter}" if letter else ""
        yield from _wrap(f"If {back.trigger}: {way_words(back.option.way)}{mixed}.", "       ")


def _mixes(plan: Prescription) -> Iterator[str]:
    used = {letter: recipe for letter, recipe in plan.letters.items() if _lines(recipe, plan)}
    if used:
        yield "Mixes"
    for letter, recipe in used.items():
        poured = sum_worlds(
            [line_mix_ml(one.stand.stems, one.option.per_stem.mix_ml) for one in _lines(recipe, plan) if one.option]
        )
        words = load().formulations[recipe.formulation].words
        yield f"   {letter}  {mix_words(recipe, words)}: {_amount(poured)}"
    if used:
        yield ""


def _struck(plan: Prescription) -> Iterator[str]:
    yield from _grouped(plan, Level.STOP, "Struck out")


def _asked(plan: Prescription) -> Iterator[str]:
    yield from _grouped(plan, Level.ASK, "Still asked")
    questions = {(one.because, one.would_win_if) for line in plan.choices for one in line.set_aside if one.asks}
    if questions:
        yield "Would open more ways"
        for because, do in sorted(questions):
            yield from _wrap(f"(?) {because}. {do[:1].upper()}{do[1:]}.", "   ")
        yield ""


def _grouped(plan: Prescription, level: Level, title: str) -> Iterator[str]:
    found: dict[tuple[str, str, str], list[str]] = {}
    for line in plan.choices:
        for one in worst_first(line.verdicts):
            if one.level is level:
                found.setdefault((one.rule, one.because, one.clear), []).append(line.stand.key)
    if not found:
        return
    yield title
    for (rule, because, clear), keys in found.items():
        yield from _wrap(f"{_MARK[level]} {because} [{rule}]", "   ")
        yield from _wrap(f"{'; '.join(keys)}. {'Way out: ' + clear if clear else ''}", "       ")
    yield ""


def _lines(recipe: Recipe, plan: Prescription) -> list[Choice]:
    return [one for one in plan.choices if one.recipe == recipe and one.level < Level.ASK]


def _letter(recipe: Recipe | None, plan: Prescription) -> str:
    return next((letter for letter, one in plan.letters.items() if one == recipe), "")


def _amount(poured: Any) -> str:
    band_words = text.span(poured)
    return text.gallons(best(poured)) + (f" ({band_words})" if band_words else "")


def _wrap(words: str, indent: str) -> Iterator[str]:
    yield from textwrap.wrap(words, _WIDTH, initial_indent=indent, subsequent_indent=indent + "    ")


def as_json(project: Project, plan: Prescription) -> dict[str, Any]:
    """Return the prescription as plain values: units in order, lines, mixes."""
    return {
        "property": project.ground.name,
        "order": [{"unit": key, "because": because} for key, because in plan.order],
        "lines": [_line_json(one, plan) for one in plan.choices],
        "mixes": {
            letter: {
                "product": recipe.product,
                "formulation": recipe.formulation,
                "ingredient": recipe.ingredient,
                "strength_pct": recipe.strength_pct,
                "carrier": recipe.carrier,
                "ae_g_per_l": recipe.ae_g_per_l,
            }
            for letter, recipe in plan.letters.items()
        },
    }


def _line_json(choice: Choice, plan: Prescription) -> dict[str, Any]:
    stand, option = choice.stand, choice.option
    out: dict[str, Any] = {
        "line": stand.key,
        "unit": stand.unit,
        "species": stand.species,
        "band_cm": list(stand.band_cm),
        "stems": _band(stand.stems),
        "level": "stop" if option is None else choice.level.word,
        "because": choice.because,
        "verdicts": [_verdict(one) for one in worst_first(choice.verdicts)],
        "set_aside": [
            {"way": way_words(one.way), "because": one.because, "would_win_if": one.would_win_if, "asks": one.asks}
            for one in choice.set_aside
        ],
    }
    if option is not None:
        out |= {
            "method": option.way.visit.method,
            "mix": _letter(choice.recipe, plan),
            "months": sorted(option.way.visit.months),
            "instruction": ", ".join(instruction(option.way)),
            "mix_ml": _band(line_mix_ml(stand.stems, option.per_stem.mix_ml)),
            "minutes": _band(stand.stems * option.per_stem.minutes),
            "kill": _band(option.per_stem.kill),
            "cost_per_kill": _band(option.per_stem.cost_per_kill),
        }
    if choice.fallback is not None:
        out["fallback"] = {"way": way_words(choice.fallback.option.way), "if": choice.fallback.trigger}
    return out


def _band(worlds: Any) -> dict[str, float]:
    here = band(worlds)
    return {"best": here.best, "low": here.low, "high": here.high}


def _verdict(one: Verdict) -> dict[str, str]:
    return {"level": one.level.word, "because": one.because, "clear": one.clear, "rule": one.rule, "page": one.page}
