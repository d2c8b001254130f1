"""Answers to open questions: asked once, kept with name, date and page, and stale when label or season has changed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date

from rootcollar.kernel.days import season_turned
from rootcollar.kernel.verdict import Level, Verdict
from rootcollar.label.rule import RULES
from rootcollar.shelf import Sheet

__all__ = ["Answer", "Answers", "settle"]


@dataclass(frozen=True, slots=True)
class Answer:
    """One answer: to which rule, about which line, unit or sheet ("*": all), yes or no, by whom, on what day.

    page: of the label, where it was found. sheets: the shelf as it was when it was answered, (key, stamp); empty where
    nobody has noted it.
    """

    rule: str
    about: str
    yes: bool
    by: str
    on: date
    note: str = ""
    page: str = ""
    sheets: tuple[tuple[str, str], ...] = ()


Answers = tuple[Answer, ...]


def settle(verdict: Verdict, answers: Sequence[Answer], *, on: date | None, sheet: Sheet | None = None) -> Verdict:
    """Return the verdict after the answers: a yes clears a question a person can settle, a no stops the line.

    on: the day the plan is weighed for; None where no day is known. sheet: the label of the line's product.
    Only an `ask` that says it can be answered is touched: a stop stands whatever anybody answers, and a line of
    the label that nobody has read is answered by reading it. A no stands until a later yes about the same or less:
    a yes to everything does not undo a no to one unit. A yes is stale, and the question open again, once the season
    has turned or the sheet was changed; a no never is.
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
    binds = sheet if verdict.rule in RULES and RULES[verdict.rule].needs_label else None
    fresh = [one for one in yes if not _stale(one, binds, on)]
    if not fresh:
        last = yes[-1]
        said = f"answered yes by {_signed(last)}, but {_stale(last, binds, on)}: to be answered again"
        return replace(verdict, because=f"{verdict.because}; {said}")
    signed = f"answered yes by {_signed(fresh[-1])}"
    return replace(verdict, level=Level.OK, because=f"{verdict.because}; {signed}", page=verdict.page or fresh[-1].page)


def _stale(answer: Answer, sheet: Sheet | None, on: date | None) -> str:
    """Return why an answer no longer holds; nothing while it does."""
    if on is not None and season_turned(answer.on, on):
        return "the season has turned since"
    if sheet is None:
        return ""
    if answer.sheets:
        return "" if dict(answer.sheets).get(sheet.key) == sheet.stamp else "the label sheet was changed since"
    read_on: date | None = sheet.says("proof.read_on")
    return "the label was read again since" if read_on and read_on > answer.on else ""


def _signed(answer: Answer) -> str:
    where = f", label page {answer.page}" if answer.page else ""
    return f"{answer.by}, {answer.on.isoformat()}{where}{': ' + answer.note if answer.note else ''}"
