"""Worlds from estimates: one for each class and their sum, drawn from the named intervals, tied as the plots tie them.

Each plot has a draw of its own, named by the plot. A class goes up in a world where the plots go up that pull it, so
that classes found on the same plots go up together. The draws say only which worlds are high; how high is read from the
curve of the estimate. Then a few worlds trade the figure of one class for a near one, until the 10 and 90 % points of
the sum are those of its own 80 % interval; those of the classes are not touched by a trade.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

import numpy as np
from numpy.typing import NDArray
from scipy.special import ndtri

from rootcollar.kernel.doubt import Doubt, Worlds
from rootcollar.kernel.errors import Refusal
from rootcollar.survey.estimate.estimate import Estimate, Limits, limits

Figures = NDArray[np.float64]

__all__ = ["worlds_of", "worlds_together"]

_NEAR = 0.01  # ours: points of the sum must come this near to those of its interval, as a share of the upper end
_LEAST_LOW = 0.005  # ours: a lower limit of 0 is reached when a tenth of the worlds are below this share of the upper
_FARTHEST = 0.01  # ours: worlds end at the 98 % interval; beyond it a curve tells more of itself than of the ground
_TRIES = 100  # ours: so many worlds are tried, the nearest first, before the sum is given up
_SKIPPED = 0.125  # ours: this share of the worlds that could be moved stands nearer to the edge, and moves last
_POINTS = np.array([0.1, 0.9])  # the band that is shown everywhere


def worlds_of(estimate: Estimate, doubt: Doubt) -> Worlds:
    """Return the worlds of one estimate, in its unit: the figure, then its curve, never below 0."""
    scores = _scores([("", estimate)], doubt)
    return _with_best(estimate.figure, _drawn(estimate, scores[0]))


def worlds_together(classes: Mapping[str, Estimate], total: Estimate, doubt: Doubt) -> tuple[dict[str, Worlds], Worlds]:
    """Return the worlds of each class and of their sum, from estimates over the same plots in the same unit.

    The classes' worlds add up to the total's in every world. Raises Refusal where the classes' figures do not add up
    to the total's; where nothing at all was found, since there is no telling of which class the unseen stems are; and
    where the intervals contradict each other, as they may with fewer than 12 plots.
    """
    _add_up(classes, total)
    names = sorted(classes)
    scores = _scores([(name, classes[name]) for name in names], doubt)
    parts = np.array([_drawn(classes[name], score) for name, score in zip(names, scores, strict=True)])
    whole = limits(total)
    _trade(parts, max(whole.low, _LEAST_LOW * whole.high), whole.high)
    if _off(parts.sum(axis=0), whole) < _NEAR:
        best = {name: classes[name].figure for name in names}
        out = {name: _with_best(best[name], part) for name, part in zip(names, parts, strict=True)}
        return out, _with_best(sum(best.values()), parts.sum(axis=0))
    raise Refusal(
        "worlds of the classes and their sum",
        limit="the intervals of the classes and of the sum contradict each other",
        do="Read all of them from one kind of curve, take fewer classes, or visit 12 plots or more",
    )


def _add_up(classes: Mapping[str, Estimate], total: Estimate) -> None:
    do = "Take classes and total from the same plots, in the same unit"
    if any(one.unit != total.unit for one in classes.values()):
        raise Refusal("worlds of classes", limit="classes and total are in different units", do=do)
    if not total.figure:
        do = "Take the worlds of the total alone"
        raise Refusal("worlds of classes", limit="nothing was found of any class", do=do)
    if not np.isclose(sum(one.figure for one in classes.values()), total.figure):
        raise Refusal("worlds of classes", limit="the classes do not add up to the total", do=do)


def _scores(named: Sequence[tuple[str, Estimate]], doubt: Doubt) -> Figures:
    """Return for each estimate how high each world is, from one draw a plot; the draws go by the plots' names."""
    draws = {key: np.asarray(ndtri(doubt.ranks(f"plot {key}"))) for _, one in named for key in one.keys}
    out = []
    for name, one in named:
        if one.pulls.any():
            out.append(
                np.sum([pull * draws[key] for pull, key in zip(one.pulls.tolist(), one.keys, strict=True)], axis=0)
            )
        else:  # none of this class on any plot: no plot pulls it
            out.append(np.asarray(ndtri(doubt.ranks(f"none found {name}"))))
    return np.array(out)


def _drawn(estimate: Estimate, score: Figures) -> Figures:
    """Return the curve at even shares, in the order of the scores: so its 10 and 90 % points are the interval's."""
    last = score.size - 1
    shares = score.argsort(kind="stable").argsort(kind="stable") / max(last, 1)
    return np.asarray(estimate.curve.quantile(np.clip(shares, _FARTHEST, 1 - _FARTHEST)))


def _trade(parts: Figures, low: float, high: float) -> None:
    """Trade figures of a class between two worlds until a tenth of the sums are below low and a tenth above high."""
    number = parts.shape[1]
    tenth = math.ceil((number - 1) * _POINTS[0])
    for _ in range(2 * number):
        sums = parts.sum(axis=0)
        under, over = int((sums < low).sum()) - tenth, int((sums > high).sum()) - tenth
        if not under and not over:
            return
        middle = (sums >= low) & (sums <= high)
        # Which worlds may move, which way, and how far at least. Not the nearest to the edge: a gap would open there.
        if over > 0:
            tries = _candidates(sums > high, sums - high, -1)
        elif over < 0:
            tries = _candidates(middle, high - sums, 1)
        elif under > 0:
            tries = _candidates(sums < low, low - sums, 1)
        else:
            tries = _candidates(middle, sums - low, -1)
        if not any(_moved(parts, sums, world, by, (low, high)) for world, by in tries):
            return


def _candidates(which: NDArray[np.bool_], need: Figures, sign: int) -> list[tuple[int, float]]:
    worlds = np.flatnonzero(which)
    order = worlds[np.argsort(need[worlds], kind="stable")]
    cut = int(_SKIPPED * order.size)
    tried = np.concatenate((order[cut:][:_TRIES], order[:cut]))
    return [(int(world), sign * float(need[world])) for world in tried]


def _moved(parts: Figures, sums: Figures, world: int, by: float, edges: tuple[float, float]) -> bool:
    """Trade one class of a world so that its sum moves by a little more than that; False where no trade does.

    The other world must stay below, between or above the edges, as it was.
    """
    low, high = edges
    sign = 1 if by >= 0 else -1
    step = parts - parts[:, [world]]  # what the world gains, and the other loses, by class and other world
    after = sums - step
    same = ((sums < low) == (after < low)) & ((sums > high) == (after > high))
    fits = same & (sign * step > abs(by))
    fits[:, world] = False
    if not fits.any():
        return False
    kind, other = divmod(int(np.argmin(np.where(fits, sign * step, np.inf))), step.shape[1])
    parts[kind, world], parts[kind, other] = float(parts[kind, other]), float(parts[kind, world])
    return True


def _off(values: Figures, wanted: Limits) -> float:
    low, high = np.quantile(values, _POINTS)
    return float(max(abs(low - wanted.low), abs(high - wanted.high)) / max(wanted.high, np.finfo(float).tiny))


def _with_best(figure: float, drawn: Figures) -> Worlds:
    out = np.concatenate(([figure], drawn))
    out.flags.writeable = False
    return out
