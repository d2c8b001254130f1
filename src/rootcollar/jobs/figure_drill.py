"""Figure a dose in drilled holes: how many holes, what they hold, and no more in one than it can hold."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from rootcollar.dose import hole_ml, holes, in_cuts_ml
from rootcollar.jobs.figure import Answer, Poured, System, bench_cautions, volume
from rootcollar.jobs.outcome import Outcome
from rootcollar.kernel.doubt import best, sure
from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.formula import use
from rootcollar.kernel.units import convert, show
from rootcollar.reference import Figure, MethodFacts, Reference, middle, numbers, spans

__all__ = ["DrillAsk", "drill"]


@dataclass(frozen=True, slots=True)
class DrillAsk:
    """Which stems, drilled how. hole_cm: width and depth of a hole [cm]. each_ml: the label's mix in one hole [mL].

    apart_cm: between holes, round the stem; None: as a source has it. strength_pct: product in the mix [%].
    """

    given: Mapping[str, str]
    diameter_cm: float
    hole_cm: tuple[float, float]
    each_ml: float
    count: int = 1
    apart_cm: float | None = None
    strength_pct: float = 100.0
    system: System = "us"


def drill(ask: DrillAsk, reference: Reference) -> Outcome[Answer]:
    """Return the mix for all stems, the holes on one, and what a hole holds.

    Raises Refusal for stems too thin to drill and for a hole that cannot hold its dose.
    """
    facts = reference.methods["injection"]
    limit = next(one for one in spans(_general(facts, "stem_limit_cm")) if "drill" in one.holds_for)
    least_cm = use(middle(limit)) if limit.value.low is not None else 0.0
    thick = show(convert(ask.diameter_cm, "cm", "in"), "in")
    if ask.diameter_cm < least_cm:
        least = show(convert(least_cm, "cm", "in"), "in", 2)
        limit_words = f"drilled stems are thicker than {least} ({limit.source}, {limit.mark})"
        raise Refusal(f"drill and fill on a stem of {thick}", limit=limit_words, do=f"Next: {facts.beyond_size}.")
    room_ml = hole_ml(*ask.hole_cm)
    if ask.each_ml > room_ml:
        raise Refusal(
            f"{show(ask.each_ml, 'mL')} in a hole {_hole(ask)}",
            limit=f"it holds {show(room_ml, 'mL')} full to the brim, so the rest runs down the bark",
            do="Drill deeper or wider, or split the dose over more holes if the label lets you.",
        )
    apart_cm = ask.apart_cm or use(numbers(_general(facts, "hole_spacing_cm"))[0])
    on_one = holes(ask.diameter_cm, apart_cm)
    each_stem_ml = best(in_cuts_ml(on_one, sure(ask.each_ml)))
    total_ml = each_stem_ml * ask.count
    stems = f"{show(ask.count, 'stem')} of {thick}"
    unit = "fl oz" if ask.system == "us" else "mL"
    carrier = "none" if ask.strength_pct >= 100 else "water"
    return Outcome(Answer(
        question=f"How much mix do {stems} take in drilled holes?",
        given=ask.given,
        says=f"{volume(total_ml, ask.system)} of finished mix for {stems}: {show(on_one, 'hole')} a stem, "
        f"{show(ask.each_ml, 'mL')} in each",
        value=convert(total_ml, "mL", unit), unit=unit,
        figures={"holes": on_one, "hole_ml": room_ml, "per_stem_ml": each_stem_ml, "total_ml": total_ml},
        details=(
            f"A hole {_hole(ask)} holds {show(room_ml, 'mL')} to the brim; {show(ask.each_ml, 'mL')} fits.",
            "Slant the holes down into the sapwood, fill each at once, and do not ring the stem with them.",
        ),
        assumed=(f"strength {show(ask.strength_pct, '%')}, {'undiluted' if carrier == 'none' else 'in water'}",
                 f"holes {show(apart_cm, 'cm')} apart round the stem, measured where it is drilled",
                 "the dose in one hole as your label gives it"),
        cautions=bench_cautions(reference),
        poured=Poured(ask.strength_pct, carrier, "injection", ask.each_ml, "cut", (ask.diameter_cm, ask.diameter_cm)),
    ))  # fmt: skip


def _general(facts: MethodFacts, name: str) -> list[Figure]:
    """Return the figures of a name that are bound to no plant and no ingredient."""
    return [one.figure for one in facts.figures if one.name == name and not one.species and not one.ingredients]


def _hole(ask: DrillAsk) -> str:
    wide, deep = (show(convert(one, "cm", "in"), "in") for one in ask.hole_cm)
    return f"{wide} wide and {deep} deep"
