"""Does what goes along fit the label: metal, water to wash with, water for eyes?"""

from __future__ import annotations

from rootcollar.hazard import wash_needed
from rootcollar.kernel.units import convert, show
from rootcollar.kernel.verdict import Verdict
from rootcollar.label.aboard import Aboard
from rootcollar.label.floor import demands_eyewear
from rootcollar.label.rule import Basis, Seen, ask, exceeds, rule, warn
from rootcollar.label.words import listing, mentions
from rootcollar.reference import NamedFigure

__all__ = ["metal_fits", "water_enough"]

_METAL = "sheet.mixing.metal_forbidden"
_MIXING, _APPLYING = "sheet.ppe.mixing", "sheet.ppe.applying"


@rule(
    "L49",
    "No sprayer or tool is of a metal the label forbids.",
    Basis("the label", Seen.LABEL),
    silence={_METAL: ()},
    forbidden=_METAL,
    along="people.aboard",
)
def metal_fits(forbidden: tuple[str, ...], along: tuple[Aboard, int | None]) -> Verdict | None:
    """Warn where something along is of a metal that the label forbids; ask while nobody has looked."""
    metals = along[0].metals
    if not forbidden:
        return None
    if metals is None:
        return ask(
            f"the label keeps it from {listing(forbidden)}; nobody has said what sprayers and tools are made of",
            "write metals under aboard in crew.toml, metals = [] if the mix touches none; or yes, it touches none of "
            "these",
        )
    touched = [one for one in metals if any(mentions(one, [bad]) or mentions(bad, [one]) for bad in forbidden)]
    if not touched:
        return None
    return warn(
        f"the label keeps it from {listing(forbidden)}; the crew has {listing(touched)}",
        "take a sprayer, bottle and nozzle of another material, or leave this one at home and out of crew.toml",
    )


@rule(
    "L52",
    "Water, soap and eye flush for washing are carried.",
    Basis("40 CFR 170.509, as printed in N.J.A.C. 7:30-12; elsewhere advice"),
    silence={_MIXING: (), _APPLYING: ()},
    mixing=_MIXING,
    applying=_APPLYING,
    along="people.aboard",
    rows="law.wash",
)
def water_enough(
    mixing: tuple[str, ...], applying: tuple[str, ...], along: tuple[Aboard, int | None], rows: tuple[NamedFigure, ...]
) -> Verdict | None:
    """Warn where less is carried than by head count is needed; ask for what nobody has said.

    Without a count of those who may treat it is reckoned for one.
    """
    aboard, treaters = along
    heads = treaters or 1
    eyes = demands_eyewear(mixing), demands_eyewear(applying)
    need = wash_needed(heads, heads, 0, rows, mixing_eyes=eyes[0], applying_eyes=eyes[1])
    water = {"wash_water": (aboard.wash_ml, need.handlers_ml), "eye_flush": (aboard.flush_ml, need.flush_ml)}
    unsaid = [name for name, (has, least) in water.items() if least and has is None]
    unsaid += ["soap"] if aboard.soap is None else []
    unsaid += ["flasks"] if eyes[1] and aboard.flasks is None else []
    if unsaid:
        return ask(
            f"nobody has said what is carried to wash with: {listing(unsaid)}",
            f"write {listing(unsaid)} under aboard in crew.toml; or yes, {_gal(need.handlers_ml)} of water, soap and "
            f"towels{f', {_gal(need.flush_ml)} for eyes' if eyes[0] else ''} are carried",
        )
    words = {"wash_water": f"of water for {heads} who handle it", "eye_flush": "of water for eyes at the mixing site"}
    short = [
        f"{_gal(has)} {words[name]}, {_gal(least)} are needed"
        for name, (has, least) in water.items()
        if has is not None and exceeds(least, has)
    ]
    short += [] if aboard.soap else ["no soap and towels"]
    if eyes[1] and aboard.flasks is not None and aboard.flasks < heads:
        short.append(f"{aboard.flasks} flasks of a pint for eyes, {heads} are needed")
    return (
        warn(f"too little to wash with: {'; '.join(short)}", "bring more, and write it in crew.toml") if short else None
    )


def _gal(volume_ml: float) -> str:
    return show(convert(volume_ml, "mL", "gal"), "gal")
