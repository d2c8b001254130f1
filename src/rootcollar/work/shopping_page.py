"""The shopping page: what to buy now, what after the proving batch, what is past its date, what each line costs."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date
from functools import partial

from rootcollar.choose import proving_batch
from rootcollar.kernel.doubt import best
from rootcollar.kernel.sources import Cited
from rootcollar.mix import Purchase, Recipe
from rootcollar.reference import named, numbers
from rootcollar.shelf import Lot
from rootcollar.work import text
from rootcollar.work.again import minutes_again
from rootcollar.work.asked import PacketAsked
from rootcollar.work.costs import costs_part
from rootcollar.work.mixes import work_lines
from rootcollar.work.packet import Page, Part
from rootcollar.work.shopping import Item, Shopping, shopping
from rootcollar.work.shopping_again import bought_again, left_again, need_again, price_again, taken_again
from rootcollar.work.worked import Worked, number, strung

__all__ = ["containers", "shopping_page"]

_HEADS = ("What", "Mix", "Need", "At hand", "To buy", "Left over", "Price")


def shopping_page(asked: PacketAsked) -> Page | None:
    """Return the page; None where no work is cleared."""
    if not asked.cleared.lines:
        return None
    found = shopping(asked)
    parts = (
        _now(found, asked),
        _rest(found, asked),
        Part("Past its date: not counted", "text", tuple((_past(one, asked),) for one in found.past), note=_DISPOSE),
        Part("What this rests on", "text", tuple((one,) for one in _rests_on(found, asked))),
        costs_part(asked),
    )
    below = "What stands in the shed is used first, the oldest last day first. Nothing is counted beyond its date."
    if not found.now:
        below = "No mix is in the work that is cleared: nothing to buy for it."
    return Page("Shopping", below, tuple(one for one in parts if one.rows))


_DISPOSE = "Ask your state, your county or the maker how to get rid of it. Do not use it up on the work."


def _now(found: Shopping, asked: PacketAsked) -> Part:
    unit = asked.setting.ground.units[found.first].name
    lines = [one for one in work_lines(asked) or asked.cleared.lines if one.stand.unit == found.first]
    hours = number(found.minutes, text.hours, "min", lambda: minutes_again(lines, asked.setting))
    end = ")"
    if found.proving:
        end += f"; and of mix {', '.join(found.proving)} at least a proving batch, a quart on 25 measured stems"
    note = Worked(f"All loads for {unit}, the first unit in the plan's order (", hours, f"{end}.")
    return _table("Now: for the first days", found.now, note, found, asked)


def _rest(found: Shopping, asked: PacketAsked) -> Part:
    if not found.proving:
        title, note = "After the first days: the rest", "By your own proving batches. 10–90 % in brackets."
    else:
        title = "After the proving batch: the rest"
        note = (
            "Do not buy it yet. Write what the proving batches gave into own.toml and make the packet again: then "
            "these are your own figures. 10–90 % in brackets; containers are for the best figure."
        )
    return _table(title, found.rest, note, found, asked)


def _table(title: str, items: Sequence[Item], note: str, found: Shopping, asked: PacketAsked) -> Part:
    """The table of some items; without prices where none is known."""
    priced = any(one.supply.purchase.cost for one in (*found.now, *found.rest))
    rows = [(*_row(one, asked), *([_price(one, asked)] if priced else [])) for one in items]
    return Part(title, "table", tuple(rows), _HEADS if priced else _HEADS[:-1], note)


def _row(one: Item, asked: PacketAsked) -> tuple[str, ...]:
    band, purchase, taken = text.span(one.need_ml), one.supply.purchase, one.supply.taken
    need = number(one.need_ml, text.best_gallons, "mL", lambda: need_again(one, asked))
    lots = "; ".join(_taken(lot, part_ml) for lot, part_ml in taken)
    taken_ml, words = sum(part_ml for _, part_ml in taken), containers(purchase)
    return (
        one.words,
        ", ".join(one.letters),
        Worked(need, f" ({band})" if band else ""),
        number(taken_ml, lambda _: lots, "mL", lambda: taken_again(one, asked)) if taken else "none",
        number(purchase.bought_ml, lambda _: words, "mL", lambda: bought_again(one, asked)),
        number(one.left_over_ml, text.gallons, "mL", lambda: left_again(one, asked)) if one.left_over_ml > 0 else "–",
    )


def containers(purchase: Purchase) -> str:
    """Return containers in words: "1 × 2.5 gal and 2 × 1 qt", or nothing."""
    return " and ".join(f"{count} × {name}" for name, count in purchase.counts) or "nothing"


def _taken(lot: Lot, part_ml: float) -> str:
    words = text.gallons(part_ml) + (f" of {lot.lot}" if lot.lot else "")
    return words + (f", by {lot.not_after.isoformat()}" if lot.not_after else "")


def _price(one: Item, asked: PacketAsked) -> str:
    cost = one.supply.purchase.cost
    if not one.supply.purchase.counts:
        return "–"
    return "not known" if cost is None else number(cost, _cents, "money", lambda: price_again(one, asked))


def _cents(cost: float) -> str:
    return f"${cost:,.2f}"


def _past(lot: Lot, asked: PacketAsked) -> str:
    last = lot.not_after.isoformat() if lot.not_after else ""
    return f"{_name(lot, asked)}: {text.gallons(lot.left_ml)} left, last day of use {last}"


def _name(lot: Lot, asked: PacketAsked) -> str:
    sheet = asked.setting.sheet(lot.what)
    return (sheet.product if sheet else lot.what) + (f", lot {lot.lot}" if lot.lot else "")


def _rests_on(found: Shopping, asked: PacketAsked) -> Iterator[str]:
    """What was assumed, and what to look at before paying."""
    if not found.looked:
        yield "Nothing stands in stock.csv, so nothing is counted as at hand: look into the shed first."
    items = (*found.now, *found.rest)
    bought = dict.fromkeys(one.words for one in items if one.supply.purchase.counts)
    unknown = dict.fromkeys(one.words for one in items if one.supply.purchase.counts and not one.priced)
    if unknown:
        which = "No price is known" if unknown == bought else f"Not every price is known of {'; '.join(unknown)}"
        yield f"{which}: the containers are those that leave least over. Write yours into own.toml."
    if any(one.usual and one.supply.purchase.counts for one in items):
        yield "Sizes are those usually sold (EXT-GEN, memory), until yours stand in own.toml: ask in the shop."
    spare = [letter for letter, recipe in asked.prescription.letters.items() if _only_spare(recipe, asked)]
    if spare:
        yield f"Mixes for a fallback only ({', '.join(spare)}) are not in it: a batch at a time, when one is needed."
    yield from _too_much(found, asked)
    yield from _old(items, asked)
    yield from _unused(asked)


def _only_spare(recipe: Recipe, asked: PacketAsked) -> bool:
    """Whether a mix is poured only if the first way cannot be done."""
    lines = asked.cleared.lines
    backs = {one.fallback.option.way.visit.recipe for one in lines if one.fallback}
    return recipe in backs and all(one.recipe != recipe for one in lines)


def _too_much(found: Shopping, asked: PacketAsked) -> Iterator[str]:
    """What will stand in the shed for longer than this plan."""
    last = {one.what: one for one in (*found.now, *found.rest)}
    need = {what: sum(best(one.need_ml) for one in (*found.now, *found.rest) if one.what == what) for what in last}
    over = {what: one.left_over_ml for what, one in last.items()}
    much = [what for what in last if over[what] > need[what]]
    if not much:
        return
    words = strung(
        "; ",
        (
            Worked(
                f"{last[what].words} ",
                number(over[what], text.gallons, "mL", partial(left_again, last[what], asked)),
                _printed(what, asked),
            )
            for what in much
        ),
    )
    years = _shelf_life(asked)
    yield Worked(
        "At the end more is left over than this whole plan takes: ",
        words,
        f". A usual guide is about {years.value:g} years after opening ({years.source}, {years.mark}); "
        "the label decides. Buy the least, or share a container.",
    )


def _printed(what: str, asked: PacketAsked) -> str:
    sheet = asked.setting.sheet(what)
    day: date | None = sheet.says("identity.not_for_use_after") if sheet else None
    return f" (its label: not after {day.isoformat()})" if day else ""


def _old(items: Sequence[Item], asked: PacketAsked) -> Iterator[str]:
    """Lots without a date that have long been open: a note, which decides nothing."""
    years, on = _shelf_life(asked), asked.setting.on
    for lot in dict.fromkeys(lot for one in items for lot, _ in one.supply.taken):
        day = lot.opened
        if day and not lot.not_after and (day.year + years.value, day.month, day.day) < (on.year, on.month, on.day):
            yield (
                f"{_name(lot, asked)} has no date and was opened {day.isoformat()}: look at it before you count on it. "
                f"A usual guide is about {years.value:g} years ({years.source}, {years.mark})."
            )


def _unused(asked: PacketAsked) -> Iterator[str]:
    """Proving batches that no line rests on, so that nobody believes they count."""
    mixed = [(one.way.visit.method, one.recipe) for one in asked.cleared.lines]
    used = {proving_batch(method, recipe, asked.setting) for method, recipe in mixed if recipe}
    for batch in asked.setting.own.proving:
        if batch not in used:
            where = f"{batch.method.replace('_', ' ')} at {batch.strength_pct:g} % in {batch.carrier}"
            yield f"No line rests on the {batch.words} ({where}): another mix or way, or there is a newer one."


def _shelf_life(asked: PacketAsked) -> Cited[float]:
    return numbers(named(asked.setting.reference.mixing["storage"], "shelf_life_years"))[0]
