"""What must not be done on a unit, or waits for an answer, as the day sheet says it."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from datetime import date

from rootcollar.choose import Choice, Setting, way_words
from rootcollar.kernel.days import MONTHS, name_months
from rootcollar.kernel.verdict import Level, worst_first
from rootcollar.work import text
from rootcollar.work.packet import Struck

__all__ = ["struck_lines", "struck_ways"]


def struck_lines(held: Sequence[Choice], setting: Setting, day: date | None = None) -> tuple[Struck, ...]:
    """Return the lines that must not be done (on the day), or wait, with why and what clears it, alike together."""
    found: dict[tuple[Struck, str], list[str]] = {}
    for line in sorted(held, key=lambda one: (one.stand.species, one.stand.band_cm)):
        plant = setting.reference.species[line.stand.species].common_name
        who = f"{plant} {text.size(line.stand.band_cm)}, {text.count(line.stand.stems)} stems"
        way = f": {way_words(line.way)}" if line.option else ""
        found.setdefault((_why(line, day), way), []).append(who)
    return tuple(replace(why, what=f"{'; '.join(who)}{way}") for (why, way), who in found.items())


def struck_ways(lines: Iterable[Choice]) -> tuple[Struck, ...]:
    """Return the ways that a rule strikes on this unit, once each, so that nobody does them out of habit."""
    found: dict[tuple[str, str], Struck] = {}
    for aside in (one for line in lines for one in line.set_aside):
        if aside.stop is not None:
            words, stop = way_words(aside.way), aside.stop
            because = _with_page(stop.because, stop.page)
            found.setdefault((words, stop.rule), Struck("stop", f"here, {words}", because, stop.clear))
    return tuple(found.values())


def _why(line: Choice, day: date | None) -> Struck:
    said = worst_first(line.verdicts)
    if line.option is None:
        return Struck("stop", "", line.because, "")
    if line.level < Level.ASK and day is not None:
        named = name_months(line.way.visit.months)
        return Struck("stop", "", f"not in {MONTHS[day.month - 1]}: the sources name {named}", "another day")
    return Struck(said[0].level.word, "", _with_page(said[0].because, said[0].page), said[0].clear)


def _with_page(because: str, page: str) -> str:
    return f"{because} (label page {page})" if page else because
