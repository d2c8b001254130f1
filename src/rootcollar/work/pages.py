"""The papers of a day beside day sheet, units and mix cards, in the order they are printed."""

from __future__ import annotations

from collections.abc import Callable

from rootcollar.work.asked import PacketAsked
from rootcollar.work.gear import gear_page
from rootcollar.work.leftovers import leftovers_page
from rootcollar.work.packet import Page
from rootcollar.work.shopping_page import shopping_page
from rootcollar.work.signs import signs_page
from rootcollar.work.spill import spill_page
from rootcollar.work.topup import topup_page

__all__ = ["pages"]

_PAGES: tuple[Callable[[PacketAsked], Page | None], ...] = (
    shopping_page, gear_page, topup_page, spill_page, leftovers_page, signs_page,
)  # fmt: skip


def pages(asked: PacketAsked) -> tuple[Page, ...]:
    """Return every page that has something to say."""
    made = (make(asked) for make in _PAGES)
    return tuple(page for page in made if page is not None)
