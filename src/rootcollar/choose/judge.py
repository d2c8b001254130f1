"""The rules' word on a line, and on what the lines add up to: asked the same way for choosing and for clearing."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import fields, replace

from rootcollar.choose.gates import leaves_by_roots
from rootcollar.choose.option import Choice, PerStem, Way
from rootcollar.choose.partner import partnered
from rootcollar.choose.setting import Setting
from rootcollar.choose.steps import first_alone, regrown
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
    treaters,
    weigh_place,
    weigh_template,
    weigh_totals,
)
from rootcollar.label.acid import acid_in_formulation, acid_in_product
from rootcollar.label.limits import active_of
from rootcollar.mix.recipe import Recipe, sides
from rootcollar.reference import Reference, Species
from rootcollar.shelf import actives
from rootcollar.survey.stand import Stand

_OF_STEMS = tuple(one.name for one in fields(Stand) if one.name not in {"key", "unit", "stems"})
_INSTEAD = "/instead"  # behind the key of a line, its fallback
_Sum = tuple[int, UnitTotal]  # with the place of its product in the mix

__all__ = [
    "fallback_verdicts", "line_departures", "line_verdicts", "once", "sides_of", "total_verdicts", "unit_totals",
    "way_facts", "weighed_of",
]  # fmt: skip


def line_verdicts(way: Way, species: Species, stand: Stand, figures: PerStem, setting: Setting) -> tuple[Verdict, ...]:
    """Return what every rule says of one way on one stand, answers taken in; totals are weighed apart."""
    said: list[Verdict] = []
    for side in weighed_of(way):
        facts = way_facts(side, species, stand, figures, setting)
        place = place_facts(facts, setting.ground.units[stand.unit], on=setting.on)
        said += _settled((*weigh_template(facts, stand.key), *weigh_place(place, stand.key)), facts, setting)
    return once(said)


def _settled(said: Iterable[Verdict], facts: Facts, setting: Setting) -> Iterator[Verdict]:
    """Yield what is said of a way, with the answers of people taken in. facts: of the way."""
    label = facts.get("sheet.key")
    sheet = setting.sheet(str(label.says)) if label else None
    for one in said:  # only what is asked can be answered
        yield settle(one, setting.answers, on=setting.on, sheet=sheet) if one.level is Level.ASK else one


def sides_of(way: Way) -> tuple[Way, ...]:
    """Return a way as the label of each product in its mix sees it: all of them are weighed."""
    recipe = way.visit.recipe
    if recipe is None or recipe.partner is None:
        return (way,)
    visits = (replace(way.visit, recipe=one) for one in sides(recipe))
    return tuple(replace(way, treatment=(*way.treatment[:-1], visit)) for visit in visits)


def weighed_of(way: Way) -> tuple[Way, ...]:
    """Return all that the rules weigh of a way: each label of its mix, and the step before it."""
    first = first_alone(way)
    return (*sides_of(way), first) if first else sides_of(way)


def once(said: Iterable[Verdict]) -> tuple[Verdict, ...]:
    """Return what was said, each once; a rule that no label of a mix objects to speaks for all of them."""
    kept: dict[tuple[str, str], Verdict] = {}
    for one in said:
        kept.setdefault((one.rule, "" if one.level is Level.OK else one.because), one)
    objected = {one.rule for one in kept.values() if one.level > Level.OK}
    return tuple(one for one in kept.values() if one.level > Level.OK or one.rule not in objected)


def way_facts(way: Way, species: Species, stand: Stand, figures: PerStem, setting: Setting) -> Facts:
    """Return what the rules read of a way on stems of a kind, the same on every unit, as its first label sees it."""
    recipe = way.visit.recipe
    sheet = setting.sheet(recipe.product) if recipe else None
    said = template_facts(
        replace(planned(way, species, stand, figures, setting.reference), partner=partnered(recipe, setting)),
        sheet,
        state=setting.ground.state,
        demo=setting.ground.demo,
        wear=setting.wear,
        people=setting.people,
    )
    jugs = jugs_of(sheet, setting.shelf, setting.stock) if sheet else Jugs()
    along = aboard_facts(setting.aboard, treaters(setting.people), jugs)
    return {**said, **along, **law_facts(setting.reference.hazard)}


def line_departures(choice: Choice, setting: Setting) -> tuple[tuple[Departure, str], ...]:
    """Return the lawful departures from a label that a line of work makes, each once, for the record."""
    species = setting.reference.species[choice.stand.species]
    found = (
        one
        for way in sides_of(choice.way)
        for one in departures(way_facts(way, species, choice.stand, choice.per_stem, setting))
    )
    return tuple(dict.fromkeys(found))


def planned(way: Way, species: Species, stand: Stand, figures: PerStem, reference: Reference) -> Planned:
    """Return a line as the rules see it."""
    names = (species.common_name, *species.other_names, species.scientific_name, *species.synonyms)
    leaks = leaves_by_roots(way.visit.recipe, reference)
    dose_ml, dose_per = (figures.dose_ml, figures.dose_per) if way.visit.recipe else (None, "")
    high = regrown(stand, way).height_m
    return Planned(way.visit.method, names, way.visit.recipe, stand.band_cm, dose_ml, dose_per, high, leaks)


def unit_totals(choices: Iterable[Choice], setting: Setting) -> tuple[UnitTotal, ...]:
    """Return the sums of each product of each recipe on each unit, in unit and recipe order."""
    return tuple(total for _, total in _totals(choices, setting))


def _totals(choices: Iterable[Choice], setting: Setting) -> tuple[_Sum, ...]:
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
    mix, ground, acid = poured_ml(lines), setting.ground.units[unit], _acid(recipe, setting)
    return UnitTotal(
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


def _acid(recipe: Recipe, setting: Setting) -> tuple[float, bool]:
    """Return the acid in a recipe's product [g/L] and True; the active in it and False where its acid is not known."""
    sheet = setting.sheet(recipe.product)
    if sheet is None:
        known = setting.reference.formulations.get(recipe.formulation)
        return (acid_in_formulation(known), True) if known else (recipe.ae_g_per_l, False)
    active = active_of(actives(sheet), recipe.ingredient)
    acid = acid_in_product(active, recipe.ingredient, setting.reference) if active else None
    return acid or (recipe.ae_g_per_l, False)


