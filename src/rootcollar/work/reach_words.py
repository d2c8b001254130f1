"""Where a treatment meets its label's rates, in a sentence: how many stems on an acre, how much mix on an acre."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from rootcollar.choose import Reach
from rootcollar.choose.reach import NO_LABEL
from rootcollar.kernel.rounding import to_step
from rootcollar.work import text

__all__ = ["reach_pieces", "reach_words", "whole_stems"]

_FIGURES = 3  # ours: no dose is known finer


def reach_words(found: Sequence[Reach]) -> str:
    """Return the sentence for a line of work; nothing where it has no mix or no label."""
    return "".join(words for words, _ in reach_pieces(found))


def reach_pieces(found: Sequence[Reach]) -> Iterator[tuple[str, str]]:
    """Yield the sentence in pieces, each with the number it is: "0" or "1", the rate by whose stems; "pour"; or "".

    Stems and mix are rounded down. Where one of the rates cannot be reckoned no amount is given, and why is said.
    """
    if not found or any(one.most.words == NO_LABEL for one in found):
        return
    known = [(at, one) for at, one in enumerate(found) if one.stems_per_acre is not None]
    for at, one in known:
        yield (", " if (at, one) != known[0] else ""), ""
        yield whole_stems(one.stems_per_acre or 0.0), str(at)
        yield f"{' such stems an acre' if (at, one) == known[0] else ''} {one.most.when}", ""
    if known:
        yield "; ", ""
    acre = [one.most.on_acre_ml for one in found if one.most.on_acre_ml is not None]
    unknown = [one.most.words for one in found if one.stems_per_acre is None]
    if unknown or not acre:
        yield f"the rest is not known: {', '.join(unknown)}", ""
        return
    yield "pour no more than ", ""
    yield text.down(min(acre)), "pour"
    yield f" of this mix on any acre {'worked' if any(one.worked for one in found) else 'of the unit'}", ""


def whole_stems(stems: float) -> str:
    """Return stems rounded down, to as many figures as a count can mean."""
    step = 10.0 ** max(len(f"{stems:.0f}") - _FIGURES, 0)
    return f"{to_step(stems, step, 'down'):,.0f}"
