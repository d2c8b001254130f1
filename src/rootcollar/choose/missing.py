"""What a plan is missing, and the one change that opens most of what is struck out, held or left."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from rootcollar.choose.option import Choice
from rootcollar.choose.sums import stems
from rootcollar.kernel.doubt import best
from rootcollar.kernel.verdict import Level

__all__ = ["Opening", "opens_most"]

_FEW = 3  # ours: units named in the sentence; more are not read


@dataclass(frozen=True, slots=True)
class Opening:
    """The one change to make first.

    because: what is missing. change: what puts it right. lines: that it touches, of closed lines that are no work.
    stems: on the lines it touches. alone: whether nothing else known stands before these lines. units: where they are,
    by key, in the order of the lines.
    """

    because: str
    change: str
    lines: int
    closed: int
    stems: float
    alone: bool
    units: tuple[str, ...] = ()

    @property
    def words(self) -> str:
        """What to do first, how much of the plan it opens, and what is missing now."""
        change, because = self.change.strip().rstrip("."), self.because.strip().rstrip(".")
        stop = "" if because.endswith("?") else "."
        which = "the one line" if self.closed == 1 else f"{self.lines} of the {self.closed} lines"
        reach = "This opens" if self.alone else "More is missing, but this comes first for"
        known = ", as far as is known" if self.alone else ""
        where = f" on {', '.join(self.units)}" if 0 < len(self.units) <= _FEW else ""
        return (
            f"Do first: {change}. {reach} {which} that cannot be worked yet"
            f"{where} ({self.stems:,.0f} stems){known}. Missing now: {because}{stop}"
        )


def opens_most(choices: Sequence[Choice]) -> Opening | None:
    """Return the change that opens most stems; where no single one opens a line, the one before most of them.

    None where every line is work, or where nothing that stops a line can be changed. Ties go by the change's words.
    """
    shut = [one for one in choices if not one.is_work]
    before: dict[str, list[tuple[Choice, str, bool]]] = {}
    for line in shut:
        for change, because, alone in _changes(line):
            before.setdefault(change, []).append((line, because, alone))
    found = [one for change, waiting in before.items() for one in _openings(change, waiting, len(shut))]
    return min(found, key=lambda one: (not one.alone, -one.stems, one.change), default=None)


def _openings(change: str, waiting: Sequence[tuple[Choice, str, bool]], closed: int) -> Iterator[Opening]:
    """Yield what a change opens by itself, or else before how much it stands."""
    freed = [one for one in waiting if one[2]]
    lines = [line for line, _, _ in freed or waiting]
    units = tuple(dict.fromkeys(line.stand.unit for line in lines))
    yield Opening((freed or waiting)[0][1], change, len(lines), closed, best(stems(lines)), bool(freed), units)


def _changes(line: Choice) -> Iterator[tuple[str, str, bool]]:
    """Yield each change before a line, why it is needed, and whether it opens the line by itself; each change once."""
    found: dict[str, tuple[str, bool]] = {}
    if line.option is None:
        # A way that only asks was not weighed by the rules yet: while they stop others, it would be stopped too.
        stopped = [one for one in line.set_aside if one.stop is not None]
        for one in stopped or [one for one in line.set_aside if one.asks]:
            found.setdefault(one.would_win_if, (one.because, True))
    else:
        stands = {(one.clear, one.because) for one in line.verdicts if one.level >= Level.ASK}
        found |= {clear: (because, len({clear for clear, _ in stands}) == 1) for clear, because in sorted(stands)}
    yield from ((change, because, alone) for change, (because, alone) in found.items() if change)
