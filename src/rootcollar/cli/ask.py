"""Reading what was typed behind an option: amounts with their unit, and an error that names the option."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import replace
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from rootcollar.kernel.units import Kind, Quantity

__all__ = ["amount", "count", "naming", "one_of", "share", "sides", "size"]

_BY = re.compile(r"\s*[x\u00d7*]\s*|\s+by\s+", re.I)
_BARE = re.compile(r"[0-9./\s-]+")
_UNIT = re.compile(r"[a-z'\"\u2032\u2033][^0-9]*$", re.I)


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


def count(option: str, text: str) -> int:
    """Return a whole number of things, at least 1."""
    from rootcollar.kernel.errors import UnitError
    from rootcollar.kernel.units import Kind

    found = amount(option, text, Kind.COUNT).amount
    with naming(option):
        if not found.is_integer():
            raise UnitError(text, "a whole number of stems")
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
    if _BARE.fullmatch(one) and (unit := _UNIT.search(other)):
        one = f"{one} {unit[0]}"
    elif _BARE.fullmatch(other) and (unit := _UNIT.search(one)):
        other = f"{other} {unit[0]}"
    return amount(option, one, Kind.LENGTH), amount(option, other, Kind.LENGTH)
