"""What is said of the open ways that were not chosen: by how much each is dearer, what beats it, what it is better at.

Of thousands of stands few reasons are ever read, so they are put into words when one is.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from copy import copy
from dataclasses import dataclass
from functools import lru_cache, partial
from typing import overload

from rootcollar.choose.figures import on_its_ground
from rootcollar.choose.front import beaten_by, better_at, on_front, taken_by
from rootcollar.choose.option import Figured, Later, Option, PerStem, Piece, SetAside, Way, plain
from rootcollar.choose.setting import Setting
from rootcollar.choose.stem_minutes import on_ground
from rootcollar.choose.visits import share_to_reach
from rootcollar.choose.wins import wins
from rootcollar.kernel.days import MONTHS, name_months
from rootcollar.survey.stand import Stand

__all__ = ["Behind", "like_the_first", "no_label"]

_KEPT = 16  # ours: stands whose reasons are kept; whoever reads one reads the rest of its stand

_Told = tuple[tuple[Piece, ...], tuple[Piece, ...], bool]  # why, what would make it win, whether it is on the front


@dataclass(frozen=True, slots=True, eq=False)
class _Compared:
    """The open ways of a stand, the chosen one first, and of each its figures before the ground is looked at.

    Side by side and not in pairs: of tens of thousands of small tuples the keeping alone takes time.
    """

    stand: Stand
    setting: Setting
    ways: tuple[Way, ...]
    before: tuple[PerStem, ...]


def no_label(way: Way) -> bool:
    """Return whether the mix of a way has no label sheet on the shelf; a way without a mix needs none."""
    recipe = way.visit.recipe
    return recipe is not None and recipe.product is None


def like_the_first(ways: Sequence[Figured]) -> list[Figured]:
    """Return the ways that have a label or need none, if the first is one of them; else all."""
    all_ = no_label(ways[0].way)
    return [one for one in ways if all_ or not no_label(one.way)]


class Behind(Sequence[SetAside]):
    """All ways of a stand that were not chosen: the open ones in their order, then those that are shut or stopped.

    Each of the open ones is put together when it is read: a large property has tens of thousands, hardly one is read.
    """

    __slots__ = ("_ahead", "_left_out", "_levels", "_of", "_per_kill", "_rest")

    def __init__(
        self,
        ways: Sequence[tuple[Option, PerStem]],
        left_out: Option | None,
        rest: Sequence[SetAside],
        setting: Setting,
    ) -> None:
        """Keep what it takes. ways: open ones, the chosen one first, each with its figures before the ground of the
        stand is looked at. left_out: of these the one told elsewhere. rest: what is shut or stopped.
        """
        options = [option for option, _ in ways]
        self._of = _Compared(
            options[0].stand, setting, tuple(one.way for one in options), tuple(before for _, before in ways)
        )
        self._per_kill = tuple(one.per_kill for one in options)
        self._levels = tuple(one.level for one in options)
        self._left_out = next((at for at, (option, _) in enumerate(ways) if option is left_out), 0)
        self._rest = tuple(rest)
        self._ahead: tuple[SetAside, ...] = ()

    def after(self, one: SetAside) -> Behind:
        """Return the same with one more way before all."""
        other = copy(self)
        other._ahead = (one, *self._ahead)
        return other

    def __len__(self) -> int:
        """Return how many ways were not chosen."""
        return len(self._ahead) + len(self._levels) - (2 if self._left_out else 1) + len(self._rest)

    def __iter__(self) -> Iterator[SetAside]:
        """Yield them in their order."""
        yield from self._ahead
        yield from (self._aside(at) for at in range(1, len(self._levels)) if at != self._left_out)
        yield from self._rest

    @overload
    def __getitem__(self, at: int) -> SetAside: ...
    @overload
    def __getitem__(self, at: slice) -> Sequence[SetAside]: ...
    def __getitem__(self, at: int | slice) -> SetAside | Sequence[SetAside]:
        """Return one, or some."""
        return tuple(self)[at]

    def __eq__(self, other: object) -> bool:
        """Return whether the same is said of the same ways."""
        return isinstance(other, Sequence) and tuple(self) == tuple(other)

    def __hash__(self) -> int:
        """Return the hash of all that is said."""
        return hash(tuple(self))

    def __repr__(self) -> str:
        """Return all of them as they are written."""
        return repr(tuple(self))

    def _aside(self, at: int) -> SetAside:
        way, first = self._of.ways[at], self._of.ways[0]
        return SetAside(
            way,
            Later(_why, self._of, at),
            Later(_wins, self._of, at),
            per_kill=None if no_label(way) and not no_label(first) else self._per_kill[at],
            open=True,
            level=self._levels[at],
            unbeaten=partial(_unbeaten, self._of, at),
        )


def _why(of: _Compared, at: int) -> tuple[Piece, ...]:
    return _told(of)[at][0]


def _wins(of: _Compared, at: int) -> tuple[Piece, ...]:
    return _told(of)[at][1]


def _unbeaten(of: _Compared, at: int) -> bool:
    return _told(of)[at][2]


@lru_cache(maxsize=_KEPT)
def _told(of: _Compared) -> tuple[_Told, ...]:
    ground = on_ground(of.stand, of.setting)
    ways = [
        Figured(way, on_its_ground(way, before, of.stand, ground, of.setting))
        for way, before in zip(of.ways, of.before, strict=True)
    ]
    share = share_to_reach(of.setting)
    front = on_front(like_the_first(ways), share)
    return tuple(_said(one, ways[0], front, share, of.setting.on.month) for one in ways)


def _said(one: Figured, first: Figured, front: Sequence[Figured], share: float, month: int) -> _Told:
    """Return what is said of a way. front: the ways that no other beats in everything. month: of the day."""
    mine, theirs = one.per_stem.mean_cost_per_kill, first.per_stem.mean_cost_per_kill
    costs = Piece(f"${mine:,.2f}", "per_kill")
    beside = (*one.per_stem.side_because, *_not_in(one.way, month))
    if no_label(one.way) and not no_label(first.way):
        why = Piece("no label sheet of it is on the shelf; "), costs, Piece(" per stem killed"), *beside
        return why, plain("type its label"), False
    if mine < theirs:
        why = Piece("the ranking has it first: "), costs, Piece(" per stem killed, and another way was chosen"), *beside
        return why, plain("the choice is taken back"), one in front
    compared = plain(_beside_the_first(one, first, front, share))
    why = Piece("dearer: "), costs, Piece(" per stem killed"), *beside, *compared
    return why, wins(one.per_stem, one.way.visit.recipe, theirs), one in front


def _not_in(way: Way, month: int) -> tuple[Piece, ...]:
    """Say that a way is shut in the month of the day, and when it opens; nothing where it is open."""
    named = way.visit.months
    return () if month in named else plain(f"; not in {MONTHS[month - 1]}, but in {name_months(named)}")


def _beside_the_first(one: Figured, first: Figured, front: Sequence[Figured], share: float) -> str:
    """Say what a way is better at than the chosen one, or which way beats it in everything, and by what."""
    if one in front:
        better = better_at(taken_by(one, share), taken_by(first, share))
        return f"; but {better}" if better else ""
    return f"; {beaten_by(one, front, share)}"
