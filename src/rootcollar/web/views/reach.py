"""How far a line's mix goes under its label's rates: the sentence with numbers that open, and their working."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from rootcollar.choose import Choice, Reach
from rootcollar.choose.reach import reach_again
from rootcollar.kernel.errors import NotFound
from rootcollar.kernel.formula import watch
from rootcollar.kernel.units import convert
from rootcollar.web.desk import Open
from rootcollar.web.views.working import Drawer, Run, Step, drawer_of, line_of
from rootcollar.work import text
from rootcollar.work.reach_words import reach_pieces, whole_stems

__all__ = ["reach_drawer", "reach_runs"]

_POUR = "pour"


def reach_runs(line: Choice, found: Sequence[Reach]) -> tuple[Run, ...]:
    """Return the sentence in runs, its numbers open; none where the line has no mix or no label."""
    key, size = line.stand.key, text.size(line.stand.band_cm)
    return tuple(
        Run(words, f"/choose/most/{number}/{key}", f"at most, for {size}") if number else Run(words)
        for words, number in reach_pieces(found)
    )


def reach_drawer(here: Open, number: str, key: str) -> Drawer:
    """Return how a number of the sentence was worked out. number: as `reach_pieces` has it.

    Raises NotFound for a line or a number that is not there.
    """
    line = line_of(here, key, "mix")
    choices = here.plan.choices if here.plan else ()
    beside = [one for one in choices if one.stand.unit == line.stand.unit]
    with watch() as steps:
        found = reach_again(line, beside, here.setting)
    drawer = drawer_of("", "", steps, here.setting.reference.sources)
    if number == _POUR and (acre := [one.most.on_acre_ml for one in found if one.most.on_acre_ml is not None]):
        least = min(acre)
        each = f"the least of {', '.join(f'{one:.6g}' for one in acre)} = {least:.6g} mL on an acre"
        says, gallons = f"{text.down(least)} of this mix on an acre, at most", f"{convert(least, 'mL', 'gal'):.6g} gal"
        ends = (Step("the least", each), Step("rounded down", f"{gallons}, to what a jug shows = {text.down(least)}"))
        return replace(drawer, says=says, steps=(*drawer.steps, *ends))
    if number.isdecimal() and int(number) < len(found) and (stems := found[int(number)].stems_per_acre) is not None:
        says = f"{whole_stems(stems)} such stems an acre {found[int(number)].most.when}, at most"
        end = Step("rounded down", f"{stems:.6g} stems on an acre, to three figures = {whole_stems(stems)}")
        return replace(drawer, says=says, steps=(*drawer.steps, end))
    raise NotFound("number of what goes on an acre", number, ["0", "1", _POUR])
