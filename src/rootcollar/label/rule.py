"""The rule engine: a rule can object, it cannot permit.

A rule declares what it reads. A fact that nobody has read asks by itself; where the label was read and is silent,
the rule's own `when_silent` holds; only then is its check called, and only an objection comes back from it.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from enum import StrEnum
from types import MappingProxyType
from typing import Any, Literal

from rootcollar.kernel.verdict import Level, Stage, Verdict
from rootcollar.label.paths import PATHS
from rootcollar.shelf import SILENT, Line

__all__ = ["RULES", "Basis", "Facts", "Rule", "Seen", "ask", "exceeds", "rule", "stop", "warn", "weigh"]

Facts = Mapping[str, Line[Any]]
Check = Callable[..., Verdict | None]
Group = Literal["template", "place", "totals", "day"]

_SAID_ONCE = frozenset({"place.handling", "place.mixing"})  # in ground.toml for all units, unless one differs
_HAIR = 1e-9  # a figure this close to a limit, as a share of it, is the limit: floating point is not a measurement

_NOTHING_WITHOUT = frozenset({"plan.partner"})  # a rule that reads one of these has nothing to weigh where it is none


class Seen(StrEnum):
    """How the authority behind a rule was seen."""

    READ = "read"
    EDITION = "read in the edition of 2015"
    LABEL = "the label itself"
    OWN = "our own caution"
    MEMORY = "from memory"


@dataclass(frozen=True, slots=True)
class Basis:
    """The authority behind a rule, in words, and how it was seen."""

    words: str
    seen: Seen = Seen.READ


@dataclass(frozen=True, slots=True)
class Rule:
    """One rule. reads: parameter of the check -> fact, or several facts together. paths: every fact it reads.

    when_silent: what is said when a line it reads is silent; silence: for single lines, what silence means instead.
    """

    number: str
    sentence: str
    basis: Basis
    stage: Stage
    when_silent: Level
    silence: Mapping[str, object]
    reads: Mapping[str, str | tuple[str, ...]]
    paths: tuple[str, ...]
    check: Check

    @property
    def cap(self) -> Level:
        """The worst it can say: a rule that is only remembered asks at most, until its clause is read."""
        return Level.ASK if self.basis.seen is Seen.MEMORY else Level.STOP

    @property
    def group(self) -> Group:
        """When it is weighed: once a template, once a unit, over the sums of a unit, or when the day is prepared."""
        rooms = {path.split(".")[0] for path in self.paths}
        if "day" in rooms:
            return "day"
        if rooms & {"total", "history"}:
            return "totals"
        return "place" if "place" in rooms or "plan.on" in self.paths else "template"

    @property
    def of_the_whole(self) -> bool:
        """Whether it asks of label, crew, shed and what is said once for all units: one answer holds for all."""
        rooms = {path if path in _SAID_ONCE else path.split(".")[0] for path in self.paths}
        return rooms <= {"sheet", "people", "shed", "law", *_SAID_ONCE}

    @property
    def needs_label(self) -> bool:
        """Whether it reads the label at all."""
        return any(path.startswith("sheet.") for path in self.paths)


RULES: dict[str, Rule] = {}


def rule(
    number: str, sentence: str, basis: Basis, *, when_silent: Level = Level.ASK,
    silence: Mapping[str, object] = MappingProxyType({}), stage: Stage = Stage.PLAN, **reads: str | tuple[str, ...],
) -> Callable[[Check], Check]:  # fmt: skip
    """Enter a check into the rules, under its number.

    sentence: what it asks for, in plain words. when_silent, silence, reads: see `Rule`. The check gets the facts by
    parameter name and returns an objection (`stop`, `ask`, `warn`) or None.
    Raises ValueError when the number is taken.
    """

    def enter(check: Check) -> Check:
        if number in RULES:
            raise ValueError(f"rule {number} is there already")
        paths = tuple(path for one in reads.values() for path in ((one,) if isinstance(one, str) else one))
        RULES[number] = Rule(number, sentence, basis, stage, when_silent, silence, reads, paths, check)
        return check

    return enter


def stop(because: str, clear: str) -> Verdict:
    """Return an objection that nothing but another plan clears."""
    return Verdict(Level.STOP, because, clear)


def ask(because: str, clear: str, *, answerable: bool = True) -> Verdict:
    """Return an open question; answerable: whether a person's yes or no settles it."""
    return Verdict(Level.ASK, because, clear, answerable=answerable)


