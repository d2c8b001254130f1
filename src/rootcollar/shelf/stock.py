"""What stands in the shed: lots with what is left in them and their last day of use."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date

from rootcollar.shelf.sheet import Sheet

__all__ = ["ADDITIVES", "Lot", "Stock"]

ADDITIVES = ("basal oil", "surfactant", "oil dye", "water dye")
"""What goes into a mix beside the product; an oil dye does not dissolve in water, nor a water dye in oil."""


@dataclass(frozen=True, slots=True)
class Lot:
    """One container. what: key of a label sheet, or one of `ADDITIVES`. left_ml: what is in it [mL].

    holds_ml: what it held when full [mL]. opened: the day, where it is open. not_after: last day of use. None: not
    written down. note: where it stands, or anything else. label_version: the version or date printed on its label.
    """

    what: str
    left_ml: float
    lot: str = ""
    holds_ml: float | None = None
    opened: date | None = None
    not_after: date | None = None
    note: str = ""
    label_version: str = ""

    def past(self, on: date) -> bool:
        """Return whether its last day of use is over."""
        return self.not_after is not None and on > self.not_after


@dataclass(frozen=True, slots=True)
class Stock:
    """All lots in the shed."""

    lots: tuple[Lot, ...] = ()

    def by_label(self, shelf: Mapping[str, Sheet]) -> Stock:
        """Return the stock with the last day of use that a label prints, where it is earlier or the lot has none."""
        return Stock(tuple(_by_label(one, shelf.get(one.what)) for one in self.lots))

    def at_hand(self, what: str, on: date) -> tuple[Lot, ...]:
        """Return the lots that may be used on a day, in the order to use them: oldest last day first, undated last."""
        good = [one for one in self.lots if one.what == what and one.left_ml > 0 and not one.past(on)]
        return tuple(sorted(good, key=lambda one: (one.not_after or date.max, one.opened or date.max, one.lot)))

    def past(self, on: date) -> tuple[Lot, ...]:
        """Return the lots with something in them that may not be used any more on a day."""
        return tuple(one for one in self.lots if one.left_ml > 0 and one.past(on))


def _by_label(lot: Lot, sheet: Sheet | None) -> Lot:
    printed: date | None = sheet.says("identity.not_for_use_after") if sheet else None
    known = [day for day in (lot.not_after, printed) if day is not None]
    return replace(lot, not_after=min(known, default=None))
