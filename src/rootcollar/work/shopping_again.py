"""The numbers of the shopping list worked out again: what each mix takes, what the shed gives, what is bought."""

from __future__ import annotations

from rootcollar.kernel.doubt import Worlds, best
from rootcollar.kernel.formula import add_up, note
from rootcollar.kernel.units import convert
from rootcollar.mix import left_over_ml, product_in_ml, still_needed_ml
from rootcollar.shelf import Lot
from rootcollar.work.again import poured_again
from rootcollar.work.asked import PacketAsked
from rootcollar.work.batches import loads_again
from rootcollar.work.shopping import PROVING_QT, Item, Portion

__all__ = ["bought_again", "left_again", "need_again", "price_again", "taken_again"]


def need_again(one: Item, asked: PacketAsked) -> Worlds:
    """Return what is needed of a thing [mL]: its percent of each mix, all mixes together."""
    add_up([_portion(part, asked) for part in one.parts], "mL", "all mixes")
    return one.need_ml


def taken_again(one: Item, asked: PacketAsked) -> float:
    """Return what is taken of the lots in the shed [mL], as the need allows."""
    return _taken(one, asked)[0]


def bought_again(one: Item, asked: PacketAsked) -> float:
    """Return what is bought [mL]: the containers that cover what the shed does not."""
    return _bought(one, asked)[0]


def left_again(one: Item, asked: PacketAsked) -> float:
    """Return what is left over in the end of all that was bought [mL]."""
    before = one.left_over_ml - one.supply.purchase.leftover_ml
    parts = [left_over_ml(*_bought(one, asked))]
    parts += [note("left of what was bought now", "see the list above", before, "mL")] if before > 0 else []
    return add_up(parts, "mL", "left over in all")


def price_again(one: Item, asked: PacketAsked) -> float:
    """Return what the containers cost [money], each at its own price."""
    bought_again(one, asked)
    prices = {size.name: size.price or 0.0 for size in one.met.sizes}
    says = " + ".join(f"{count} * {prices[name]:.6g}" for name, count in one.supply.purchase.counts)
    return note("price", f"own.toml, {says}", one.supply.purchase.cost or 0.0, "money")


def _taken(one: Item, asked: PacketAsked) -> tuple[float, float]:
    """What is taken of the shed's lots, and what is still needed then [mL]."""
    left_ml, taken = best(need_again(one, asked)), []
    for lot in one.met.lots:
        part_ml = min(lot.left_ml, left_ml)
        if part_ml > 0:
            says = f"the lesser of {lot.left_ml:.6g} in it and {left_ml:.6g} needed"
            taken.append(note(_name(lot), says, part_ml, "mL"))
            left_ml = still_needed_ml(left_ml, part_ml)
    return add_up(taken, "mL", "of all lots") if taken else 0.0, left_ml


def _bought(one: Item, asked: PacketAsked) -> tuple[float, float]:
    """What the containers hold, and what is needed of it [mL]; of the search only what it found is told."""
    _, need_ml = _taken(one, asked)
    purchase, volumes = one.supply.purchase, {size.name: size.volume_ml for size in one.met.sizes}
    says = " + ".join(f"{count} * {volumes[name]:.6g}" for name, count in purchase.counts)
    how = "at the least price" if one.priced else "that leave least over"
    return note(f"containers {how}", says or "nothing", purchase.bought_ml, "mL", "ours"), need_ml


def _portion(part: Portion, asked: PacketAsked) -> float:
    """What one mix takes: of its loads, of a proving batch, or of what is still to be poured after them."""
    setting = asked.setting
    if not part.lines:
        mixed_ml = 0.0
    elif part.rest:
        mixed_ml = still_needed_ml(best(poured_again(part.lines, setting)), part.mixed_ml)
    else:
        method = part.lines[0].way.visit.method
        poured = poured_again(part.lines, setting)
        mixed_ml = loads_again(part.recipe, poured, method, asked.crew, setting).total_ml
    if not part.rest and part.mixed_ml > mixed_ml:
        quart = f"at least a batch of {convert(PROVING_QT, 'qt', 'mL'):.6g}, or all that is poured"
        mixed_ml = note(f"mix {part.letter}, to prove it", quart, part.mixed_ml, "mL", "ours")
    return product_in_ml(mixed_ml, part.pct)


def _name(lot: Lot) -> str:
    return f"stock.csv, lot {lot.lot}" if lot.lot else "stock.csv"