def warn(because: str, clear: str) -> Verdict:
    """Return a warning: not forbidden by what is known, but risky."""
    return Verdict(Level.WARN, because, clear)


def exceeds(found: float, limit: float) -> bool:
    """Return whether a figure passes a limit by more than the noise of floating point."""
    return found > limit and not math.isclose(found, limit, rel_tol=_HAIR)


def weigh(known: Rule, facts: Facts, about: str) -> Verdict:
    """Return what a rule says of the facts. about: the line, unit or sheet it is said of.

    A line that is silent where silence sets no limit ends the matter; then unread facts ask; then silence asks (or
    stops); then the check is called.
    """
    for path in _NOTHING_WITHOUT.intersection(known.paths):
        if (there := facts.get(path)) and there.says is None:
            return Verdict(Level.OK, f"nothing to weigh: no {PATHS[path].words}", "", known.number, about)
    says: dict[str, Any] = {}
    quiet, unread, pages = [], [], []
    for path in known.paths:
        line = facts.get(path)
        if line is None:
            unread.append(path)
            continue
        if line.says is not SILENT:
            says[path] = line.says
        elif path in known.silence:
            says[path] = known.silence[path]
        else:
            quiet.append(path)
        if line.page and line.page not in pages:
            pages.append(line.page)
    if quiet and known.when_silent is Level.OK:
        found = Verdict(Level.OK, f"the label was read and sets no limit here: {_words(quiet)}")
    elif unread:
        found = _unread(unread, facts)
    elif quiet:
        found = _silent(known, quiet)
    else:
        found = known.check(**_given(known, says)) or Verdict(Level.OK, known.sentence)
    level, answerable = (known.cap, True) if found.level > known.cap else (found.level, found.answerable)
    page = found.page or ", ".join(pages)
    return Verdict(level, found.because, found.clear, known.number, about, page, answerable)


def _given(known: Rule, says: Mapping[str, Any]) -> dict[str, Any]:
    """Return the facts by parameter of the check; several facts together as a tuple."""
    return {
        name: says[path] if isinstance(path, str) else tuple(says[one] for one in path)
        for name, path in known.reads.items()
    }


def _unread(paths: list[str], facts: Facts) -> Verdict:
    """Return the question for facts that nobody has given, with where to write them."""
    sheet = facts.get("sheet.key")
    method = facts.get("plan.method")
    block = f" of the {str(method.says).replace('_', ' ')} block" if method else ""
    where: dict[str, list[str]] = {}
    for path in paths:
        place = PATHS[path].where.format(sheet=sheet.says if sheet else "", block=block)
        where.setdefault(place, []).append(path.split(".", 1)[1].removeprefix("method."))
    clear = "; ".join(f"{place.replace('{}', ', '.join(names))}" for place, names in where.items())
    by_hand = all(PATHS[path].by_hand for path in paths)
    return ask(f"not known yet: {_words(paths)}", clear, answerable=by_hand)


def _silent(known: Rule, paths: list[str]) -> Verdict:
    said = f"the label was read and says nothing of: {_words(paths)}"
    if known.when_silent is Level.ASK:
        return ask(said, "look through the whole booklet once more; answer yes if it truly does not say")
    return Verdict(known.when_silent, said, "another product, whose label says so")


def _words(paths: list[str]) -> str:
    return "; ".join(PATHS[path].words for path in paths)
