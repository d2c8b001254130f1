"""From a volume to loads and to the marks of a jug: what every question that ends in pouring shares."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from rootcollar.jobs.figure import System, volume
from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.formula import watch
from rootcollar.kernel.rounding import to_step
from rootcollar.kernel.units import convert, show
from rootcollar.mix import Limits, Recipe, card, plan_loads, smallest_batch_ml

__all__ = ["cut", "jug_steps", "least_ml", "true_words"]

# Ours: the finest mark a tank of a gallon and more, and a bottle, is filled to [mL]; and when it is too often.
_TANK_STEP_ML: Mapping[System, float] = {"us": convert(4, "fl oz", "mL"), "metric": 100.0}
_BOTTLE_STEP_ML: Mapping[System, float] = {"us": convert(1 / 4, "fl oz", "mL"), "metric": 10.0}
_TANK_ML = convert(1, "gal", "mL")
_MOST_LOADS = 1000


def cut(total_ml: float, tank_ml: float | None, system: System, smallest_ml: float = 0.0) -> tuple[float, ...]:
    """Return the loads of a volume [mL], full ones first; the volume itself where no tank was named [mL].

    smallest_ml: the smallest batch that can be measured [mL]; a last load beside full ones is raised to it.
    """
    if tank_ml is None:
        return (total_ml,)
    if total_ml > _MOST_LOADS * tank_ml:
        raise Refusal("loads", limit=f"more than {_MOST_LOADS} of them", do="Give a larger tank or a smaller amount.")
    step_ml = (_TANK_STEP_ML if tank_ml >= _TANK_ML else _BOTTLE_STEP_ML)[system]
    full_ml = to_step(tank_ml, step_ml, "down")
    several = total_ml > full_ml >= to_step(smallest_ml, step_ml, "up")
    return plan_loads(total_ml, tank_ml, step_ml, smallest_ml if several else 0.0).volumes_ml


def least_ml(recipe: Recipe, limits: Limits, system: System) -> float:
    """Return the smallest batch that a jug can measure [mL]."""
    with watch():  # kept apart: it is a test of the last load, no step towards the answer
        return smallest_batch_ml(recipe, limits, system)


def jug_steps(
    recipe: Recipe, loads: Sequence[float], limits: Limits, system: System, *, counted: bool
) -> tuple[str, ...]:
    """Return what to pour for each different load, in jug marks with the true strength. counted: say how many."""
    steps: list[str] = []
    for load_ml in dict.fromkeys(loads):
        made = card(recipe, load_ml, limits, system)
        times = loads.count(load_ml)
        head = f"{times} load{'s' if times > 1 else ''} of {volume(load_ml, system)}: " if counted else ""
        steps.append(head + " ".join(made.steps) + true_words(made.true_pct, recipe.strength_pct))
    return tuple(steps)


def true_words(true_pct: float, pct: float) -> str:
    """Return the strength that the marks come to, in a sentence; nothing for an undiluted product."""
    return "" if pct >= 100 else f" By these marks: {show(true_pct, '%')}."
