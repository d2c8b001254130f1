"""No road from a stop to a packet: what may be printed as work is weighed once more, here."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from rootcollar.choose import Choice, Setting, fallback_verdicts, line_verdicts, shut, total_verdicts
from rootcollar.kernel.errors import NotCleared
from rootcollar.kernel.verdict import Level, Verdict

__all__ = ["Cleared", "clear", "still_standing"]


@dataclass(frozen=True, slots=True, eq=False)
class Cleared:
    """Lines of work that no known plan rule stops or asks about. Made only by weighing them again.

    Raises NotCleared, naming what stands, when a stop or an open question is found.
    """

    lines: tuple[Choice, ...]
    setting: Setting

    def __post_init__(self) -> None:
        """Weigh every line for itself, whatever was said of it before."""
        if standing := still_standing(self.lines, self.setting):
            raise NotCleared([f"{one.about}: {one.because} ({one.rule})" for one in standing])


def still_standing(lines: Sequence[Choice], setting: Setting) -> tuple[Verdict, ...]:
    """Return every stop and open question that a fresh weighing finds on the lines, their fallbacks and their sums."""
    found: list[Verdict] = []
    for line in lines:
        if line.option is None:
            found.append(Verdict(Level.STOP, "no way is open for it", about=line.stand.key))
            continue
        for option in line.options:
            species = setting.reference.species[line.stand.species]
            if gate := shut(option.way, species, line.stand, setting):
                found.append(Verdict(Level.STOP, gate.because, gate.would_win_if, about=line.stand.key))
            found += line_verdicts(option.way, species, line.stand, option.per_stem, setting)
    for said in (*total_verdicts(lines, setting).values(), *fallback_verdicts(lines, setting).values()):
        found += said
    return tuple(one for one in found if one.level >= Level.ASK)


def clear(choices: Sequence[Choice], setting: Setting) -> Cleared:
    """Return the lines that may be printed as work, cleared; the struck and the held are left out."""
    return Cleared(tuple(one for one in choices if one.is_work), setting)
