"""Have two people read the lines of the label on which most hangs?"""

from __future__ import annotations

from rootcollar.kernel.verdict import Verdict
from rootcollar.label.rule import Basis, Seen, ask, rule
from rootcollar.label.words import listing
from rootcollar.shelf import Twice

__all__ = ["read_by_two"]

_NAMED = 3  # lines named in one sentence (ours); the sheet's page has them all


@rule(
    "P09",
    "Two people have read the label's strength, limits, sites, wear and silences.",
    Basis("rootcollar; what one person reads wrongly, a second who does not see it seldom reads alike", Seen.OWN),
    second="sheet.second",
    demo="plan.demo",
)
def read_by_two(second: Twice, demo: bool) -> Verdict | None:
    """Ask on real ground while no second reading agrees; a yes settles it only where nobody has read again at all."""
    if demo or second.agrees:
        return None
    if second.differ:
        told = "; ".join(
            f"{one.words}: the sheet has {one.first}, {second.second} read {one.second}"
            + (f" (label page {one.page})" if one.page else "")
            for one in second.differ[:_NAMED]
        )
        more = len(second.differ) - _NAMED
        return ask(
            f"two readings of the label differ: {told}{f'; and {more} more' if more > 0 else ''}",
            "open the label at that page; whoever read it wrongly types the line again",
            answerable=False,
        )
    if second.same:
        return ask(
            f"both readings are {second.first}'s", "let another person type the lines again from the label",
            answerable=False,
        )  # fmt: skip
    if second.second and second.left:
        words = listing(one.words for one in second.left[:_NAMED])
        return ask(
            f"the second reading lacks {len(second.left)} of {len(second.lines)} lines: {words}",
            f"let {second.second}, or another person, type them from the label: rootcollar shelf second",
            answerable=False,
        )
    return ask(
        "only one person has read the label's strength, limits, sites, wear and silences",
        "let another person type them again from the label, on the sheet's page or by rootcollar shelf second; yes, "
        "with the reason in the note, only where nobody else can read it",
    )
