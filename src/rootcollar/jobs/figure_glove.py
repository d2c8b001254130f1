"""Figure gloves: of what, how long they hold against what is in a mix, and what never to wear."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from rootcollar.hazard import Chart, Rating, chart_words, holding_times, material_words, read_chart
from rootcollar.jobs.figure import Answer, bench_cautions
from rootcollar.jobs.outcome import Outcome
from rootcollar.kernel.formula import use
from rootcollar.reference import Reference, named, numbers

__all__ = ["NEVER", "GloveAsk", "glove"]

NEVER = ("leather", "cotton", "canvas")
_LABEL = "The label first: the gloves and the letter (A to H) that it names win over everything here"
_REMEMBERED = "the chart as remembered (EPA-CRC): compare it with a printed one before you rely on it"
_CAUTIONS = (
    "Wash the gloves before you take them off; look for pinholes; away with a glove that is torn, stiff or stained.",
    "Sleeves over the cuffs when you work low, cuffs folded up when you reach overhead.",
)


@dataclass(frozen=True, slots=True)
class GloveAsk:
    """What is in the mix, and of what the glove is. groups: letters of the chart; empty: any mix.

    words: the mix in words. material: of the chart, or of `NEVER`; "": any. assumed: taken for what was not said.
    """

    given: Mapping[str, str]
    groups: tuple[str, ...] = ()
    words: str = ""
    material: str = ""
    assumed: tuple[str, ...] = ()


def glove(ask: GloveAsk, reference: Reference) -> Outcome[Answer]:
    """Return which gloves hold against a mix and how long, or against what a glove holds."""
    chart = read_chart(reference.hazard["gloves_chart"])
    times = holding_times(reference.hazard["gloves_time"])
    says, value, unit = _says(ask, chart, times)
    return Outcome(
        Answer(
            question=_question(ask),
            given=ask.given,
            says=says,
            value=value, unit=unit,
            details=tuple(_details(ask, chart, times, reference)),
            assumed=(*ask.assumed, _REMEMBERED),
            cautions=(*_CAUTIONS, *bench_cautions(reference)),
        )
    )  # fmt: skip


def _question(ask: GloveAsk) -> str:
    if not ask.groups:
        return f"Against what does a glove of {ask.material} hold?"
    return f"Which gloves hold against {ask.words}?" if not ask.material else f"Does {ask.material} hold against it?"


def _says(ask: GloveAsk, chart: Chart, times: Mapping[Rating, str]) -> tuple[str, float, str]:
    """The answer in one line, a number for it, and the number's unit."""
    if ask.material in NEVER:
        return f"{ask.material.capitalize()}: never with herbicide, unless the label lists it", 0.0, "rating 0 to 3"
    if not ask.groups:
        held = {one: cells[ask.material] for one, cells in chart.ratings.items()}
        alike = {rating: [one for one, found in held.items() if found is rating] for rating in times}
        told = [f"{times[rating]} in {', '.join(ones)}" for rating, ones in alike.items() if ones]
        says = f"By the label; by the chart {ask.material} holds {'; '.join(told)}"
        return says, float(len(alike[Rating.HIGH])), "groups"
    if ask.material:
        worst = chart.weakest(ask.material, ask.groups)
        how = material_words(chart, ask.material, ask.groups, times)
        return f"By the label; by the chart {ask.material} in {ask.words}: {how}", float(worst), "rating 0 to 3"
    day = chart.rated(Rating.HIGH, ask.groups)
    if len(day) == len(chart.materials):
        return f"By the label; for {ask.words} any material of the chart holds the day", float(len(day)), "materials"
    part = [one for one in chart.materials if one not in day and chart.ratings[ask.groups[0]][one] is Rating.HIGH]
    more = f"; {' or '.join(part)} hold it in {ask.groups[0]} only" if part and len(ask.groups) > 1 else ""
    return f"By the label; for {ask.words} {' or '.join(day)} hold the day{more}", float(len(day)), "materials"


def _details(ask: GloveAsk, chart: Chart, times: Mapping[Rating, str], reference: Reference) -> Iterator[str]:
    yield f"{_LABEL}."
    gloves = reference.mixing["gloves"]
    if ask.groups:
        rule = named(gloves, "water_mix" if ask.groups == ("A",) else "oil_mix")[0]
        yield f"The federal rule's words for {rule.holds_for}: {rule.value} ({rule.source}, {rule.mark})."
        yield f"By the chart, from first contact: {chart_words(chart, ask.groups, times)}."
        if "butyl" in chart.materials and chart.weakest("butyl", ask.groups) is Rating.SLIGHT and ask.groups != ("A",):
            yield "The rule's words name butyl as an example; the chart calls it weak here: not butyl."
    letters = ask.groups or tuple(chart.words)
    yield f"{'; '.join(f'{one}: {chart.words[one]}' for one in letters)}."
    yield from _wearing(reference)
    forbidden = named(gloves, "forbidden")[0]
    yield f"Never: {forbidden.value} ({forbidden.source}, {forbidden.mark})."


def _wearing(reference: Reference) -> Iterator[str]:
    rows = reference.hazard["gloves_time"]
    mil = numbers(named(rows, "thickness_mil"))[0]
    lining = named(rows, "lining")[0]
    yield f"Thickness: {use(mil):g} mil and more, but for laminate and polyethylene ({mil.source}, {mil.mark})."
    yield f"Liners: {lining.value} ({lining.source}, {lining.mark})."
