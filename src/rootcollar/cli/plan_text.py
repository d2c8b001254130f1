"""A prescription told in the terminal: what first, how, when, how much, what is struck out, what is still asked."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from datetime import date
from typing import Any

from rootcollar.choose import (
    Choice,
    Prescription,
    Reach,
    SetAside,
    Setting,
    alike,
    best_months,
    instruction,
    line_minutes,
    line_mix_ml,
    line_money,
    line_side_m2,
    minutes,
    minutes_to_share,
    mix_words,
    money_to_share,
    not_planned_with,
    opens_most,
    poured_ml,
    reaches,
    share_to_reach,
    shut_words,
    stems,
    visits_of,
    way_words,
    year_of_line,
)  # fmt: skip
from rootcollar.cli.group_words import best_words, whose
from rootcollar.cli.laid_out import band_json, wrapped
from rootcollar.cli.standing_json import standing_json
from rootcollar.cli.steps_text import owed_json, steps_json
from rootcollar.cli.thicket_text import thickets_json
from rootcollar.cli.years_text import line_json
from rootcollar.kernel.days import MONTHS, name_months
from rootcollar.kernel.doubt import best
from rootcollar.kernel.verdict import Level, Verdict, worst_first
from rootcollar.mix import Recipe
from rootcollar.reference import load
from rootcollar.work import Project, text
from rootcollar.work.dangers import minded
from rootcollar.work.standing import leaves_words, standing_on

__all__ = ["as_json", "summary"]

_MARK: Mapping[Level, str] = {Level.STOP: "[-]", Level.ASK: "(?)", Level.WARN: "(!)", Level.OK: "(o)"}


def summary(project: Project, plan: Prescription, on: date, short: bool = False) -> Iterator[str]:
    """Yield the lines of the summary: units in the order to work them, what is treated alike together.

    on: the day it is weighed for; what is shut then says what is open. short: without fallbacks, what is to be minded
    and the ways that more facts would open.
    """
    yield f"{project.ground.name}: what to treat first, how, when, with how much"
    yield ""
    opening = opens_most(plan.choices)
    if opening is not None:
        yield from wrapped(opening.words, "")
        yield ""
    for place, (key, because) in enumerate(plan.order, start=1):
        unit = project.ground.units[key]
        yield from wrapped(f"{place}. {unit.name}, {text.acres(unit.area_m2)}: {because}.", "")
        yield from _standing(project, plan, key, on)
        for group in alike([one for one in plan.choices if one.stand.unit == key]):
            yield from _group(group, plan, on.month, short)
        yield ""
    yield from _mixes(plan)
    yield from _struck(plan, short)
    yield from _asked(plan, short)
    if not short:
        yield from _grouped(plan, Level.WARN, "Mind", short)
    for words in minded([one for one in plan.choices if one.level < Level.STOP], on, load()):
        yield from wrapped(f"(!) {words}.", "")
    for note in _notes(project):
        yield from wrapped(f"Note: {note.rstrip('.')}.", "")
    yield "(o) no known rule objects   (!) mind   (?) a question stands   [-] must not be done"
    yield from wrapped(
        "Amounts, minutes and prices are guesses until a proving batch and your own times replace them. "
        "Rootcollar says which rules it weighed, never that a plan is lawful: the label in your hand does.",
        "",
    )


def _notes(project: Project) -> tuple[str, ...]:
    return (*project.ground.notes, *not_planned_with(project.shelf, load()))


def _group(lines: Sequence[Choice], plan: Prescription, month: int, short: bool) -> Iterator[str]:
    """One instruction for all that is treated alike: which plants, how, which mix, how much, when, how long."""
    first = lines[0]
    who = "; ".join(_plants(lines))
    if first.option is None:
        because = first.because
        yield from wrapped(f"{_MARK[Level.STOP]} Leave for now: {who}. {because[:1].upper()}{because[1:]}", "   ")
        return
    verb, _ = instruction(first.option.way)
    recipe, months = first.recipe, first.option.way.months
    poured = poured_ml(lines)
    mix = f"mix {_letter(recipe, plan)}, {_amount(poured)}; " if recipe else ""
    when = ("any month" if len(months) == len(MONTHS) else name_months(months)) + best_words(lines)
    held = {Level.STOP: " STRUCK OUT, see below.", Level.ASK: " HELD until answered, see below."}.get(first.level, "")
    yield from wrapped(f"{_MARK[first.level]} {verb}: {who}. {mix}{when}; {text.hours(minutes(lines))}.{held}", "   ")
    if first.level is not Level.STOP and not short:
        words = shut_words(lines, month, whose)
        yield from wrapped(f"{words}." if words else "", "       ")
    if first.fallback and not held and not short:
        letter = _letter(first.fallback.option.way.visit.recipe, plan)
        mixed = f", mix {letter}" if letter else ""
        way = first.fallback.option.way
        shut = (
            "" if month in way.visit.months else f"; not in {MONTHS[month - 1]}, but in {name_months(way.visit.months)}"
        )
        yield from wrapped(f"else ({first.fallback.trigger}): {way_words(way)}{mixed}{shut}", "       ")


def _plants(lines: Sequence[Choice]) -> Iterator[str]:
    for key in dict.fromkeys(one.stand.species for one in lines):
        mine = [one for one in lines if one.stand.species == key]
        size = text.size(text.joined([one.stand.band_cm for one in mine]))
        yield f"{load().species[key].common_name} {size}, {text.count(stems(mine))} stems"


def _mixes(plan: Prescription) -> Iterator[str]:
    backs = {one.fallback.option.way.visit.recipe for one in plan.choices if one.fallback and one.is_work}
    used = {letter: one for letter, one in plan.letters.items() if _lines(one, plan) or one in backs}
    if used:
        yield "Mixes"
    for letter, recipe in used.items():
        lines = _lines(recipe, plan)
        amount = _amount(poured_ml(lines)) if lines else "only if the first way cannot be done"
        yield f"   {letter}  {mix_words(recipe, load().formulations[recipe.formulation].words)}: {amount}"
    if used:
        yield ""


def _struck(plan: Prescription, short: bool) -> Iterator[str]:
    yield from _grouped(plan, Level.STOP, "Struck out", short)
    ways: dict[tuple[str, str], set[str]] = {}
    for line in plan.choices:
        for one in line.set_aside:
            if one.stop is not None and line.option is not None:
                ways.setdefault((f"{one.because} [{one.stop.rule}]", one.would_win_if), set()).add(
                    f"{way_words(one.way)} on {line.stand.unit}"
                )
    if ways:
        yield "Struck out by a rule, and another way taken"
    for (because, clear), where in ways.items():
        yield from wrapped(f"{_MARK[Level.STOP]} {because}: {'; '.join(sorted(where))}.", "   ")
        yield from wrapped(f"Way out: {clear}.", "       ")
    if ways:
        yield ""


def _asked(plan: Prescription, short: bool) -> Iterator[str]:
    yield from _grouped(plan, Level.ASK, "Still asked", short)
    questions = {(one.because, one.would_win_if) for line in plan.choices for one in line.set_aside if one.asks}
    if questions and not short:
        yield "Would open more ways"
        for because, do in sorted(questions):
            yield from wrapped(f"(?) {because}. {do[:1].upper()}{do[1:]}.", "   ")
        yield ""


def _grouped(plan: Prescription, level: Level, title: str, short: bool) -> Iterator[str]:
    """The rules' words of a level, worst first, with the units they are said of; short: one of each rule."""
    found: dict[tuple[str, str, str], list[str]] = {}
    for line in plan.choices:
        for one in worst_first(line.verdicts):
            if one.level is level:
                same = next((key for key in found if key[0] == one.rule), None) if short else None
                found.setdefault(same or (one.rule, _of_plant(one, line), one.clear), []).append(line.stand.unit)
    if not found:
        return
    yield title
    for (rule, because, clear), units in found.items():
        lines = f"{len(units)} {'line' if len(units) == 1 else 'lines'} on {', '.join(dict.fromkeys(units))}"
        yield from wrapped(f"{_MARK[level]} {because}" + f" [{rule}]" * bool(rule), "   ")
        yield from wrapped(f"{lines}. {'Way out: ' + clear if clear else ''}", "       ")
    yield ""


