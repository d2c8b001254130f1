"""Answers to open questions: asked once, kept with name and date."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date

from rootcollar.kernel.verdict import Level, Verdict

__all__ = ["Answer", "Answers", "settle"]


@dataclass(frozen=True, slots=True)
class Answer:
    """One answer: to which rule, about which line, unit or sheet ("*": all), yes or no, by whom, on what day."""

    rule: str
    about: str
    yes: bool
    by: str
    on: date
    note: str = ""


Answers = tuple[Answer, ...]


def settle(verdict: Verdict, answers: Sequence[Answer]) -> Verdict:
    """Return the verdict after the answers: a yes clears a question a person can settle, a no stops the line.

    Only an `ask` that says it can be answered is touched: a stop stands whatever anybody answers, and a line of
    the label that nobody has read is answered by reading it. A no stands until a later yes about the same or less:
    a yes to everything does not undo a no to one unit.
    """
    if verdict.level is not Level.ASK or not verdict.answerable:
        return verdict
    scopes = ["*", verdict.about.split("/")[0], verdict.about]
    fit = [one for one in answers if one.rule == verdict.rule and one.about in scopes]
    yes = [one for one in fit if one.yes]
    for no in (one for one in fit if not one.yes):
        if not any(one.on > no.on and scopes.index(one.about) >= scopes.index(no.about) for one in yes):
            return replace(verdict, level=Level.STOP, because=f"{verdict.because}; answered no by {_signed(no)}")
    if not yes:
        return verdict
    return replace(verdict, level=Level.OK, because=f"{verdict.because}; answered yes by {_signed(yes[-1])}")


def _signed(answer: Answer) -> str:
    return f"{answer.by}, {answer.on.isoformat()}{': ' + answer.note if answer.note else ''}"
