"""Figure plots: how many to count, for a mean within so much of the truth, as sure as wanted."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from math import inf

from rootcollar.jobs.figure import Answer, System
from rootcollar.jobs.figure_words import length
from rootcollar.jobs.outcome import Outcome
from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.formula import note
from rootcollar.kernel.units import show
from rootcollar.reference import Reference
from rootcollar.survey.design import PlotsNeeded, grid_spacing_m, plots_that_fit, spread_pct
from rootcollar.survey.design import plots_needed as needed

__all__ = ["PlotsNeededAsk", "plots_needed"]

_MOST_PLOTS = 5000  # ours: more than anybody counts; the wish is then out of reach
_FEW = 10  # ours: from fewer plots a spread is a rough guess
_CLUMPED = (
    "Clumped stems: with 10 to 20 plots an interval by t holds the truth less often than it says, about 90 % of times "
    "instead of 95 (our own trial on the mapped wood LONGLEAF, reckoned)."
)
_RANDOM = (
    "Plots laid at random or on a grid with a random start; plots laid where it looks typical tell nothing of this."
)


@dataclass(frozen=True, slots=True)
class PlotsNeededAsk:
    """What is wanted. spread_pct: standard deviation over mean of plots [%], or counts of a first walk; one of them.

    within_pct: of the mean [%]. sure_pct: [%]. plot_m2, ground_m2: level areas [m2], None where not told.
    """

    given: Mapping[str, str]
    within_pct: float
    sure_pct: float
    spread_pct: float | None = None
    counts: tuple[int, ...] = ()
    plot_m2: float | None = None
    ground_m2: float | None = None
    system: System = "us"


def plots_needed(ask: PlotsNeededAsk, reference: Reference) -> Outcome[Answer]:
    """Return how many plots to count. Raises Refusal for a first walk that found nothing, or thousands of plots."""
    spread = _spread(ask)
    fit = plots_that_fit(ask.ground_m2, ask.plot_m2) if ask.ground_m2 and ask.plot_m2 else inf
    if (spread / ask.within_pct) ** 2 > _MOST_PLOTS and fit > _MOST_PLOTS:
        raise Refusal(
            f"a mean within {show(ask.within_pct, '%')} where plots differ by {show(spread, '%')}",
            limit=f"that takes more than {_MOST_PLOTS:,} plots",
            do="Ask for less closeness, larger plots, or split the ground by how dense it is.",
        )
    found = needed(spread, ask.within_pct, ask.sure_pct, fit)
    sure = f"{show(ask.sure_pct, '%')} sure"
    whole = ", every plot that fits: count them all" if found.whole else ""
    return Outcome(Answer(
        question=f"How many plots for a mean within {show(ask.within_pct, '%')} of the truth?",
        given=ask.given,
        says=f"{found.plots:,} plots for a mean within {show(ask.within_pct, '%')}, {sure}{whole}",
        value=float(found.plots), unit="plots",
        figures={"plots": float(found.plots), "spread_pct": spread, "t": found.t},
        details=tuple(_details(ask, found)),
        assumed=tuple(_assumed(ask, spread, fit)),
        cautions=(_RANDOM, _CLUMPED),
        note="to plan with; how close the count came, the counted plots tell",
    ))  # fmt: skip


def _spread(ask: PlotsNeededAsk) -> float:
    if ask.spread_pct is not None:
        return ask.spread_pct
    if not sum(ask.counts):
        raise Refusal(
            "a first walk that found no stem",
            limit="how much plots differ cannot be told from it",
            do="Take larger plots or more of them, or give --spread.",
        )
    found = spread_pct(ask.counts)
    if not found:
        raise Refusal(
            "plots that all hold the same",
            limit="so few plots tell no spread",
            do="Count more plots, or give --spread.",
        )
    return note("spread", f"standard deviation over mean of {len(ask.counts)} plots", found, "%")


def _details(ask: PlotsNeededAsk, found: PlotsNeeded) -> Iterator[str]:
    if ask.ground_m2 and not found.whole:
        spacing = grid_spacing_m(ask.ground_m2, found.plots)
        yield f"On a square grid: {length(spacing, ask.system)} from plot to plot, from a start picked by chance."
    yield "Half the distance from the truth takes about four times the plots."
    yield "Splitting the ground into dense and sparse parts first, and counting each, takes fewer."


def _assumed(ask: PlotsNeededAsk, spread: float, fit: float) -> Iterator[str]:
    if ask.counts:
        few = ", few: a rough guess" if len(ask.counts) < _FEW else ""
        yield f"plots differ by {show(spread, '%')} of their mean, from {len(ask.counts)} plots{few}"
    else:
        yield f"plots differ by {show(spread, '%')} of their mean; a first walk of ten plots tells it better"
    if "sure" not in ask.given:
        yield f"{show(ask.sure_pct, '%')} sure; --sure for another"
    if fit == inf:
        yield "ground so large that the plots cover next to none of it; with --plot and --ground it takes fewer"
