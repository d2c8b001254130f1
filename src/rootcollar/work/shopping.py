"""What to buy: for the first days now, for the rest after the proving batch; what stands in the shed comes first."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from rootcollar.choose import Choice, Setting, minutes, poured_ml, proving_batch
from rootcollar.kernel.doubt import Worlds, best, sure
from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.units import convert
from rootcollar.mix import Container, Recipe, Supply, parts_of, sides, sold, supply
from rootcollar.shelf import Lot, Stock
from rootcollar.work.asked import PacketAsked
from rootcollar.work.batches import batches
from rootcollar.work.cards import product_words
from rootcollar.work.mixes import work_lines

__all__ = ["PROVING_QT", "Item", "Portion", "Shopping", "shopping"]

_KINDS: Mapping[str, str] = {"basal oil": "oil", "surfactant": "surfactant", "oil dye": "dye", "water dye": "dye"}
PROVING_QT = 1  # a proving batch is a quart, as the day sheet says
_BOUGHT_NOW = "what is bought now"


@dataclass(frozen=True, slots=True, eq=False)
class Portion:
    """What one mix takes of a thing. lines: for which it is mixed. pct: of the mix [%].

    mixed_ml: what is mixed first, or the most that is; rest: whether this is what comes after it [mL].
    """

    letter: str
    recipe: Recipe
    lines: tuple[Choice, ...]
    pct: float
    mixed_ml: float
    rest: bool


@dataclass(frozen=True, slots=True, eq=False)
class Met:
    """From what a need is met: lots in the shed, sizes on sale."""

    lots: tuple[Lot, ...]
    sizes: tuple[Container, ...]


@dataclass(frozen=True, slots=True, eq=False)
class Item:
    """One thing to have. what: key of a sheet or formulation, or an additive. letters: the mixes it goes into.

    need_ml: worlds, sure where so much is mixed whatever comes [mL]. supply: meets the best figure. priced: whether
    every size's price is known; else the containers are those that leave least over. usual: whether the sizes are those
    usually sold, because no own ones are written down. parts: what the need is made of; met: from what it is met.
    """

    what: str
    words: str
    letters: tuple[str, ...]
    need_ml: Worlds
    supply: Supply
    priced: bool
    usual: bool
    parts: tuple[Portion, ...]
    met: Met

    @property
    def left_over_ml(self) -> float:
        """What is left in the end of all that was bought, now or with it [mL]."""
        of_now = sum(lot.left_ml for lot in self.supply.left if lot.lot == _BOUGHT_NOW)
        return self.supply.purchase.leftover_ml + of_now


@dataclass(frozen=True, slots=True, eq=False)
class Shopping:
    """The list. first: key of the unit of the first days. minutes: work on it, worlds [min].

    proving: letters of the mixes that still want a batch.
    now: for both. rest: for all other work. past: lots that may not be used any more. looked: whether the stock was
    written down at all.
    """

    first: str
    minutes: Worlds
    proving: tuple[str, ...]
    now: tuple[Item, ...]
    rest: tuple[Item, ...]
    past: tuple[Lot, ...]
    looked: bool


@dataclass(frozen=True, slots=True, eq=False)
class _Mix:
    """One mix: what is mixed of it in the first days [mL], and what is poured of it after that, worlds [mL].

    first, lines: those of the first days, and all of them.
    """

    letter: str
    recipe: Recipe
    proving: bool
    now_ml: float
    rest_ml: Worlds
    first: tuple[Choice, ...]
    lines: tuple[Choice, ...]


def shopping(asked: PacketAsked) -> Shopping:
    """Return what to buy for the cleared lines; lots past their last day on the day of work are never counted."""
    setting = asked.setting
    lines = work_lines(asked) or asked.cleared.lines
    first = next((key for key in asked.units if any(one.stand.unit == key for one in lines)), "")
    begun = [one for one in lines if one.stand.unit == first]
    mixes = tuple(_mixes(asked, begun))
    stock = (asked.stock or Stock()).by_label(setting.shelf)
    now = _items(mixes, stock, setting, rest=False)
    rest = _items(mixes, _after(stock, now, setting), setting, rest=True)
    proving = tuple(one.letter for one in mixes if one.proving)
    return Shopping(first, minutes(begun), proving, now, rest, stock.past(setting.on), asked.stock is not None)


def _mixes(asked: PacketAsked, first: Sequence[Choice]) -> Iterator[_Mix]:
    for letter, recipe in asked.prescription.letters.items():
        lines = [one for one in asked.cleared.lines if one.recipe == recipe]
        if not lines:
            continue
        poured, begun = poured_ml(lines), [one for one in first if one.recipe == recipe]
        now_ml = 0.0
        if begun:
            method = begun[0].way.visit.method
            now_ml = batches(recipe, poured_ml(begun), method, asked.crew, asked.setting).loads.total_ml
        proving = any(proving_batch(one.way.visit.method, recipe, asked.setting) is None for one in lines)
        if proving:
            now_ml = max(now_ml, min(convert(PROVING_QT, "qt", "mL"), best(poured)))
        yield _Mix(letter, recipe, proving, now_ml, (poured - now_ml).clip(0), tuple(begun), tuple(lines))


def _items(mixes: Sequence[_Mix], stock: Stock, setting: Setting, *, rest: bool) -> tuple[Item, ...]:
    """What goes into what is mixed of each, each thing once: products first, as they come, then what goes in beside."""
    needs: dict[str, Worlds] = {}
    users: dict[str, list[Portion]] = {}
    for mix in mixes:
        amount, lines = (mix.rest_ml, mix.lines) if rest else (sure(mix.now_ml), mix.first)
        for what, pct in parts_of(mix.recipe):
            need = amount * (pct / 100)
            if need.any():
                needs[what] = needs.get(what, sure(0.0)) + need
                portion = Portion(mix.letter, mix.recipe, lines, pct, mix.now_ml, rest)
                users.setdefault(what, []).append(portion)
    in_order = sorted(needs, key=lambda what: what in _KINDS)
    return tuple(_item(what, needs[what], users[what], stock, setting) for what in in_order)


def _item(what: str, need_ml: Worlds, users: Sequence[Portion], stock: Stock, setting: Setting) -> Item:
    recipe, usual = _side(users[0].recipe, what), sold(_KINDS.get(what, "liquid"), setting.reference)
    plain = what in _KINDS or (recipe.partner is not None and recipe.partner.fertiliser and recipe.partner.key == what)
    sizes = setting.own.sizes(what) if plain else setting.own.sizes(what, recipe.formulation)
    lots = stock.at_hand(what, setting.on)
    met, among = _met(best(need_ml), lots, sizes or usual, usual)
    sheet = setting.sheet(what)
    words = what if plain else sheet.product if sheet else product_words(recipe, setting)
    priced = all(one.price is not None for one in among)
    letters, of = tuple(one.letter for one in users), Met(tuple(lots), tuple(among))
    return Item(what, words, letters, need_ml, met, priced, among is usual, tuple(users), of)


def _side(recipe: Recipe, what: str) -> Recipe:
    """The mix with the product in the first place that goes by this key."""
    return next((one for one in sides(recipe) if what in {one.product, one.formulation}), recipe)


def _met(
    need_ml: float, lots: Sequence[Lot], sizes: Sequence[Container], usual: Sequence[Container]
) -> tuple[Supply, Sequence[Container]]:
    """The supply, and the sizes it was chosen among: the usual ones where own ones are too many units to weigh."""
    try:
        return supply(need_ml, lots, sizes), sizes
    except Refusal:
        return supply(need_ml, lots, usual), usual


def _after(stock: Stock, now: Sequence[Item], setting: Setting) -> Stock:
    """The stock when the first days are over: what they left in its lots, and in what was bought for them."""
    lots = [lot for lot in stock.lots if all(lot.what != one.what for one in now) or lot.past(setting.on)]
    for one in now:
        lots += one.supply.left
        left_ml = one.supply.purchase.leftover_ml
        lots += [Lot(one.what, left_ml, _BOUGHT_NOW)] if left_ml > 0 else []
    return Stock(tuple(lots))
