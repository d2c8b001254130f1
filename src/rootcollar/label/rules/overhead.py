"""What hangs or drips from above: power lines, and spray over one's own shoulder."""

from __future__ import annotations

from rootcollar.kernel.units import convert, show
from rootcollar.kernel.verdict import Verdict
from rootcollar.label.rule import Basis, Seen, ask, exceeds, rule, stop
from rootcollar.label.standing import most_tall_m
from rootcollar.label.words import method_words

__all__ = ["away_from_power", "below_the_shoulder"]

_LINE_FT = 10.0  # within this, cutting brush or trees is line-clearance work, to 50 kV [29 CFR 1910.269(x), read]
_SHOULDER_FT = 5.0  # ours: where a tall person's shoulder is; handbooks say shoulder or head height (practice)


@rule(
    "P07",
    "Nothing stands so near a power line that it, or what falls, can reach it.",
    Basis(
        "rootcollar; within 10 ft of a line it is work for line-clearance tree trimmers [29 CFR 1910.269(x)]", Seen.OWN
    ),
    power_m="place.power_m",
    stature="plan.stature",
)
def away_from_power(power_m: float, stature: tuple[float | None, float]) -> Verdict | None:
    """Stop where the unit lies nearer to a power line than its plants may stand high, and 10 ft more.

    stature: their height [m], None where not counted; the thickest stem [cm], by which the height is then reckoned.
    """
    tall_ft = convert(most_tall_m(stature), "m", "ft")
    away_ft = convert(power_m, "m", "ft")
    if not exceeds(tall_ft + _LINE_FT, away_ft):
        return None
    return stop(
        f"a power line comes within {show(away_ft, 'ft', 2)} of the unit, whose plants may stand "
        f"{show(tall_ft, 'ft', 2)} high; {show(_LINE_FT, 'ft')} more must lie between, for a cut tree falls and a "
        "treated one falls later",
        "leave these to the line's owner; make the ground under and beside it a unit of its own",
    )


@rule(
    "P08",
    "Leaves are sprayed below the shoulder.",
    Basis("rootcollar; spray from above drips and drifts onto whoever holds the wand", Seen.OWN),
    method="plan.method",
    stature="plan.stature",
)
def below_the_shoulder(method: str, stature: tuple[float | None, float]) -> Verdict | None:
    """Stop leaf spray on plants that stand above the shoulder, whatever the label allows."""
    height_m = stature[0]
    if method != "foliar":
        return None
    if height_m is None:
        return ask(f"nobody has counted how tall the plants are, and {method_words(method)} must not reach above the "
                   "shoulder", "write the height of the plants in tally.csv", answerable=False)  # fmt: skip
    height_ft = convert(height_m, "m", "ft")
    if not exceeds(height_ft, _SHOULDER_FT):
        return None
    return stop(
        f"plants of {show(height_ft, 'ft', 2)} stand above the shoulder ({show(_SHOULDER_FT, 'ft')}); spray would come "
        "down on whoever holds the wand",
        "cut them and spray the regrowth, or treat by stem",
    )
