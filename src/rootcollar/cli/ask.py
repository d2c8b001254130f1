"""Reading what was typed behind an option: amounts with their unit, and an error that names the option."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import replace
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from rootcollar.kernel.units import Kind, Quantity

__all__ = ["amount", "count", "ground", "naming", "one_of", "seconds", "share", "sides", "size", "with_unit"]

_BY = re.compile(r"\s*[x\u00d7*]\s*|\s+by\s+", re.I)
_FIGURES = r"[0-9.,/\s\u00bc-\u00be\u215b-\u215e-]+"
_BARE = re.compile(_FIGURES)
_ONE_UNIT = re.compile(_FIGURES + r"([a-z'\"\u2032\u2033][^0-9]*)", re.I)  # not 5 ft 6 in, whose unit is neither
_WATCH = re.compile(r"\s*([0-9]{1,3}):([0-5][0-9])\s*(?:min\w*)?\s*$", re.I)


@contextmanager
def naming(option: str) -> Iterator[None]:
    """Let every fault found inside the block say which option it was found behind."""
    from rootcollar.kernel.errors import BadInput

    try:
        yield
    except BadInput as error:
        error.faults = tuple(replace(fault, field=option) for fault in error.faults)
        error.args = ("\n".join(str(fault) for fault in error.faults),)
        raise


def one_of(given: Mapping[str, object | None], wanted: str) -> str:
    """Return the one option that was given; BadInput when none or several were. wanted: what is allowed, in words."""
    from rootcollar.kernel.errors import BadInput, Fault

    found = [option for option, value in given.items() if value is not None]
    if len(found) != 1:
        raise BadInput(Fault(found=" and ".join(found) or "neither " + " nor ".join(given), allowed=wanted))
    return found[0]


def amount(option: str, text: str, kind: Kind) -> Quantity:
    """Return a quantity of the kind, above 0. Raises UnitError or Ambiguous naming the option."""
    from rootcollar.kernel.errors import UnitError
    from rootcollar.kernel.units import read

    with naming(option):
        found = read(text, kind)
        if not found.amount > 0:
            raise UnitError(text, "more than 0")
        return found


def share(option: str, text: str) -> Quantity:
    """Return a share of the finished mix [%], above 0 and at most 100; a bare number is a percent."""
    from rootcollar.kernel.errors import UnitError
    from rootcollar.kernel.units import Kind, read

    try:
        bare = read(text).unit == ""
    except UnitError:
        bare = False  # said again below, with a percent as the example
    return amount(option, f"{text.strip()}%" if bare else text, Kind.SHARE)


def count(option: str, text: str, of: str = "stems") -> int:
    """Return a whole number of things, at least 1. of: what is counted."""
    from rootcollar.kernel.errors import UnitError
    from rootcollar.kernel.units import Kind

    found = amount(option, text, Kind.COUNT).amount
    with naming(option):
        if not found.is_integer():
            raise UnitError(text, f"a whole number of {of}")
    return int(found)


def size(option: str, text: str) -> tuple[Quantity, Quantity]:
    """Return both ends of a size class (`1-2 in`), or one size twice (`2 in`)."""
    from rootcollar.kernel.errors import Ambiguous, UnitError
    from rootcollar.kernel.units import Kind, read_range

    try:
        one = amount(option, text, Kind.LENGTH)
    except Ambiguous:
        raise
    except UnitError:
        if not any(sign in text.strip()[1:] for sign in ("-", "–", " to ", " through ")):
            raise
        with naming(option):
            return read_range(text, Kind.LENGTH)
    return one, one


def sides(option: str, text: str) -> tuple[Quantity, Quantity]:
    """Return two lengths written as one size: `18.5 ft x 18.5 ft`, `18.5 x 18.5 ft`, `20ft by 5 yd`.

    A side without a unit has that of the other. Raises UnitError naming the option, for anything else.
    """
    from rootcollar.kernel.errors import UnitError
    from rootcollar.kernel.units import Kind

    parts = [part.strip() for part in _BY.split(text)]
    if len(parts) != 2 or not all(parts):
        with naming(option):
            raise UnitError(text, "two sides and their unit, such as 18.5 ft x 18.5 ft")
    one, other = parts
    if _BARE.fullmatch(one) and (unit := _ONE_UNIT.fullmatch(other)):
        one = f"{one} {unit[1]}"
    elif _BARE.fullmatch(other) and (unit := _ONE_UNIT.fullmatch(one)):
        other = f"{other} {unit[1]}"
    return amount(option, one, Kind.LENGTH), amount(option, other, Kind.LENGTH)


def ground(option: str, text: str) -> tuple[Quantity, ...]:
    """Return an area as it was written: one quantity (`0.5 ac`), or two lengths (`100 ft x 60 ft`)."""
    from rootcollar.kernel.errors import UnitError
    from rootcollar.kernel.units import Kind, read

    if _BY.search(text):
        return sides(option, text)
    try:
        length = read(text).kind in (Kind.LENGTH, Kind.COUNT)
    except UnitError:
        length = False  # said again below
    if length:
        with naming(option):
            raise UnitError(text, "an area, such as 0.5 ac or 200 m2, or two sides, such as 100 ft x 60 ft")
    return (amount(option, text, Kind.AREA),)


def seconds(option: str, text: str) -> float:
    """Return a time off a watch [s], above 0: `75`, `75 s`, `1:15`, `1:15 min`, `1 min 15 s`; a bare number is in s."""
    from rootcollar.kernel.errors import UnitError
    from rootcollar.kernel.units import Kind

    watch = _WATCH.match(text)
    if watch:
        text = f"{watch[1]} min {watch[2]} s" if int(watch[1]) else f"{watch[2]} s"
    elif ":" in text:
        with naming(option):
            raise UnitError(text, "seconds, such as 75, or minutes and seconds, such as 1:15")
    return amount(option, with_unit(text, "s"), Kind.TIME).amount


def with_unit(text: str, unit: str) -> str:
    """Return the text, with the unit that the option itself names where it is a bare number."""
    return f"{text.strip()} {unit}" if _BARE.fullmatch(text) else text
