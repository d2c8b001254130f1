"""Each rule weighed once for each set of facts it reads: what is alike for many lines is said once, and told of each.

A property of 200 units has some hundred thousand pairs of a way and a stand, and few facts that differ between them.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from typing import overload

from rootcollar.kernel.verdict import Level, Verdict, worst
from rootcollar.label.answers import Answer, settle
from rootcollar.label.facts import place_facts
from rootcollar.label.rule import Facts, Rule, weigh
from rootcollar.label.weighing import no_label, rules_of
from rootcollar.shelf import Line
from rootcollar.site.ground import Unit

__all__ = ["Heard", "Template", "Told", "Weigher"]

_WORDS = ("sheet.key", "plan.method")  # what the question for an unread fact names besides the fact
_NONE = -1  # a fact nobody has given


@dataclass(frozen=True, slots=True, eq=False)
class Heard:
    """What rules say of facts that many lines share, of nobody yet. level: the worst. open: what answers may settle."""

    said: tuple[Verdict, ...]
    level: Level
    open: tuple[Verdict, ...]


class Told(Sequence[Verdict]):
    """What was heard, said of one line: each verdict is made when it is read."""

    __slots__ = ("about", "parts")

    def __init__(self, parts: tuple[Heard, ...], about: str) -> None:
        """Keep what was heard, and of which line."""
        self.parts, self.about = parts, about

    @property
    def level(self) -> Level:
        """The worst of it."""
        return max((part.level for part in self.parts), default=Level.OK)

    def __iter__(self) -> Iterator[Verdict]:
        """Say each verdict of the line."""
        return (one.of(self.about) for part in self.parts for one in part.said)

    def __len__(self) -> int:
        """Count the verdicts."""
        return sum(len(part.said) for part in self.parts)

    @overload
    def __getitem__(self, at: int) -> Verdict: ...
    @overload
    def __getitem__(self, at: slice) -> Sequence[Verdict]: ...
    def __getitem__(self, at: int | slice) -> Verdict | Sequence[Verdict]:
        """Return one of them, or some."""
        return tuple(self)[at]


@dataclass(frozen=True, slots=True, eq=False)
class Template:
    """A line of work wherever it is done: its facts, what the rules that read no place say, and what place rules read."""

    facts: Facts
    heard: Heard
    key: int


class Weigher:
    """Weighs lines of one plan; what it has weighed it keeps. Its words are those of `weigh_template`, `weigh_place`."""

    def __init__(self, answers: Sequence[Answer] = (), on: date | None = None) -> None:
        """Take the answers that are in, and the day of work."""
        self._on = on
        self._answers: dict[str, list[Answer]] = {}
        for one in answers:
            self._answers.setdefault(one.rule, []).append(one)
        self._numbers: dict[Hashable, int] = {}
        self._seen: dict[int, tuple[Line[object], int]] = {}
        self._said: dict[tuple[object, ...], Verdict] = {}
        self._places: dict[tuple[int, int], Heard] = {}
        self._units: dict[str, tuple[Facts, int]] = {}
        self._settled: dict[tuple[int, str], tuple[Heard, Heard]] = {}

    def template(self, facts: Facts) -> Template:
        """Return what is said of a line wherever it is done. facts: as `template_facts`."""
        labelled = "sheet.key" in facts
        said = [self._once(known, facts) for known in rules_of("template", labelled=labelled)]
        if not labelled and "plan.strength_pct" in facts:
            said.insert(0, no_label(""))
        return Template(facts, _heard(said), self._key(facts, place=False))

    def line(self, template: Template, unit: Unit, about: str) -> Told:
        """Return what the rules that read no sums say of a line on a unit, answers taken in. about: its key."""
        ground, key = self._unit(unit)
        pair = template.key, key
        heard = self._places.get(pair)
        if heard is None:
            facts = {**template.facts, **ground}
            known = rules_of("place", labelled="sheet.key" in facts)
            heard = self._places[pair] = _heard([self._once(one, facts) for one in known])
        return Told((self._settle(template.heard, unit.key, about), self._settle(heard, unit.key, about)), about)

    def _unit(self, unit: Unit) -> tuple[Facts, int]:
        found = self._units.get(unit.key)
        if found is None:
            facts = place_facts({}, unit, on=self._on)
            found = self._units[unit.key] = facts, self._key(facts, place=True)
        return found

    def _settle(self, heard: Heard, unit: str, about: str) -> Heard:
        """Return what is left when the answers are in: the same for all lines of a unit, unless one is about a line."""
        if not any(one.rule in self._answers for one in heard.open):
            return heard
        known = self._settled.get((id(heard), unit))
        if known is not None:
            return known[1]
        fit = [answer for one in heard.open for answer in self._answers.get(one.rule, ())]
        left = _heard([settle(one.of(about), fit).of("") for one in heard.said])
        if not any("/" in one.about for one in fit):
            self._settled[id(heard), unit] = heard, left
        return left

    def _once(self, known: Rule, facts: Facts) -> Verdict:
        key: tuple[object, ...] = (known.number, *(self._number(facts.get(path)) for path in known.paths))
        if _NONE in key:
            key = (*key, *(self._number(facts.get(path)) for path in _WORDS))
        found = self._said.get(key)
        if found is None:
            found = self._said[key] = weigh(known, facts, "")
        return found

    def _key(self, facts: Facts, *, place: bool) -> int:
        """Return a number for what place rules read of a template, or of a unit: alike facts, the same number."""
        rules = rules_of("place", labelled=True)
        paths = [path for one in rules for path in one.paths if (path in facts) or not place] + list(_WORDS)
        read = tuple((path, self._number(facts.get(path))) for path in dict.fromkeys(paths))
        return self._numbers.setdefault(read, len(self._numbers))

    def _number(self, line: Line[object] | None) -> int:
        """Return a number for what a line says: the same for the same words on the same page."""
        if line is None:
            return _NONE
        seen = self._seen.get(id(line))
        if seen is None:
            words = type(line.says), _frozen(line.says), line.page
            seen = self._seen[id(line)] = line, self._numbers.setdefault(words, len(self._numbers))
        return seen[1]


def _heard(said: Sequence[Verdict]) -> Heard:
    return Heard(tuple(said), worst(said), tuple(one for one in said if one.level is Level.ASK and one.answerable))


def _frozen(value: object) -> Hashable:
    """Return a value by which equal facts are equal; what cannot be compared is alike only to itself."""
    if isinstance(value, Mapping):
        return frozenset((key, type(one), _frozen(one)) for key, one in value.items())
    if isinstance(value, (tuple, list)):
        return tuple((type(one), _frozen(one)) for one in value)
    if isinstance(value, (set, frozenset)):
        return frozenset(value)
    try:
        hash(value)
    except TypeError:
        return id(value)
    return value
