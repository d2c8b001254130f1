"""The shopping list as plain values."""

from __future__ import annotations

from typing import Any

from rootcollar.kernel.doubt import band
from rootcollar.shelf import Lot
from rootcollar.work import Shopping
from rootcollar.work.shopping import Item

__all__ = ["as_json"]


def as_json(found: Shopping) -> dict[str, Any]:
    """Return the list: what for the first days, what after the proving batch, what is past its date."""
    return {
        "first_unit": found.first,
        "proving_batches": list(found.proving),
        "stock_known": found.looked,
        "now": [_item(one) for one in found.now],
        "rest": [_item(one) for one in found.rest],
        "past_its_date": [_lot(one) | {"left_ml": one.left_ml} for one in found.past],
    }


def _item(one: Item) -> dict[str, Any]:
    need, bought = band(one.need_ml), one.supply.purchase
    return {
        "what": one.what,
        "words": one.words,
        "mixes": list(one.letters),
        "need_ml": {"best": need.best, "low": need.low, "high": need.high},
        "at_hand": [_lot(lot) | {"taken_ml": part_ml} for lot, part_ml in one.supply.taken],
        "to_buy": [{"size": name, "count": count} for name, count in bought.counts],
        "left_over_ml": one.left_over_ml,
        "cost": bought.cost if bought.counts else None,
    }


def _lot(one: Lot) -> dict[str, Any]:
    return {"what": one.what, "lot": one.lot, "not_after": one.not_after.isoformat() if one.not_after else None}
