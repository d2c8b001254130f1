"""Figure loads: how often a sprayer is filled, and what goes into each, never stronger than asked."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from rootcollar.jobs.figure import Answer, Poured, System, bench_cautions, volume
from rootcollar.jobs.figure_area import measured_m2
from rootcollar.jobs.figure_carry import Heavy, Held, held
from rootcollar.jobs.figure_jugs import cut, jug_steps, least_ml
from rootcollar.jobs.figure_mix import MixAsk, Strength, strength_pct
from rootcollar.jobs.figure_words import ground, output, weight
from rootcollar.jobs.outcome import Outcome
from rootcollar.kernel.units import jug, show
from rootcollar.mix import Carrier, Limits, Recipe, load_kg, on_area_mix_ml, product_in_ml
from rootcollar.reference import Reference

__all__ = ["LoadsAsk", "loads"]


@dataclass(frozen=True, slots=True)
class LoadsAsk:
    """What is to be put out, from which tank [mL]. total_ml, or area (one [m2] or two sides [m]) and output_l_per_ha.

    product, g_per_ml: a formulation, or its density, for the weight. carry_kg: the most to be carried, sprayer and mix.
    empty_kg: the sprayer, None where it was not told.
    """

    given: Mapping[str, str]
    strength: Strength
    tank_ml: float
    total_ml: float | None = None
    area: tuple[float, ...] = ()
    output_l_per_ha: float | None = None
    carrier: Carrier = "water"
    product: str | None = None
    g_per_ml: float | None = None
    carry_kg: float | None = None
    empty_kg: float | None = None
    system: System = "us"


def loads(ask: LoadsAsk, reference: Reference) -> Outcome[Answer]:
    """Return the loads with jug steps, the product in each and in all.

    Raises Refusal for more product than mix, too little to measure, and an empty sprayer over the limit.
    """
    total_ml = _total_ml(ask)
    pct = strength_pct(MixAsk(ask.given, ask.strength, total_ml, carrier=ask.carrier), reference)
    carrier: Carrier = "none" if pct >= 100 else ask.carrier
    light = _light(ask, pct, reference)
    tank_ml = min(ask.tank_ml, light.most_ml) if light else ask.tank_ml
    recipe, limits = Recipe(None, "", "", 0.0, pct, carrier), Limits(pct)
    filled = cut(total_ml, tank_ml, ask.system, least_ml(recipe, limits, ask.system))
    mixed_ml = sum(filled)
    product_ml = product_in_ml(mixed_ml, pct)
    return Outcome(Answer(
        question=f"How many loads make {volume(total_ml, ask.system)} of finished mix?",
        given=ask.given,
        says=f"{_counted(filled, ask.system)}; {volume(product_ml, ask.system)} of product in all",
        value=float(len(filled)), unit="loads",
        figures={
            "total_ml": mixed_ml, "loads_ml": filled, "product_ml": product_ml, "strength_pct": pct,
            "product_in_loads_ml": tuple(product_in_ml(one, pct) for one in filled),
        },
        details=(
            *_whole(ask, total_ml, mixed_ml, pct),
            *jug_steps(recipe, filled, limits, ask.system, counted=True),
            *(_weight(ask, filled[0], light) if light else ()),
            *(("Mix the last load last, when it shows how much of it is needed (ours).",) if len(filled) > 1 else ()),
        ),
        assumed=(
            f"strength {show(pct, '%')} of the finished mix, by volume",
            *(() if "carrier" in ask.given or pct >= 100 else ("thinned with water; --carrier oil for oil",)),
            *(light.assumed if light else ()),
        ),
        cautions=bench_cautions(reference), poured=Poured(pct, carrier),
    ))  # fmt: skip


def _total_ml(ask: LoadsAsk) -> float:
    if ask.total_ml is not None:
        return ask.total_ml
    assert ask.output_l_per_ha is not None
    return on_area_mix_ml(measured_m2(ask.area), ask.output_l_per_ha)


def _counted(filled: tuple[float, ...], system: System) -> str:
    """Return how many loads there are: `10 loads, 9 of 4 gal and a last one of 1.5 gal`."""
    first, last, count = volume(filled[0], system), volume(filled[-1], system), len(filled)
    if count == 1:
        return f"1 load of {first}"
    if first == last:
        return f"{count} loads of {first}"
    return f"{count} loads, {count - 1} of {first} and a last one of {last}"


def _whole(ask: LoadsAsk, total_ml: float, mixed_ml: float, pct: float) -> tuple[str, ...]:
    lines = []
    if ask.area and ask.output_l_per_ha is not None:
        on = ground(measured_m2(ask.area), ask.system)
        lines.append(f"{volume(total_ml, ask.system)} goes on {on} at {output(ask.output_l_per_ha, ask.system)}.")
    if mixed_ml > total_ml and volume(mixed_ml, ask.system) != volume(total_ml, ask.system):
        lines.append(f"Filled to marks of the tank, {volume(mixed_ml, ask.system)} is mixed.")
    if ask.strength.rate_l_per_ha is not None:
        lines.append(f"{ask.given['rate']} at {ask.given['output']} is {show(pct, '%')} of the finished mix.")
    return tuple(lines)


def _light(ask: LoadsAsk, pct: float, reference: Reference) -> Held | None:
    """Return the most mix that keeps to the weight that was accepted; None where none was told."""
    if ask.carry_kg is None:
        return None
    return held(Heavy(pct, ask.carrier, ask.product, ask.g_per_ml), (ask.carry_kg, ask.empty_kg), reference, ask.system)


def _weight(ask: LoadsAsk, load_ml: float, light: Held) -> tuple[str, ...]:
    whole = load_kg(load_ml / 1000, light.density_kg_per_l, light.empty_kg)
    said = f"A full load weighs {weight(whole, ask.system)} with the sprayer"
    if light.most_ml >= ask.tank_ml:
        return (f"{said}, within {ask.given['carry']}.",)
    room = jug(light.most_ml, ask.system, "down").text
    return (f"{said}: {ask.given['carry']} leaves room for {room}, so the tank is not filled.",)
