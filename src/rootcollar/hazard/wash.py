"""Water to wash with and to flush eyes, by head count: what worker protection asks for, and what is carried."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from rootcollar.kernel.formula import formula, use
from rootcollar.kernel.units import convert
from rootcollar.reference import NamedFigure, named, numbers

__all__ = ["Wash", "carried_flush_ml", "flush_water_ml", "wash_needed", "wash_water_ml"]


@dataclass(frozen=True, slots=True)
class Wash:
    """What is brought. handlers_ml, workers_ml: wash water [mL]. flush_ml: for eyes, at the mixing site [mL].

    carried_ml: for eyes, by all who apply together [mL]. Both are 0 where no label asks for eyewear. with_it: soap,
    towels, change.
    """

    handlers_ml: float
    workers_ml: float
    flush_ml: float
    carried_ml: float
    with_it: tuple[str, ...]


@formula("people * each_ml", gives="mL", source="NJAC-7-30-12", people=(1, 20), each_ml=(1000, 20000))
def wash_water_ml(people: int, each_ml: float) -> float:
    """Return the clean water for people at the start of a work period [mL]. each_ml: for each of them [mL]."""
    return people * each_ml


@formula("people * each_ml", gives="mL", source="NJAC-7-30-12", people=(1, 20), each_ml=(100, 1000))
def carried_flush_ml(people: int, each_ml: float) -> float:
    """Return the eye flush that all who apply carry together [mL]. each_ml: in the flask of each [mL]."""
    return people * each_ml


@formula("flow_ml_per_s * flow_s", gives="mL", source="NJAC-7-30-12", flow_ml_per_s=(10, 100), flow_s=(300, 1200))
def flush_water_ml(flow_ml_per_s: float, flow_s: float) -> float:
    """Return the water of an eye flush [mL]. flow_ml_per_s: gentle flow [mL/s]. flow_s: how long [s]."""
    return flow_ml_per_s * flow_s


def wash_needed(
    handlers: int, appliers: int, workers: int, rows: Sequence[NamedFigure], *, mixing_eyes: bool, applying_eyes: bool
) -> Wash:
    """Return what is brought for a crew. handlers: who mix, apply or clean. workers: the others in treated growth.

    appliers: of the handlers, those who put it on. rows: the topic `wash` of the facts. mixing_eyes, applying_eyes:
    whether a label asks for eyewear in that task.
    """
    each = _ml(rows, "handler_gal", "gal")
    flow = convert(_figure(rows, "flush_gal_per_min"), "gal/min", "mL/s")
    seconds = convert(_figure(rows, "flush_min"), "min", "s")
    (listed,) = named(rows, "with_it")
    return Wash(
        wash_water_ml(handlers, each),
        wash_water_ml(workers, _ml(rows, "worker_gal", "gal")),
        flush_water_ml(flow, seconds) if mixing_eyes else 0.0,
        carried_flush_ml(appliers, _ml(rows, "flush_each_pt", "pt")) if applying_eyes else 0.0,
        listed.value if isinstance(listed.value, tuple) else (),
    )


def _figure(rows: Sequence[NamedFigure], name: str) -> float:
    return use(numbers(named(rows, name))[0])


def _ml(rows: Sequence[NamedFigure], name: str, unit: str) -> float:
    return convert(_figure(rows, name), unit, "mL")
