"""Does it keep away from water and wells as far as the label says?"""

from __future__ import annotations

from collections.abc import Mapping

from rootcollar.kernel.units import convert, show
from rootcollar.kernel.verdict import Level, Verdict, worst_first
from rootcollar.label.rule import Basis, Seen, ask, exceeds, rule, stop
from rootcollar.label.words import flat, method_words
from rootcollar.shelf import Distance

__all__ = ["buffers_kept", "not_into_water"]

_DIRECT = "sheet.water.direct_to_water"
_CALLED = {"surface water": "surface water", "water": "surface water", "well": "well", "stream": "surface water"}


@rule(
    "L37a",
    "The work keeps the label's distance from water and wells.",
    Basis("the label; 40 CFR 156.85(b)(6)", Seen.EDITION),
    when_silent=Level.OK,
    buffers="sheet.water.buffers_ft",
    method="plan.method",
    distances="place.distances",
)
def buffers_kept(buffers: tuple[Distance, ...], method: str, distances: Mapping[str, float | None]) -> Verdict | None:
    """Stop where the unit lies nearer than a buffer for the method; ask for distances nobody has looked for."""
    ours = [one for one in buffers if not one.methods or method in one.methods]
    found = [verdict for one in ours if (verdict := _one(one, method, distances))]
    return worst_first(found)[0] if found else None


def _one(buffer: Distance, method: str, distances: Mapping[str, float | None]) -> Verdict | None:
    asked = f"the label keeps {method_words(method)} {show(buffer.ft, 'ft')} from {buffer.from_}"
    place = _CALLED.get(flat(buffer.from_))
    if place is None:
        return ask(
            f"{asked}; the ground file does not measure that",
            f"yes if the unit keeps that far from every {buffer.from_}",
        )
    away_m = distances[place]
    if away_m is None:
        key = "well" if place == "well" else "water"
        return ask(
            f"{asked}; nobody has looked how far the unit is",
            f"write {key} of the unit in ground.toml",
            answerable=False,
        )
    away_ft = convert(away_m, "m", "ft")
    if not exceeds(buffer.ft, away_ft):
        return None
    return stop(
        f"{asked}; the unit comes to {show(away_ft, 'ft')}",
        f"make the strip within {show(buffer.ft, 'ft')} a unit of its own and work it without this product",
    )


@rule(
    "L37b",
    "Nothing goes into water where the label forbids it.",
    Basis("the label; 40 CFR 156.85(b)(6)", Seen.EDITION),
    direct=_DIRECT,
    water_m="place.water_m",
)
def not_into_water(direct: str, water_m: float) -> Verdict | None:
    """Stop where the unit touches water and the label forbids use in water; ask where it allows the edge only."""
    if direct == "allowed" or exceeds(water_m, 0):
        return None
    if direct == "edge_only":
        return ask(
            "the unit touches water, and the label allows the water's edge only",
            "yes if every stem stands on dry ground to the edge and nothing is sprayed over water",
        )
    return stop(
        "the unit touches or holds water, and the label forbids use in water",
        "make the ground at the water a unit of its own and work it without this product",
    )
