"""A label sheet: what one label says, line by line, in three states.

A line that says something, a line that was read and is silent, and a line nobody has read yet (absent).
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from enum import Enum
from hashlib import sha256
from typing import Any, Final, Generic, TypeVar

__all__ = ["SILENT", "Active", "Distance", "Line", "Second", "Sheet", "Silent", "SiteLine"]

T = TypeVar("T")


class Silent(Enum):
    """The label was read and says nothing here. Not a permission."""

    SILENT = "silent"


SILENT: Final = Silent.SILENT


@dataclass(frozen=True, slots=True)
class Line(Generic[T]):
    """What a label (or the ground, the crew, the plan) says in one place. A line nobody has read is absent."""

    says: T | Silent
    page: str = ""


@dataclass(frozen=True, slots=True)
class Active:
    """One active ingredient as printed. None: silent, or not read yet; `unread` names the entries not read."""

    common_name: str | None = None
    form: str | None = None
    ai_percent: float | None = None
    ae_percent: float | None = None
    ai_lb_per_gal: float | None = None
    ae_lb_per_gal: float | None = None
    mode_group: str | None = None
    unread: frozenset[str] = frozenset()


@dataclass(frozen=True, slots=True)
class SiteLine:
    """One kind of place as printed, its class, and whether use there is allowed. None: silent, or not read yet."""

    words: str | None = None
    class_: str | None = None
    allowed: bool | None = None
    unread: frozenset[str] = frozenset()


@dataclass(frozen=True, slots=True)
class Distance:
    """A distance to keep from something [ft]. methods: the kinds of treatment it holds for; empty: all."""

    from_: str
    ft: float
    methods: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Second:
    """What a second person typed from the same label without seeing the sheet. lines: as typed, by what was asked."""

    read_by: str
    read_on: date
    lines: Mapping[str, str]


@dataclass(frozen=True, slots=True, eq=False)
class Sheet:
    """One product's label as typed from the jug.

    lines: by path, as "weather.wind_mph.high"; "ingredient" says a tuple of `Active`, "site" of `SiteLine`.
    methods: the blocks of directions by method kind, each by path within the block, as "concentration.high".
    Both hold only what has been read. second: what another person read again, where somebody has. stamp: tells one
    reading of the label from another; who read it, the photographs and the lot are no part of it.
    """

    key: str
    lines: Mapping[str, Line[Any]]
    methods: Mapping[str, Mapping[str, Line[Any]]] = field(default_factory=dict)
    second: Second | None = None
    stamp: str = field(init=False, default="")

    def __post_init__(self) -> None:
        """Work out the stamp: the same for the same words, another as soon as a line that binds is changed."""
        object.__setattr__(self, "stamp", _stamp(self.lines, self.methods))

    def line(self, path: str, method: str = "") -> Line[Any] | None:
        """Return the line at a path (of a method's block, if named); None while nobody has read it."""
        return (self.methods.get(method, {}) if method else self.lines).get(path)

    def says(self, path: str, method: str = "") -> Any:
        """Return what the label says at a path (of a method's block, if named); None when silent or not read."""
        line = self.line(path, method)
        return None if line is None or line.says is SILENT else line.says

    @property
    def product(self) -> str:
        """Name of the product as printed, or the sheet's key while it has not been typed."""
        return str(self.says("identity.product_name") or self.key)


_NOT_STAMPED = ("proof.", "identity.lot")
_STAMP_SIGNS = 12  # ours: enough that two readings of one label never share it by chance


def _stamp(lines: Mapping[str, Line[Any]], methods: Mapping[str, Mapping[str, Line[Any]]]) -> str:
    told = [(path, line) for path, line in lines.items() if not path.startswith(_NOT_STAMPED)]
    told += [(f"{kind}.{path}", line) for kind, block in methods.items() for path, line in block.items()]
    words = "\n".join(f"{path}={_said(line.says)}" for path, line in sorted(told, key=lambda one: one[0]))
    return sha256(words.encode()).hexdigest()[:_STAMP_SIGNS]


def _said(says: object) -> str:
    """Return what a line says, the same on every machine; the order in which entries were typed unread is no part."""
    if isinstance(says, tuple):
        return "; ".join(_said(one) for one in says)
    if isinstance(says, Active | SiteLine):
        return repr(replace(says, unread=frozenset())) + repr(sorted(says.unread))
    return repr(says)
