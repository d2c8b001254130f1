"""Is it mixed far enough from wells, sinkholes and water?"""

from __future__ import annotations

from collections.abc import Iterator

from rootcollar.kernel.units import convert, show
from rootcollar.kernel.verdict import Verdict, worst_first
from rootcollar.label.rule import Basis, ask, exceeds, rule, stop, warn
from rootcollar.label.words import flat
from rootcollar.shelf import Distance
from rootcollar.site.ground import Mixing

__all__ = ["mixed_away"]

_SETBACK = "sheet.water.mixing_setback_ft"
_CALLED = {"surface water": "water", "water": "water", "stream": "water", "pond": "water", "lake": "water",
           "well": "well", "sinkhole": "sinkhole"}  # fmt: skip

# Advice for wells (a county soil office's wellhead page, read); sinkholes alike (ours), for they lead straight down.
_ADVICE_FT = {"well": 100.0, "sinkhole": 100.0, "water": 50.0}
_ADVISER = {"well": "advice of wellhead pages", "sinkhole": "ours", "water": "Maine's rule, taken as advice elsewhere"}
_MAINE_FT = 50.0  # mixing, loading, filling from the high-water mark: 01-026 C.M.R. ch. 29 s.1, read
_CALIFORNIA_FT = 100.0  # mixing and loading from a well: 3 CCR 6609(a), read in a copy; (b) has exceptions
_WRITE = 'mixing = { place = "...", well = "150 ft", water = "200 ft", sinkhole = "none" } in ground.toml'


@rule(
    "L39",
    "It is mixed as far from wells, sinkholes and water as the label and the state say.",
    Basis(
        "the label; 01-026 C.M.R. ch. 29 s.1 (Maine); 3 CCR 6609 (California, seen in a copy); elsewhere 100 ft from "
        "wells and sinkholes and 50 ft from water as advice"
    ),
    silence={_SETBACK: ()},
    setback=_SETBACK,
    where="place.mixing",
)
def mixed_away(setback: tuple[Distance, ...], where: tuple[Mixing | None, str | None]) -> Verdict | None:
    """Stop where the mixing place lies nearer than label or state allow; warn where nearer than advised; else ask.

    where: the mixing place, None while nobody has said; the state.
    """
    mixing, state = where
    if mixing is None:
        return ask("nobody has said where it is mixed, and how far that is from a well, water and a sinkhole",
                   f"write {_WRITE}", answerable=False)  # fmt: skip
    away = {"well": mixing.well_m, "water": mixing.water_m, "sinkhole": mixing.sinkhole_m}
    found = worst_first([*_by_label(setback, away), *_by_state(state, away), *_missing(away), *_by_advice(away)])
    return found[0] if found else None


def _by_label(setback: tuple[Distance, ...], away: dict[str, float | None]) -> Iterator[Verdict]:
    for one in setback:
        kind = _CALLED.get(flat(one.from_))
        if kind is None:
            yield ask(f"the label says to mix {show(one.ft, 'ft')} from {one.from_}, not measured in ground.toml",
                      "yes if the mixing place is that far from every one")  # fmt: skip
        elif _nearer(away[kind], one.ft):
            yield stop(f"the label says to mix {show(one.ft, 'ft')} from {one.from_}; the mixing place lies "
                       f"{_feet(away[kind])} from it", "mix elsewhere, and write mixing in ground.toml")  # fmt: skip


def _by_state(state: str | None, away: dict[str, float | None]) -> Iterator[Verdict]:
    if state == "ME" and _nearer(away["water"], _MAINE_FT):
        yield stop(f"Maine keeps mixing {show(_MAINE_FT, 'ft')} from the high-water mark; the mixing place lies "
                   f"{_feet(away['water'])} from water", "mix elsewhere, and write mixing in ground.toml")  # fmt: skip
    if state == "CA" and _nearer(away["well"], _CALIFORNIA_FT):
        yield ask(f"California keeps mixing {show(_CALIFORNIA_FT, 'ft')} from a well; the mixing place lies "
                  f"{_feet(away['well'])} from one", "mix elsewhere; yes if the well is of those that 3 CCR 6609(b) "
                  "leaves out")  # fmt: skip


def _missing(away: dict[str, float | None]) -> Iterator[Verdict]:
    unsaid = [kind for kind, away_m in away.items() if away_m is None]
    if unsaid:
        yield ask(f"nobody has said how far the mixing place is from the nearest {', '.join(unsaid)}",
                  f"write {_WRITE}; \"none\" where you looked and there is none", answerable=False)  # fmt: skip


def _by_advice(away: dict[str, float | None]) -> Iterator[Verdict]:
    for kind, least_ft in _ADVICE_FT.items():
        if _nearer(away[kind], least_ft):
            yield warn(f"the mixing place lies {_feet(away[kind])} from the nearest {kind}; {show(least_ft, 'ft')} is "
                       f"advised ({_ADVISER[kind]})", "mix elsewhere, or over a tray that holds it all")  # fmt: skip


def _nearer(away_m: float | None, least_ft: float) -> bool:
    return away_m is not None and exceeds(least_ft, convert(away_m, "m", "ft"))


def _feet(away_m: float | None) -> str:
    return show(convert(away_m or 0.0, "m", "ft"), "ft", 3)
