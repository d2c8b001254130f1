"""Figure a plot: how far a round plot reaches, on the level and along a slope, and what one stem on it stands for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from rootcollar.jobs.figure import Answer, System
from rootcollar.jobs.figure_area import slope_of
from rootcollar.jobs.figure_words import ground, length
from rootcollar.jobs.outcome import Outcome
from rootcollar.kernel.units import convert, show
from rootcollar.reference import Reference
from rootcollar.survey.design import PlotSize, fit_size, stands_for_per_acre
from rootcollar.survey.plots import one_radius_m, radius_m

__all__ = ["PlotRadiusAsk", "plot_radius"]

_IN = "A stem is in when its middle, at the ground, lies within the radius; measure each that is close (USFS-CSE)."
_ONE_WAY = (
    "This is the one radius for the tape laid on the ground, the same all round. The other way, each distance taken "
    "level, needs the level radius. Keep to one of them: at 50 % they differ by 12 % of area."
)
_EDGE = "A plot over the edge of the ground stays where it is: moved inward, it makes the count wrong."


@dataclass(frozen=True, slots=True)
class PlotRadiusAsk:
    """Which plot: its level area [m2], or the stems on an acre it is chosen for; one of them. slope: as `AreaAsk`."""

    given: Mapping[str, str]
    area_m2: float | None = None
    per_acre: float | None = None
    slope_pct: float | None = None
    slope_degrees: float | None = None
    system: System = "us"


def plot_radius(ask: PlotRadiusAsk, reference: Reference) -> Outcome[Answer]:
    """Return the radius of a round plot, along the slope where there is one. Raises Refusal for a cliff."""
    size = fit_size(ask.per_acre) if ask.per_acre is not None else None
    area = convert(1 / size.parts, "ac", "m2") if size else ask.area_m2 or 0.0
    slope = slope_of(ask.slope_pct, ask.slope_degrees, ask.given.get("slope", ""))
    level = radius_m(area)
    radius = level if slope is None else one_radius_m(level, slope)
    each = stands_for_per_acre(convert(area, "m2", "ac"))
    unit = "ft" if ask.system == "us" else "m"
    name = f"1/{size.parts} acre" if size else ask.given["plot"]
    where = "" if slope is None else f" along a slope of {ask.given['slope']} ({length(level, ask.system)} level)"
    return Outcome(Answer(
        question=f"How far does a round plot of {name} reach?",
        given=ask.given,
        says=f"{length(radius, ask.system)} from the middle{where}; one stem on it stands for "
        f"{show(each, 'stem')} on an acre",
        value=convert(radius, "m", unit), unit=unit,
        figures={"level_radius_m": level, "radius_m": radius, "area_m2": area, "stands_for_per_acre": each},
        details=tuple(_details(ask, size, area, slope)),
        assumed=() if slope is not None else ("level ground; --slope 30% where it is not, from about 10 %",),
        cautions=(_EDGE,),
        note="by plane geometry",
    ))  # fmt: skip


def _details(ask: PlotRadiusAsk, size: PlotSize | None, area_m2: float, slope: float | None) -> Iterator[str]:
    if size:
        fits = "" if size.fits else ", outside that: no usual plot comes nearer"
        yield (
            f"At {ask.given['per-acre']} stems an acre about {show(size.stems, 'stem', 2)} are expected on it; 5 to 15 "
            f"are wanted (from memory){fits}."
        )
    yield f"Its level area: {ground(area_m2, ask.system)}."
    yield _IN
    if slope is not None:
        yield _ONE_WAY
