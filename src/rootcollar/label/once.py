"""Each rule weighed once for each set of facts it reads: what is alike for many lines is said once, and told of each.

A property of 200 units has some hundred thousand pairs of a way and a stand, and few facts that differ between them.
"""

from __future__ import annotations

from collections.abc import Hashable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date
from functools import cache
from types import MappingProxyType

from rootcollar.kernel.verdict import Level, Verdict, worst
from rootcollar.label.answers import Answer, settle
from rootcollar.label.facts import place_facts
from rootcollar.label.rule import Facts, Rule, weigh
from rootcollar.label.weighing import no_label, rules_of
from rootcollar.shelf import Line, Sheet
from rootcollar.site.ground import Unit

__all__ = ["Heard", "Template", "Weigher", "heard_of"]

_SHARED = ("people.crew", "plan.state")  # what the facts of a place take from the line that is done there
_WORDS = ("sheet.key", "plan.method")  # what the question for an unread fact names besides the fact
_OF_UNITS = ("place.", "plan.on")  # facts that every unit gives, or that are asked for without naming a label
_NONE = -1  # a fact nobody has given


@dataclass(frozen=True, slots=True, eq=False)
class Heard:
    """What rules say of facts that many lines share, of nobody yet, and the worst of it. open: answers may settle."""

    said: tuple[Verdict, ...]
    level: Level
    open: bool = False

    def of(self, about: str) -> tuple[Verdict, ...]:
        """Return each verdict, said of one line."""
        return tuple(one.of(about) for one in self.said)


@dataclass(frozen=True, slots=True, eq=False)
class Template:
    """A line of work wherever it is done: its facts, what the rules that read no place say, and a number for both.

    key: the same for templates of which all rules say the same wherever they are done. place: the same for those of
    which place rules read the same. shared: the same for those with one crew, in one state. parts: by place rule, a
    number for what it reads of the way.
    """

    facts: Facts
    heard: Heard
    key: int
    place: int
    shared: int
    parts: tuple[int, ...]


@dataclass(frozen=True, slots=True, eq=False)
class _Here:
    """A unit: what rules read of it; what place rules say of it, by what they read of the way; what is said of lines.

    lines: by the keys of way and place, shared by units with the same answers; None where a line has its own answers.
    parts: by place rule, a number for what it reads of the unit. known: what is said of lines, by the key of the way.
    """

    facts: Facts
    parts: tuple[int, ...]
    places: dict[int, tuple[Heard, int]]
    lines: dict[tuple[int, int], Heard] | None
    known: dict[int, Heard] = field(default_factory=dict)


_NOWHERE = _Here({}, (), {}, None)


