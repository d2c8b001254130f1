"""Points of known curves, each leaving a step that names the curve: Student's t and the standard normal.

Sources: the curves are those of SciPy's special functions, asked here once so that every estimate uses the same.
"""

from __future__ import annotations

from scipy.special import ndtri, stdtrit

from rootcollar.kernel.formula import note

__all__ = ["normal_point", "t_point"]


def t_point(sure_pct: float, freedom: float) -> float:
    """Return the two-sided point of Student's t: so sure that a value lies within plus or minus it.

    sure_pct: above 0, below 100 [%]. freedom: degrees of freedom, > 0. Raises ValueError outside of these.

    >>> round(t_point(95, 19), 4)
    2.093
    """
    _checked(sure_pct)
    if not freedom > 0:
        raise ValueError(f"want degrees of freedom above 0, got {freedom}")
    says = f"Student's t, two-sided {sure_pct:g} %, degrees of freedom {freedom:g}"
    return note("t", says, float(stdtrit(freedom, _upper(sure_pct))), "")


def normal_point(sure_pct: float) -> float:
    """Return the two-sided point of the standard normal curve. sure_pct: above 0, below 100 [%], else ValueError."""
    _checked(sure_pct)
    return note("z", f"normal curve, two-sided {sure_pct:g} %", float(ndtri(_upper(sure_pct))), "")


def _upper(sure_pct: float) -> float:
    return 1 - (1 - sure_pct / 100) / 2


def _checked(sure_pct: float) -> None:
    if not 0 < sure_pct < 100:
        raise ValueError(f"want above 0 and below 100 %, got {sure_pct}")
