"""When a plant is easiest to find: while it is green and the natives around it are bare."""

from __future__ import annotations

from collections.abc import Sequence

from rootcollar.kernel.days import months, name_months
from rootcollar.reference import SeasonRow, Species

__all__ = ["easiest_to_find"]

_LIKE_NATIVES = "deciduous"  # a plant with leaves as long as most natives stands out in no season by its leaves


def easiest_to_find(species: Species, seasons: Sequence[SeasonRow]) -> str:
    """Return the months in which leaves alone show a plant, with why and who says so; "" where none do.

    seasons: of the reference. Source: its row of the late window, in which spray, too, reaches least that is wanted.
    """
    habit = species.leaf.value
    if habit == _LIKE_NATIVES:
        return ""
    rows = [
        row for row in seasons if row.effect == "best" and habit in row.leaf and "foliar" in row.methods and row.windows
    ]
    if not rows:
        return ""
    which = frozenset[int]().union(*(months(one) for row in rows for one in row.windows))
    whose = dict.fromkeys((rows[0].source, str(rows[0].mark)))  # ours is both its source and its mark
    return f"{name_months(which)}: it is green and most natives are bare ({', '.join(whose)})"
