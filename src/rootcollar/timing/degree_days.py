"""Warmth of a day above a threshold, by the four ways in use; a total is worth nothing without the name of its way."""

from __future__ import annotations

from math import asin, cos, pi

from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.formula import formula

_QUARTER = 4  # of the simple approximation

__all__ = ["above_c", "capped_c", "met_approximation_c", "simple_c", "sine_c"]


@formula(
    "maximum((max_c + min_c) / 2 - base_c, 0)",
    gives="degree-days",
    source="DDUC",
    min_c=(-20, 15),
    max_c=(15, 45),
    base_c=(0, 15),
)
def simple_c(min_c: float, max_c: float, base_c: float) -> float:
    """Return degree-days by the day's middle, none where it is below the threshold [degC days].

    min_c, max_c: of the day [degC]. base_c: the threshold [degC].
    """
    return max((max_c + min_c) / 2 - base_c, 0.0)


@formula(
    "(minimum(maximum(max_c, base_c), cap_c) + minimum(maximum(min_c, base_c), cap_c)) / 2 - base_c",
    gives="degree-days",
    source="DDUC",
    min_c=(-20, 15),
    max_c=(15, 45),
    base_c=(0, 15),
    cap_c=(25, 35),
)
def capped_c(min_c: float, max_c: float, base_c: float, cap_c: float) -> float:
    """Return degree-days with both ends of the day drawn to the thresholds first [degC days].

    min_c, max_c: of the day [degC]. base_c, cap_c: lower and upper threshold [degC].
    """
    high, low = (min(max(one, base_c), cap_c) for one in (max_c, min_c))
    return (high + low) / 2 - base_c


@formula(
    "where(min_c >= base_c, (max_c + min_c) / 2 - base_c, where(max_c <= base_c, 0,"
    " where((max_c + min_c) / 2 >= base_c, (max_c - base_c) / 2 - (base_c - min_c) / 4, (max_c - base_c) / 4)))",
    gives="degree-days",
    source="EIR",
    min_c=(-20, 15),
    max_c=(15, 45),
    base_c=(0, 25),
)
def met_approximation_c(min_c: float, max_c: float, base_c: float) -> float:
    """Return degree-days by the approximation of a national weather service [degC days].

    min_c, max_c: of the day [degC]. base_c: the threshold [degC].
    """
    middle = (max_c + min_c) / 2
    if min_c >= base_c:
        return middle - base_c
    if max_c <= base_c:
        return 0.0
    above = (max_c - base_c) / 2 - (base_c - min_c) / _QUARTER
    return above if middle >= base_c else (max_c - base_c) / _QUARTER


@formula(
    "where(min_c >= base_c, (max_c + min_c) / 2 - base_c, where(max_c <= base_c, 0,"
    " (((max_c + min_c) / 2 - base_c) * (pi / 2 - arcsin(minimum(maximum((2 * base_c - max_c - min_c)"
    " / maximum(max_c - min_c, 0.001), -1), 1))) + (max_c - min_c) / 2 * cos(arcsin(minimum(maximum("
    "(2 * base_c - max_c - min_c) / maximum(max_c - min_c, 0.001), -1), 1)))) / pi))",
    gives="degree-days",
    source="DDUC",
    min_c=(-20, 15),
    max_c=(16, 45),
    base_c=(0, 25),
)
def above_c(min_c: float, max_c: float, base_c: float) -> float:
    """Return degree-days above one threshold, the day taken as a sine [degC days].

    min_c, max_c: of the day [degC]. base_c: the threshold [degC].
    """
    middle, swing = (max_c + min_c) / 2, (max_c - min_c) / 2
    if min_c >= base_c:
        return middle - base_c
    if max_c <= base_c:
        return 0.0
    turn = asin((base_c - middle) / swing)
    return ((middle - base_c) * (pi / 2 - turn) + swing * cos(turn)) / pi


def sine_c(min_c: float, max_c: float, base_c: float, cap_c: float | None = None) -> float:
    """Return degree-days of a day taken as a sine, cut off flat at an upper threshold [degC days].

    min_c, max_c: of the day [degC]. base_c: lower threshold; cap_c: upper one, None where there is none [degC].
    Raises Refusal where the day's least is above its most, or the thresholds stand the wrong way round.
    """
    if min_c > max_c:
        raise Refusal(
            f"a day from {min_c:g} to {max_c:g} \u00b0C", limit="its least is above its most", do="Swap the two."
        )
    if cap_c is not None and cap_c <= base_c:
        raise Refusal(
            f"thresholds {base_c:g} and {cap_c:g} \u00b0C",
            limit="the upper one is not above the lower",
            do="Swap the two.",
        )
    more = 0.0 if cap_c is None else above_c(min_c, max_c, cap_c)
    return above_c(min_c, max_c, base_c) - more
