"""Figure a mix: how much product goes into how much diluent, jug by jug, never stronger than asked."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from rootcollar.jobs.figure import Answer, Poured, System, bench_cautions, volume
from rootcollar.jobs.figure_jugs import cut, jug_steps, least_ml, true_words
from rootcollar.jobs.outcome import Outcome
from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.formula import use
from rootcollar.kernel.sources import Cited
from rootcollar.kernel.units import convert, jug, show
from rootcollar.mix import (
    Carrier,
    Limits,
    Recipe,
    ml_from_active_pct,
    pct_from_acid,
    pct_from_parts,
    pct_from_rate,
    product_in_ml,
    product_on_top_ml,
    product_rate_l_per_ha,
    share_of_mix_pct,
)
from rootcollar.reference import Reference, best, middle, numbers, spans

__all__ = ["MixAsk", "Strength", "diluent_density", "diluent_g_per_ml", "mix", "strength_pct"]

_NO_LIMITS = Limits()


@dataclass(frozen=True, slots=True)
class Strength:
    """A strength in one of the ways people are told it.

    pct: of the finished mix [%], undiluted unless said. parts_diluent: to one part of product. acid_g_per_l: wanted in
    the mix, and in the product as sold [g/L]. rate_l_per_ha: of product, and of mix as the sprayer puts it out [L/ha];
    acid_kg_per_ha: the same by acid: wanted [kg/ha], in the product [g/L], and of mix [L/ha]. active_pct: by weight in
    the spray [%], and active in the product [g/L].
    """

    pct: float = 100.0
    parts_diluent: float | None = None
    acid_g_per_l: tuple[float, float] | None = None
    rate_l_per_ha: tuple[float, float] | None = None
    acid_kg_per_ha: tuple[float, float, float] | None = None
    active_pct: tuple[float, float] | None = None


@dataclass(frozen=True, slots=True)
class MixAsk:
    """What mix is wanted. total_ml: finished mix, or with on_top the diluent that is there already [mL].

    product_g_per_l: acid in the product as sold [g/L], where it was told. tank_ml: what is filled each time [mL].
    limits: the label's strengths, where a sheet was named; its weakest only where it forbids a weaker mix.
    """

    given: Mapping[str, str]
    strength: Strength
    total_ml: float
    on_top: bool = False
    carrier: Carrier = "water"
    tank_ml: float | None = None
    product_g_per_l: float | None = None
    limits: Limits = _NO_LIMITS
    system: System = "us"


def mix(ask: MixAsk, reference: Reference) -> Outcome[Answer]:
    """Return the product for a mix, with jug steps, true strength and loads.

    Raises Refusal for more acid than the product has, for undiluted product on top of a diluent, and for an amount
    too small to measure.
    """
    pct = strength_pct(ask, reference)
    recipe = Recipe(None, "", "", ask.product_g_per_l or 0.0, pct, "none" if pct >= 100 else ask.carrier)
    return Outcome(_on_top(ask, recipe, reference) if ask.on_top else _of_total(ask, recipe, reference))


def strength_pct(ask: MixAsk, reference: Reference) -> float:
    """Return the share of product in the finished mix [%], by whichever way the strength was told."""
    strength = ask.strength
    if strength.acid_g_per_l is not None:
        wanted, have = strength.acid_g_per_l
        if wanted > have:
            raise Refusal(
                f"a mix of {show(wanted, 'g/L')}",
                limit=f"the product itself holds {show(have, 'g/L')}",
                do="Ask for less, or take a stronger product.",
            )
        return pct_from_acid(wanted, have)
    if strength.parts_diluent is not None:
        return pct_from_parts(strength.parts_diluent)
    if strength.acid_kg_per_ha is not None:
        wanted, have, volume = strength.acid_kg_per_ha
        rate = product_rate_l_per_ha(wanted, have)
        return _at_most_undiluted(pct_from_rate(rate, volume), f"{_rate(rate)} of product at {_rate(volume)}")
    if strength.rate_l_per_ha is not None:
        rate, volume = strength.rate_l_per_ha
        return _at_most_undiluted(pct_from_rate(rate, volume), f"{_rate(rate)} of product at {_rate(volume)}")
    if strength.active_pct is not None:
        wanted, have = strength.active_pct
        product_ml = ml_from_active_pct(ask.total_ml, wanted, diluent_g_per_ml(ask.carrier, reference), have)
        return _at_most_undiluted(share_of_mix_pct(product_ml, ask.total_ml), f"{show(wanted, '%')} active by weight")
    return strength.pct


def _at_most_undiluted(pct: float, mix: str) -> float:
    if pct > 100:
        raise Refusal(
            mix,
            limit=f"that would be {show(pct, '%')} product, more than the product as sold",
            do="Ask for less, take a stronger product, or put out more mix an acre.",
        )
    return pct


def _rate(l_per_ha: float) -> str:
    return show(convert(l_per_ha, "L/ha", "gal/ac"), "gal/ac")


def diluent_density(carrier: Carrier, reference: Reference) -> Cited[float]:
    """Return the density of what a product is thinned with, as its source gives it."""
    name = {"oil": "mineral_basal_oil"}.get(carrier, "water")
    rows = [row.figure for row in reference.mixing["carrier_density"] if row.name == name]
    return best([*numbers(rows), *map(middle, spans(rows))])


def diluent_g_per_ml(carrier: Carrier, reference: Reference) -> float:
    """Return the density of what a product is thinned with [g/mL], its source left in the working."""
    known = diluent_density(carrier, reference)
    return convert(use(known), known.unit, "g/mL")


def _of_total(ask: MixAsk, recipe: Recipe, reference: Reference) -> Answer:
    pct, total_ml = recipe.strength_pct, ask.total_ml
    product_ml = product_in_ml(total_ml, pct)
    limits = _limits(pct, ask.limits)
    loads = cut(total_ml, ask.tank_ml, ask.system, least_ml(recipe, limits, ask.system) if ask.tank_ml else 0.0)
    steps = jug_steps(recipe, loads, limits, ask.system, counted=ask.tank_ml is not None)
    whole = _size(total_ml, ask.system)
    return Answer(
        question=f"How much product makes {volume(total_ml, ask.system)} of finished mix at {show(pct, '%')}?",
        given=ask.given,
        says=f"{volume(product_ml, ask.system)} of product in {whole} of finished mix: {show(pct, '%')}",
        value=_in_system(product_ml, ask.system), unit=_unit(ask.system),
        figures={**_figures(ask, pct, product_ml, total_ml - product_ml, total_ml), "loads_ml": loads},
        details=(f"Diluent: {volume(total_ml - product_ml, ask.system)}.", *steps) if pct < 100 else steps,
        assumed=_assumed(ask, pct, f"{show(pct, '%')} of the finished mix, by volume"),
        cautions=bench_cautions(reference), poured=Poured(pct, recipe.carrier),
    )  # fmt: skip


def _limits(pct: float, label: Limits) -> Limits:
    """Return what the marks of a jug may come to: no stronger than asked, but for the label's weakest asked for."""
    if label.min_pct is None or pct > label.min_pct:
        return Limits(pct, label.min_pct)
    return Limits(label.max_pct or pct, label.min_pct)


