"""What comes after a visit, year by year: the next visits, the look-back, the years of seed; and what they take."""

from __future__ import annotations

import numpy as np

from rootcollar.choose.setting import Setting
from rootcollar.choose.stem_minutes import walk_over
from rootcollar.kernel.doubt import Worlds
from rootcollar.kernel.formula import formula, note, use
from rootcollar.reference import Figure, Span, Species
from rootcollar.reference import best as chosen
from rootcollar.site import Unit

__all__ = [
    "LOOK", "NOTHING", "SEED", "VISIT", "bank_words", "bank_years", "judge_years", "lost_words", "strips_m",
    "survivors", "timeline", "walk_of", "years_to_share",
]  # fmt: skip

VISIT, LOOK, SEED, NOTHING = "visit", "look", "seed", ""

_MONTHS_IN_YEAR = 12  # definition
_SUCKERING = "root-suckering trees"  # as the rows of judge_kill call them


@formula("stems * (1 - kill) ** visits", gives="stems", source="ours", stems=(0, 10000), kill=(0.01, 1), visits=(0, 10))
def survivors(stems: Worlds, kill: Worlds, visits: int) -> Worlds:
    """Return the stems that live after some visits. kill: share that dies of each."""
    left: Worlds = stems * (1 - kill) ** visits
    return left


@formula("log(left) / log(stays)", gives="years", source="ours", stays=(0.01, 0.9), left=(0.001, 0.5))
def years_to_share(stays: float, left: float) -> float:
    """Return the years until a share of the seed in the ground is left. stays: of it, each year; both below 1."""
    return float(np.log(left) / np.log(stays))


@formula("area_m2 / strip_m", gives="m", source="ours", area_m2=(0, 100000), strip_m=(2, 30))
def strips_m(area_m2: float, strip_m: float) -> float:
    """Return how far one walks to see all of some ground [m]. strip_m: seen in one pass [m]."""
    return area_m2 / strip_m


def timeline(visits: int, judge: int, bank: int) -> tuple[str, ...]:
    """Return what comes one, two, ... years after a visit: visits, then the look-back, and looks for seedlings.

    visits: still to come, one a year. judge: years from the last of them to its verdict. bank: years from the last of
    them in which seedlings come. A year has one of them; what kills goes before looking.
    """
    last = visits + max(judge, bank)
    kinds = []
    for year in range(1, last + 1):
        seed = SEED if year <= visits + bank else NOTHING
        kinds.append(VISIT if year <= visits else LOOK if year == visits + judge else seed)
    return tuple(kinds)


def judge_years(species: Species | None, method: str, setting: Setting) -> int:
    """Return the years from a visit to its verdict: the longest that a source says of the plant or the way."""
    rows = setting.reference.general.judge_kill
    suckers = (
        species is not None
        and species.growth_form == "tree"
        and bool(species.root_suckers and species.root_suckers.value)
    )
    fit = [row for row in rows if (row.applies_to == _SUCKERING) <= suckers]
    longest = max(fit, key=lambda row: (row.min_months, row.source))
    found = note(
        "to the verdict", f"{longest.mark}: {longest.min_months:g} months, {longest.applies_to}: {longest.note}",
        longest.min_months / _MONTHS_IN_YEAR, "years", longest.source,
    )  # fmt: skip
    known = setting.reference.after["judge_years"]
    of_way = known.get(f"{method}/{species.key}" if species else "") or known.get(method)
    return int(np.ceil(max(found, use(of_way) if of_way else 0.0)))


def bank_years(species: Species, setting: Setting) -> int | None:
    """Return the years in which seed in the ground must be looked after; None: no source gives a figure.

    What is published as years goes before what follows from the share that stays each year. At least one figure's upper
    end counts, its lower one where it has no upper.
    """
    spans = [row for row in species.seed_bank_years if isinstance(row.value, Span)]
    stays = setting.reference.after["seed_stays"].get(species.key)
    if spans:
        row = chosen(spans, cautious="high")
        assert isinstance(row.value, Span)
        found = row.value.high or row.value.low or 0.0
        return int(np.ceil(note("seed in the ground", _says(row), found, "years", row.source)))
    if stays is None:
        return None
    return int(np.ceil(years_to_share(use(stays), use(setting.reference.after["follow_up"]["bank_left"]))))


def _says(row: Figure) -> str:
    return f"{row.mark}: {row.holds_for}" if row.holds_for else str(row.mark)


def bank_words(species: Species, setting: Setting) -> str:
    """Return for how long the seed of a plant must be looked after, in words, with source and mark."""
    years = bank_years(species, setting)
    if years is None:
        return f"for how many years seed of {species.common_name} comes up is not known"
    spans = [row for row in species.seed_bank_years if isinstance(row.value, Span)]
    stays = setting.reference.after["seed_stays"].get(species.key)
    many = f"{years} year{'' if years == 1 else 's'}"
    told = f"seed of {species.common_name} is looked after for {many}"
    if spans:
        row = chosen(spans, cautious="high")
        told += f" [{row.source}, {row.mark}]"
    if stays is None:
        return told
    left = setting.reference.after["follow_up"]["bank_left"].value
    share = f"{stays.value:.0%} of it staying each year, until {left:.0%} is left [{stays.source}, {stays.mark}]"
    also = int(np.ceil(years_to_share(stays.value, left)))
    return f"{told}; {also} by {share}" if spans else f"{told}: {share}"


def lost_words(setting: Setting) -> str:
    """Return what one missed follow-up costs, in words."""
    once, twice = (setting.reference.after["order"][name] for name in ("once", "twice"))
    return (
        f"one missed follow-up loses the money: in a model of bush honeysuckle {once.value:.0%} of the plants are back"
        f" ten years after herbicide once, {twice.value:.0%} after herbicide and one follow-up"
        f" [{once.source}, {once.mark}]"
    )


def walk_of(area_m2: float, unit: Unit, setting: Setting) -> Worlds:
    """Return the work of looking over ground [min]. area_m2: of it [m2]. unit: on which it lies."""
    length_m = strips_m(
        note("ground", "looked over", area_m2, "m2"), use(setting.reference.after["follow_up"]["strip"])
    )
    return walk_over(length_m, unit, setting)
