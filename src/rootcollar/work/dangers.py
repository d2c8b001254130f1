"""What of the plants themselves can hurt whoever works on them: thorns, sap, ticks, what hangs or breaks."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from datetime import date

from rootcollar.choose import Choice, Way
from rootcollar.kernel.tongue import Tongue
from rootcollar.reference import Reference, Species
from rootcollar.work.in_tongue import plant_name
from rootcollar.work.look_alikes import look_boxes

__all__ = ["danger_boxes", "danger_words", "minded"]

_HANGS = "hanging_load"
_CUTS = frozenset({"vine_cut", "cut_stump", "cut"})  # ways after which a climbing vine hangs, of whatever kind it is
_NOT_IN_WORK = frozenset({"toxic_ingestion"})  # nobody eats what is worked on; it stands with the species' facts


def danger_words(lines: Iterable[Choice], reference: Reference, tongue: Tongue) -> tuple[str, ...]:
    """Return a sentence for each danger of the plants on the lines, with the plants that have it.

    Which plant has which danger is the sources'; what to do about it is practice of the trade.
    """
    found = _found(lines, reference)
    return tuple(
        tongue.say(f"danger.{kind}", plants=", ".join(plant_name(one, tongue) for one in plants))
        for kind, plants in sorted(found.items())
    )


def danger_boxes(lines: Iterable[Choice], reference: Reference, tongue: Tongue) -> tuple[str, ...]:
    """Return the same dangers in a few words, short enough to be ticked side by side on page one."""
    return tuple(tongue.say(f"danger_short.{kind}") for kind in sorted(_found(lines, reference)))


def _found(lines: Iterable[Choice], reference: Reference) -> dict[str, list[Species]]:
    found: dict[str, list[Species]] = {}
    for line in lines:
        species = reference.species[line.stand.species]
        for kind in dict.fromkeys(kind for option in line.options for kind in _kinds(species, option.way)):
            if species not in (mine := found.setdefault(kind, [])):
                mine.append(species)
    return found


def minded(lines: Sequence[Choice], day: date | None, reference: Reference) -> tuple[str, ...]:
    """Return in English what hurts of the plants on lines, then which of them cannot be told from which on a day."""
    tongue = reference.tongues["en"]
    return (*danger_words(lines, reference, tongue), *look_boxes(lines, day, reference, tongue))


def _kinds(species: Species, way: Way) -> Iterator[str]:
    yield from (one.kind for one in species.hazards if one.kind not in _NOT_IN_WORK | {_HANGS})
    if species.growth_form == "vine" and way.visit.method in _CUTS:
        yield _HANGS