def _on_top(ask: MixAsk, recipe: Recipe, reference: Reference) -> Answer:
    pct, diluent_ml = recipe.strength_pct, ask.total_ml
    if pct >= 100:
        raise Refusal(
            "undiluted product added to a diluent",
            limit="that is no longer 100 %",
            do="Leave the diluent out, or ask for less than 100 %.",
        )
    product_ml = product_on_top_ml(diluent_ml, pct)
    poured = jug(product_ml, ask.system, "down")
    if not poured.ml > 0:
        raise Refusal(
            f"{show(pct, '%')} on top of {volume(diluent_ml, ask.system)}",
            limit="too little product to measure",
            do="Make a larger batch.",
        )
    true = share_of_mix_pct(poured.ml, diluent_ml + poured.ml)
    total_ml = diluent_ml + product_ml
    there = _size(diluent_ml, ask.system)
    return Answer(
        question=f"How much product on top of {volume(diluent_ml, ask.system)} of diluent makes {show(pct, '%')}?",
        given=ask.given,
        says=f"{volume(product_ml, ask.system)} of product on top of {there} of {ask.carrier}: {show(pct, '%')}",
        value=_in_system(product_ml, ask.system), unit=_unit(ask.system),
        figures={**_figures(ask, pct, product_ml, diluent_ml, total_ml), "true_pct": true},
        details=(
            f"Add {poured.text} of product to the {there} that is there.{true_words(true, pct)}",
            f"Finished mix: {volume(total_ml, ask.system)}; the container has to hold it.",
        ),
        assumed=_assumed(ask, pct, f"{show(pct, '%')} of the finished mix, by volume, not of the diluent"),
        cautions=bench_cautions(reference), poured=Poured(pct, recipe.carrier),
    )  # fmt: skip


def _assumed(ask: MixAsk, pct: float, strength: str) -> tuple[str, ...]:
    thinned = () if pct >= 100 or "carrier" in ask.given else ("thinned with water; --carrier oil for oil",)
    product = f", of a product of {ask.given['strength']}" if "strength" in ask.given else ""
    concentrate = "a product as sold, not a ready-to-use one: that is never thinned"
    return (f"strength {strength}{product}", concentrate, *thinned)


def _figures(
    ask: MixAsk, pct: float, product_ml: float, diluent_ml: float, total_ml: float
) -> dict[str, float | tuple[float, ...]]:
    return {"strength_pct": pct, "product_ml": product_ml, "diluent_ml": diluent_ml, "total_ml": total_ml}


def _size(ml: float, system: System) -> str:
    return volume(ml, system).partition(" (")[0]


def _unit(system: System) -> str:
    return "fl oz" if system == "us" else "mL"


def _in_system(ml: float, system: System) -> float:
    return convert(ml, "mL", _unit(system))
