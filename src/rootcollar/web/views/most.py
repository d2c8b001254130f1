"""The working of what would make a dearer way win: the work, the mix or the price at which it costs no more."""

from __future__ import annotations

from dataclasses import replace

from rootcollar.choose import Choice, Way, expected, figures_of, most_to_win, replay_per_kill, wins_at
from rootcollar.kernel.errors import NotFound
from rootcollar.kernel.formula import watch
from rootcollar.kernel.units import convert
from rootcollar.web.desk import Open
from rootcollar.web.views.working import Drawer, Step, drawer_of, mean_step

__all__ = ["MOSTS", "most_drawer"]

MOSTS = {
    "minutes_at": "minutes a stem at which it would win", "mix_at": "mix a stem at which it would win",
    "price_at": "price of product at which it would win",
}  # fmt: skip
_BRINGS = {"minutes": "work", "mix": "product and carrier", "price": "product"}
_SHOWN = {
    "minutes": (1.0, "minutes a stem", "min"), "mix": (convert(1, "mL", "fl oz"), "fl oz a stem", "mL"),
    "price": (convert(1, "gal", "L"), "money a gallon", "money a litre"),
}  # fmt: skip


def most_drawer(here: Open, what: str, choice: Choice, way: Way) -> Drawer:
    """Return how the work, mix or price was worked out at which a way would cost no more than the chosen one.

    what: one of MOSTS. Raises NotFound where no amount above nothing would do.
    """
    setting, stand = here.setting, choice.stand
    figures = figures_of(way, stand, setting)
    with watch() as steps:
        first = replay_per_kill(choice.way, stand, setting)
        mine = replay_per_kill(way, stand, setting)
    found = wins_at(figures, way.visit.recipe, expected(first))
    one = next((each for each in found if f"{each.what}_at" == what), None)
    if one is None:
        raise NotFound("figure at which this way would win", what, [f"{each.what}_at" for each in found])
    with watch() as last:
        most_to_win(one.now, one.theirs, one.rest, one.part)
    times, unit, raw = _SHOWN[one.what]
    sources = setting.reference.sources
    drawer, end = drawer_of("", "", steps, sources), drawer_of("", "", last, sources)
    told = (
        mean_step("a stem killed, the chosen way", first),
        mean_step("a stem killed, this way", mine),
        Step(f"of it {_BRINGS[one.what]}", f"{one.part:.6g} money; all else {one.rest:.6g}"),
        *end.steps,
        Step("as shown", f"{one.most:.6g} {raw} = {one.most * times:.6g} {unit}"),
    )
    return replace(drawer, says=f"{one.words(one.most)}, to win", steps=(*drawer.steps, *told))
