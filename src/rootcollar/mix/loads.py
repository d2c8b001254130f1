"""Loads: how often a sprayer or bottle is filled, how much each time, and what it weighs."""

from __future__ import annotations

from dataclasses import dataclass

from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.formula import add_up, formula, note
from rootcollar.kernel.rounding import to_step
from rootcollar.kernel.units import convert, show

__all__ = [
    "Loads", "full_load_ml", "load_kg", "mix_density_kg_per_l", "plan_loads", "tank_by_weight_ml", "to_mark_ml",
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class Loads:
    """Volumes of the loads [mL], full ones first, the partial one last: it is mixed last, when the need is known."""

    volumes_ml: tuple[float, ...]

    @property
    def total_ml(self) -> float:
        """All loads together [mL]."""
        return sum(self.volumes_ml)


def plan_loads(need_ml: float, tank_ml: float, step_ml: float, least_ml: float = 0.0) -> Loads:
    """Return the loads for a need: every load a whole number of steps, none above the tank, the sum not below the need.

    need_ml: finished mix needed [mL]. tank_ml: what is filled each time [mL]. step_ml: the finest mark to fill to [mL].
    least_ml: the smallest batch that can be measured [mL]; a smaller last load is raised to it. Raises Refusal when the
    need is not above 0, or the tank holds less than one step or than the smallest batch.
    """
    if not need_ml > 0:
        raise Refusal("loads", limit="there is nothing to mix", do="Give an amount above 0")
    full = full_load_ml(tank_ml, step_ml)
    least = to_step(least_ml, step_ml, "up")
    if not full > 0 or full < least:
        raise Refusal(
            f"a tank of {show(convert(tank_ml, 'mL', 'fl oz'), 'fl oz')}",
            limit="it holds less than can be measured",
            do="Give the tank's mark, such as 4 gal",
        )
    steps, per_load = round(to_mark_ml(need_ml, step_ml) / step_ml), round(full / step_ml)
    loads = [full] * (steps // per_load)
    rest = steps % per_load
    if rest:
        says = f"the rest, {rest} * {step_ml:.6g}, or else the smallest batch, {least:.6g}"
        loads.append(note("last load", says, max(rest * step_ml, least), "mL", "ours"))
    add_up(loads, "mL", "all loads")
    return Loads(tuple(loads))


@formula(
    "floor(tank_ml / step_ml + 1e-9) * step_ml",
    gives="mL",
    source="ours",
    tank_ml=(700.3, 20000),
    step_ml=(29.6, 236.6),
)
def full_load_ml(tank_ml: float, step_ml: float) -> float:
    """Return a full load [mL]: whole marks, never above the tank. tank_ml: what is filled at most. step_ml: a mark."""
    return to_step(tank_ml, step_ml, "down")


@formula(
    "ceil(need_ml / step_ml - 1e-9) * step_ml", gives="mL", source="ours", need_ml=(700.3, 50000), step_ml=(29.6, 236.6)
)
def to_mark_ml(need_ml: float, step_ml: float) -> float:
    """Return a need in whole marks of the tank [mL], never below it. need_ml: wanted. step_ml: a mark."""
    return to_step(need_ml, step_ml, "up")


@formula(
    "pct / 100 * product_kg_per_l + (1 - pct / 100) * diluent_kg_per_l",
    gives="kg/L",
    source="arithmetic",
    pct=(0, 100),
    product_kg_per_l=(0.85, 1.4),
    diluent_kg_per_l=(0.75, 1),
)
def mix_density_kg_per_l(pct: float, product_kg_per_l: float, diluent_kg_per_l: float) -> float:
    """Return the density of a mix [kg/L]; a strong mix is heavier than its diluent.

    pct: product in it [%]. product_kg_per_l, diluent_kg_per_l: densities [kg/L].
    """
    return pct / 100 * product_kg_per_l + (1 - pct / 100) * diluent_kg_per_l


@formula(
    "volume_l * density_kg_per_l + empty_kg",
    gives="kg",
    source="VADWR",
    volume_l=(0.5, 25),
    density_kg_per_l=(0.75, 1.4),
    empty_kg=(0, 8),
)
def load_kg(volume_l: float, density_kg_per_l: float, empty_kg: float) -> float:
    """Return what a full sprayer weighs [kg]. volume_l: mix [L]. density_kg_per_l: of it. empty_kg: the sprayer."""
    return volume_l * density_kg_per_l + empty_kg


@formula(
    "1000 * maximum(carry_kg - empty_kg, 0) / density_kg_per_l",
    gives="mL",
    source="VADWR",
    carry_kg=(5, 30),
    empty_kg=(0, 8),
    density_kg_per_l=(0.75, 1.4),
)
def tank_by_weight_ml(carry_kg: float, empty_kg: float, density_kg_per_l: float) -> float:
    """Return the most mix a person carries [mL]: what is left of the weight after the empty sprayer."""
    return 1000 * max(carry_kg - empty_kg, 0.0) / density_kg_per_l
