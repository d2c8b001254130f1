"""Clumped counts: the negative binomial, its mean and clumping fitted, its interval from the profile likelihood."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy.interpolate import PchipInterpolator
from scipy.optimize import brentq, minimize_scalar
from scipy.special import gammaln, stdtrit

from rootcollar.kernel.doubt import Worlds
from rootcollar.kernel.errors import BadInput, Fault, Refusal
from rootcollar.kernel.formula import formula
from rootcollar.survey.estimate.estimate import Curve, Estimate
from rootcollar.survey.estimate.plots import enough, found_any, scaled_pulls
from rootcollar.survey.plots.geometry import per_ha_each

__all__ = ["CLUMPED", "Clumping", "clumped", "clumping_of", "spread_of"]

CLUMPED = "negative binomial profile"
_SHORT = (
    "Where clumps are larger than plots, or plots few, it still holds the truth a little less often than it says, "
    "and it knows nothing of a grid or of the share of the ground that was counted."
)
_LEAST_K = 1e-4  # ours: clumps far tighter than stems stand in
_MOST_K = 1e5  # ours: as good as standing by chance
_REACH = 8.0  # ours: the mean is sought from 1/3000 to 3000 times the mean of the plots (e**8)
_NODES = 33  # ours: so many points of the curve are solved exactly, those between are joined smoothly
_LEAST_FILLED = 3  # ours: with fewer plots that hold a stem the likelihood sets no upper limit
_TIGHT = 1e-9  # ours: to what the logarithm of the mean is solved
_TIGHT_K = 1e-7  # ours: to what that of the clumping is


@dataclass(frozen=True, slots=True)
class Clumping:
    """A fit to counts: mean a plot, and k: the smaller, the tighter the clumps (variance = mean + mean**2 / k)."""

    mean: float
    k: float


@formula("mean + mean ** 2 / k", gives="stems**2", source="arithmetic", mean=(0.01, 50), k=(0.1, 20))
def spread_of(mean: float, k: float) -> float:
    """Return the variance between plots of a negative binomial with that mean and clumping k."""
    return mean + mean**2 / k


def clumping_of(counts: Sequence[float]) -> Clumping:
    """Return mean and clumping of whole counts by maximum likelihood. Raises as `clumped`."""
    y = _whole(counts)
    return Clumping(float(y.mean()), math.exp(_best_log_k(_Likelihood(y), float(y.mean()))))


def clumped(counts: Sequence[float], keys: Sequence[str], plot_m2: float) -> Estimate:
    """Return the stems/ha from whole counts on plots of one level area [m2], read from the profile likelihood.

    The curve is that of the signed root of the likelihood ratio, held against Student's curve with plots less one
    instead of the normal one (ours: it answers for the few plots that the clumping is judged from).
    Raises BadInput for fewer than two plots or counts that are not whole, Refusal where fewer than three plots hold
    a stem.
    """
    y = _whole(counts)
    mean = float(y.mean())
    found_any(mean)
    if int((y > 0).sum()) < _LEAST_FILLED:
        limit = f"fewer than {_LEAST_FILLED} plots hold a stem, so that nothing limits the clumps in between"
        raise Refusal("an interval for clumped counts", limit=limit, do="Visit more plots, or larger ones")
    each, df = per_ha_each(plot_m2), len(y) - 1.0
    likely = _Likelihood(y)
    error = math.sqrt(spread_of(mean, math.exp(_best_log_k(likely, mean))) / len(y))
    pulls = scaled_pulls(y - mean, error)
    if not pulls.any():
        pulls = np.full(len(y), error / math.sqrt(len(y)))
    curve = Curve(
        CLUMPED, _SHORT, lambda shares: each * _means(likely, np.asarray(stdtrit(df, shares), dtype=np.float64))
    )
    return Estimate("mean of clumped counts", "stems/ha", each * mean, tuple(keys), each * pulls, df, curve)


def _whole(counts: Sequence[float]) -> NDArray[np.float64]:
    y = np.asarray(counts, dtype=np.float64)
    enough(len(y), "the ground")
    wrong = [f"{one:g}" for one in y.tolist() if one < 0 or one != math.floor(one)]
    if wrong:
        raise BadInput(Fault(f"{', '.join(wrong)} stems", "whole counts as on the plot, not turned to another area"))
    return y


class _Likelihood:
    """The log likelihood of counts, but for what depends on neither mean nor clumping."""

    def __init__(self, y: NDArray[np.float64]) -> None:
        self.values, self.times = np.unique(y, return_counts=True)
        self.n, self.mean = len(y), float(y.mean())

    def __call__(self, mean: float, log_k: float) -> float:
        k = math.exp(log_k)
        counts = float((self.times * gammaln(self.values + k)).sum()) - self.n * float(gammaln(k))
        # k ln k - (k + y) ln(k + mean), written so that it keeps its figures where k is large
        rest = -k * math.log1p(mean / k) - self.mean * math.log(k + mean) + self.mean * math.log(mean)
        return counts + self.n * rest


def _best_log_k(likely: _Likelihood, mean: float) -> float:
    found = minimize_scalar(
        lambda log_k: -likely(mean, log_k),
        bounds=(math.log(_LEAST_K), math.log(_MOST_K)),
        method="bounded",
        options={"xatol": _TIGHT_K},
    )
    return float(found.x)


def _means(likely: _Likelihood, roots: Worlds) -> Worlds:
    """Return the means a plot whose signed root is each of the roots."""
    top = likely(likely.mean, _best_log_k(likely, likely.mean))

    def signed(log_times: float) -> float:
        mean = likely.mean * math.exp(log_times)
        lost = max(top - likely(mean, _best_log_k(likely, mean)), 0)
        return math.copysign(math.sqrt(2 * lost), log_times)

    low, high = signed(-_REACH), signed(_REACH)
    wanted = np.clip(roots, low, high)
    if wanted.size <= _NODES:
        return likely.mean * np.exp([_root(signed, one) for one in wanted.tolist()])
    nodes = np.linspace(wanted.min(), wanted.max(), _NODES)
    solved = np.array([_root(signed, one) for one in nodes.tolist()])
    return np.asarray(likely.mean * np.exp(PchipInterpolator(nodes, solved)(wanted)))


def _root(signed: Callable[[float], float], wanted: float) -> float:
    ends = (-_REACH, _REACH)
    for end in ends:
        if abs(signed(end) - wanted) < _TIGHT:
            return end
    return float(brentq(lambda log_times: signed(log_times) - wanted, *ends, xtol=_TIGHT))
