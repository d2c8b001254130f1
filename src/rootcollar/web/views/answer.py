"""An answer of the bench as its page shows it."""

from __future__ import annotations

import re
from dataclasses import dataclass

from rootcollar.jobs.figure import Worked
from rootcollar.kernel.working import in_words, walk
from rootcollar.web.views.working import Drawer, Step
from rootcollar.work.packet import Said

__all__ = ["AnswerView", "answer_view", "without_dashes"]

_OPTION = re.compile(r"--([a-z][a-z-]*)")


@dataclass(frozen=True, slots=True)
class AnswerView:
    """The answer in a line, what follows from it, what was assumed, what to mind, and the drawer with the working."""

    says: str
    note: str
    details: tuple[str, ...]
    assumed: tuple[str, ...]
    cautions: tuple[str, ...]
    verdicts: tuple[Said, ...]
    drawer: Drawer


def answer_view(worked: Worked) -> AnswerView:
    """Return an answer's view."""
    answer = worked.outcome.value
    told = dict.fromkeys(in_words(node) for step in worked.working["steps"] for _, node in walk(step))
    said = tuple(
        Said(one.level.word, one.because, one.clear, one.rule, one.page)
        for one in worked.outcome.verdicts
        if one.level > 0
    )
    drawer = Drawer("How", "", tuple(Step(*one) for one in told), tuple((one.key, one.cite) for one in worked.sources))
    details, assumed, cautions = (
        tuple(map(without_dashes, lines)) for lines in (answer.details, answer.assumed, answer.cautions)
    )
    return AnswerView(answer.says, answer.note, details, assumed, cautions, said, drawer)


def without_dashes(words: str) -> str:
    """Return words for a page: what is an option in the terminal is a field here, so `--add-to` is `add to`."""
    return _OPTION.sub(lambda found: found[1].replace("-", " "), words)
