"""What happens with what is cut: fruit bagged, rooting pieces off the soil, slash laid, nothing treated burned."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from rootcollar.choose import Choice, Option, Setting
from rootcollar.kernel.doubt import best
from rootcollar.mix.recipe import sides
from rootcollar.reference import Practice, Species
from rootcollar.work import text
from rootcollar.work.printed import quoted

__all__ = ["CUTTING", "after_cut", "bags_for"]

CUTTING = frozenset({"cut", "cut_stump", "vine_cut", "mow", "pull"})
_ROOTS_AGAIN = frozenset({"layering", "fragments"})  # agents of dispersal: tips or pieces that root where they lie
_FIREWOOD = "food_and_stock.firewood_note"


def after_cut(option: Option, setting: Setting) -> tuple[str, ...]:
    """Return what to do with what a way cuts from a stand, in sentences with their source; none where nothing is cut.

    Fruit that nobody has looked for is looked for first, never taken as none.
    """
    ways = (replace(option.way, treatment=(one,)) for one in option.way.treatment if one.method in CUTTING)
    return tuple(words for way in ways for words in _said(replace(option, way=way), way.visit.method, setting))


def _said(option: Option, method: str, setting: Setting) -> Iterator[str]:
    habits = {key: one for key, one in setting.reference.practice.items() if method in one.methods}
    fruiting, species = option.stand.fruiting, setting.reference.species[option.stand.species]
    if fruiting is not False:
        look = "" if fruiting else "Nobody has said whether it fruits: look first. "
        yield from (
            f"{look if key == 'bag_fruit' else ''}{words}" for key, words in _habit(habits, "bag_fruit", "drag_none")
        )
    yield from (words for _, words in _habit(habits, "lay_slash", "leave_hanging"))
    yield from _rooting(species, method, habits, setting)
    if option.way.visit.recipe is not None:
        yield from (words for _, words in _habit(habits, "no_fire"))
        for one in sides(option.way.visit.recipe):
            sheet = setting.sheet(one.product)
            yield f"Firewood, {one.product or one.formulation}: {quoted(sheet, _FIREWOOD)}."


def _rooting(species: Species, method: str, habits: dict[str, Practice], setting: Setting) -> Iterator[str]:
    """Yield what keeps cut pieces from rooting: what a source says of the plant, else the habit where it can root."""
    told = setting.reference.methods[method].rows("rerooting", species=species.key)
    if told:
        yield from (f"{str(one.value).capitalize()} ({one.mark} [{one.source}])." for one in told)
    elif _ROOTS_AGAIN & set(species.dispersal.value):
        yield from (words for _, words in _habit(habits, "off_soil"))
    elif species.growth_form == "vine":
        yield from (
            f"Whether it roots again from pieces is not known: {words}" for _, words in _habit(habits, "off_soil")
        )


def _habit(habits: dict[str, Practice], *keys: str) -> Iterator[tuple[str, str]]:
    for key in keys:
        if key in habits:
            yield key, f"{habits[key].words.rstrip('.')} ({habits[key].mark})."


def bags_for(lines: Sequence[Choice], setting: Setting) -> tuple[str, ...]:
    """Return what bags for fruit go along for, in words, a line each: of lines that cut and bear fruit, or may."""
    return tuple(
        f"Bags and ties for fruit: {setting.reference.species[one.stand.species].common_name}, "
        f"{text.size(one.stand.band_cm)}, about {best(one.stand.stems):,.0f} stems"
        + ("" if one.stand.fruiting else ", if they fruit: nobody has said")
        for one in lines
        if one.stand.fruiting is not False and any(CUTTING & set(option.way.methods) for option in one.options)
    )
