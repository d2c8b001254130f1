"""Where a treatment meets its label's rates, in a sentence: how many stems on an acre, how much mix on an acre."""

from __future__ import annotations

from collections.abc import Sequence

from rootcollar.choose import Reach
from rootcollar.choose.reach import NO_LABEL
from rootcollar.kernel.rounding import to_step
from rootcollar.work import text

__all__ = ["reach_words"]

_FIGURES = 3  # ours: no dose is known finer


def reach_words(found: Sequence[Reach]) -> str:
    """Return the sentence for a line of work; nothing where it has no mix or no label.

    Stems and mix are rounded down. Where one of the rates cannot be reckoned no amount is given, and why is said.
    """
    if not found or any(one.most.words == NO_LABEL for one in found):
        return ""
    told = [
        f"{_whole(one.stems_per_acre)} such stems {one.most.when}" for one in found if one.stems_per_acre is not None
    ]
    open_ = [one.most.words for one in found if one.stems_per_acre is None]
    acre = [one.most.on_acre_ml for one in found if one.most.on_acre_ml is not None]
    stems = f"all the label gives on an acre goes into {', '.join(told)}" if told else ""
    if open_ or not acre:
        return "; ".join((*([stems] if stems else []), f"the rest is not known: {', '.join(open_)}"))
    where = "worked" if any(one.worked for one in found) else "of the unit"
    return f"{stems}; pour no more than {text.down(min(acre))} of this mix on any acre {where}"


def _whole(stems: float) -> str:
    """Return stems rounded down, to as many figures as a count can mean."""
    step = 10.0 ** max(len(f"{stems:.0f}") - _FIGURES, 0)
    return f"{to_step(stems, step, 'down'):,.0f}"
