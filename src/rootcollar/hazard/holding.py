"""How long a glove holds against a mix, in words."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from rootcollar.hazard.gloves import Chart, Rating
from rootcollar.kernel.formula import use
from rootcollar.kernel.sources import Cited
from rootcollar.kernel.units import show
from rootcollar.reference import NamedFigure, named, numbers, spans

__all__ = ["chart_words", "holding_times", "material_words"]


def holding_times(rows: Sequence[NamedFigure]) -> Mapping[Rating, str]:
    """Return how long a rating lasts from first contact, in words. rows: the topic `gloves_time` of the facts."""
    moderate = spans(named(rows, "moderate_h"))[0]
    slight = numbers(named(rows, "slight_min"))[0]
    ends = f"{moderate.value.low:g} to {moderate.value.high:g}"
    told = use(Cited(ends, moderate.unit, moderate.source, moderate.mark, moderate.holds_for))
    return {
        Rating.HIGH: "the day",
        Rating.MODERATE: f"{told} {moderate.unit}",
        Rating.SLIGHT: show(use(slight), slight.unit),
        Rating.NONE: "never",
    }


def material_words(chart: Chart, material: str, groups: Sequence[str], times: Mapping[Rating, str]) -> str:
    """Return how long a material holds: once where the groups agree, else group by group."""
    ratings = {group: chart.ratings[group][material] for group in groups}
    if len(set(ratings.values())) == 1:
        return times[ratings[groups[0]]]
    return ", ".join(f"{times[rating]} in {group}" for group, rating in ratings.items())


def chart_words(chart: Chart, groups: Sequence[str], times: Mapping[Rating, str]) -> str:
    """Return how long each material holds against a mix that may belong to any of the groups, best first."""
    day = chart.rated(Rating.HIGH, groups)
    if len(day) == len(chart.materials):
        return "every material of the chart holds the day; rinse at breaks"
    none = [one for one in chart.materials if all(chart.ratings[group][one] is Rating.NONE for group in groups)]
    alike: dict[str, list[str]] = {}
    for one in chart.materials:
        if one not in day and one not in none:
            alike.setdefault(material_words(chart, one, groups, times), []).append(one)
    said = [
        f"{', '.join(day)}: the day, rinsed at breaks",
        *(f"{', '.join(ones)}: {how}" for how, ones in alike.items()),
    ]
    return "; ".join(said) + (f"; never {', '.join(none)}" if none else "")
