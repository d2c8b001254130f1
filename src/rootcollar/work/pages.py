"""The papers of a day beside day sheet, units and mix cards, in the order they are printed."""

from __future__ import annotations

from collections.abc import Callable

from rootcollar.work.asked import PacketAsked
from rootcollar.work.packet import Page

__all__ = ["pages"]

_PAGES: tuple[Callable[[PacketAsked], Page | None], ...] = ()


def pages(asked: PacketAsked) -> tuple[Page, ...]:
    """Return every page that has something to say."""
    made = (make(asked) for make in _PAGES)
    return tuple(page for page in made if page is not None)
