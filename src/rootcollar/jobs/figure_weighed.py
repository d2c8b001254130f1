"""Figure a mix of a product that is weighed, not poured: by weight of the diluent, or by a rate an area."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from rootcollar.jobs.figure import Answer, System, bench_cautions, volume
from rootcollar.jobs.figure_mix import diluent_g_per_ml
from rootcollar.jobs.outcome import Outcome
from rootcollar.kernel.units import convert, show
from rootcollar.mix import Carrier, g_from_rate, g_from_weight_pct
from rootcollar.reference import Reference

__all__ = ["WeighedAsk", "weighed"]


@dataclass(frozen=True, slots=True)
class WeighedAsk:
    """What is wanted of a dry product. total_ml: of mix [mL]. weight_pct: by weight of the diluent [%].

    rate: of product [kg/ha], and of mix as the sprayer puts it out [L/ha].
    """

    given: Mapping[str, str]
    total_ml: float
    weight_pct: float | None = None
    rate: tuple[float, float] | None = None
    carrier: Carrier = "water"
    system: System = "us"


def weighed(ask: WeighedAsk, reference: Reference) -> Outcome[Answer]:
    """Return the weight of product in a mix. One of weight_pct and rate is given."""
    if ask.rate is not None:
        grams, how = g_from_rate(ask.total_ml, *ask.rate), _rate_words(*ask.rate)
    else:
        assert ask.weight_pct is not None
        grams = g_from_weight_pct(ask.total_ml, ask.weight_pct, diluent_g_per_ml(ask.carrier, reference))
        how = f"{show(ask.weight_pct, '%')} of the weight of the {ask.carrier}, not of its volume"
    whole = volume(ask.total_ml, ask.system)
    unit = "oz wt" if ask.system == "us" else "g"
    return Outcome(Answer(
        question=f"How much of a product that is weighed goes into {whole}?",
        given=ask.given,
        says=f"{_weight(grams, ask.system)} of product in {whole.partition(' (')[0]}",
        value=convert(grams, "g", unit), unit=unit,
        figures={"product_g": grams, "total_ml": ask.total_ml},
        details=("Weigh it on a scale: a spoon or cup of a dry product is no measure of its weight.",),
        assumed=(f"strength {how}", "a dry product, weighed as sold"),
        cautions=("The dust of a dry product is breathed in: pour low, upwind, with what the label says to wear.",
                  *bench_cautions(reference)),
    ))  # fmt: skip


def _rate_words(rate_kg_per_ha: float, volume_l_per_ha: float) -> str:
    product, mix = convert(rate_kg_per_ha, "kg/ha", "lb/ac"), convert(volume_l_per_ha, "L/ha", "gal/ac")
    return f"{show(product, 'lb/ac')} of product in {show(mix, 'gal/ac')} of mix, as the sprayer was measured"


def _weight(grams: float, system: System) -> str:
    """Return a weight in both systems, the asked one first."""
    ounces = convert(grams, "g", "oz wt")
    us = show(ounces, "oz wt") if ounces < convert(1, "lb", "oz wt") else show(convert(grams, "g", "lb"), "lb")
    metric = show(grams, "g")
    return f"{us} ({metric})" if system == "us" else f"{metric} ({us})"
