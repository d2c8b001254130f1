"""What must not be done on a unit, or waits for an answer, as the day sheet says it."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from datetime import date

from rootcollar.choose import Choice, Setting, way_words
from rootcollar.kernel.tongue import Tongue
from rootcollar.kernel.verdict import Level, Verdict, worst_first
from rootcollar.work import text
from rootcollar.work.in_tongue import month_words, plant_name
from rootcollar.work.packet import Struck

__all__ = ["struck_lines", "struck_ways"]


def struck_lines(
    held: Sequence[Choice], setting: Setting, tongue: Tongue, day: date | None = None
) -> tuple[Struck, ...]:
    """Return the lines that must not be done (on the day), or wait, with why and what clears it, alike together."""
    found: dict[tuple[Struck, str], list[str]] = {}
    for line in sorted(held, key=lambda one: (one.stand.species, one.stand.band_cm)):
        plant = plant_name(setting.reference.species[line.stand.species], tongue)
        size, stems = text.size(line.stand.band_cm), text.count(line.stand.stems)
        who = tongue.say("struck.stand", plant=plant, size=size, stems=stems)
        way = f": {way_words(line.way, tongue)}" if line.option else ""
        found.setdefault((_why(line, tongue, day), way), []).append(who)
    return tuple(replace(why, what=f"{'; '.join(who)}{way}") for (why, way), who in found.items())


def struck_ways(lines: Iterable[Choice], tongue: Tongue) -> tuple[Struck, ...]:
    """Return the ways that a rule strikes on this unit, once each, so that nobody does them out of habit."""
    found: dict[tuple[str, str], Struck] = {}
    for aside in (one for line in lines for one in line.set_aside):
        if aside.stop is not None:
            words, stop = way_words(aside.way, tongue), aside.stop
            what = tongue.say("struck.here", way=words)
            found.setdefault((words, stop.rule), _said(stop, tongue, what))
    return tuple(found.values())


def _why(line: Choice, tongue: Tongue, day: date | None) -> Struck:
    said = worst_first(line.verdicts)
    if line.option is None:
        if not tongue.rules:
            return Struck("stop", "", line.because, "")
        return _said(said[0], tongue) if said else Struck("stop", "", tongue.say("struck.no_way"), "")
    if line.level < Level.ASK and day is not None:
        named = month_words(line.way.months, tongue)
        because = tongue.say("struck.month", month=tongue.say(f"month.{day.month}"), months=named)
        return Struck("stop", "", because, tongue.say("struck.another_day"))
    return _said(said[0], tongue)


def _said(verdict: Verdict, tongue: Tongue, what: str = "") -> Struck:
    """A verdict in full as its rule speaks it; where the sheet has its own sentence for the rule, that one instead.

    The reason in full, and what clears it, stand on the unit's page either way.
    """
    sentence, clear = tongue.rules.get(verdict.rule), verdict.clear
    if sentence is None:
        because = verdict.because
    else:
        key = "struck.by_rule" if verdict.level is Level.STOP else "struck.by_question"
        because, clear = tongue.say(key, rule=verdict.rule, sentence=sentence), ""
    page = tongue.say("struck.page", because=because, page=verdict.page) if verdict.page else because
    return Struck(verdict.level.word, what, page, clear)
