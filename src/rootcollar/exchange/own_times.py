"""The blocks [[time]] of own.toml: what a stem took the crew on its own ground."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import replace
from typing import Annotated, Literal

from pydantic import BeforeValidator, Field

from rootcollar.choose import Time
from rootcollar.exchange.entry import Day, Entry, Text, refuse
from rootcollar.exchange.tally_file import read_band, unit_reader
from rootcollar.kernel.errors import BadInput, Fault
from rootcollar.reference import find_species, load

__all__ = ["TimeEntry", "read_times", "time_faults"]

_MOST_MIN, _MOST_STEMS = 60_000, 100_000  # ours: beyond these it is a slip of typing
_MOST_OF_ONE = 600  # ours: ten hours at one stem is a slip of typing
_CUTTING = ("cut", "cut_stump", "vine_cut", "pull", "mow")


def _method(raw: object) -> object:
    said = raw.strip().casefold().replace("-", "_").replace(" ", "_") if isinstance(raw, str) else raw
    known = load().methods
    if said not in known:
        refuse(raw, ", ".join(known))
    return said


def _minutes(raw: object) -> float:
    if isinstance(raw, bool) or not isinstance(raw, (int, float)) or not 0 < raw <= _MOST_MIN:
        refuse(raw, f"a plain number without quotes, above 0, at most {_MOST_MIN:,}")
    return float(raw)


def _stems(raw: object) -> object:
    if isinstance(raw, bool) or not isinstance(raw, int) or not 0 < raw <= _MOST_STEMS:
        refuse(raw, f"a whole number of stems without quotes, 1 to {_MOST_STEMS:,}")
    return raw


class TimeEntry(Entry):
    """A block [[time]]."""

    method: Annotated[str, BeforeValidator(_method)] = Field(description='in quotes, such as method = "cut_stump"')
    minutes: Annotated[float, BeforeValidator(_minutes)] = Field(
        description="of all people together, on all the stems, such as minutes = 85"
    )
    stems: Annotated[int, BeforeValidator(_stems)] = Field(description="how many, such as stems = 40")
    on: Day = Field(description="the day without quotes, such as on = 2026-10-02")
    by: Text = Field(description="who measured, in quotes")
    what: Literal["stem", "slash", "fruit"] = Field(
        "stem", description='"stem" for all of a visit, "slash" or "fruit" for that alone'
    )
    species: Text | None = Field(None, description='where it holds for one plant, such as species = "common buckthorn"')
    unit: Text | None = Field(None, description='where it was measured, such as unit = "brook-edge"')
    size: Text | None = Field(None, description='of which stems, as in tally.csv, such as size = "1-2 in"')


def time_faults(one: TimeEntry, units: Mapping[str, str] | None) -> Iterator[Fault]:
    """Yield what a block says that is not known, or does not go together. units: names by key; None: not checked."""
    for field, said, parse in _parsers(one, units):
        try:
            parse(said)
        except BadInput as wrong:
            yield from (replace(fault, field=field) for fault in wrong.faults)
    if one.what != "stem" and one.method not in _CUTTING:
        yield Fault(
            f"{one.what} by {one.method}", f"only of a way that cuts or pulls: {', '.join(_CUTTING)}", field="what"
        )
    if one.minutes / one.stems > _MOST_OF_ONE:
        yield Fault(f"{one.minutes / one.stems:g} minutes a stem", f"at most {_MOST_OF_ONE}", field="minutes")


def _parsers(one: TimeEntry, units: Mapping[str, str] | None) -> Iterator[tuple[str, str, Callable[[str], object]]]:
    if one.species is not None:
        yield "species", one.species, find_species
    if one.unit is not None:
        yield "unit", one.unit, unit_reader(units)
    if one.size is not None:
        yield "size", one.size, read_band


def read_times(entries: Sequence[TimeEntry], units: Mapping[str, str] | None) -> tuple[Time, ...]:
    """Return the own times, minutes of one stem each; blocks without `time_faults` only."""
    return tuple(
        Time(
            one.method, one.minutes / one.stems, one.on, one.by, one.what,
            find_species(one.species).key if one.species else "",
            unit_reader(units)(one.unit) if one.unit else "",
            read_band(one.size) if one.size else None,
        )
        for one in entries
    )  # fmt: skip