def total_verdicts(choices: Sequence[Choice], setting: Setting) -> Mapping[str, tuple[Verdict, ...]]:
    """Return, by line, what the rules say of the sums the line adds to."""
    sums = _totals(choices, setting)
    return _of_totals(sums, sums, choices, setting)


def _of_totals(
    weighed: Iterable[_Sum], sums: Iterable[_Sum], choices: Sequence[Choice], setting: Setting
) -> dict[str, tuple[Verdict, ...]]:
    """Return, by line, what the rules say of some of the sums of the choices. sums: all of them."""
    by_key = {choice.stand.key: choice for choice in choices}
    out: dict[str, tuple[Verdict, ...]] = {}
    beside: dict[str, list[UnitTotal]] = {}
    for _, total in sums:
        beside.setdefault(total.unit, []).append(total)
    known: dict[object, Facts] = {}
    for side, total in weighed:
        first = by_key[total.lines[0]]
        of = id(first.way), side, _stems_alike(first.stand), first.per_stem.dose_ml, first.per_stem.dose_per
        if of not in known:  # the same way on stems of the same kind reads the same, on whichever unit they stand
            species = setting.reference.species[first.stand.species]
            known[of] = way_facts(sides_of(first.way)[side], species, first.stand, first.per_stem, setting)
        place = place_facts(known[of], setting.ground.units[total.unit], on=setting.on)
        facts = total_facts(place, total, setting.history, on=setting.on, also=beside[total.unit])
        said = weigh_totals(facts, total.unit)
        for key in total.lines:
            about = key.removesuffix(_INSTEAD)
            settled = _settled((one.of(about) for one in said), facts, setting)
            out[key] = once((*out.get(key, ()), *settled))
    return out


def _stems_alike(stand: Stand) -> tuple[object, ...]:
    """Return all that is known of a stand but where it stands and how many stems it has."""
    return tuple(getattr(stand, name) for name in _OF_STEMS)


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
    sums = _totals(both, setting)
    with_backs = [one for one in sums if any(key.endswith(_INSTEAD) for key in one[1].lines)]
    said = _of_totals(with_backs, sums, both, setting)
    return {key.removesuffix(_INSTEAD): found for key, found in said.items() if key.endswith(_INSTEAD)}
