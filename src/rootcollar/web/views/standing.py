"""The trees on a unit that work killed on their feet, or will, as the pages of the unit warn of them."""

from __future__ import annotations

from rootcollar.web.desk import Open
from rootcollar.work.standing import leaves_words, standing_on

__all__ = ["dead_trees"]

_FIRST = "en"  # the language of the app


def dead_trees(here: Open, key: str) -> tuple[str, ...]:
    """Return what is told of dead trees on a unit: those that still stand, and those that the plan will leave so."""
    reference = here.setting.reference
    tongue = reference.tongues[_FIRST]
    lines = [one for one in (here.plan.choices if here.plan else ()) if one.stand.unit == key]
    told = (standing_on(key, here.project.history, here.on, reference, tongue), leaves_words(lines, reference, tongue))
    return tuple(words for words in told if words)
