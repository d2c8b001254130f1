"""What a packet is made from."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from rootcollar.choose import Choice, Prescription, Setting
from rootcollar.shelf import Stock
from rootcollar.work.clear import Cleared
from rootcollar.work.crew import Crew

__all__ = ["PacketAsked"]


@dataclass(frozen=True, slots=True, eq=False)
class PacketAsked:
    """What a packet is made from. lines: all lines of the wanted units, struck and held ones too.

    stock: what stands in the shed; None, nobody has looked. languages: in which the day sheet is printed too.
    """

    cleared: Cleared
    lines: tuple[Choice, ...]
    units: tuple[str, ...]
    prescription: Prescription
    setting: Setting
    crew: Crew
    day: date | None
    made_on: date
    stock: Stock | None = None
    languages: tuple[str, ...] = ()
