"""The blocks [year] and [first] of own.toml: the most of a year, and what reasons for coming early count for."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from pydantic import BeforeValidator, Field

from rootcollar.exchange.entry import Entry, refuse
from rootcollar.kernel.errors import Fault

__all__ = ["FirstEntry", "YearEntry", "first_faults"]

_MOST_H, _MOST_MONEY = 100_000, 100_000_000  # ours: beyond these it is a slip of the unit
_MOST_WEIGHT = 100  # ours: beyond it one reason alone decides
_MIN_PER_H = 60  # definition


def _hours(raw: object) -> float:
    return _number(raw, _MOST_H, "hours of all people together") * _MIN_PER_H


def _money(raw: object) -> float:
    return _number(raw, _MOST_MONEY, "without a sign of money")


def _weight(raw: object) -> float:
    return _number(raw, _MOST_WEIGHT, "0 where the reason is not to count", least=0.0)


def _number(raw: object, most: float, what: str, least: float | None = None) -> float:
    """Return a plain number above 0, or from least on. Refuses quotes, true and false, and what is no number."""
    ends = f"above 0, at most {most:,}" if least is None else f"{least:g} to {most:,}"
    if isinstance(raw, bool) or not isinstance(raw, (int, float)) or not (0 < raw <= most or raw == least):
        refuse(raw, f"a plain number without quotes, {ends}: {what}")
    return float(raw)


class YearEntry(Entry):
    """The most of a year: hours of one person [min], and money."""

    hours: Annotated[float, BeforeValidator(_hours)] | None = Field(
        None, description="hours of all people together, such as hours = 160"
    )
    money: Annotated[float, BeforeValidator(_money)] | None = Field(
        None, description="without a sign of money, such as money = 6000"
    )


Weight = Annotated[float, BeforeValidator(_weight)]


class FirstEntry(Entry):
    """What each reason counts for; None: as ours does."""

    fruit: Weight | None = Field(None, description="stems that bear seed, such as fruit = 2")
    room: Weight | None = Field(None, description="thinly held ground, where seedlings find room, such as room = 1")
    apart: Weight | None = Field(None, description="lying away from thicker ground, such as apart = 1")
    carried: Weight | None = Field(None, description="seed that water, feet or wheels carry off, such as carried = 1")

    @property
    def said(self) -> tuple[tuple[str, float], ...]:
        """The weights that were written, by name."""
        named = (("fruit", self.fruit), ("room", self.room), ("apart", self.apart), ("carried", self.carried))
        return tuple((name, weight) for name, weight in named if weight is not None)


def first_faults(first: FirstEntry | None) -> Iterator[Fault]:
    """Yield a fault where no reason counts at all: then nothing would order the units."""
    if first and len(first.said) == len(FirstEntry.model_fields) and not any(weight for _, weight in first.said):
        yield Fault("0 for every reason", "more than 0 for at least one reason", row="[first]")
