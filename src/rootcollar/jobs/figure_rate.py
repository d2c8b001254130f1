"""Figure a rate: how much of the product in hand brings the same acid to an area as a printed rate."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from rootcollar.jobs.figure import Answer, bench_cautions
from rootcollar.jobs.outcome import Outcome
from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.rounding import to_step
from rootcollar.kernel.units import convert, show
from rootcollar.mix import product_rate_l_per_ha, same_acid_rate
from rootcollar.reference import Reference

__all__ = ["RateAsk", "rate"]

_TOP_RATE = "The label of the product in hand sets its own top rate: keep to the lower."


@dataclass(frozen=True, slots=True)
class RateAsk:
    """What rate is wanted. have_g_per_l: acid in the product in hand [g/L]. of: ae or ai, the same throughout.

    rate: the printed rate in the unit it was given in, a volume per area, a percent of the mix, or acid per area;
    then named_g_per_l, the acid in the product it is printed for, is None: acid is acid.
    """

    given: Mapping[str, str]
    have_g_per_l: float
    named_g_per_l: float | None
    rate: float
    unit: str
    of: str


def rate(ask: RateAsk, reference: Reference) -> Outcome[Answer]:
    """Return the rate of the product in hand. Raises Refusal where even undiluted product would be too weak."""
    of, have = ask.of, show(convert(ask.have_g_per_l, "g/L", "lb/gal"), f"lb {ask.of}/gal")
    if ask.named_g_per_l is None:
        found = convert(
            product_rate_l_per_ha(convert(ask.rate, ask.unit, "kg/ha"), ask.have_g_per_l), "L/ha", "fl oz/ac"
        )
        unit, printed = "fl oz/ac", show(ask.rate, ask.unit)
    else:
        found, unit = same_acid_rate(ask.rate, ask.named_g_per_l, ask.have_g_per_l), ask.unit
        named = show(convert(ask.named_g_per_l, "g/L", "lb/gal"), f"lb {of}/gal")
        printed = f"{show(ask.rate, unit)} of a product of {named}"
    if unit.startswith("%") and found > 100:
        raise Refusal(
            f"{printed} from a product of {have}",
            limit="even undiluted it holds too little acid",
            do="Take a stronger product.",
        )
    return Outcome(Answer(
        question=f"How much of a product of {have} brings the same {of} as {printed}?",
        given=ask.given,
        says=f"{_both(found, unit)} of the product in hand ({have}) brings the same {of} as {printed}",
        value=found, unit=unit,
        figures={"have_g_per_l": ask.have_g_per_l, "named_g_per_l": ask.named_g_per_l or ask.have_g_per_l},
        assumed=(
            f"strength of the product in hand {have}; read it on the jug",
            "the same active ingredient in both, and the same form where the label tells forms apart",
        ),
        cautions=(_TOP_RATE, *bench_cautions(reference)),
    ))  # fmt: skip


def _both(found: float, unit: str) -> str:
    """Return a rate in its unit and in the other system's."""
    if unit.startswith("%"):
        return _down(found, unit)
    other = "fl oz/ac" if unit.endswith(("/ha", "m2")) else "L/ha"
    return f"{_down(found, unit)} ({_down(convert(found, unit, other), other)})"


def _down(value: float, unit: str) -> str:
    """Return three figures of a value, cut and not rounded up, because a rate may stand at a label's top."""
    return show(to_step(value, 10.0 ** (math.floor(math.log10(value)) - 2), "down"), unit)
