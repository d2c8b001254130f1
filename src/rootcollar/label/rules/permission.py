"""Does whoever holds the ground allow the work?"""

from __future__ import annotations

from datetime import date

from rootcollar.kernel.verdict import Verdict
from rootcollar.label.rule import Basis, Seen, rule, stop
from rootcollar.site.ground import Permission

__all__ = ["allowed_then", "somebody_allows"]


@rule("P01", "Whoever holds the ground allows the work.", Basis("rootcollar", Seen.OWN), permission="place.permission")
def somebody_allows(permission: Permission | None) -> Verdict | None:
    """Stop where nobody has allowed the work: no permission is a stop."""
    if permission is not None:
        return None
    return stop("nobody has allowed work on this unit", "ask whoever holds it, and write permission in ground.toml")


@rule(
    "P02",
    "The permission holds on the day of work.",
    Basis("rootcollar", Seen.OWN),
    until="place.permission_until",
    on="plan.on",
)
def allowed_then(until: date, on: date) -> Verdict | None:
    """Stop where the permission has run out before the work."""
    if on <= until:
        return None
    return stop(
        f"the permission ran until {until.isoformat()}; the work is planned for {on.isoformat()}",
        "ask for it again, and write the new day in ground.toml",
    )
