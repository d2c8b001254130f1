"""Figure an area: a plain shape by the tape, and what a slope makes of it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from rootcollar.jobs.figure import Answer, System
from rootcollar.jobs.figure_words import ground
from rootcollar.jobs.outcome import Outcome
from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.units import convert, show
from rootcollar.reference import Reference
from rootcollar.site import (
    along_slope_m2,
    circle_m2,
    level_m2,
    oval_m2,
    rectangle_m2,
    slope_pct_from_degrees,
    triangle_m2,
)

__all__ = ["AreaAsk", "Shape", "area", "measured_m2", "slope_of"]

Shape = Literal["rectangle", "circle", "triangle", "oval", "strip"]

_STEEPEST_PCT = 200  # ours: twice as high as far; nobody sprays a cliff
_WHICH = (
    "Maps, deeds and satellite tracks give the level area (practice of surveying). Which of the two a label's acre "
    "means, no label or source read for this says. The level one is the smaller: a limit by the acre that is kept on "
    "it is kept on the other too (ours)."
)
_COVER = "What it takes to wet the plants goes by the ground along the slope (ours)."
_UNEVEN = "Uneven ground: cut it into rectangles and triangles, and add them up."


@dataclass(frozen=True, slots=True)
class AreaAsk:
    """Which shape. sizes_m: length and width, one diameter, three sides [m].

    slope_pct: rise in a hundred [%], or slope_degrees; both None for level ground.
    """

    given: Mapping[str, str]
    shape: Shape
    sizes_m: tuple[float, ...]
    slope_pct: float | None = None
    slope_degrees: float | None = None
    system: System = "us"


def area(ask: AreaAsk, reference: Reference) -> Outcome[Answer]:
    """Return the area; on a slope both, along it and level. Raises Refusal for sides that do not close and cliffs."""
    taped = _taped_m2(ask)
    slope = slope_of(ask.slope_pct, ask.slope_degrees, ask.given.get("slope", ""))
    level = taped if slope is None else level_m2(taped, slope)
    unit = "ac" if ask.system == "us" else "m2"
    says = ground(taped, ask.system)
    if slope is not None:
        says = f"{ground(level, ask.system)} level, as on a map; {ground(taped, ask.system)} along the slope"
    return Outcome(Answer(
        question=f"How large is a {ask.shape} of {', '.join(ask.given.values())}?",
        given=ask.given,
        says=says,
        value=convert(level, "m2", unit), unit=unit,
        figures={"level_m2": level, "along_slope_m2": taped},
        details=() if slope is None else _sloping(taped, level, slope, ask.system),
        assumed=_assumed(ask, slope),
        cautions=(_UNEVEN,),
        note="by plane geometry",
    ))  # fmt: skip


def measured_m2(sizes: tuple[float, ...]) -> float:
    """Return an area that was told as one figure [m2], or as two sides [m]."""
    return sizes[0] if len(sizes) == 1 else rectangle_m2(*sizes)


def _taped_m2(ask: AreaAsk) -> float:
    if ask.shape == "circle":
        return circle_m2(ask.sizes_m[0])
    one, other, *third = ask.sizes_m
    if ask.shape == "oval":
        return oval_m2(one, other)
    if not third:
        return rectangle_m2(one, other)
    if 2 * max(ask.sizes_m) >= sum(ask.sizes_m):
        raise Refusal(
            f"a triangle of sides {ask.given['sides']}",
            limit="the longest side is as long as the other two together, or longer, so they do not close",
            do="Measure the sides again.",
        )
    return triangle_m2(one, other, third[0])


def slope_of(slope_pct: float | None, slope_degrees: float | None, said: str) -> float | None:
    """Return a slope [%] told as rise in a hundred or in degrees; None where none was. Raises Refusal for a cliff."""
    slope = slope_pct if slope_degrees is None else slope_pct_from_degrees(slope_degrees)
    if slope is not None and slope > _STEEPEST_PCT:
        raise Refusal(
            f"a slope of {said}",
            limit=f"steeper than {_STEEPEST_PCT} % is a cliff",
            do="Give the rise in a hundred, such as 30%, or degrees, such as 17 deg.",
        )
    return slope


def _sloping(taped_m2: float, level: float, slope_pct: float, system: System) -> tuple[str, ...]:
    less = show(100 * (1 - level / taped_m2), "%", 2)
    on_map = ground(along_slope_m2(taped_m2, slope_pct), system)
    return (
        f"Slope {show(slope_pct, '%')}: the level area is {less} less than the ground along the slope.",
        f"If the sizes came off a map, they are level already, and the ground along the slope is {on_map}.",
        _WHICH,
        _COVER,
    )


def _assumed(ask: AreaAsk, slope: float | None) -> tuple[str, ...]:
    if slope is None:
        return ("level ground; --slope 30% where it is not", *_shape(ask))
    return ("measured with the tape along the ground, on an even slope", *_shape(ask))


def _shape(ask: AreaAsk) -> tuple[str, ...]:
    return {"oval": ("an ellipse, measured across at the widest both ways",), "rectangle": ("square corners",)}.get(
        ask.shape, ()
    )
