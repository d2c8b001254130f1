"""Amounts of the bench in both systems, the asked one first: ground, output, flow, weight, length, speed and time."""

from __future__ import annotations

from rootcollar.jobs.figure import System
from rootcollar.kernel.units import convert, show

__all__ = ["flow", "ground", "length", "output", "speed", "time", "weight"]

_SMALL_M2 = convert(1 / 10, "ac", "m2")  # below, acres are hard to picture: square feet come first


def ground(area_m2: float, system: System) -> str:
    """Return an area [m2]: `0.168 ac (7,298 sq ft; 678 m2)`."""
    acres, feet = (show(convert(area_m2, "m2", unit), unit) for unit in ("ac", "sq ft"))
    metric = show(convert(area_m2, "m2", "ha"), "ha") if area_m2 >= convert(1, "ha", "m2") else show(area_m2, "m2")
    if system == "metric":
        return f"{metric} ({acres}; {feet})"
    return f"{feet} ({acres}; {metric})" if area_m2 < _SMALL_M2 else f"{acres} ({feet}; {metric})"


def output(l_per_ha: float, system: System) -> str:
    """Return a volume on an area [L/ha]: `25 gal/ac (234 L/ha)`."""
    return _both(l_per_ha, "L/ha", ("gal/ac", "L/ha"), system)


def flow(ml_per_s: float, system: System) -> str:
    """Return a flow [mL/s]: `0.25 gal/min (0.946 L/min)`."""
    return _both(ml_per_s, "mL/s", ("gal/min", "L/min"), system)


def weight(kg: float, system: System) -> str:
    """Return a weight [kg]: `33.4 lb (15.1 kg)`."""
    return _both(kg, "kg", ("lb", "kg"), system)


def length(metres: float, system: System) -> str:
    """Return a length [m]: `56.7 ft (17.3 m)`."""
    return _both(metres, "m", ("ft", "m"), system)


def speed(m_per_s: float, system: System) -> str:
    """Return a speed [m/s]: `2.01 mph (0.899 m/s)`."""
    return _both(m_per_s, "m/s", ("mph", "m/s"), system)


def time(seconds: float) -> str:
    """Return a time [s] as a person reads it off a watch: `75 s`, `26.7 min`, `2.5 h`."""
    if seconds < convert(2, "min", "s"):
        return show(seconds, "s")
    return (
        show(convert(seconds, "s", "min"), "min")
        if seconds < convert(2, "h", "s")
        else show(convert(seconds, "s", "h"), "h")
    )


def _both(value: float, unit: str, units: tuple[str, str], system: System) -> str:
    us, metric = (show(convert(value, unit, one), one) for one in units)
    return f"{us} ({metric})" if system == "us" else f"{metric} ({us})"
