"""The open questions of a plan, each once, with the units it is asked of and what would settle it."""

from __future__ import annotations

from dataclasses import dataclass

from rootcollar.kernel.verdict import Level, Verdict
from rootcollar.label import RULES
from rootcollar.web.desk import Open, of_what_lies_open
from rootcollar.work.packet import Said
from rootcollar.work.unit_page import said as printed

__all__ = ["Question", "more_ways", "questions"]


@dataclass(frozen=True, slots=True)
class Question:
    """One question, for which one answer is enough: what a rule asks of the same units, in as many words as it takes.

    abouts: (key, name) of the units. answerable: whether a yes or no settles it. everywhere: one answer holds for all.
    """

    rule: str
    said: tuple[Said, ...]
    lines: int
    abouts: tuple[tuple[str, str], ...]
    answerable: bool
    everywhere: bool = False


@of_what_lies_open
def questions(here: Open) -> tuple[Question, ...]:
    """Return every question that holds a line back, the one that holds most lines first."""
    found: dict[tuple[str, str, str], list[Verdict]] = {}
    for line in here.plan.choices if here.plan else ():
        for one in line.verdicts:
            if one.level is Level.ASK:
                unit = one.about.split("/")[0]
                once = not one.answerable or (one.rule in RULES and RULES[one.rule].of_the_whole)
                key = (one.rule, "", one.because) if once else (one.rule, unit, "")
                found.setdefault(key, []).append(one)
    return tuple(_question(said, here) for said in sorted(found.values(), key=lambda said: -len(said)))


def _question(said: list[Verdict], here: Open) -> Question:
    first = said[0]
    units = here.project.ground.units
    keys = dict.fromkeys(one.about.split("/")[0] for one in said)
    abouts = tuple((key, units[key].name if key in units else key) for key in keys)
    words = tuple({one.because: printed(one) for one in said}.values())
    lines, whole = len({one.about for one in said}), first.rule in RULES and RULES[first.rule].of_the_whole
    return Question(first.rule, words, lines, abouts, first.answerable, whole)


@of_what_lies_open
def more_ways(here: Open) -> tuple[tuple[str, str], ...]:
    """Return (what is not known, what to do) of the questions that would only open more ways."""
    asked = (
        {(one.because, one.would_win_if) for line in here.plan.choices for one in line.set_aside if one.asks}
        if here.plan
        else set()
    )
    return tuple(sorted(asked))
