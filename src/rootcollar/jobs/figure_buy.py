"""Figure what to buy: the containers that cover a need at the least cost, or with least left over."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from rootcollar.jobs.figure import Answer, System, volume
from rootcollar.jobs.outcome import Outcome
from rootcollar.kernel.units import convert
from rootcollar.mix import Container, Purchase, cheapest, sold, still_needed_ml
from rootcollar.reference import Reference, named, numbers

__all__ = ["BuyAsk", "buy"]

_LIQUID = "liquid"
_NOTE = "sizes and prices change: ask in the shop"


@dataclass(frozen=True, slots=True)
class BuyAsk:
    """What is wanted. need_ml: in all [mL]. have_ml: at hand and in date [mL].

    sizes: what the shop has; empty, where it was not told. kind: whose usual sizes are taken then; "": not told either.
    """

    given: Mapping[str, str]
    need_ml: float
    have_ml: float = 0.0
    sizes: tuple[Container, ...] = ()
    kind: str = ""
    system: System = "us"


def buy(ask: BuyAsk, reference: Reference) -> Outcome[Answer]:
    """Return what to buy, exactly. Raises Refusal as `cheapest`."""
    sizes = ask.sizes or sold(ask.kind or _LIQUID, reference)
    rest_ml = still_needed_ml(ask.need_ml, ask.have_ml)
    found = cheapest(rest_ml, sizes)
    unit = "gal" if ask.system == "us" else "L"
    return Outcome(Answer(
        question="Which containers cover the need?",
        given=ask.given,
        says=_says(ask, rest_ml, found),
        value=convert(found.bought_ml, "mL", unit), unit=unit,
        figures={"still_needed_ml": rest_ml, "bought_ml": found.bought_ml, "left_over_ml": found.leftover_ml}
        | ({} if found.cost is None else {"cost": found.cost}),
        details=tuple(_details(ask, rest_ml, found, sizes)),
        assumed=tuple(_assumed(ask, sizes)),
        cautions=tuple(_cautions(ask, found, reference)),
        note=_NOTE,
    ))  # fmt: skip


def _says(ask: BuyAsk, rest_ml: float, found: Purchase) -> str:
    if not found.counts:
        return f"Nothing to buy: {volume(ask.have_ml, ask.system)} at hand cover {volume(ask.need_ml, ask.system)}"
    left = "nothing" if found.leftover_ml < 1 else volume(found.leftover_ml, ask.system)
    cost = "" if found.cost is None else f", for ${found.cost:,.2f}"
    still = f"{volume(rest_ml, ask.system)} are still needed: buy" if ask.have_ml else "Buy"
    return f"{still} {_counts(found)}{cost}; {left} left over"


def _counts(found: Purchase) -> str:
    return " and ".join(f"{count} × {name}" for name, count in found.counts)


def _details(ask: BuyAsk, rest_ml: float, found: Purchase, sizes: Sequence[Container]) -> Iterator[str]:
    """The other end of the bargain: what leaves least over, where that is dearer."""
    if found.cost is None:
        untold = [one.name for one in sizes if one.price is None]
        whose = "No price is told" if len(untold) == len(sizes) else f"No price is told for {', '.join(untold)}"
        yield f"{whose}, so these are the containers that leave least over; then the fewest."
        return
    yield "At these prices nothing that covers the need costs less."
    least = cheapest(rest_ml, [replace(one, price=None) for one in sizes])
    if least.leftover_ml < found.leftover_ml - 1:
        prices = {one.name: one.price or 0.0 for one in sizes}
        cost = sum(count * prices[name] for name, count in least.counts)
        left = "nothing" if least.leftover_ml < 1 else volume(least.leftover_ml, ask.system)
        yield f"Least left over: {_counts(least)} for ${cost:,.2f}, {left} left over."


def _assumed(ask: BuyAsk, sizes: Sequence[Container]) -> Iterator[str]:
    if not ask.sizes:
        kind = ask.kind or _LIQUID
        listed = ", ".join(one.name for one in sizes)
        what = "a liquid herbicide" if kind == _LIQUID else kind
        yield f"sizes usually sold of {what}, from memory: {listed}"
    if ask.have_ml:
        yield "what is at hand is in date and may still be used"


def _cautions(ask: BuyAsk, found: Purchase, reference: Reference) -> Iterator[str]:
    if found.leftover_ml > ask.need_ml:
        years = numbers(named(reference.mixing["storage"], "shelf_life_years"))[0]
        yield (
            f"More is left over than is needed in all. A usual guide is about {years.value:g} years after opening "
            f"({years.source}, {years.mark}): can it be used up by then, or shared?"
        )
    yield "Look at the last day of use on the container before you pay, and write the day on it when you open it."
