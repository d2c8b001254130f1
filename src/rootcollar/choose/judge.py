"""The rules' word on a line, and on what the lines add up to: asked the same way for choosing and for clearing."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from rootcollar.choose.figures import per_stem
from rootcollar.choose.option import Choice, PerStem, Way
from rootcollar.choose.setting import Setting
from rootcollar.kernel.doubt import Worlds
from rootcollar.kernel.formula import formula
from rootcollar.kernel.verdict import Verdict
from rootcollar.label import (
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
from rootcollar.reference import Species
from rootcollar.survey.stand import Stand

__all__ = ["line_mix_ml", "line_verdicts", "replay", "sum_worlds", "total_verdicts", "unit_totals"]


@formula("stems * mix_ml", gives="mL", source="arithmetic", stems=(0, 10000), mix_ml=(0, 500))
def line_mix_ml(stems: Worlds, mix_ml: Worlds) -> Worlds:
    """Return the finished mix for a stand [mL]. stems: its count. mix_ml: on one stem [mL]."""
    return stems * mix_ml


def line_verdicts(way: Way, species: Species, stand: Stand, figures: PerStem, setting: Setting) -> tuple[Verdict, ...]:
    """Return what every rule says of one way on one stand, answers taken in; totals are weighed apart."""
    sheet = setting.sheet(way.visit.recipe.product) if way.visit.recipe else None
    template = template_facts(
        planned(way, species, stand, figures),
        sheet,
        state=setting.ground.state,
        demo=setting.ground.demo,
        wear=setting.wear,
    )
    place = place_facts(template, setting.ground.units[stand.unit], on=setting.on)
    said = (*weigh_template(template, stand.key), *weigh_place(place, stand.key))
    return tuple(settle(one, setting.answers) for one in said)


def planned(way: Way, species: Species, stand: Stand, figures: PerStem) -> Planned:
    """Return a line as the rules see it."""
    names = (species.common_name, *species.other_names, species.scientific_name, *species.synonyms)
    return Planned(
        way.visit.method, names, way.visit.recipe, stand.band_cm, figures.dose_ml, figures.dose_per, stand.height_m
    )


def unit_totals(choices: Iterable[Choice], setting: Setting) -> tuple[UnitTotal, ...]:
    """Return the sums of each recipe on each unit, in unit and recipe order."""
    by: dict[tuple[str, Recipe], list[Choice]] = {}
    for choice in choices:
        if choice.option is not None and choice.recipe is not None:
            by.setdefault((choice.stand.unit, choice.recipe), []).append(choice)
    totals = []
    for (unit, recipe), lines in by.items():
        mix = sum_worlds([line_mix_ml(one.stand.stems, one.option.per_stem.mix_ml) for one in lines if one.option])
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
        assert first.option is not None
        species = setting.reference.species[first.stand.species]
        template = template_facts(
            planned(first.option.way, species, first.stand, first.option.per_stem),
            setting.sheet(first.recipe.product if first.recipe else None),
            state=setting.ground.state,
            demo=setting.ground.demo,
            wear=setting.wear,
        )
        place = place_facts(template, setting.ground.units[total.unit], on=setting.on)
        facts = total_facts(place, total, setting.history, on=setting.on, also=totals)
        for key in total.lines:
            out[key] = tuple(settle(one, setting.answers) for one in weigh_totals(facts, key))
    return out


def replay(choice: Choice, setting: Setting) -> Worlds:
    """Return a line's mix again from its stand and its way [mL], so that a watcher sees how it was come by."""
    assert choice.option is not None  # a line that is left has nothing to work out
    species = setting.reference.species[choice.stand.species]
    figures = per_stem(choice.option.way, species, choice.stand, setting)
    return line_mix_ml(choice.stand.stems, figures.mix_ml)


def sum_worlds(parts: Sequence[Worlds]) -> Worlds:
    """Return the sum of worlds of possibly different length (a sure number counts in every world)."""
    total = parts[0]
    for part in parts[1:]:
        total = total + part
    return total
