"""The rules' word on a line, and on what the lines add up to: asked the same way for choosing and for clearing."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from rootcollar.choose.option import Choice, PerStem, Way
from rootcollar.choose.partner import partnered
from rootcollar.choose.setting import Setting
from rootcollar.choose.sums import poured_ml
from rootcollar.kernel.verdict import Level, Verdict
from rootcollar.label import (
    Departure,
    Facts,
    Jugs,
    Planned,
    UnitTotal,
    aboard_facts,
    departures,
    jugs_of,
    law_facts,
    place_facts,
    settle,
    template_facts,
    total_facts,
    weigh_place,
    weigh_template,
    weigh_totals,
)
from rootcollar.mix.recipe import Recipe, sides
from rootcollar.reference import Species
from rootcollar.survey.stand import Stand

_INSTEAD = "/instead"  # behind the key of a line, its fallback

__all__ = ["fallback_verdicts", "line_departures", "line_verdicts", "template_of", "total_verdicts", "unit_totals"]


def line_verdicts(way: Way, species: Species, stand: Stand, figures: PerStem, setting: Setting) -> tuple[Verdict, ...]:
    """Return what every rule says of one way on one stand, answers taken in; totals are weighed apart."""
    said: list[Verdict] = []
    for side in _sides(way):
        template = template_of(side, species, stand, figures, setting)
        place = place_facts(template, setting.ground.units[stand.unit], on=setting.on)
        said += (*weigh_template(template, stand.key), *weigh_place(place, stand.key))
    return tuple(settle(one, setting.answers) for one in _once(said))


def _sides(way: Way) -> tuple[Way, ...]:
    """Return a way as the label of each product in its mix sees it: all of them are weighed."""
    recipe = way.visit.recipe
    if recipe is None:
        return (way,)
    visits = (replace(way.visit, recipe=one) for one in sides(recipe))
    return tuple(replace(way, treatment=(*way.treatment[:-1], visit)) for visit in visits)


def _once(said: Iterable[Verdict]) -> tuple[Verdict, ...]:
    """Return what was said, each once; a rule that no label of a mix objects to speaks for all of them."""
    kept: dict[tuple[str, str], Verdict] = {}
    for one in said:
        kept.setdefault((one.rule, "" if one.level is Level.OK else one.because), one)
    objected = {one.rule for one in kept.values() if one.level > Level.OK}
    return tuple(one for one in kept.values() if one.level > Level.OK or one.rule not in objected)


def template_of(way: Way, species: Species, stand: Stand, figures: PerStem, setting: Setting) -> Facts:
    """Return the facts of one way on a stand wherever it lies, as the label of the mix's first product sees them."""
    recipe = way.visit.recipe
    sheet = setting.sheet(recipe.product) if recipe else None
    said = template_facts(
        replace(planned(way, species, stand, figures), partner=partnered(recipe, setting)),
        sheet,
        state=setting.ground.state,
        demo=setting.ground.demo,
        wear=setting.wear,
        treaters=setting.treaters,
    )
    jugs = jugs_of(sheet, setting.shelf, setting.stock) if sheet else Jugs()
    return {**said, **aboard_facts(setting.aboard, setting.treaters, jugs), **law_facts(setting.reference.hazard)}


def line_departures(choice: Choice, setting: Setting) -> tuple[tuple[Departure, str], ...]:
    """Return the lawful departures from a label that a line of work makes, each once, for the record."""
    species = setting.reference.species[choice.stand.species]
    found = (
        one
        for way in _sides(choice.way)
        for one in departures(template_of(way, species, choice.stand, choice.per_stem, setting))
    )
    return tuple(dict.fromkeys(found))


def planned(way: Way, species: Species, stand: Stand, figures: PerStem) -> Planned:
    """Return a line as the rules see it."""
    names = (species.common_name, *species.other_names, species.scientific_name, *species.synonyms)
    return Planned(
        way.visit.method, names, way.visit.recipe, stand.band_cm, figures.dose_ml, figures.dose_per, stand.height_m
    )


def unit_totals(choices: Iterable[Choice], setting: Setting) -> tuple[UnitTotal, ...]:
    """Return the sums of each product of each recipe on each unit, in unit and recipe order."""
    return tuple(total for _, total in _totals(choices, setting))


def _totals(choices: Iterable[Choice], setting: Setting) -> tuple[tuple[int, UnitTotal], ...]:
    """Return the sums, each with the place of its product in the mix: 0 for the first, 1 for its partner."""
    by: dict[tuple[str, Recipe], list[Choice]] = {}
    for choice in choices:
        if choice.recipe is not None:
            by.setdefault((choice.stand.unit, choice.recipe), []).append(choice)
    return tuple(
        (place, _total(unit, side, lines, setting))
        for (unit, recipe), lines in by.items()
        for place, side in enumerate(sides(recipe))
    )


def _total(unit: str, recipe: Recipe, lines: Sequence[Choice], setting: Setting) -> UnitTotal:
    mix = poured_ml(lines)
    return UnitTotal(
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


def total_verdicts(choices: Sequence[Choice], setting: Setting) -> Mapping[str, tuple[Verdict, ...]]:
    """Return, by line, what the rules say of the sums the line adds to."""
    by_key = {choice.stand.key: choice for choice in choices}
    out: dict[str, tuple[Verdict, ...]] = {}
    sums = _totals(choices, setting)
    totals = tuple(total for _, total in sums)
    for side, total in sums:
        first = by_key[total.lines[0]]
        species = setting.reference.species[first.stand.species]
        template = template_of(_sides(first.way)[side], species, first.stand, first.per_stem, setting)
        place = place_facts(template, setting.ground.units[total.unit], on=setting.on)
        facts = total_facts(place, total, setting.history, on=setting.on, also=totals)
        for key in total.lines:
            about = key.removesuffix(_INSTEAD)
            out[key] = (*out.get(key, ()), *weigh_totals(facts, about))
    return {key: tuple(settle(one, setting.answers) for one in _once(said)) for key, said in out.items()}


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
