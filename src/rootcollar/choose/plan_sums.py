"""What a plan for the whole property takes until the share is dead: each figure added up of its lines."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

import numpy as np

from rootcollar.choose.beside import line_side_m2
from rootcollar.choose.option import Choice
from rootcollar.choose.plans import PropertyPlan, extra_mix_price
from rootcollar.choose.prices import wage_per_h
from rootcollar.choose.setting import Setting
from rootcollar.choose.sums import line_mix_ml
from rootcollar.choose.visits import all_visits, day_money, money_to_share, stem_visits, unit_day_minutes, visits_of
from rootcollar.kernel.doubt import Worlds, sure
from rootcollar.kernel.formula import add_up, formula, note

__all__ = ["PLAN_FIGURES", "line_left", "line_product_ml", "line_side_to_share", "plan_figure"]


@formula("stems * (1 - kill) ** visits", gives="stems", source="ours", stems=(0, 10000), kill=(0.01, 1), visits=(1, 20))
def stems_left(stems: Worlds, kill: Worlds, visits: Worlds) -> Worlds:
    """Return the stems alive after some visits, at each of which the same share of those left dies.

    stems: at the start. kill: share dying of each visit. visits: how many.
    """
    found: Worlds = stems * (1 - kill) ** visits
    return found


@formula("mix_ml * products_pct / 100", gives="mL", source="ours", mix_ml=(0, 500000), products_pct=(0, 100))
def product_ml(mix_ml: Worlds, products_pct: float) -> Worlds:
    """Return the product as sold in a finished mix [mL]. products_pct: of all products in it [%]."""
    return mix_ml * products_pct / 100


@formula("extra * price", gives="money", source="ours", extra=(0, 12), price=(0, 1000))
def extra_mixes_money(extra: float, price: float) -> float:
    """Return what the mixes after the first cost [money]. extra: how many. price: of each [money]."""
    return extra * price


def line_left(line: Choice, setting: Setting) -> Worlds:
    """Return the stems of a line alive after all its visits. Raises ValueError for a line that is left."""
    return stems_left(line.stand.stems, line.per_stem.kill, visits_of(line, setting))


def line_product_ml(line: Choice, setting: Setting) -> Worlds:
    """Return the product as sold poured in all visits to a line [mL]. Raises ValueError for a line that is left."""
    poured = _to_share(line, line_mix_ml(line.stand.stems, line.per_stem.mix_ml), setting)
    return product_ml(poured, line.recipe.products_pct if line.recipe else 0.0)


def line_side_to_share(line: Choice, setting: Setting) -> Worlds:
    """Return the ground hit beside a line by all visits [m2]. Raises ValueError for a line that is left."""
    return _to_share(line, line_side_m2(line.stand.stems, line.per_stem.side_m2), setting)


def plan_figure(plan: PropertyPlan, what: str, setting: Setting) -> Worlds:
    """Return a figure of a plan. what: one of PLAN_FIGURES; units: of cost money, herbicide mL, side m2.

    Cost: of all visits, setting up and travel, and of the mixes after the first. Visits: to units, a unit as often as
    its line that needs it most. Years: one visit a year to a line, because only a season later one sees who survived
    (ours). Left: stems of stands without a way too. Mixes: of first ways, fallbacks aside.
    """
    return PLAN_FIGURES[what](plan, setting)


def _cost(plan: PropertyPlan, setting: Setting) -> Worlds:
    parts = [_named(one, money_to_share(one, setting), "money") for one in plan.lines]
    parts += [day_money(unit_day_minutes(one, setting), wage_per_h(setting)) for one in _by_unit(plan.lines).values()]
    extra = extra_mixes_money(max(len(plan.mixes) - 1, 0), extra_mix_price(setting))
    return add_up([*parts, sure(extra)], "money")


def _visits(plan: PropertyPlan, setting: Setting) -> Worlds:
    each = [_most_visits(key, lines, setting) for key, lines in _by_unit(plan.lines).items()]
    return _sum(each, "visits", "no line is done")


def _years(plan: PropertyPlan, setting: Setting) -> Worlds:
    return _most_visits("the property, one visit a year to a line (ours)", plan.lines, setting)


def _most_visits(of: str, lines: Sequence[Choice], setting: Setting) -> Worlds:
    most = sure(0.0)
    for one in lines:
        most = np.maximum(most, visits_of(one, setting))
    return note(f"most visits, {of}", "as often as the line that needs it most", most, "visits")


def _herbicide(plan: PropertyPlan, setting: Setting) -> Worlds:
    return _sum(
        [_named(one, line_product_ml(one, setting), "mL") for one in plan.lines if one.recipe],
        "mL",
        "no line has a mix",
    )


def _beside(plan: PropertyPlan, setting: Setting) -> Worlds:
    return _sum(
        [_named(one, line_side_to_share(one, setting), "m2") for one in plan.lines if one.recipe],
        "m2",
        "no line has a mix",
    )


def _left(plan: PropertyPlan, setting: Setting) -> Worlds:
    parts = [_named(one, line_left(one, setting), "stems") for one in plan.lines]
    parts += [
        note("stems of a stand without a way", one.stand.key, one.stand.stems, "stems") for one, _ in plan.without
    ]
    return _sum(parts, "stems", "no stems were counted")


def _mixes(plan: PropertyPlan, _: Setting) -> Worlds:
    names = ", ".join(one.product or one.formulation for one in plan.mixes) or "none"
    return note("mixes", names, sure(float(len(plan.mixes))), "mixes")


def _to_share(line: Choice, once: Worlds, setting: Setting) -> Worlds:
    return all_visits(once, stem_visits(line.per_stem.kill, visits_of(line, setting)))


def _named(line: Choice, figure: Worlds, gives: str) -> Worlds:
    return note(f"line {line.stand.key}", "all visits to it", figure, gives)


def _sum(parts: Sequence[Worlds], gives: str, nothing: str) -> Worlds:
    return add_up(parts, gives) if parts else note("none", nothing, sure(0.0), gives)


def _by_unit(lines: Sequence[Choice]) -> dict[str, list[Choice]]:
    found: dict[str, list[Choice]] = {}
    for one in lines:
        found.setdefault(one.stand.unit, []).append(one)
    return found


PLAN_FIGURES: Mapping[str, Callable[[PropertyPlan, Setting], Worlds]] = {
    "cost": _cost, "visits": _visits, "years": _years, "herbicide": _herbicide, "side": _beside, "left": _left,
    "mixes": _mixes,
}  # fmt: skip
