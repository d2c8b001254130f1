"""What is said of the open ways that were not chosen: by how much each is dearer, what beats it, what it is better at.

Of thousands of stands few reasons are ever read, so they are put into words when one is.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache, partial

from rootcollar.choose.figures import on_its_ground
from rootcollar.choose.front import beaten_by, better_at, on_front, taken_by
from rootcollar.choose.option import Figured, Later, Option, PerStem, Piece, SetAside, Way, plain
from rootcollar.choose.setting import Setting
from rootcollar.choose.stem_minutes import on_ground
from rootcollar.choose.visits import share_to_reach
from rootcollar.choose.wins import wins
from rootcollar.kernel.days import MONTHS, name_months
from rootcollar.survey.stand import Stand

__all__ = ["behind", "like_the_first", "no_label"]

_KEPT = 16  # ours: stands whose reasons are kept; whoever reads one reads the rest of its stand

_Told = tuple[tuple[Piece, ...], tuple[Piece, ...], bool]  # why, what would make it win, whether it is on the front


@dataclass(frozen=True, slots=True, eq=False)
class _Compared:
    """The open ways of a stand with their figures before its ground is looked at, the chosen one first."""

    stand: Stand
    setting: Setting
    ways: tuple[tuple[Way, PerStem], ...]


def no_label(way: Way) -> bool:
    """Return whether the mix of a way has no label sheet on the shelf; a way without a mix needs none."""
    recipe = way.visit.recipe
    return recipe is not None and recipe.product is None


def like_the_first(ways: Sequence[Figured]) -> list[Figured]:
    """Return the ways that have a label or need none, if the first is one of them; else all."""
    all_ = no_label(ways[0].way)
    return [one for one in ways if all_ or not no_label(one.way)]


def behind(ways: Sequence[tuple[Option, PerStem]], stand: Stand, setting: Setting) -> list[SetAside]:
    """Return the open ways of a stand that were not chosen as set aside, in their order.

    ways: the chosen one first, each with its figures before the ground of the stand is looked at.
    """
    of = _Compared(stand, setting, tuple((option.way, before) for option, before in ways))
    return [_aside(of, at, option, ways[0][0]) for at, (option, _) in enumerate(ways) if at]


def _aside(of: _Compared, at: int, option: Option, first: Option) -> SetAside:
    unpriced = no_label(option.way) and not no_label(first.way)
    return SetAside(
        option.way,
        Later(_why, of, at),
        Later(_wins, of, at),
        per_kill=None if unpriced else option.per_stem.mean_cost_per_kill,
        open=True,
        level=option.level,
        unbeaten=partial(_unbeaten, of, at),
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
    ways = [Figured(way, on_its_ground(way, before, of.stand, ground, of.setting)) for way, before in of.ways]
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
