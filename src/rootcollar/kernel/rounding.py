"""The one rounding function: to a step a person can measure, in the direction that keeps a limit."""

from __future__ import annotations

import math
from typing import Literal

__all__ = ["to_step"]

_HAIR = 1e-9  # a value this close to a step, in steps, is that step: floating point is not a measurement


def to_step(value: float, step: float, direction: Literal["nearest", "down", "up"] = "nearest") -> float:
    """Return value as a whole number of steps (same unit).

    nearest: halves go up, as people round. down never passes a maximum, up never falls short of a need.
    Both hold to within a hair (1e-9 steps), so compare with a maximum to within one. Raises ValueError unless step > 0
    and both are finite.
    """
    if not (step > 0 and math.isfinite(step) and math.isfinite(value / step)):
        raise ValueError(f"want a finite value and a step above 0, got {value} and {step}")
    steps = value / step
    whole = {
        "nearest": math.floor(steps + 0.5 + _HAIR),
        "down": math.floor(steps + _HAIR),
        "up": math.ceil(steps - _HAIR),
    }[direction]
    return whole * step
