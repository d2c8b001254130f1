"""Figure a top-up: what to add to what is left in a tank, so that the whole is as strong as asked and no stronger."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from rootcollar.jobs.figure import Answer, Poured, System, bench_cautions, volume
from rootcollar.jobs.figure_jugs import true_words
from rootcollar.jobs.outcome import Outcome
from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.units import convert, jug, show
from rootcollar.mix import Carrier, product_in_ml, topped_up_pct, topup_product_ml, total_for_product_ml
from rootcollar.reference import Reference

__all__ = ["TopupAsk", "topup"]

_HAIR_ML = 1e-6  # floating point is not a measurement
_CLOSE = 0.1  # ours: a mix weaker than asked by more than a tenth was not measured, it was missed


@dataclass(frozen=True, slots=True)
class TopupAsk:
    """What is left in the tank [mL] and how strong [%]; what it is filled to [mL], and how strong it shall be [%]."""

    given: Mapping[str, str]
    left_ml: float
    left_pct: float
    to_ml: float
    pct: float
    carrier: Carrier = "water"
    system: System = "us"


def topup(ask: TopupAsk, reference: Reference) -> Outcome[Answer]:
    """Return product and diluent to add, by marks that never make it stronger than asked.

    Raises Refusal where the tank holds as much already, where what is left is too strong or too weak for it, and where
    the product is too little to measure.
    """
    mark = jug(ask.to_ml, ask.system, "down")
    if not mark.ml > ask.left_ml:
        raise Refusal(
            f"{volume(ask.left_ml, ask.system)} left, to be {volume(ask.to_ml, ask.system)}",
            limit="the tank holds as much already, or no mark of a jug lies between",
            do="Spray it down first, or fill to a higher mark.",
        )
    want_ml = topup_product_ml(ask.left_ml, ask.left_pct, mark.ml, ask.pct)
    _possible(ask, want_ml, mark.ml - ask.left_ml)
    poured = jug(max(want_ml, 0.0), ask.system, "down")
    true = topped_up_pct(ask.left_ml, ask.left_pct, poured.ml, mark.ml)
    if true < (1 - _CLOSE) * ask.pct:
        raise Refusal(
            f"{volume(want_ml, ask.system)} of product",
            limit="too little to measure in a jug",
            do="Top up later, when there is room for more, or use a syringe.",
        )
    diluent_ml = max(mark.ml - ask.left_ml - poured.ml, 0.0)
    parts = [f"{volume(poured.ml, ask.system)} of product"] if poured.ml else ["no product"]
    parts += [f"{volume(diluent_ml, ask.system)} of {ask.carrier}"] if diluent_ml > 0 else []
    unit = "fl oz" if ask.system == "us" else "mL"
    return Outcome(Answer(
        question=f"What goes on top of {volume(ask.left_ml, ask.system)} to make {mark.text} at {show(ask.pct, '%')}?",
        given=ask.given,
        says=f"Add {' and '.join(parts)}",
        value=convert(poured.ml, "mL", unit), unit=unit,
        figures={
            "product_ml": poured.ml, "product_exact_ml": max(want_ml, 0.0), "diluent_ml": diluent_ml,
            "total_ml": mark.ml, "true_pct": true, "strength_pct": ask.pct,
        },
        details=(_steps(ask, poured.text if poured.ml else "", diluent_ml, mark.text) + true_words(true, ask.pct),),
        assumed=_assumed(ask),
        cautions=(
            "Only the same product on the same product, and only while what is left may still be used: the label says.",
            *bench_cautions(reference),
        ),
        poured=Poured(ask.pct, "none" if ask.pct >= 100 else ask.carrier),
    ))  # fmt: skip


def _possible(ask: TopupAsk, want_ml: float, room_ml: float) -> None:
    """Refuse what no adding can make: what is left holds too much product, or the room takes too little."""
    left = f"{volume(ask.left_ml, ask.system)} at {show(ask.left_pct, '%')}"
    if want_ml < -_HAIR_ML:
        least = total_for_product_ml(product_in_ml(ask.left_ml, ask.left_pct), ask.pct)
        keep = total_for_product_ml(product_in_ml(ask.to_ml, ask.pct), ask.left_pct)
        raise Refusal(
            f"{left} thinned to {show(ask.pct, '%')} in {volume(ask.to_ml, ask.system)}",
            limit="what is left holds more product than that",
            do=f"Fill to {jug(least, ask.system, 'up').text} without any product where the tank holds it, "
            f"or keep only {jug(keep, ask.system, 'down').text} of it in the tank.",
        )
    if want_ml > room_ml + _HAIR_ML:
        room, want = volume(room_ml, ask.system), volume(want_ml, ask.system)
        raise Refusal(
            f"{left} made {show(ask.pct, '%')} in {volume(ask.to_ml, ask.system)}",
            limit=f"there is room for {room} and it would need {want} of product",
            do="Spray it down first, or mix the rest afresh in another jug.",
        )


def _steps(ask: TopupAsk, product: str, diluent_ml: float, mark: str) -> str:
    if not diluent_ml > 0:
        return f"Add product to the {mark} mark, nothing else."
    half = f"Pour in about half of the {ask.carrier}, {jug(diluent_ml / 2, ask.system).text}."
    mixing = "stir or shake." if ask.carrier == "oil" else "stir, not shake."
    last = f"{ask.carrier.capitalize()} to the {mark} mark; {mixing}"
    return f"{half} Add {product} of product. {last}" if product else f"No product. {last}"


def _assumed(ask: TopupAsk) -> tuple[str, ...]:
    return (
        f"strength {show(ask.pct, '%')} of the finished mix, by volume",
        *(
            ()
            if "left-percent" in ask.given
            else (f"what is left is {show(ask.left_pct, '%')} too; --left-percent if not",)
        ),
        *(() if "carrier" in ask.given or ask.pct >= 100 else ("thinned with water; --carrier oil for oil",)),
        "what is left was measured, at the tank's own mark on level ground",
    )
