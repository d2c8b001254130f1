"""A text with numbers in it that open: each knows how it is worked out again, step by step, from its own inputs.

Paper prints it as the plain text that it is; a screen makes of each number a way into its working.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import Any

from rootcollar.kernel.doubt import Worlds

__all__ = ["Number", "Worked", "number", "strung", "within"]


@dataclass(frozen=True, slots=True, eq=False)
class Number:
    """A number as it is shown. again: the pure job once more, to be watched; it gives the value in `unit`.

    write: how the value becomes the words.
    """

    words: str
    again: Callable[[], Worlds | float]
    unit: str
    write: Callable[[Any], str]


class Worked(str):
    """A text, and the runs that it is made of: plain words, and numbers that open."""

    runs: tuple[str | Number, ...]

    def __new__(cls, *pieces: str | Number) -> Worked:
        """Put pieces together; a piece that has runs of its own brings them along."""
        runs: list[str | Number] = []
        for one in pieces:
            runs += one.runs if isinstance(one, Worked) else (one,)
        made = super().__new__(cls, "".join(one.words if isinstance(one, Number) else one for one in runs))
        made.runs = tuple(runs)
        return made

    def __deepcopy__(self, memo: dict[int, Any]) -> str:
        """Give the plain text to whoever copies a packet's fields, such as the printer."""
        return str(self)

    @property
    def numbers(self) -> tuple[Number, ...]:
        """The numbers that open, in order."""
        return tuple(one for one in self.runs if isinstance(one, Number))


def number(
    value: Worlds | float, write: Callable[[Any], str], unit: str, again: Callable[[], Worlds | float]
) -> Worked:
    """Return a value in words, which open into how it is worked out again. unit: of the value."""
    return Worked(Number(write(value), again, unit, write))


def within(text: str, *worked: str) -> str:
    """Return a text in which the numbers of some worked texts open, where their words stand in it, in that order."""
    pieces: list[str | Number] = []
    rest = text
    for one in (found for each in worked if isinstance(each, Worked) for found in each.numbers):
        before, met, after = rest.partition(one.words)
        if met:
            pieces += [before, one]
            rest = after
    return Worked(*pieces, rest) if pieces else text


def strung(between: str, pieces: Iterable[str]) -> str:
    """Return texts joined, as `str.join` does, their numbers still open."""
    made: list[str] = []
    for one in pieces:
        made += [between, one] if made else [one]
    return Worked(*made) if any(isinstance(one, Worked) for one in made) else "".join(made)
