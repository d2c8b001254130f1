"""Figure stems: stems on an acre, and in all, from counts on plots laid at random."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from math import inf

from rootcollar.jobs.figure import Answer, System
from rootcollar.jobs.outcome import Outcome
from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.formula import unwatched
from rootcollar.kernel.units import convert, show
from rootcollar.reference import Reference
from rootcollar.survey.design import plots_that_fit
from rootcollar.survey.estimate import limits, usual
from rootcollar.survey.simple import Simple, density_per_acre, simple_random, total_stems

__all__ = ["StemsAsk", "stems"]

_BAND_PCT = 80.0  # the middle of the doubt that every answer's low and high show: 10 to 90 %
_SURE_PCT = 95.0  # practice: what most surveys report
_ONE_SIDED_PCT = 95.0  # of the most that goes with none found (practice)
_CLUMPED = 2.0  # ours: variance over mean from which clumping is told
_HAIR = 1e-9  # plots that fit to within this fit: floating point is not ground
_MANY = 30  # ours: with so many plots the interval is not much off
_CHOSEN = "Plots laid where it looks typical, or moved to where the stems are, tell nothing of the whole."
_DETECTED = "Every stem on a plot was seen: what was missed is missing here too."


@dataclass(frozen=True, slots=True)
class StemsAsk:
    """What was counted: stems on each plot; level area of one plot and of all the ground [m2], None where not told."""

    given: Mapping[str, str]
    counts: tuple[int, ...]
    plot_m2: float
    ground_m2: float | None = None
    system: System = "us"


def stems(ask: StemsAsk, reference: Reference) -> Outcome[Answer]:
    """Return the stems on an acre with their interval, and in all. Raises Refusal for more plots than fit."""
    fit = plots_that_fit(ask.ground_m2, ask.plot_m2) if ask.ground_m2 else inf
    if len(ask.counts) > fit * (1 + _HAIR):
        raise Refusal(
            f"{len(ask.counts)} plots of {ask.given['plot']} on {ask.given['ground']}",
            limit=f"only {fit:.3g} fit",
            do="Give the area of one plot with --plot and of all the ground with --ground.",
        )
    found = simple_random(ask.counts, _SURE_PCT, fit)
    with unwatched():  # the same once more, for the band
        band = simple_random(ask.counts, _BAND_PCT, fit)
    plot_ac = convert(ask.plot_m2, "m2", "ac")
    density = density_per_acre(found.mean, plot_ac)
    figures = {
        "mean_per_plot": found.mean, "low_95_per_acre": found.low / plot_ac, "high_95_per_acre": found.high / plot_ac,
    }  # fmt: skip
    total = None if ask.ground_m2 is None else total_stems(density, convert(ask.ground_m2, "m2", "ac"))
    return Outcome(Answer(
        question="How many stems stand here?",
        given=ask.given,
        says=_says(found, plot_ac, total, ask.ground_m2),
        value=density, unit="stems/ac", low=band.low / plot_ac, high=_high(band) / plot_ac,
        figures=figures if total is None else {**figures, "total_stems": total},
        details=(*_details(found, plot_ac), *_best_covered(found, ask)),
        assumed=tuple(_assumed(ask)),
        cautions=(_CHOSEN, *_wary(found, len(ask.counts) >= fit * (1 - _HAIR))),
        note=f"{found.kind}, {found.plots} plots",
    ))  # fmt: skip


def _high(found: Simple) -> float:
    return found.high if found.most_of_none is None else found.most_of_none


def _says(found: Simple, plot_ac: float, total: float | None, ground_m2: float | None) -> str:
    ground_ac = convert(ground_m2 or 0.0, "m2", "ac")
    if found.most_of_none is not None:
        most = found.most_of_none / plot_ac
        whole = "" if total is None else f", {_many(most * ground_ac)} in all"
        return (
            f"None found on {found.plots} plots; up to {_many(most)} stems on an acre{whole} may stand unfound "
            f"({show(_ONE_SIDED_PCT, '%')} sure)"
        )
    ends = f"({show(_SURE_PCT, '%')} sure: {_many(found.low / plot_ac)} to {_many(found.high / plot_ac)})"
    said = f"{_many(found.mean / plot_ac)} stems on an acre {ends}"
    if total is None:
        return said
    low, high = (end / plot_ac * ground_ac for end in (found.low, found.high))
    return f"{said}; {_many(total)} in all ({_many(low)} to {_many(high)})"


def _details(found: Simple, plot_ac: float) -> Iterator[str]:
    per_ha = convert(1, "ha", "ac") * found.mean / plot_ac
    yield f"{found.mean:.3g} stems on a plot on average; {_many(per_ha)} on a hectare."
    if found.clumping is not None:
        yield f"Variance over mean {found.clumping:.3g}: 1 where stems stand at random, more where they clump."


def _best_covered(found: Simple, ask: StemsAsk) -> Iterator[str]:
    """Yield, of clumped stems, the interval that held the truth most often where surveys were tried on real stems."""
    if found.clumping is None or found.clumping <= _CLUMPED:
        return
    with unwatched():
        keys = tuple(f"plot {at}" for at in range(1, found.plots + 1))
        ends = limits(usual(list(ask.counts), [ask.plot_m2] * found.plots, keys), _SURE_PCT / 100)
    per_acre = 1 / convert(1, "ha", "ac")
    yield (
        f"These stems clump. The interval that held the truth most often in surveys of mapped real stems gives "
        f"{_many(ends.low * per_acre)} to {_many(ends.high * per_acre)} on an acre ({show(_SURE_PCT, '%')} sure: "
        f"{ends.kind}, on ground without end). {ends.falls_short}"
    )


def _assumed(ask: StemsAsk) -> Iterator[str]:
    yield "plots of one size, laid at random or on a grid with a random start, those without stems among the counts"
    yield _DETECTED
    if ask.ground_m2 is None:
        yield "ground so large that the plots cover next to none of it; with --ground the total is told too"


def _wary(found: Simple, whole: bool) -> Iterator[str]:
    if found.most_of_none is not None:
        yield "Where stems clump, more than that may stand: ten in one place are easily missed by every plot."
    elif not found.error and not whole:
        yield "Every plot held the same, so the interval has no width; that is luck, not knowledge: count more plots."
    elif found.clumping is not None and found.clumping > _CLUMPED and found.plots < _MANY:
        yield (
            "These stems clump: with few plots the interval holds the truth less often than it says, about 90 % of "
            "times instead of 95 with 10 to 20 plots (our own trial on the mapped wood LONGLEAF, reckoned)."
        )


def _many(value: float) -> str:
    return show(value, "stem").partition(" ")[0]
