"""What any store must do, whatever lies beneath it: one file now, a shared database later."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Protocol

from rootcollar.store.chain import Gap
from rootcollar.store.entry import Draft, Entry
from rootcollar.store.ground import Row

__all__ = ["Kept", "Store"]


@dataclass(frozen=True, slots=True)
class Kept:
    """All that a store holds at one moment. property_id: a ULID, the same in every copy of this property's file.

    ground: rows by layer, in the order of their keys. entries: by id. gaps: numbers of devices that are not here.
    left_out: what this copy leaves out, in the words of `PRIVATE`; empty for a whole one.
    """

    property_id: str
    name: str
    ground: Mapping[str, tuple[Row, ...]]
    entries: tuple[Entry, ...]
    gaps: tuple[Gap, ...]
    left_out: tuple[str, ...] = ()


class Store(Protocol):
    """The project's two kinds of truth: ground that is edited, and a journal that is only added to.

    Each change is kept whole or not at all, and is on the disk when the call returns.
    """

    @property
    def read_only(self) -> str:
        """Why nothing can be written, as a sentence; empty where it can."""

    def snapshot(self) -> Kept:
        """Return all that is kept, as of one moment."""

    def say(self, device: str, drafts: Sequence[Draft]) -> tuple[Entry, ...]:
        """Keep what was said on a device; number and seal it."""

    def append(self, entries: Sequence[Entry]) -> tuple[Entry, ...]:
        """Take in entries made elsewhere; return the new ones. Twice changes nothing, nor does another order."""

    def put(self, rows: Sequence[Row], by: str, at: datetime) -> tuple[Row, ...]:
        """Write rows of the ground, if they still stand as they were read; return them as they stand now."""

    def remove(self, row: Row, at: datetime) -> None:
        """Take a row of the ground away, if it still stands as it was read."""

    def close(self) -> None:
        """Let go of it; nothing can be asked of it afterwards."""
