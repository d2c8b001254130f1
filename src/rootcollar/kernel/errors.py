"""All errors, drawn as a tree.

RootcollarError
├── BadInput            what was typed cannot be used; holds every Fault found     exit 2
│   ├── UnitError       a quantity that cannot be read
│   │   └── Ambiguous   a quantity that can be read two ways ("oz" of what?)
│   └── NotFound        a name we do not know, with the near ones
├── Refusal             a formula or method asked outside its range, with the next step   exit 2
└── NotCleared          a stop or an open question stands between the plan and its packet  exit 1

Anything else that reaches a face is our own fault (exit 3).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

__all__ = ["Ambiguous", "BadInput", "Fault", "NotCleared", "NotFound", "Refusal", "RootcollarError", "UnitError"]


@dataclass(frozen=True, slots=True)
class Fault:
    """One thing wrong with what was given: where it stands, what was found, what is allowed."""

    found: str
    allowed: str
    file: str = ""
    row: str = ""
    field: str = ""

    def __str__(self) -> str:
        where = ", ".join(part for part in (self.file, self.row, self.field) if part)
        said = f"found {self.found}; allowed: {self.allowed}"
        return f"{where}: {said}" if where else said


class RootcollarError(Exception):
    """What every face catches, shows as a sentence and turns into an exit code."""

    exit_code = 3


class BadInput(RootcollarError):
    """Input that cannot be used. Holds all faults at once, so that one pass mends the file."""

    exit_code = 2

    def __init__(self, *faults: Fault) -> None:
        self.faults = faults
        super().__init__("\n".join(str(fault) for fault in faults))


class UnitError(BadInput):
    """A quantity that cannot be read: no number, no known unit, or the wrong kind."""

    def __init__(self, found: str, allowed: str) -> None:
        super().__init__(Fault(found=repr(found), allowed=allowed))


class Ambiguous(UnitError):
    """A quantity that can be read in two ways; guessing would be a wrong dose."""


class NotFound(BadInput):
    """A name that is not known, with the nearest names that are."""

    def __init__(self, what: str, name: str, near: Sequence[str] = ()) -> None:
        self.near = tuple(near)
        hint = ", ".join(self.near) if self.near else f"a known {what}"
        super().__init__(Fault(found=f"{what} {name!r}", allowed=hint))


class Refusal(RootcollarError):
    """A formula or method asked outside the range it holds for.

    what: what was asked. limit: the limit in words, with its source. do: the next step.
    """

    exit_code = 2

    def __init__(self, what: str, *, limit: str, do: str) -> None:
        self.what, self.limit, self.do = what, limit, do
        super().__init__(f"{what}: {limit}. {do}")


class NotCleared(RootcollarError):
    """Something still stands between the plan and a packet."""

    exit_code = 1

    def __init__(self, standing: Sequence[str]) -> None:
        self.standing = tuple(standing)
        super().__init__("not cleared:\n" + "\n".join(self.standing))
