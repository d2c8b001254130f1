"""Whoever handles the product: fit to wear a respirator; under worker protection of age and trained."""

from __future__ import annotations

from rootcollar.kernel.verdict import Verdict
from rootcollar.label.people import Handling
from rootcollar.label.rule import Basis, Seen, ask, rule, stop, warn
from rootcollar.label.rules.certified import late
from rootcollar.label.words import flat, listing

__all__ = ["of_age", "purpose_known", "respirator_cleared", "trained_in_time"]

_BOX = "sheet.entry.wps_box"
_RESPIRATOR = "sheet.ppe.respirator"


@rule(
    "L23",
    "Whoever treats with a respirator is medically cleared, fit tested and trained to wear it, to the day of work.",
    Basis(
        "rootcollar, whoever the crew works for; 40 CFR 170.507(b)(10) and 29 CFR 1910.134 ask it of employers, seen "
        "only in pages that repeat them",
        Seen.OWN,
    ),
    silence={_RESPIRATOR: "none"},
    respirator=_RESPIRATOR,
    handling="place.handling",
)
def respirator_cleared(respirator: str, handling: Handling) -> Verdict | None:
    """Stop where nobody who treats may wear the label's respirator, a filtering facepiece too; warn where some may."""
    if flat(respirator) == "none":
        return None
    on = handling.on
    if on is None or handling.open_who:
        return ask(f"the label says to wear {respirator}; nobody has said who treats, and when",
                   "write who may treat in crew.toml", answerable=False)  # fmt: skip
    cleared = [one.name for one in handling.treating if one.respirator_until and on <= one.respirator_until]
    rest = [one for one in handling.treating if one.name not in cleared]
    if cleared:
        names = listing(one.name for one in rest)
        return warn(f"the label says to wear {respirator}; only {listing(cleared)} may, not {names}",
                    "give this product to them alone") if rest else None  # fmt: skip
    unsaid = [one.name for one in rest if one.respirator_until is None]
    if unsaid:
        return ask(
            f"the label says to wear {respirator}; nobody has written until when {listing(unsaid)} are cleared, fitted "
            "and trained to wear it",
            "write respirator_until in crew.toml, the first day on which one of the three runs out, and no word of "
            "anybody's health",
            answerable=False,
        )
    return stop(
        f"the label says to wear {respirator}, and nobody who treats is cleared, fitted and trained to wear it on "
        f"{on.isoformat()}",
        "medical evaluation, fit test and training first, then respirator_until in crew.toml; or another product",
    )


@rule(
    "L24",
    "Under worker protection handlers are 18, or of the family that owns the ground.",
    Basis("40 CFR 170.309(c); 170.601(a)(1)(i) for the owner's immediate family"),
    silence={_BOX: False},
    box=_BOX,
    handling="place.handling",
)
def of_age(box: bool, handling: Handling) -> Verdict | None:
    """Stop where somebody under 18 is written down to mix or treat, and is not of the owner's immediate family."""
    young = [one.name for one in handling.people if one.minor and one.handles and not one.family]
    if not (box and handling.produces and young):
        return None
    return stop(
        f"{listing(young)}: under 18 and written down to mix or treat, under worker protection",
        "take lead and treat out of what they may do in crew.toml",
    )


@rule(
    "L25",
    "Under worker protection handlers were trained within 12 months, unless certified or of the owner's family.",
    Basis("40 CFR 170.501(a) and (b)(1); 170.601(a)(1)(ix) for the owner's immediate family"),
    silence={_BOX: False},
    box=_BOX,
    handling="place.handling",
)
def trained_in_time(box: bool, handling: Handling) -> Verdict | None:
    """Stop where a handler's training is over 12 calendar months old on the day; ask where its day is not written."""
    if not (box and handling.produces):
        return None
    on = handling.on
    if on is None or handling.open_who:
        return ask("worker protection applies; nobody has said who treats, and when",
                   "write who may treat in crew.toml", answerable=False)  # fmt: skip
    return late([one for one in handling.treating if not one.family and not one.certified(on)], on)


@rule(
    "L26",
    "It is known whether worker protection applies, so which box of the label governs.",
    Basis("40 CFR 170.303(a) and (b), read in a copy current through October 2024"),
    silence={_BOX: False},
    box=_BOX,
    handling="place.handling",
)
def purpose_known(box: bool, handling: Handling) -> Verdict | None:
    """Ask what the ground is worked for where the label has an Agricultural Use Requirements box.

    Injection, hack-and-squirt and cut stumps ask like the rest: 170.303 makes no exception for any of them.
    """
    if not box or handling.produces is not None:
        return None
    if handling.purpose == "pasture":
        return ask(
            "pasture is worked, and nobody has said whether its forage is cut for hay: then worker protection applies",
            'write taken in ground.toml; taken = [] if nothing is, [{ what = "hay" }] if hay is',
            answerable=False,
        )
    return ask(
        "the label has an Agricultural Use Requirements box; is the work to produce timber or other plants for sale or "
        "research (then that box and worker protection govern), or for something else, such as nature (then the "
        "Non-Agricultural Use Requirements box)?",
        'write purpose in ground.toml, such as purpose = "nature" or purpose = "produce"',
        answerable=False,
    )
