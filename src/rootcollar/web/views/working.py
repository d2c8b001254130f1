"""The working of a number: a pure job run again, watched, and told step by step with its sources."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from rootcollar.choose import Choice, replay
from rootcollar.kernel.doubt import best
from rootcollar.kernel.errors import NotFound
from rootcollar.kernel.formula import Step as Watched
from rootcollar.kernel.formula import as_tree, watch
from rootcollar.kernel.sources import Source
from rootcollar.kernel.working import in_words, walk
from rootcollar.web.desk import Open
from rootcollar.work import text

__all__ = ["Drawer", "Step", "drawer_of", "mix_drawer"]


@dataclass(frozen=True, slots=True)
class Step:
    """One step in words. source: key and how the figure was come by."""

    what: str
    how: str


@dataclass(frozen=True, slots=True)
class Drawer:
    """What a number opens into. band: the doubt around it."""

    says: str
    band: str
    steps: tuple[Step, ...]
    sources: tuple[tuple[str, str], ...]


def mix_drawer(here: Open, line: str) -> Drawer:
    """Return how a line's mix was worked out. Raises NotFound for a line that is not in the plan or pours nothing."""
    choice = _poured(here, line)
    with watch() as steps:
        poured = replay(choice, here.setting)
    says = f"{text.gallons(best(poured))} of mix"
    return drawer_of(says, text.span(poured), steps, here.setting.reference.sources)


def drawer_of(says: str, doubt: str, steps: Iterable[Watched], cites: Mapping[str, Source]) -> Drawer:
    """Return what a number opens into. steps: as they were watched; cites: the sources there are, by key."""
    trees = [as_tree(step) for step in steps]
    told = dict.fromkeys(in_words(node) for tree in trees for _, node in walk(tree))
    keys = dict.fromkeys(key for tree in trees for key in _keys(tree) if key in cites)
    return Drawer(says, doubt, tuple(Step(*one) for one in told), tuple((key, cites[key].cite) for key in keys))


def _poured(here: Open, line: str) -> Choice:
    lines = {one.stand.key: one for one in (here.plan.choices if here.plan else ()) if one.recipe is not None}
    if line not in lines:
        raise NotFound("line with a mix", line, list(lines)[:3])
    return lines[line]


def _keys(tree: Mapping[str, Any]) -> Iterator[str]:
    yield str(tree["source"])
    for below in tree["steps"]:
        yield from _keys(below)
