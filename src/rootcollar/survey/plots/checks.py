"""What is wrong with a survey as typed: every fault at once, by row."""

from __future__ import annotations

import math
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from shapely import Point, Polygon

from rootcollar.kernel.errors import BadInput, Fault
from rootcollar.survey.plots.plot import Counted, Plot

__all__ = ["Known", "check_survey"]

_STEEPEST_PCT = 200  # ours: two up for one along; a figure above it is a slip of typing


@dataclass(frozen=True, slots=True)
class Known:
    """What a survey is held against.

    species: the keys that may be counted. units: outline of each unit on the level map of the plots [m], None where
    it is not drawn. planned: every plot that was laid out; None where nobody wrote that down. left_out: those of them
    that were not visited, each with its reason.
    """

    species: Collection[str]
    units: Mapping[str, Polygon | None]
    planned: Collection[str] | None = None
    left_out: Mapping[str, str] = field(default_factory=dict)


def check_survey(plots: Sequence[Plot], counted: Sequence[Counted], known: Known) -> None:
    """Raise BadInput with every fault of a survey, each named by its row; return if there is none."""
    faults = [
        *_plots_twice(plots),
        *(fault for plot in plots for fault in _plot(plot, known)),
        *_slope_ways(plots),
        *_lonely(plots),
        *_missing(plots, known),
        *_counts(plots, counted, known),
        *_rings(plots, counted),
        *_heights(counted),
    ]
    if faults:
        raise BadInput(*faults)


def _row(one: Plot | Counted) -> str:
    return one.row or f"plot {one.key if isinstance(one, Plot) else one.plot}"


def _plots_twice(plots: Sequence[Plot]) -> Iterator[Fault]:
    first: dict[str, Plot] = {}
    for plot in plots:
        if plot.key in first:
            allowed = f"each plot once; {_row(first[plot.key])} has it already"
            yield Fault(f"plot {plot.key} twice", allowed, row=_row(plot), field="plot")
        first.setdefault(plot.key, plot)


def _plot(plot: Plot, known: Known) -> Iterator[Fault]:
    row = _row(plot)
    if plot.unit not in known.units:
        yield Fault(f"unit {plot.unit!r}", ", ".join(sorted(known.units)), row=row, field="unit")
    outline = known.units.get(plot.unit)
    if outline is not None and plot.east_m is not None and plot.north_m is not None:
        here = Point(plot.east_m, plot.north_m)
        if not outline.covers(here):
            found = f"plot {plot.key} {outline.distance(here):.3g} m outside {plot.unit}"
            yield Fault(found, "a centre inside its unit; a plot is never shifted, it is left out", row=row)
    if not 0 <= plot.slope_pct <= _STEEPEST_PCT:
        yield Fault(f"a slope of {plot.slope_pct:g} %", f"0 to {_STEEPEST_PCT} %", row=row, field="slope")
    if not plot.rings:
        yield Fault("no area", "an area for each class that was looked for", row=row, field="area")
    for ring in plot.rings:
        if not 0 < ring.area_m2 < math.inf:
            yield Fault(f"an area of {ring.area_m2:g} m2", "an area above 0", row=row, field="area")


def _slope_ways(plots: Sequence[Plot]) -> Iterator[Fault]:
    first = next((plot for plot in plots if plot.slope_way), None)
    for plot in plots:
        if plot.slope_pct > 0 and plot.slope_way is None:
            allowed = "how the circle was kept level: one larger radius, or level distances"
            yield Fault("a slope without its way", allowed, row=_row(plot), field="slope way")
        elif first and plot.slope_way and plot.slope_way != first.slope_way:
            allowed = f"{first.slope_way}, as {_row(first)}: one way a survey"
            yield Fault(f"{plot.slope_way}", allowed, row=_row(plot), field="slope way")


def _lonely(plots: Sequence[Plot]) -> Iterator[Fault]:
    strata: dict[str, dict[str, Plot]] = {}
    for plot in plots:
        if plot.stratum:
            strata.setdefault(plot.stratum, {})[plot.cluster or plot.key] = plot
    for name, members in strata.items():
        if len(members) == 1:
            (only,) = members.values()
            allowed = "two plots or more in each; join it to its nearest like, or visit another plot"
            yield Fault(f"stratum {name!r} with one plot", allowed, row=_row(only), field="stratum")
    bare = [plot for plot in plots if strata and not plot.stratum]
    yield from (Fault("nothing", ", ".join(sorted(strata)), row=_row(plot), field="stratum") for plot in bare)


def _missing(plots: Sequence[Plot], known: Known) -> Iterator[Fault]:
    seen = {plot.key for plot in plots}
    for key in sorted(set(known.planned or ()) - seen - set(known.left_out)):
        allowed = "a row for each plot laid out, 0 stems too, or the reason why it was left out"
        yield Fault("no row", allowed, row=f"plot {key}")
    if known.planned is not None:
        extra = [plot for plot in plots if plot.key not in known.planned]
        yield from (Fault(f"plot {plot.key}", "a plot that was laid out", row=_row(plot)) for plot in extra)


def _counts(plots: Sequence[Plot], counted: Sequence[Counted], known: Known) -> Iterator[Fault]:
    by_key = {plot.key: plot for plot in plots}
    seen: dict[tuple[str, str, tuple[float, float]], Counted] = {}
    for one in counted:
        row, plot = _row(one), by_key.get(one.plot)
        if plot is None:
            yield Fault(f"a count on plot {one.plot!r}", "a plot that has its own row", row=row, field="plot")
        elif one.band_cm not in {ring.band_cm for ring in plot.rings}:
            bands = ", ".join(f"{ring.band_cm[0]:g}-{ring.band_cm[1]:g} cm" for ring in plot.rings)
            yield Fault(f"the class {one.band_cm[0]:g}-{one.band_cm[1]:g} cm", bands or "none", row=row, field="class")
        if one.species not in known.species:
            yield Fault(f"species {one.species!r}", ", ".join(sorted(known.species)), row=row, field="species")
        if not 0 <= one.count < math.inf:
            yield Fault(f"{one.count:g} stems", "0 or more", row=row, field="count")
        same = (one.plot, one.species, one.band_cm)
        if same in seen:
            yield Fault("the same plot, species and class twice", f"once; {_row(seen[same])} has it", row=row)
        seen.setdefault(same, one)


def _rings(plots: Sequence[Plot], counted: Sequence[Counted]) -> Iterator[Fault]:
    bands = sorted({one.band_cm for one in counted})
    for plot in plots:
        rings = {ring.band_cm for ring in plot.rings}
        # A plot without any ring is told already; a class nobody looked for on a plot is unknown there, not none.
        for low, high in (band for band in bands if rings and band not in rings):
            found = f"no area for the class {low:g}-{high:g} cm, counted on other plots"
            yield Fault(found, "an area for it here too, or the plot left out with its reason", row=_row(plot))


def _heights(counted: Sequence[Counted]) -> Iterator[Fault]:
    first = next((one for one in counted if one.measured_at), None)
    for one in counted:
        if one.measured_at is None:
            allowed = "breast height or root collar: a diameter means nothing without its height"
            yield Fault("a class without the height it was read at", allowed, row=_row(one), field="measured at")
        elif first and one.measured_at != first.measured_at:
            allowed = f"{first.measured_at}, as {_row(first)}: heights are never mixed"
            yield Fault(f"{one.measured_at}", allowed, row=_row(one), field="measured at")
