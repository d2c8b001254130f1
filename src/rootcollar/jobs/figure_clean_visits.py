"""Figure clean visits: how many in a row before ground may be called clear, by looks and by seed in the ground."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import NamedTuple

from rootcollar.jobs.facts_words import value_words
from rootcollar.jobs.figure import Answer, System
from rootcollar.jobs.figure_words import length
from rootcollar.jobs.outcome import Outcome
from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.formula import use
from rootcollar.kernel.sources import Cited, Mark
from rootcollar.kernel.units import show
from rootcollar.reference import Reference, Span, find_species, spans
from rootcollar.survey.looked import Clear, chance_found, clear_when, times_swept

__all__ = ["CleanVisitsAsk", "Swept", "clean_visits"]

_ALIKE = "The same eyes in the same season miss the same plants: send somebody else, or come in another season."
_NOT_PROOF = "A rule, not a proof: seed also comes in from beside. One plant found, and the count begins anew."
_SURE_PCT = 99.99  # ours: nobody sees all that stands; a chance above this is a slip


_AT_LEAST = "at least"


class Swept(NamedTuple):
    """How the ground was searched: track [m], effective width [m], ground [m2]."""

    track_m: float
    width_m: float
    area_m2: float


@dataclass(frozen=True, slots=True)
class CleanVisitsAsk:
    """What is known. found_pct: chance that one visit finds what stands [%], or swept, one of them.

    before_pct: chance believed, before the first clean visit, that something is left [%]. left_pct: the chance of
    something left that is borne [%]. seed_years: life of the seed, or a species' name, one of them.
    """

    given: Mapping[str, str]
    before_pct: float
    left_pct: float
    visits_a_year: float
    found_pct: float | None = None
    swept: Swept | None = None
    seed_years: float | None = None
    species: str = ""
    system: System = "us"


def clean_visits(ask: CleanVisitsAsk, reference: Reference) -> Outcome[Answer]:
    """Return the clean visits in a row that both rules ask for. Raises Refusal where the seed's life is not known."""
    found_pct = ask.found_pct if ask.swept is None else chance_found(times_swept(*ask.swept))
    if not found_pct or found_pct > _SURE_PCT:
        raise Refusal(
            "so narrow a search, or one that sees all", limit=f"want a chance above 0, at most {_SURE_PCT:g} %",
            do="Measure it on a calibration walk, with flags set out by somebody else.",
        )  # fmt: skip
    row = None if ask.seed_years is not None else _seed_bank(ask.species, reference)
    seed = ask.seed_years or 0.0 if row is None else use(row)
    try:
        clear = clear_when(found_pct, ask.before_pct, ask.left_pct, seed, ask.visits_a_year)
    except ValueError:
        raise Refusal(
            f"a visit that finds {show(found_pct, '%')} of what stands",
            limit="clean visits then tell next to nothing",
            do="Search closer: a longer track, a season in which the plant shows.",
        ) from None
    return Outcome(Answer(
        question="How many clean visits before this ground may be called clear?",
        given=ask.given,
        says=f"{clear.visits} clean visits in a row over {_years(clear.years)}; {_why(clear, seed)}",
        value=float(clear.visits), unit="visits",
        figures={
            "visits": float(clear.visits), "years": float(clear.years), "looks": float(clear.looks),
            "left_pct": clear.left_pct, "seed_years": seed, "found_pct": found_pct,
        },
        details=tuple(_details(ask, clear, found_pct, reference)),
        assumed=(*_of_seed(row), *_assumed(ask, found_pct)),
        cautions=(_ALIKE, _NOT_PROOF),
        note="the longer of two rules: clean looks, and the life of seed in the ground",
    ))  # fmt: skip


def _seed_bank(name: str, reference: Reference) -> Cited[float]:
    """Return the longest life of seed that any source gives [years]. Raises Refusal where none gives a figure."""
    plant = find_species(name, reference)
    rows = [(_longest(row.value), row) for row in spans(plant.seed_bank_years)]
    if not rows:
        raise Refusal(
            f"seed of {plant.common_name}",
            limit="no source here gives its life in years",
            do="Give it with --seed-years; unknown is not none.",
        )
    years, row = max(rows, key=lambda one: (one[0], one[1].source))
    bound = _AT_LEAST if row.value.high is None else ""
    return Cited(years, "years", row.source, row.mark, "; ".join(part for part in (bound, row.holds_for) if part))


def _longest(span: Span) -> float:
    return max(end for end in (span.low, span.best, span.high) if end is not None)


def _why(clear: Clear, seed: float) -> str:
    if clear.by == "seed":
        return f"seed that lives {_years(seed)} decides, for {_visits(clear.looks)} would do for the looks alone"
    return f"the looks decide: after {clear.looks} the chance of something left is {show(clear.left_pct, '%', 2)}"


def _details(ask: CleanVisitsAsk, clear: Clear, found_pct: float, reference: Reference) -> Iterator[str]:
    yield (
        f"By looks: {_visits(clear.looks)} of {show(found_pct, '%')} each leave a chance of "
        f"{show(clear.left_pct, '%', 2)} that something stands, down from {show(ask.before_pct, '%')}."
    )
    if ask.species:
        plant = find_species(ask.species, reference)
        for row in plant.seed_bank_years:
            held = f", {row.holds_for}" if row.holds_for else ""
            yield f"Seed of {plant.common_name}: {value_words(row)}{held} ({row.mark}, {row.source})."
        yield "Of several figures the longest counts."


def _of_seed(row: Cited[float] | None) -> Iterator[str]:
    if row is not None and row.mark is Mark.MEMORY:
        yield f"seed lives {_years(row.value)}: from memory, confirm it before anybody acts on it"
    if row is not None and row.holds_for.startswith(_AT_LEAST):
        yield f"seed lives {_years(row.value)}: the source says at least so long, so it may live longer"


def _assumed(ask: CleanVisitsAsk, found_pct: float) -> Iterator[str]:
    if ask.swept is not None:
        yield (
            f"a search at random with an effective width of {length(ask.swept.width_m, ask.system)} finds "
            f"{show(found_pct, '%')} of what stands (COOPER)"
        )
    if "before" not in ask.given:
        yield f"{show(ask.before_pct, '%')} that something is left before the first clean visit (ours); --before"
    if "left" not in ask.given:
        yield f"{show(ask.left_pct, '%')} that something is left is borne (ours); --left"
    if "visits-a-year" not in ask.given:
        yield "one visit a year, in the season in which the plant shows; --visits-a-year"
    yield "each visit sees for itself"


def _years(years: float) -> str:
    return f"{years:g} year{'' if years == 1 else 's'}"


def _visits(visits: int) -> str:
    return f"{visits} visit{'' if visits == 1 else 's'}"
