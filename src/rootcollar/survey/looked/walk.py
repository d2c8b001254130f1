"""A calibration walk: flags at known places, walked past by somebody who does not know them, found or missed.

Kept by species, leaf state and crew, because the chance to see a stem goes by all three. The curve is the one under
which what was found and missed is likeliest.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from math import exp, inf, log

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import minimize
from scipy.special import expit, logit, ndtri

from rootcollar.kernel.doubt import Doubt, Worlds
from rootcollar.survey.looked.curve import Curve, Fit, half_width_m, how_good

__all__ = ["FEWEST_FLAGS", "Flag", "Walked", "fit_walk", "half_width_worlds"]

Array = NDArray[np.float64]
Unlikely = Callable[[Array], float]  # minus the logarithm of the likelihood of (log sigma, log odds on the line)

FEWEST_FLAGS = 20  # ours: with fewer the width is anybody's guess
_GROUPS = 5  # ours: of flags by distance, for the goodness of fit, as many in each as can be
_SURE = 12.0  # ours: log odds on the line above this are no miss in 100,000; the likelihood is flat there
_STEP = 1e-3  # ours: of the two figures fitted, to tell how the likelihood bends
_WIDEST = 20  # ours: a curve wider than so many reaches is level; such a walk tells no width
_REST = 1e-12  # no chance is quite 0 or 1, so that its logarithm can be taken
_SAME = 6  # decimals of a likelihood, so that floating point picks no curve
_CLOSE = 1e-10  # of the search for the likeliest curve


@dataclass(frozen=True, slots=True)
class Flag:
    """One flag: how far from the line it stood [m], and whether it was found."""

    distance_m: float
    found: bool


@dataclass(frozen=True, slots=True, eq=False)
class Walked:
    """What a calibration walk told.

    reach_m: the farthest flag, beyond which nothing is known [m]. half_width_m: effective, to one side [m]. fit: flags
    found and missed by groups of distance against the curve. spread: covariance of log sigma and log odds on the line;
    of log sigma alone where the walk shows no misses on the line, and the chance there is taken as one.
    """

    curve: Curve
    reach_m: float
    half_width_m: float
    flags: int
    found: int
    fit: Fit
    spread: Array


def fit_walk(flags: Sequence[Flag]) -> Walked:
    """Return the curve that fits flags found and missed best.

    Raises ValueError for fewer than 20 flags, a distance below 0 or not finite, none found or all found (no width is
    to be told then: set flags nearer, or farther out), and finds that do not fall off with distance.
    """
    _check(flags)
    x = np.array([one.distance_m for one in flags])
    hit = np.array([one.found for one in flags])
    reach = float(x.max())
    unlikely = _unlikely(x, hit)
    fitted = _least(unlikely, (np.array([log(reach / 2), 0.0]), np.array([log(reach / 2), 3.0])))
    if fitted[1] > _SURE:
        fitted = _least(unlikely, (np.array([log(reach / 2)]),))
    curve = _curve(fitted)
    bend = _bend(unlikely, fitted)
    if curve.sigma_m > _WIDEST * reach or np.linalg.eigvalsh(bend)[0] <= 0:
        raise ValueError("finds do not fall off with distance; set flags farther out, and more of them")
    width = half_width_m(curve.on_line, curve.sigma_m, reach)
    fit = _fit(curve, x, hit, _GROUPS - len(fitted))
    return Walked(curve, reach, width, len(flags), int(hit.sum()), fit, np.asarray(np.linalg.inv(bend), np.float64))


def half_width_worlds(walked: Walked, doubt: Doubt, name: str) -> Worlds:
    """Return the effective half-width [m] as worlds: the fitted one, then as far off as so few flags allow.

    Log sigma and log odds are drawn from the bell curve that the bend of the likelihood gives (the large-sample rule).
    name: of the walk, so that its doubt is the same whatever else is drawn.
    """
    ways = ("width", "line")[: len(walked.spread)]
    off = np.linalg.cholesky(walked.spread) @ ndtri(np.array([doubt.ranks(f"{name}/{way}") for way in ways]))
    sigmas = walked.curve.sigma_m * np.exp(off[0])
    lines = expit(logit(walked.curve.on_line) + off[1]) if len(off) > 1 else np.ones_like(sigmas)
    drawn = [half_width_m(line, sigma, walked.reach_m) for line, sigma in zip(lines, sigmas, strict=True)]
    out = np.array([walked.half_width_m, *drawn])
    out.flags.writeable = False
    return out


def _check(flags: Sequence[Flag]) -> None:
    found = sum(one.found for one in flags)
    if len(flags) < FEWEST_FLAGS:
        raise ValueError(f"want {FEWEST_FLAGS} flags or more, got {len(flags)}")
    if not all(0 <= one.distance_m < inf for one in flags) or not any(one.distance_m for one in flags):
        raise ValueError("want distances of 0 m or more, and not all 0")
    if found in (0, len(flags)):
        raise ValueError(f"found {found} of {len(flags)} flags: set them {'farther out' if found else 'nearer'}")


def _curve(fitted: Array) -> Curve:
    return Curve(float(expit(fitted[1])) if len(fitted) > 1 else 1.0, exp(fitted[0]))


def _chances(curve: Curve, x: Array) -> Array:
    return np.clip(curve.on_line * np.exp(-(x**2) / (2 * curve.sigma_m**2)), _REST, 1 - _REST)


def _unlikely(x: Array, hit: NDArray[np.bool_]) -> Unlikely:
    def value(fitted: Array) -> float:
        chances = _chances(_curve(np.clip(fitted, -100, 100)), x)
        return -float(np.log(chances[hit]).sum() + np.log1p(-chances[~hit]).sum())

    return value


def _least(unlikely: Unlikely, starts: Sequence[Array]) -> Array:
    """Return the figures of the likeliest curve, the best of several starts, the first where they tie."""
    found = [
        minimize(unlikely, start, method="Nelder-Mead", options={"xatol": _CLOSE, "fatol": _CLOSE, "maxiter": 1000})
        for start in starts
    ]
    return np.asarray(min(found, key=lambda one: round(float(one.fun), _SAME)).x)


def _bend(unlikely: Unlikely, at: Array) -> Array:
    """Return how steeply likelihood falls off around its top: its second differences."""
    step = np.eye(len(at)) * _STEP
    rows = [
        [
            unlikely(at + one + two) - unlikely(at + one - two) - unlikely(at - one + two) + unlikely(at - one - two)
            for two in step
        ]
        for one in step
    ]
    return np.array(rows) / (4 * _STEP**2)


def _fit(curve: Curve, x: Array, hit: NDArray[np.bool_], freedom: int) -> Fit:
    order = np.array_split(np.argsort(x, kind="stable"), _GROUPS)
    chances = _chances(curve, x)
    found = [float(hit[group].sum()) for group in order]
    due = [float(chances[group].sum()) for group in order]
    many = [len(group) for group in order]
    missed, missed_due = ([n - one for n, one in zip(many, some, strict=True)] for some in (found, due))
    return how_good((*found, *missed), (*due, *missed_due), freedom)
