"""A million stems dosed and summed, beside the barest numpy, in one run.

    python benchmarks/stems.py [--scale 0.01]

Half the stems get spaced cuts and half a band of oil on the bark. The barest numpy is the same arithmetic on the same
array with plain numbers: no limits checked, no doubt. Wanted: at most twice its time, at most 1 GB at the peak.
"""

import argparse
import sys
import time
import tracemalloc
from collections.abc import Callable

import numpy as np
from numpy.typing import NDArray

from rootcollar.dose import Asked, DoseRule, rule_for, total_ml
from rootcollar.kernel.doubt import Doubt
from rootcollar.reference import load

__all__ = ["main"]

STEMS = 1_000_000
REPEATS = 20
MOST_TIMES, MOST_BYTES = 2.0, 1e9

Diameters = NDArray[np.float64]


def rules() -> tuple[DoseRule, DoseRule]:
    """Return the doses compared: glyphosate in spaced cuts, triclopyr ester in oil on the bark."""
    facts = load()

    def rule(method: str, ingredient: str, carrier: str, strength_pct: float) -> DoseRule:
        asked = Asked(method, ingredient, carrier, strength_pct)
        return rule_for(asked, facts=facts.methods[method], coverages=facts.coverage.values(), doubt=Doubt(1))

    return rule("hack_squirt", "glyphosate", "water", 50.0), rule("basal_bark", "triclopyr", "oil", 20.0)


def barest(cut: DoseRule, bark: DoseRule) -> Callable[[Diameters, Diameters], float]:
    """Return the same sum written out in numpy with plain numbers."""
    assert cut.ml_per_cut is not None and bark.ml_per_cm2 is not None
    ml_per_cut, ml_per_cm2 = float(cut.ml_per_cut[0]), float(bark.ml_per_cm2[0])
    cm_per_cut, min_cuts, ml_per_cm = cut.cm_per_cut, cut.min_cuts, np.pi * bark.height_cm * ml_per_cm2

    def total(cut_cm: Diameters, bark_cm: Diameters) -> float:
        in_cuts = np.maximum(np.ceil(cut_cm / cm_per_cut - 1e-9), min_cuts) * ml_per_cut
        on_bark = bark_cm * ml_per_cm
        return float(in_cuts.sum() + on_bark.sum())

    return total


def best_s(work: Callable[[], object]) -> float:
    """Return the best time of several repeats [s]: what the machine can do when nothing else disturbs it."""
    times = []
    for _ in range(REPEATS):
        begun = time.perf_counter()
        work()
        times.append(time.perf_counter() - begun)
    return min(times)


def peak_bytes(work: Callable[[], object]) -> int:
    """Return the most memory that Python and numpy hold at once while the work is done [bytes]."""
    tracemalloc.start()
    work()
    peak = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    return peak


def main(words: list[str] | None = None) -> int:
    """Run both, print times, ratio and peak, and return 1 if the sums differ or, at full scale, a limit is passed."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--scale", type=float, default=1.0, help="share of a million stems; judged at 1 only")
    scale = parser.parse_args(words).scale
    count = max(int(STEMS * scale), 2)
    cut, bark = rules()
    stems_cm = np.random.default_rng(1).uniform(5.5, 14.5, count)
    cut_cm, bark_cm = stems_cm[: count // 2].copy(), stems_cm[count // 2 :].copy()

    def dosed() -> float:
        return float(total_ml(cut, cut_cm)[0] + total_ml(bark, bark_cm)[0])

    bare = barest(cut, bark)
    ours_ml, bare_ml = dosed(), bare(cut_cm, bark_cm)
    agree = bool(np.isclose(ours_ml, bare_ml, rtol=1e-9))
    ours_s, bare_s = best_s(dosed), best_s(lambda: bare(cut_cm, bark_cm))
    peak = peak_bytes(dosed) + stems_cm.nbytes + cut_cm.nbytes + bark_cm.nbytes
    print(f"{count:,} stems: {ours_ml / 1000:,.1f} L, barest numpy {bare_ml / 1000:,.1f} L")
    print(f"{1000 * ours_s:.2f} ms, barest {1000 * bare_s:.2f} ms: {ours_s / bare_s:.2f} times; wanted {MOST_TIMES:g}")
    print(f"peak {peak / 1e6:.0f} MB; wanted {MOST_BYTES / 1e6:.0f}")
    within = scale != 1.0 or (ours_s <= MOST_TIMES * bare_s and peak <= MOST_BYTES)
    return 0 if agree and within else 1


if __name__ == "__main__":
    sys.exit(main())
