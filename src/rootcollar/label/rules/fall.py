"""What a tree killed on its feet can fall on, months or years after: a trail, a road, a building, next year's crew."""

from __future__ import annotations

import math
from collections.abc import Mapping

from rootcollar.kernel.units import convert, show
from rootcollar.kernel.verdict import Verdict
from rootcollar.label.planned import LEFT_STANDING
from rootcollar.label.rule import Basis, Seen, ask, exceeds, rule, warn
from rootcollar.label.standing import thick_enough, too_low
from rootcollar.label.words import listing, method_words

__all__ = ["clear_of_its_fall"]

_LENGTHS = 2  # tree lengths that others keep from a tree being felled or a marked danger tree [29 CFR 1910.266, read]
_TALLEST_M = 116.0  # no tree known on Earth stands taller [memory]; where nobody counted, all nearer is asked of
_WORDS = {
    "trail": "a trail", "road": "a road", "building": "a building", "parking": "a place where people park, sit or camp",
    "boundary": "another's ground", "power": "a power line",
}  # fmt: skip


@rule(
    "P10",
    "No trail, road, building, parking, power line or neighbour lies where a tree that is killed standing can fall.",
    Basis(
        "rootcollar; two tree lengths are kept from trees being felled and marked danger trees [29 CFR "
        "1910.266(d)(6)(ii), (h)(1)(vi), read in the edition of 2015]",
        Seen.OWN,
    ),
    method="plan.method",
    stature="plan.stature",
    beneath="place.beneath",
)
def clear_of_its_fall(
    method: str, stature: tuple[float | None, float], beneath: Mapping[str, float | None]
) -> Verdict | None:
    """Ask where two tree lengths round the unit hold what it could hit, or nobody looked or counted the height.

    Warn of next year's crew where they hold nothing. stature: height [m], None where not counted, and then nothing is
    reckoned in its place; the thickest stem [cm]. beneath: how far from the unit each thing lies [m], None where nobody
    has looked. A power line within one length and 10 ft is P07's too.
    """
    height_m, thickest_cm = stature
    if method not in LEFT_STANDING or not thick_enough(thickest_cm) or too_low(height_m):
        return None
    tall = "" if height_m is None else f" {show(convert(height_m, 'm', 'ft'), 'ft', 2)} tall"
    dead = f"{method_words(method)} leaves trees{tall} to die on their feet and fall later"
    reach_m = _LENGTHS * (_TALLEST_M if height_m is None else height_m)
    near = {what: far for what, far in beneath.items() if far is not None and exceeds(reach_m, far)}
    unseen = [what for what, far in beneath.items() if far is None]
    if not near and not unseen:
        return warn(
            f"{dead}; whoever works here next year works among them",
            "write them into applied.csv with method, species, diameter and stems, so that every later sheet warns of "
            "them; look up on every visit; or fell them and treat the stumps",
        )
    said = [_measured(near, height_m)] if near else []
    if unseen:
        said.append(f"nobody has said how near {listing(_WORDS[one] for one in unseen)} lies")
    return ask(f"{dead}; {', and '.join(said)}", _way_out(near, unseen, counted=height_m is not None))


def _measured(near_m: Mapping[str, float], height_m: float | None) -> str:
    told = listing(f"{_WORDS[what]} ({_far(far)})" for what, far in near_m.items())
    if height_m is None:
        return f"nobody has counted how tall they are, and near the unit lies {told}"
    return f"within two of their lengths of the unit lies {told}"


def _far(far_m: float) -> str:
    return show(convert(far_m, "m", "ft"), "ft", 2) if far_m else "touching or within"


def _way_out(near_m: Mapping[str, float], unseen: list[str], *, counted: bool) -> str:
    ways = [] if counted or not near_m else ["write their height in tally.csv"]
    if unseen:
        ways.append(f'look, and write {listing(unseen)} of the unit in ground.toml, such as "120 ft" or "none"')
    if near_m:
        ways.append("fell them and treat the stumps, or make the ground beside it a unit of its own")
        ways.append("keep people off, with signs, until they are down")
    if near_m.get("power", math.inf) < math.inf:
        ways.append("near the power line leave them to its owner, whose tree trimmers may fell there")
    return (
        f"{'; or '.join(ways)}; yes if you looked and each stands two of its lengths from all of that, and they are "
        "looked at on every visit"
    )
