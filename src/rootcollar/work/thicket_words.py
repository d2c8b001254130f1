"""What a unit's page says of a mixed thicket: what is flagged, one instruction by thickness, its cost."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from rootcollar.choose import (
    Band,
    Choice,
    OneInstruction,
    Prescription,
    Setting,
    Thicket,
    instruction,
    mix_words,
    share_to_reach,
    stems,
    thickets,
)
from rootcollar.kernel.days import name_months
from rootcollar.kernel.units import convert, show
from rootcollar.kernel.verdict import Level, worst_first
from rootcollar.mix import Recipe
from rootcollar.reference import BodySize
from rootcollar.work import text

__all__ = ["ThicketWords", "band_words", "size_words", "thicket_words"]

_SLACK_CM = 0.1  # ours: what rounding inches to centimetres costs


@dataclass(frozen=True, slots=True)
class ThicketWords:
    """A thicket as printed. unit: its key. level: "", ask or stop, as of a line. lines: sentences, in order."""

    unit: str
    title: str
    level: str
    lines: tuple[str, ...]


def thicket_words(prescription: Prescription, setting: Setting, unit: str = "") -> tuple[ThicketWords, ...]:
    """Return what is said of every mixed thicket, of a unit where one is asked for."""
    mine = [one for one in prescription.choices if not unit or one.stand.unit == unit]
    return tuple(_words(one, prescription, setting) for one in thickets(mine, setting))


def _words(one: Thicket, prescription: Prescription, setting: Setting) -> ThicketWords:
    found = one.instruction
    level = "stop" if found is None else "ask" if found.level is Level.ASK else ""
    lines = (_inside(one), *_of_instruction(one, prescription, setting), *_left(one, setting))
    return ThicketWords(one.unit, f"Mixed thicket, {one.name}: one instruction, whatever the kind", level, lines)


def _inside(one: Thicket) -> str:
    if one.keep_inside is None:
        return (
            "Nobody has said what is to stay inside: look first, flag it and leave it. Until “keep inside” is "
            "written in tally.csv, leaf spray is left out"
        )
    if not one.keep_inside:
        return "Somebody looked: nothing that is to stay stands inside. Whatever is found is flagged and left"
    return f"First flag what is to stay inside, and leave it: {one.keep_inside}. No leaf is sprayed here"


def _of_instruction(one: Thicket, prescription: Prescription, setting: Setting) -> Iterator[str]:
    found = one.instruction
    if found is None:
        yield f"No one instruction: {one.why_none}. Work it by kind and size"
        return
    if asked := [said for said in worst_first(found.said) if said.level is Level.ASK]:
        yield f"Held until answered: {asked[0].because} [{asked[0].rule}]"
    for band in found.bands:
        yield band_words(band, prescription, setting)
    yield from _passes(found)
    yield _cost(found, one.by_kind_cents, setting)
    if any(band.over or band.upto for band in found.bands):
        yield "Thicknesses by the body are ours: before the work each holds a gauge of the inches against the own hand"
    if split := _straddling(found):
        yield f"Counted in the band of their middle, though they reach into the next: {split}"


def band_words(band: Band, prescription: Prescription, setting: Setting) -> str:
    """Return a band in a sentence: how thick, what is done, with which mix, on how many stems of which kinds."""
    verb, rest = instruction(band.lines[0].way)
    mix = _mix(band.doing[1], prescription, setting)
    kinds = dict.fromkeys(setting.reference.species[line.stand.species].common_name for line in band.lines)
    count = f"{text.count(stems(band.lines))} stems, {', '.join(kinds)}"
    return f"{size_words(band.over, band.upto)}: {verb}, {rest}{mix}; {count}"


def size_words(over: BodySize | None, upto: BodySize | None) -> str:
    """Return a thickness told by the body, each with its inches."""
    if over is None and upto is None:
        return "Every stem"
    if over is None:
        return f"Up to a {_told(upto)}"
    if upto is None:
        return f"Thicker than a {_told(over)}"
    return f"Thicker than a {_told(over)}, up to a {_told(upto)}"


def _told(size: BodySize | None) -> str:
    return f"{size.word} ({show(convert(size.diameter_cm.value, 'cm', 'in'), 'in', 2)})" if size else ""


def _mix(recipe: Recipe | None, prescription: Prescription, setting: Setting) -> str:
    if recipe is None:
        return ", no mix"
    words = mix_words(recipe, setting.reference.formulations[recipe.formulation].words)
    letter = next((name for name, one in prescription.letters.items() if one == recipe), "")
    return f", mix {letter} ({words})" if letter else f", {words}, which has no letter in the plan"


def _passes(found: OneInstruction) -> Iterator[str]:
    for number, one in enumerate(found.passes, start=1):
        bands = [found.bands[which] for which in one.bands]
        which = "everything" if len(bands) == len(found.bands) else _sizes(bands)
        yield f"Pass {number}, {name_months(one.months)}: {which}"


def _sizes(bands: Sequence[Band]) -> str:
    words = [size_words(band.over, band.upto) for band in bands]
    return "; ".join(f"{one[:1].lower()}{one[1:]}" for one in words)


def _cost(found: OneInstruction, by_kind_cents: int, setting: Setting) -> str:
    more = found.cents - by_kind_cents
    beside = f"${abs(more) / 100:,.0f} {'more' if more >= 0 else 'less'}" if more else "the same"
    return (
        f"To {100 * share_to_reach(setting):.3g} % of the stems dead: ${found.cents / 100:,.0f}; choosing for each "
        f"kind and size by itself ${by_kind_cents / 100:,.0f}, so one instruction costs {beside}"
    )


def _straddling(found: OneInstruction) -> str:
    split = (text.size(line.stand.band_cm) for band in found.bands for line in band.lines if _reaches(line, band))
    return ", ".join(dict.fromkeys(split))


def _reaches(line: Choice, band: Band) -> bool:
    low, high = line.stand.band_cm
    under = band.over is not None and low < band.over.diameter_cm.value - _SLACK_CM
    return under or (band.upto is not None and high > band.upto.diameter_cm.value + _SLACK_CM)


def _left(one: Thicket, setting: Setting) -> Iterator[str]:
    if one.left:
        kinds = setting.reference.species
        names = (f"{kinds[line.stand.species].common_name} {text.size(line.stand.band_cm)}" for line in one.left)
        yield f"Flag and leave for now, for no way is open: {', '.join(names)}"