def _of_plant(said: Verdict, line: Choice) -> str:
    """Return the words of a verdict; what a source says of a plant, and no rule, with the plant's name."""
    return said.because if said.rule else f"{load().species[line.stand.species].common_name}: {said.because}"


def _lines(recipe: Recipe, plan: Prescription) -> list[Choice]:
    return [one for one in plan.choices if one.recipe == recipe and one.is_work]


def _letter(recipe: Recipe | None, plan: Prescription) -> str:
    return next((letter for letter, one in plan.letters.items() if one == recipe), "")


def _amount(poured: Any) -> str:
    band_words = text.span(poured)
    return text.gallons(best(poured)) + (f" ({band_words})" if band_words else "")


def as_json(project: Project, plan: Prescription, setting: Setting) -> dict[str, Any]:
    """Return the prescription as plain values: units in order, lines, mixes. setting: that it was weighed in."""
    reached = reaches(plan.choices, setting)
    return {
        "property": project.ground.name,
        "notes": list(_notes(project)),
        "opens_most": opening.words if (opening := opens_most(plan.choices)) else None,
        "second_steps_owed": owed_json(plan, setting),
        "thickets": thickets_json(plan, setting),
        "order": [{"unit": key, "because": because} for key, because in plan.order],
        **standing_json(project, setting.on),
        "lines": [
            _line_json(one, plan, setting)
            | line_json(one, setting)
            | {"at_most": [_reach(found) for found in reached.get(one.stand.key, ())]}
            for one in plan.choices
        ],
        "mind": list(minded([one for one in plan.choices if one.level < Level.STOP], setting.on, setting.reference)),
        "mixes": {
            letter: {
                "product": recipe.product,
                "formulation": recipe.formulation,
                "ingredient": recipe.ingredient,
                "strength_pct": recipe.strength_pct,
                "carrier": recipe.carrier,
                "ae_g_per_l": recipe.ae_g_per_l,
                "partner": recipe.partner.key if recipe.partner else None,
                "partner_pct": recipe.partner.strength_pct if recipe.partner else None,
            }
            for letter, recipe in plan.letters.items()
        },
    }


