"""The rules' word on a line, and on what the lines add up to: asked the same way for choosing and for clearing."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from rootcollar.choose.gates import leaves_by_roots
from rootcollar.choose.option import Choice, PerStem, Way
from rootcollar.choose.setting import Setting
from rootcollar.choose.sums import poured_ml
from rootcollar.kernel.verdict import Verdict
from rootcollar.label import (
    Facts,
    Planned,
    UnitTotal,
    place_facts,
    settle,
    template_facts,
    total_facts,
    weigh_place,
    weigh_template,
    weigh_totals,
)
from rootcollar.mix.recipe import Recipe
from rootcollar.reference import Reference, Species
from rootcollar.survey.stand import Stand

_INSTEAD = "/instead"  # behind the key of a line, its fallback

__all__ = ["fallback_verdicts", "line_verdicts", "total_verdicts", "unit_totals"]


def line_verdicts(way: Way, species: Species, stand: Stand, figures: PerStem, setting: Setting) -> tuple[Verdict, ...]:
    """Return what every rule says of one way on one stand, answers taken in; totals are weighed apart."""
    template = _template(way, species, stand, figures, setting)
    place = place_facts(template, setting.ground.units[stand.unit], on=setting.on)
    said = (*weigh_template(template, stand.key), *weigh_place(place, stand.key))
    return tuple(settle(one, setting.answers) for one in said)


def _template(way: Way, species: Species, stand: Stand, figures: PerStem, setting: Setting) -> Facts:
    recipe = way.visit.recipe
    return template_facts(
        planned(way, species, stand, figures, setting.reference),
        setting.sheet(recipe.product) if recipe else None,
        state=setting.ground.state,
        demo=setting.ground.demo,
        wear=setting.wear,
        people=setting.people,
    )


def planned(way: Way, species: Species, stand: Stand, figures: PerStem, reference: Reference) -> Planned:
    """Return a line as the rules see it."""
    names = (species.common_name, *species.other_names, species.scientific_name, *species.synonyms)
    leaks = leaves_by_roots(way.visit.recipe, reference)
    dose_ml, dose_per = figures.dose_ml, figures.dose_per
    return Planned(way.visit.method, names, way.visit.recipe, stand.band_cm, dose_ml, dose_per, stand.height_m, leaks)


def unit_totals(choices: Iterable[Choice], setting: Setting) -> tuple[UnitTotal, ...]:
    """Return the sums of each recipe on each unit, in unit and recipe order."""
    by: dict[tuple[str, Recipe], list[Choice]] = {}
    for choice in choices:
        if choice.recipe is not None:
            by.setdefault((choice.stand.unit, choice.recipe), []).append(choice)
    totals = []
    for (unit, recipe), lines in by.items():
        mix = poured_ml(lines)
        totals.append(
            UnitTotal(
                unit,
                recipe.ingredient,
                recipe.ae_g_per_l,
                recipe.strength_pct,
                mix,
                mix * (recipe.strength_pct / 100),
                setting.ground.units[unit].area_m2,
                1,
                tuple(one.stand.key for one in lines),
            )
        )
    return tuple(totals)


def total_verdicts(choices: Sequence[Choice], setting: Setting) -> Mapping[str, tuple[Verdict, ...]]:
    """Return, by line, what the rules say of the sums the line adds to."""
    by_key = {choice.stand.key: choice for choice in choices}
    out: dict[str, tuple[Verdict, ...]] = {}
    totals = unit_totals(choices, setting)
    for total in totals:
        first = by_key[total.lines[0]]
        species = setting.reference.species[first.stand.species]
        template = _template(first.way, species, first.stand, first.per_stem, setting)
        place = place_facts(template, setting.ground.units[total.unit], on=setting.on)
        facts = total_facts(place, total, setting.history, on=setting.on, also=totals)
        for key in total.lines:
            about = key.removesuffix(_INSTEAD)
            out[key] = tuple(settle(one, setting.answers) for one in weigh_totals(facts, about))
    return out


def fallback_verdicts(choices: Sequence[Choice], setting: Setting) -> Mapping[str, tuple[Verdict, ...]]:
    """Return, by line, what the rules say of the sums were its fallback needed.

    Fallbacks and first ways are added up together: which of them will be needed where, nobody knows beforehand.
    """
    backs = [
        replace(one, option=one.fallback.option, stand=replace(one.stand, key=f"{one.stand.key}{_INSTEAD}"))
        for one in choices
        if one.fallback
    ]
    said = total_verdicts([*choices, *backs], setting)
    return {key.removesuffix(_INSTEAD): found for key, found in said.items() if key.endswith(_INSTEAD)}
