"""Is the surfactant that the label demands known, so that it can be put in?"""

from __future__ import annotations

from rootcollar.kernel.verdict import Level, Verdict
from rootcollar.label.rule import Basis, ask, rule

__all__ = ["surfactant_known"]

_PERCENT = "sheet.mixing.surfactant.percent"


@rule(
    "P03",
    "A surfactant the label demands is known by its percent.",
    Basis("the label; FIFRA 12(a)(2)(G)"),
    when_silent=Level.OK,
    silence={_PERCENT: None},
    needed="sheet.mixing.surfactant.needed",
    percent=_PERCENT,
)
def surfactant_known(needed: bool, percent: float | None) -> Verdict | None:
    """Ask where the label demands a surfactant and gives no percent: the plan would leave it out."""
    if not needed or percent is not None:
        return None
    return ask(
        "the label demands a surfactant and gives no percent, so none is planned",
        "yes if it is added by hand as the label says",
    )
