"""Figure a weight: what a load weighs with the sprayer, and the largest load under a limit."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from rootcollar.jobs.figure import Answer, System, volume
from rootcollar.jobs.figure_mix import diluent_density, diluent_g_per_ml
from rootcollar.jobs.figure_words import weight
from rootcollar.jobs.outcome import Outcome
from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.formula import use
from rootcollar.kernel.sources import Cited
from rootcollar.kernel.units import convert, jug, show
from rootcollar.mix import Carrier, load_kg, mix_density_kg_per_l, tank_by_weight_ml
from rootcollar.reference import Reference, find_formulation, spans

__all__ = ["CarryAsk", "Heavy", "Held", "carry", "held", "mix_kg_per_l"]

_NOT_WEIGHED = "reckoned, not weighed"


@dataclass(frozen=True, slots=True)
class Heavy:
    """What makes a mix heavy. pct: product in it [%]. product: a formulation; g_per_ml: its density, where told."""

    pct: float
    carrier: Carrier
    product: str | None = None
    g_per_ml: float | None = None


@dataclass(frozen=True, slots=True)
class Held:
    """The most mix under a limit of weight [mL]; the empty sprayer [kg] and the density counted; what was assumed."""

    most_ml: float
    empty_kg: float
    density_kg_per_l: float
    assumed: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class CarryAsk:
    """Which load. volume_ml or limit_kg may be None, not both. empty_kg: the sprayer, None where it was not told."""

    given: Mapping[str, str]
    heavy: Heavy
    volume_ml: float | None = None
    limit_kg: float | None = None
    empty_kg: float | None = None
    system: System = "us"


def carry(ask: CarryAsk, reference: Reference) -> Outcome[Answer]:
    """Return what a load weighs, or the largest volume under a limit. Raises Refusal for an empty sprayer over it."""
    if ask.limit_kg is None:
        most, counted = None, ask.empty_kg or 0.0
        density, assumed = mix_kg_per_l(ask.heavy, reference)
    else:
        most = held(ask.heavy, (ask.limit_kg, ask.empty_kg), reference, ask.system)
        density, assumed, counted = most.density_kg_per_l, most.assumed, most.empty_kg
    whole = None if ask.volume_ml is None else load_kg(ask.volume_ml / 1000, density, counted)
    value, unit = _value(ask.system, whole, most)
    figures = {"density_kg_per_l": density, "empty_kg": counted}
    figures |= {} if whole is None else {"load_kg": whole}
    figures |= {} if most is None else {"most_ml": most.most_ml}
    heavy = weight(density * convert(1, "gal" if ask.system == "us" else "L", "L"), ask.system)
    return Outcome(Answer(
        question="What does a load weigh, and how much can be carried?",
        given=ask.given,
        says=_says(ask, whole, most),
        value=value, unit=unit,
        figures=figures,
        details=(
            f"A {'gallon' if ask.system == 'us' else 'litre'} of the mix weighs {heavy}.",
            *(_against(ask, whole, most) if whole is not None and most is not None else ()),
            *(() if counted else (_empty_words(reference),)),
        ),
        assumed=assumed,
        cautions=(
            f"{reference.practice['backpack'].words.rstrip('.')} (practice).", "Weigh your own sprayer, full, once.",
        ),
        note=_NOT_WEIGHED,
    ))  # fmt: skip


def held(heavy: Heavy, limit_kg: tuple[float, float | None], reference: Reference, system: System) -> Held:
    """Return the most mix under a limit, the sprayer counted; the heaviest usual one where it was not told.

    limit_kg: the most of sprayer and mix, and the empty sprayer [kg]. Raises Refusal where nothing is left for the mix.
    """
    density, assumed = mix_kg_per_l(heavy, reference)
    limit, empty = limit_kg
    if empty is None:
        row = _backpack(reference)
        empty = convert(use(row), "lb", "kg")
        said = f"an empty sprayer of {weight(empty, system)}, the heavy end for a {row.holds_for} ({row.mark})"
        assumed = (*assumed, f"{said}; --empty for your own")
    most = tank_by_weight_ml(limit, empty, density)
    if not jug(most, system, "down").ml > 0:
        raise Refusal(
            f"a load of at most {weight(limit, system)}",
            limit=f"the empty sprayer weighs {weight(empty, system)} already",
            do="Take a lighter sprayer or a bottle, or a higher limit.",
        )
    return Held(most, empty, density, assumed)


def mix_kg_per_l(heavy: Heavy, reference: Reference) -> tuple[float, tuple[str, ...]]:
    """Return the density of a mix [kg/L] and what was assumed for it: of an unnamed product, the heaviest kept."""
    diluent = diluent_g_per_ml(heavy.carrier, reference)
    known = diluent_density(heavy.carrier, reference)
    name = "water" if heavy.carrier == "water" else "mineral basal oil"
    thinned = f"{name} of {show(known.value, known.unit)} ({known.mark})"
    if not heavy.pct:
        return diluent, (f"{thinned} and nothing else; --percent for the product in it",)
    if heavy.g_per_ml is not None:
        return mix_density_kg_per_l(heavy.pct, heavy.g_per_ml, diluent), (thinned,)
    product, words = _product(heavy.product, reference)
    said = f"a product of {show(product.value, 'g/mL')} ({product.mark}): {words}; --density for your own"
    return mix_density_kg_per_l(heavy.pct, use(product), diluent), (said, thinned)


def _product(name: str | None, reference: Reference) -> tuple[Cited[float], str]:
    """Return the density of a formulation and its words; the heaviest of all where none was named."""
    if name is None:
        kept = [one.density_g_per_ml for one in reference.formulations.values() if one.density_g_per_ml is not None]
        return max(kept, key=lambda one: one.value), "the heaviest kept, because none was named"
    named = find_formulation(name, reference)
    if named.density_g_per_ml is None:
        raise Refusal(
            f"the weight of {named.words}",
            limit="no density is kept for it",
            do="Give --density, from the label or its safety sheet.",
        )
    return named.density_g_per_ml, named.words


def _backpack(reference: Reference) -> Cited[float]:
    """Return the heavy end of usual empty backpacks [lb]: nobody is asked to carry more than they said."""
    row = spans([row.figure for row in reference.mixing["weight"] if row.name == "empty_backpack_lb"])[0]
    assert row.value.high is not None
    return Cited(row.value.high, row.unit, row.source, row.mark, row.holds_for.partition(";")[0], row.locator)


def _value(system: System, whole: float | None, most: Held | None) -> tuple[float, str]:
    if whole is not None:
        unit = "lb" if system == "us" else "kg"
        return convert(whole, "kg", unit), unit
    assert most is not None
    unit = "gal" if system == "us" else "L"
    return convert(most.most_ml, "mL", unit), unit


def _says(ask: CarryAsk, whole: float | None, most: Held | None) -> str:
    if whole is not None and ask.volume_ml is not None:
        sprayer = "with the sprayer" if most or ask.empty_kg else "without the sprayer"
        return f"A load of {volume(ask.volume_ml, ask.system)} weighs {weight(whole, ask.system)} {sprayer}"
    assert most is not None
    limit = weight(ask.limit_kg or 0.0, ask.system)
    return f"Fill at most {jug(most.most_ml, ask.system, 'down').text}: sprayer and mix then keep to {limit}"


def _against(ask: CarryAsk, whole: float, most: Held) -> tuple[str, ...]:
    assert ask.limit_kg is not None
    limit, fill = weight(ask.limit_kg, ask.system), jug(most.most_ml, ask.system, "down").text
    if whole > ask.limit_kg:
        return (f"That is {weight(whole - ask.limit_kg, ask.system)} over {limit}: fill at most {fill}.",)
    return (f"That keeps to {limit}; the most would be {fill}.",)


def _empty_words(reference: Reference) -> str:
    row = spans([row.figure for row in reference.mixing["weight"] if row.name == "empty_backpack_lb"])[0]
    ends = f"{row.value.low:g} to {row.value.high:g} lb"
    return (
        f"The sprayer comes on top: {ends} for a {row.holds_for.partition(';')[0]} ({row.mark}); --empty for your own."
    )
