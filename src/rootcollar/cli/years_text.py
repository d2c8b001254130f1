"""What each year holds, told in the terminal: follow-up owed, new ground that fits, seed in the ground."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby
from typing import Any

from rootcollar.choose import (
    Booked,
    Choice,
    Prescription,
    Setting,
    Start,
    Year,
    bank_words,
    bank_years,
    booked,
    judge_years,
    kinds_of,
    lost_words,
    owed,
    rounds_of,
)
from rootcollar.cli.laid_out import band_json, wrapped
from rootcollar.work.years_words import bank_lines, limit_words, owed_words, start_words, year_from, year_rows

__all__ = ["as_json", "line_json", "summary"]


def summary(plan: Prescription, setting: Setting, short: bool = False) -> Iterator[str]:
    """Yield the lines. short: only what is owed and what does not fit."""
    found = booked(plan, setting)
    yield "What each year holds"
    yield from wrapped(f"{limit_words(found)}.", "   ")
    for words in () if short else _years(found, setting):
        yield from wrapped(words, "   ")
    late = [start_words(one, setting, "follow-up") for one in found.owed_starts if one.years != 0]
    late += [start_words(one, setting, "new ground") for one in found.starts if one.years != 0]
    for words in late:
        yield from wrapped(f"(!) {words}.", "   ")
    for one in owed(setting):
        yield from wrapped(f"Owed: {'; '.join(owed_words(one, setting))}.", "   ")
    if owed(setting):
        yield from wrapped(f"So {lost_words(setting)}.", "   ")
    if short:
        return
    yield from wrapped(f"All lines that are work: {rounds_of(plan, setting).words}.", "   ")
    for words in (*bank_lines(plan, setting, treated=True), *found.not_known):
        yield from wrapped(f"{words[:1].upper()}{words[1:]}.", "   ")


def _years(found: Booked, setting: Setting) -> Iterator[str]:
    """Yield a line a year; years that hold the same stand in one."""
    for (owed_, taken, too_much), rows in groupby(
        year_rows(found, setting.on), key=lambda row: (row.owed, row.taken, row.too_much)
    ):
        years = [row.year for row in rows]
        much = "; MORE THAN THE YEAR HOLDS" if too_much else ""
        span = f"from {years[0]}" if len(years) == 1 else f"each of the {len(years)} years from {years[0]}"
        yield f"{span}: owed {owed_}; with new ground {taken}{much}"


def as_json(plan: Prescription, setting: Setting) -> dict[str, Any]:
    """Return the same as plain values: places in the order, what is owed, years, rounds, seed in the ground."""
    found, rounds = booked(plan, setting), rounds_of(plan, setting)
    return {
        "places": [
            {
                "unit": one.key, "points": one.points if one.works else None,
                "reasons": [
                    {"reason": each.reason, "share": each.share, "counted_as": share, "because": each.words}
                    for each, share in zip(one.speaks, one.counted, strict=True)
                ],
            }
            for one in plan.places
        ],
        "owed": [
            {
                "unit": one.unit, "species": one.species, "what": one.kind, "due": one.due.isoformat(),
                "ahead": list(one.ahead), "treated": one.done, "last": one.last.isoformat(),
                "spent": None if one.spent is None else band_json(one.spent), "words": list(owed_words(one, setting)),
            }
            for one in owed(setting)
        ],
        "years": {
            "limit_minutes": found.limit_min,
            "limit_money": found.limit_money,
            "by_year": [_year_json(found, at, setting) for at in range(len(found.owed))],
            "follow_up": [_start_json(one, setting) for one in found.owed_starts],
            "new_ground": [_start_json(one, setting) for one in found.starts],
            "not_known": list(found.not_known),
        },
        "rounds": {"visits": rounds.visits, "look_backs": rounds.looks, "seed": rounds.seed, "years": rounds.years},
    }  # fmt: skip


def line_json(choice: Choice, setting: Setting) -> dict[str, Any]:
    """Return what comes after the first visit to a line; nothing for a line that is left."""
    if choice.option is None:
        return {}
    species = setting.reference.species[choice.stand.species]
    return {
        "years_after": list(kinds_of(choice, setting)),
        "judge_years": judge_years(species, choice.way.visit.method, setting),
        "seed_years": bank_years(species, setting),
        "seed_because": bank_words(species, setting),
    }


def _year_json(found: Booked, at: int, setting: Setting) -> dict[str, Any]:
    return {
        "from": year_from(setting.on, at).isoformat(), "owed": _of(found.owed[at]), "taken": _of(found.taken[at]),
        "too_much": found.passes(found.taken[at]),
    }  # fmt: skip


def _start_json(one: Start, setting: Setting) -> dict[str, Any]:
    begins = None if one.years is None else year_from(setting.on, one.years).isoformat()
    return {"unit": one.unit, "years": one.years, "from": begins, "minutes": one.takes, "money": one.money}


def _of(year: Year) -> dict[str, Any]:
    return {"minutes": band_json(year.minutes), "money": band_json(year.money)}
