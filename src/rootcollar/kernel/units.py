"""Units: reading what people write, printing what people measure.

Amounts are floats in the base unit of their kind (see `Kind`); US customary and metric meet only here. What can
be read in two ways ("oz" of what?) is asked about, never guessed, because a guess would be a wrong dose.
A volume per volume (`4 fl oz/gal`, `1 qt/100 gal`) is read as a share of the finished mix, and `1:4` as one part
in five of it.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache

from rootcollar.kernel.errors import Ambiguous, UnitError
from rootcollar.kernel.units_show import Jug, jug, show
from rootcollar.kernel.units_table import WANTED, Form, Kind, Unit, plain, unit_of

__all__ = ["Form", "Jug", "Kind", "Quantity", "convert", "jug", "read", "read_range", "show"]

_NUMBER = (
    r"-?\s*(?:(?:[0-9]+(?:\s+|-))?[0-9]+\s*/\s*[0-9]+"  # 3/4, 1 1/2, 1-1/2
    r"|[1-9][0-9]{0,2}(?:,[0-9]{3})+(?![0-9])(?:\.[0-9]+)?"  # 8,000
    r"|[0-9]+(?:\.[0-9]+)?|\.[0-9]+)"
)
_START = re.compile(_NUMBER)
_PARTS = re.compile(r"([0-9]+(?:\.[0-9]+)?)\s*:\s*([0-9]+(?:\.[0-9]+)?)$")
_SUM = re.compile(r"([^0-9/]*[a-z\"'.])(?<!per)\s*(\.?[0-9][0-9./ ]*[a-z\"'].*)$", re.I)
_RANGE = re.compile(
    rf"(?P<low>{_NUMBER})(?:\s*(?P<unit>[a-z%\"'].*?))??(?:\s*-\s*|\s+to\s+|\s+through\s+)"
    rf"(?P<high>{_NUMBER})\s*(?P<last>[a-z%\"'].*)?$",
    re.I,
)
_SUMMED = (Kind.LENGTH, Kind.VOLUME, Kind.MASS, Kind.TIME)
_HYPHEN = re.compile(r"-(?=[a-z])", re.I)  # 2.5-gal, 6-inch: one thing, because a range has a number behind the sign
_WORDS = {
    "half a": "1/2", "half an": "1/2", "a half": "1/2", "a quarter": "1/4", "a": "1", "an": "1", "one": "1",
    "two": "2", "three": "3", "four": "4", "five": "5", "six": "6", "seven": "7", "eight": "8", "nine": "9",
    "ten": "10", "eleven": "11", "twelve": "12",
}  # fmt: skip
_IN_WORDS = re.compile(rf"({'|'.join(_WORDS)})(?=\s[a-z])".replace(" ", r"\s+"), re.I)
_LONGEST = 80  # characters; anything longer is not a quantity


@dataclass(frozen=True, slots=True)
class Quantity:
    """An amount in the base unit of its kind, of what, the unit it was written in (`lb ae/gal`), the text as typed."""

    amount: float
    kind: Kind
    of: Form
    unit: str
    text: str

    def to(self, unit: str) -> float:
        """Return the amount in another unit of the same kind.

        Raises UnitError when the kinds differ, or when the unit names ae or ai and this quantity is not said to be.
        """
        wanted = unit_of(unit)
        if wanted.kind is not self.kind:
            raise UnitError(self.text, _other_kind(self.text, self.kind, wanted.kind))
        if wanted.of and wanted.of != self.of:
            said = self.of or "not said to be"
            raise UnitError(self.text, f"{wanted.label} asks for {wanted.of}; this is {said}")
        return self.amount / float(wanted.factor) - wanted.shift


def read(text: str, want: Kind | None = None) -> Quantity:
    """Return the quantity written in a text: a number and its unit, or parts such as `1:4`.

    A bare number is a count. want: the kind the caller needs.
    Raises Ambiguous for two readings; UnitError for no number, no unit, an unknown unit, another kind than wanted,
    a negative amount (temperature aside) or a percent above 100.
    """
    said = _in_figures(plain(text))
    start = _START.match(said) if len(said) <= _LONGEST else None
    if start is None:
        raise UnitError(text, f"a number and its unit, such as {_example(want)}")
    rest = _HYPHEN.sub("", said[start.end() :].lstrip())
    if "-" in rest or " to " in f" {rest} ":
        raise UnitError(text, f"one quantity, such as {_example(want)}, not a range")
    if rest[:1] in _NOT_A_UNIT:
        return _odd(text, said, rest, want)
    number = _number(start[0])
    if not rest:
        if want is not None and want is not Kind.COUNT:
            raise UnitError(text, f"{WANTED[want][0]}, such as {_example(want)}; {text!r} has no unit")
        return _checked(Quantity(number, Kind.COUNT, "", "", text), want)
    more = _SUM.match(rest)
    unit = unit_of(more[1] if more else rest)
    amount = (number + unit.shift) * float(unit.factor)
    if more:
        amount += _rest_of_sum(text, unit, more[2])
    return _checked(Quantity(amount, unit.kind, unit.of, unit.label, text), want)


def _in_figures(said: str) -> str:
    """Return the text with a number told in words in figures: `half a gallon`, `a quart`, `two gallons`."""
    found = _IN_WORDS.match(said)
    return f"{_WORDS[' '.join(found[1].lower().split())]} {said[found.end() :]}" if found else said


_NOT_A_UNIT = frozenset(",.:/0123456789")


def _odd(text: str, said: str, rest: str, want: Kind | None) -> Quantity:
    """Read parts (`1:4`); say what is wrong with anything else that is no unit behind a number."""
    parts = _PARTS.match(said)
    if parts:
        one, other = float(parts[1]), float(parts[2])
        if not 0 < one <= other:
            raise Ambiguous(text, "parts of product to parts of diluent, such as 1:4, or a percent, such as 20%")
        return _checked(Quantity(100 * one / (one + other), Kind.SHARE, "", "%", text), want)
    if rest[0] == ",":
        raise Ambiguous(text, "a point for a fraction, such as 2.5; a comma only before three digits, such as 8,000")
    if rest[0] == "/":
        raise UnitError(text, f"a unit before the per, such as {_example(want)}")
    raise UnitError(text, f"one number and its unit, such as {_example(want)}")


def read_range(text: str, want: Kind | None = None) -> tuple[Quantity, Quantity]:
    """Return both ends of a range in one unit: `3-10 mph`, `1 to 2 in`, `1 1/2-3 in`.

    Raises UnitError for a missing end, two units, or a range that does not rise; else as `read`.
    """
    said = plain(text)
    found = _RANGE.match(said) if len(said) <= _LONGEST else None
    if found is None:
        raise UnitError(text, "both ends and their unit, such as 1-2 in")
    last = found["last"] or ""
    if found["unit"] and not last:
        raise UnitError(text, "the unit at the end, such as 1-2 in")
    low = read(f"{found['low']} {found['unit'] or last}", want)
    high = read(f"{found['high']} {last}", want)
    if low.unit != high.unit:
        raise UnitError(text, "both ends in one unit, such as 1-2 in")
    if not low.amount < high.amount:
        raise UnitError(text, "the smaller end first, such as 1-2 in")
    return low, high


def convert(value: float, from_: str, to: str) -> float:
    """Return a value given in one unit in another of the same kind; UnitError when the kinds or ae and ai differ."""
    scale, before, after = _between(from_, to)
    return (value + before) * scale - after


@lru_cache(maxsize=1024)
def _between(from_: str, to: str) -> tuple[float, int, int]:
    have, want = unit_of(from_), unit_of(to)
    if have.kind is not want.kind:
        raise UnitError(from_, _other_kind(from_, have.kind, want.kind))
    if have.of and want.of and have.of != want.of:
        raise UnitError(from_, f"{have.of} cannot become {want.of}")
    return float(have.factor / want.factor), have.shift, want.shift


def _number(text: str) -> float:
    """Return the value of a matched number: 1.5, .5, 8,000, 3/4, 1 1/2, 1-1/2."""
    minus = text[0] == "-"
    body = text[1:].lstrip() if minus else text
    value = _fraction(body) if "/" in body else float(body.replace(",", ""))
    return -value if minus else value


def _fraction(text: str) -> float:
    above, below = text.split("/")
    *whole, top = re.split(r"\s+|-", above.strip())
    if not 0 < int(top) < int(below):
        raise Ambiguous(text, "a fraction below one, such as 3/4 or 1 1/2")
    return sum(map(float, whole)) + int(top) / int(below)


def _rest_of_sum(text: str, unit: Unit, rest: str) -> float:
    """Return the smaller parts of `5 ft 6 in` or `3 gal 1 qt 4 fl oz` [base unit]."""
    more = read(rest)
    if unit.kind not in _SUMMED or more.kind is not unit.kind or not 0 <= more.amount < float(unit.factor):
        raise UnitError(text, "one quantity, or a larger unit and then a smaller, such as 5 ft 6 in")
    return more.amount


def _checked(quantity: Quantity, want: Kind | None) -> Quantity:
    if want is not None and quantity.kind is not want:
        raise UnitError(quantity.text, _other_kind(quantity.text, quantity.kind, want))
    if quantity.amount < 0 and quantity.kind is not Kind.TEMPERATURE:
        raise UnitError(quantity.text, f"{WANTED[quantity.kind][0]} of 0 or more")
    if quantity.kind is Kind.SHARE and quantity.amount > 100:
        raise UnitError(quantity.text, "at most 100; a percent is a share of the finished mix")
    return quantity


def _other_kind(text: str, kind: Kind, want: Kind) -> str:
    return f"{WANTED[want][0]}, such as {WANTED[want][1]}; {text!r} is {WANTED[kind][0]}"


def _example(want: Kind | None) -> str:
    return WANTED[want or Kind.VOLUME][1]