class Weigher:
    """Weighs lines of one plan and keeps what it has weighed. Its words: those of `weigh_template`, `weigh_place`."""

    def __init__(
        self, answers: Sequence[Answer] = (), on: date | None = None, shelf: Mapping[str, Sheet] = MappingProxyType({})
    ) -> None:
        """Take the answers that are in, the day of work, and the labels by which an answer may be stale."""
        self._on, self._answers, self._shelf = on, tuple(answers), shelf
        self._numbers: dict[Hashable, int] = {}
        self._seen: dict[int, tuple[Line[object], int]] = {}  # lines too: while kept, no other has their id
        self._says: dict[tuple[int, str], int] = {}
        self._said: dict[tuple[object, ...], Verdict] = {}
        self._units: dict[tuple[str, int], _Here] = {}
        self._places: dict[tuple[int, ...], dict[int, tuple[Heard, int]]] = {}
        self._alike: dict[Verdict, Verdict] = {}
        self._met: dict[tuple[int, int, int], Verdict] = {}
        self._heard: dict[tuple[int, ...], tuple[Heard, int]] = {}
        self._lines: dict[tuple[int, ...], dict[tuple[int, int], Heard]] = {}

    def template(self, facts: Facts) -> Template:
        """Return what is said of a line wherever it is done. facts: as `template_facts`."""
        labelled, numbers = "sheet.key" in facts, self._numbered(facts)
        said = [self._once(known, facts, numbers) for known in rules_of("template", labelled=labelled)]
        if not labelled and "plan.strength_pct" in facts:
            said.insert(0, self._one(no_label("")))
        parts = self._parts(numbers)
        place = self._next((parts, *[numbers.get(path, _NONE) for path in _WORDS]))
        key = self._next((place, *map(id, said)))  # what is said alike is one object, kept as long as this is
        shared = self._next(tuple(numbers.get(path, _NONE) for path in _SHARED))
        return Template(facts, heard_of(said), key, place, shared, parts)

    def lines(self, ways: Sequence[Template], unit: Unit, about: str) -> list[Heard]:
        """Return what the rules that read no sums say of a line on a unit, done each way, answers taken in.

        about: the line's key.
        """
        found, shared, here = [], None, _NOWHERE
        for one in ways:
            if one.shared != shared:
                shared = one.shared
                here = self._units.get((unit.key, shared)) or self._unit(unit, one)
            found.append(here.known.get(one.key) or self._line(one, here, about))
        return found

    def _line(self, template: Template, here: _Here, about: str) -> Heard:
        """Return what is said of a line on a unit, the first time it is asked for."""
        place, number = here.places.get(template.place) or self._place(template, here)
        if here.lines is None:
            return self._settled(template, place, about)
        pair = template.key, number
        heard = here.lines.get(pair)
        if heard is None:
            heard = here.lines[pair] = self._settled(template, place, about)
        here.known[template.key] = heard
        return heard

    def _settled(self, template: Template, place: Heard, about: str) -> Heard:
        """Return what is said of a line, answers taken in."""
        way, label = template.heard, template.facts.get("sheet.key")
        sheet = self._shelf.get(str(label.says)) if label else None
        said = (*way.said, *place.said)
        if not (way.open or place.open):
            return Heard(said, max(way.level, place.level))
        asks = Level.ASK
        return heard_of(
            [
                settle(one.of(about), self._answers, on=self._on, sheet=sheet).of("") if one.level is asks else one
                for one in said
            ]
        )

    def _place(self, template: Template, here: _Here) -> tuple[Heard, int]:
        """Return what place rules say of a way on a unit, and a number for their words."""
        rules, known = rules_of("place", labelled=True), self._met
        said = []
        for met in zip(range(len(rules)), template.parts, here.parts, strict=True):
            verdict = known.get(met)
            if verdict is None:
                rule, facts = rules[met[0]], {**template.facts, **here.facts}
                read = {path: facts[path] for path in (*rule.paths, *_WORDS) if path in facts}
                verdict = known[met] = self._once(rule, facts, self._numbered(read))
            said.append(verdict)
        if "sheet.key" not in template.facts:
            said = [one for one, rule in zip(said, rules, strict=True) if not rule.needs_label]
        words = tuple(map(id, said))
        alike = self._heard.get(words)
        if alike is None:
            alike = self._heard[words] = heard_of(said), self._next(words)
        here.places[template.place] = alike
        return alike

    def _unit(self, unit: Unit, template: Template) -> _Here:
        """Return what counts of a unit: its ground, and the answers about it or its lines."""
        shared = {path: template.facts[path] for path in _SHARED if path in template.facts}
        facts = place_facts(shared, unit, on=self._on)
        own = tuple(at for at, one in enumerate(self._answers) if one.about.partition("/")[0] == unit.key)
        alone = any("/" in self._answers[at].about for at in own)
        parts = self._parts(self._numbered(facts))
        places = self._places.setdefault(parts, {})
        lines = None if alone else self._lines.setdefault(own, {})
        found = self._units[unit.key, template.shared] = _Here(facts, parts, places, lines)
        return found

    def _once(self, known: Rule, facts: Facts, numbers: Mapping[str, int]) -> Verdict:
        """Return what a rule says of facts. numbers: theirs, by path."""
        key: tuple[object, ...] = (known.number, *[numbers.get(path, _NONE) for path in known.paths])
        if _NONE in key:
            key = (*key, *[numbers.get(path, _NONE) for path in _WORDS])
        found = self._said.get(key)
        if found is None:
            found = self._said[key] = self._one(weigh(known, facts, ""))
        return found

    def _one(self, said: Verdict) -> Verdict:
        """Return the one object that stands for all verdicts like it: quicker to tell apart than by their words."""
        return self._alike.setdefault(said, said)

    def _parts(self, numbers: Mapping[str, int]) -> tuple[int, ...]:
        """Return a number for what each place rule reads of a way, or of a unit: alike facts, the same number.

        Where a fact is missing that no unit gives, the question names label and method, so they count too.
        """
        found, words = [], tuple(numbers.get(path, _NONE) for path in _WORDS)
        for paths, of_units in _reads():
            read = tuple([numbers.get(path, _NONE) for path in paths])
            asked = _NONE in read and any(not of_units[at] for at, one in enumerate(read) if one == _NONE)
            found.append(self._next((*read, *words) if asked else read))
        return tuple(found)

    def _next(self, words: Hashable) -> int:
        """Return the number of some words: a new one where they are new."""
        return self._numbers.setdefault(words, len(self._numbers))

    def _numbered(self, facts: Facts) -> dict[str, int]:
        """Return a number for each fact, by its path."""
        return {path: self._number(line) for path, line in facts.items()}

    def _number(self, line: Line[object]) -> int:
        """Return a number for what a line says: the same for the same words on the same page."""
        seen = self._seen.get(id(line))
        if seen is None:
            alike = id(line.says), line.page
            said = self._says.get(alike)  # another line of the same object: it is told by its words once
            if said is None:
                said = self._says[alike] = self._next((type(line.says), _frozen(line.says), line.page))
            seen = self._seen[id(line)] = line, said
        return seen[1]


@cache
def _reads() -> tuple[tuple[tuple[str, ...], tuple[bool, ...]], ...]:
    """Return what each place rule reads, and which of it units give."""
    rules = rules_of("place", labelled=True)
    return tuple((one.paths, tuple(path.startswith(_OF_UNITS) for path in one.paths)) for one in rules)


def heard_of(said: Sequence[Verdict]) -> Heard:
    """Return what was said with the worst of it."""
    return Heard(tuple(said), worst(said), any(one.level is Level.ASK and one.answerable for one in said))


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
