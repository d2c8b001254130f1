"""What a paper says of the two steps of a way, and of how long what was treated is left uncut."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from rootcollar.choose import (
    Choice,
    Prescription,
    Setting,
    Way,
    begun,
    date_words,
    holds_of,
    second_spans,
    span_words,
    step_days,
    wait_words,
)
from rootcollar.kernel.days import months, name_months
from rootcollar.kernel.sources import Cited
from rootcollar.kernel.tongue import Tongue
from rootcollar.reference import Span, StepRow

__all__ = ["step_note", "steps_words"]

_ENGLISH = "en"


def steps_words(choice: Choice, setting: Setting) -> tuple[str, ...]:
    """Return sentences on both steps of a line, their days, what is killed by which; and how long it stays uncut.

    The second step is named as owed where applied.csv has the first. Nothing for a line of one visit that no source
    leaves standing.
    """
    return tuple(_said(choice, setting)) if choice.option else ()


def _said(choice: Choice, setting: Setting) -> Iterator[str]:
    way, row = choice.way, choice.way.step
    species = setting.reference.species[choice.stand.species]
    tongue = setting.reference.tongues[_ENGLISH]
    if row is not None:
        if dates := _dates(choice, way, row, setting, tongue):
            yield dates
        yield f"What kills is {row.kills} ({row.source}, {row.mark})"
        yield from _wait(row)
        yield "Time and cost of one visit are of both steps, and each further visit is counted as both again (ours)"
        yield (
            f"Write the first step in applied.csv when it is done: the plant, {row.first} as its method, none as "
            "ingredient and amount; the second is then owed by its days"
        )
    for hold in holds_of(way, species, setting.reference):
        when = frozenset[int]().union(*(months(one) for one in hold.windows))
        then = f"; cut it then in {name_months(when)}" if when else ""
        yield (
            f"Do not cut what was treated for at least {hold.days.value.low:g} days: {hold.days.holds_for}{then} "
            f"({hold.source}, {hold.mark})"
        )


def _wait(row: StepRow) -> Iterator[str]:
    wait, high = row.wait_days, row.regrowth_m
    told = [f"height, {high.holds_for} ({_by(high)})"]
    if wait is not None:
        told.insert(0, f"wait, {wait.holds_for} ({_by(wait)})")
    if row.taken:
        told.append(f"days taken: {row.taken} (ours)")
    yield f"Wait and height: {'; '.join(told)}"


def _by(figure: Cited[Span]) -> str:
    return "ours" if figure.source == "ours" else f"{figure.source}, {figure.mark}"


def _dates(choice: Choice, way: Way, row: StepRow, setting: Setting, tongue: Tongue) -> str:
    since = begun(choice.stand.unit, choice.stand.species, row, setting.history, setting.on)
    if since is not None:
        spans = span_words(second_spans(way, since), tongue)
        when = spans or "no day is left for it, prepare again"
        return f"Second step owed: the first was done {since.isoformat()}; the second, {when}"
    found = step_days(way, setting.on)
    return "" if found is None else f"Two steps: {date_words(found, tongue)}"


def step_note(line: Choice, prescription: Prescription, setting: Setting, day: date | None, tongue: Tongue) -> str:
    """Return what the day sheet says of the steps of a line: that this is the first, or when the first was done.

    line: as it is work on the day. Without a day, when both can be. Nothing for a line of one visit.
    """
    row = line.way.step
    if row is None:
        return ""
    whole = next((one.way for one in prescription.choices if one.stand.key == line.stand.key and one.option), line.way)
    if len(line.way.treatment) > 1:
        found = step_days(line.way, setting.on)
        return date_words(found, tongue) if found else ""
    if line.recipe is None:
        spans = span_words(second_spans(whole, day or setting.on), tongue)
        return tongue.say("step.today", wait=wait_words(row, tongue), second=spans)
    since = begun(line.stand.unit, line.stand.species, row, setting.history, day or setting.on)
    spans = span_words(second_spans(whole, since), tongue) if since else ""
    return tongue.say("step.again", on=since.isoformat(), second=spans) if since else ""