def _line_json(choice: Choice, plan: Prescription, setting: Setting) -> dict[str, Any]:
    stand, option = choice.stand, choice.option
    out: dict[str, Any] = {
        "line": stand.key,
        "unit": stand.unit,
        "species": stand.species,
        "band_cm": list(stand.band_cm),
        "stems": band_json(stand.stems),
        "level": "stop" if option is None else choice.level.word,
        "because": choice.because,
        "verdicts": [_verdict(one) for one in worst_first(choice.verdicts)],
        "set_aside": [_aside_json(one) for one in choice.set_aside],
    }
    if option is not None:
        out |= {
            "method": option.way.visit.method,
            "mix": _letter(choice.recipe, plan),
            "months": sorted(option.way.months),
            "not_on_the_day": shut_words([choice], setting.on.month),
            **_year_json(choice, setting),
            **steps_json(choice, setting),
            "instruction": ", ".join(instruction(option.way)),
            "mix_ml": band_json(line_mix_ml(stand.stems, option.per_stem.mix_ml)),
            "minutes": band_json(line_minutes(stand.stems, option.per_stem.minutes)),
            "kill": band_json(option.per_stem.kill),
            "visits": band_json(visits_of(choice, setting)),
            "share_to_reach": share_to_reach(setting),
            "minutes_to_share": band_json(minutes_to_share(choice, setting)),
            "cost": band_json(line_money(stand.stems, option.per_stem.cost)),
            "cost_to_share": band_json(money_to_share(choice, setting)),
            "side_m2": band_json(line_side_m2(stand.stems, option.per_stem.side_m2)),
            "cost_per_kill": band_json(option.per_stem.cost_per_kill),
        }
    if choice.fallback is not None:
        out["fallback"] = {"way": way_words(choice.fallback.option.way), "if": choice.fallback.trigger}
    return out


def _aside_json(one: SetAside) -> dict[str, Any]:
    told = {"because": one.because, "would_win_if": one.would_win_if, "asks": one.asks, "on_front": one.front}
    return {"way": way_words(one.way), **told}


def _standing(project: Project, plan: Prescription, key: str, on: date | None) -> Iterator[str]:
    """Yield what stands dead on a unit, and what the plan will leave so."""
    tongue = load().tongues["en"]
    if dead := standing_on(key, project.history, on, load(), tongue):
        yield from wrapped(f"{_MARK[Level.WARN]} {dead}", "   ")
    if left := leaves_words([one for one in plan.choices if one.stand.unit == key], load(), tongue):
        yield from wrapped(f"{_MARK[Level.WARN]} {left}", "   ")


def _year_json(choice: Choice, setting: Setting) -> dict[str, Any]:
    """Return what is said of each month of the way, and when it is best."""
    year = year_of_line(choice, setting)
    best_of = best_months(year)
    return {
        "year": [{"month": one.month, "state": one.state, "because": one.because} for one in year],
        "best_months": sorted(best_of.months),
        "best_because": best_of.because,
    }


def _reach(one: Reach) -> dict[str, Any]:
    """Return where a line meets one rate of its label: stems and mix on an acre, and on which ground it counts."""
    return {
        "limit": one.most.words,
        "when": one.most.when,
        "stems_per_acre": one.stems_per_acre,
        "mix_ml_per_acre": one.most.on_acre_ml,
        "mix_ml_on_unit": one.most.mix_ml,
        "ground_m2": one.most.ground_m2,
    }


def _verdict(one: Verdict) -> dict[str, str]:
    return {"level": one.level.word, "because": one.because, "clear": one.clear, "rule": one.rule, "page": one.page}
