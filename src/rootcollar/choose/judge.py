"""The rules' word on a line, and on what the lines add up to: asked the same way for choosing and for clearing."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
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
from rootcollar.label.acid import acid_in_formulation, acid_in_product
from rootcollar.label.limits import active_of
from rootcollar.mix.recipe import Recipe
from rootcollar.reference import Reference, Species
from rootcollar.shelf import actives
from rootcollar.survey.stand import Stand

_INSTEAD = "/instead"  # behind the key of a line, its fallback

__all__ = ["fallback_verdicts", "line_verdicts", "total_verdicts", "unit_totals", "way_facts"]


def line_verdicts(way: Way, species: Species, stand: Stand, figures: PerStem, setting: Setting) -> tuple[Verdict, ...]:
    """Return what every rule says of one way on one stand, answers taken in; totals are weighed apart."""
    facts = way_facts(way, species, stand, figures, setting)
    place = place_facts(facts, setting.ground.units[stand.unit], on=setting.on)
    here = (*weigh_template(facts, stand.key), *weigh_place(place, stand.key))
    return tuple(_settled(here, facts, setting))


def _settled(said: Iterable[Verdict], facts: Facts, setting: Setting) -> Iterator[Verdict]:
    """Yield what is said of a way, with the answers of people taken in. facts: of the way."""
    label = facts.get("sheet.key")
    sheet = setting.sheet(str(label.says)) if label else None
    yield from (settle(one, setting.answers, on=setting.on, sheet=sheet) for one in said)


def way_facts(way: Way, species: Species, stand: Stand, figures: PerStem, setting: Setting) -> Facts:
    """Return what the rules read of a way on stems of a kind, the same on every unit."""
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
        mix, ground, acid = poured_ml(lines), setting.ground.units[unit], _acid(recipe, setting)
        totals.append(
            UnitTotal(
                unit,
                recipe.ingredient,
                acid[0],
                recipe.strength_pct,
                mix,
                mix * (recipe.strength_pct / 100),
                ground.area_m2,
                1,
                tuple(one.stand.key for one in lines),
                ground.worked_m2,
                recipe.product or "",
                acid[1],
            )
        )
    return tuple(totals)


def _acid(recipe: Recipe, setting: Setting) -> tuple[float, bool]:
    """Return the acid in a recipe's product [g/L] and True; the active in it and False where its acid is not known."""
    sheet = setting.sheet(recipe.product)
    if sheet is None:
        return acid_in_formulation(setting.reference.formulations[recipe.formulation]), True
    active = active_of(actives(sheet), recipe.ingredient)
    known = acid_in_product(active, recipe.ingredient, setting.reference) if active else None
    return known or (recipe.ae_g_per_l, False)


def total_verdicts(choices: Sequence[Choice], setting: Setting) -> Mapping[str, tuple[Verdict, ...]]:
    """Return, by line, what the rules say of the sums the line adds to."""
    totals = unit_totals(choices, setting)
    return _of_totals(totals, totals, choices, setting)


def _of_totals(
    weighed: Iterable[UnitTotal], totals: Iterable[UnitTotal], choices: Sequence[Choice], setting: Setting
) -> dict[str, tuple[Verdict, ...]]:
    """Return, by line, what the rules say of some of the sums of the choices. totals: all of them."""
    by_key = {choice.stand.key: choice for choice in choices}
    out: dict[str, tuple[Verdict, ...]] = {}
    beside: dict[str, list[UnitTotal]] = {}
    for total in totals:
        beside.setdefault(total.unit, []).append(total)
    for total in weighed:
        first = by_key[total.lines[0]]
        species = setting.reference.species[first.stand.species]
        template = way_facts(first.way, species, first.stand, first.per_stem, setting)
        place = place_facts(template, setting.ground.units[total.unit], on=setting.on)
        facts = total_facts(place, total, setting.history, on=setting.on, also=beside[total.unit])
        said = weigh_totals(facts, total.unit)
        for key in total.lines:
            about = key.removesuffix(_INSTEAD)
            out[key] = tuple(_settled((one.of(about) for one in said), facts, setting))
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
    both = [*choices, *backs]
    totals = unit_totals(both, setting)
    with_backs = [one for one in totals if any(key.endswith(_INSTEAD) for key in one.lines)]
    said = _of_totals(with_backs, totals, both, setting)
    return {key.removesuffix(_INSTEAD): found for key, found in said.items() if key.endswith(_INSTEAD)}
