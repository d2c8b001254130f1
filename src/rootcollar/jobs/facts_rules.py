"""The rules of the label room as pages: what each asks, on what basis, what it reads, what silence means to it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from rootcollar.jobs.facts_page import Line, Page, sections
from rootcollar.jobs.facts_words import joined, sentence
from rootcollar.kernel.verdict import Level, Stage
from rootcollar.label import NOT_CHECKED, PATHS, RULES, Rule
from rootcollar.label.examples import EXAMPLES

__all__ = ["rule_page", "rules_page"]

_SILENT: Mapping[Level, str] = {
    Level.OK: "silence of the label sets no limit here",
    Level.WARN: "silence of the label warns",
    Level.ASK: "silence of the label is asked about: read the whole booklet once more",
    Level.STOP: "silence of the label stops it: what is not allowed is not done",
}
_CAP: Mapping[Level, str] = {
    Level.STOP: "it can stop a line",
    Level.ASK: "it can ask and not stop, because its basis is only remembered until its clause is read",
}
_STAGES: Mapping[Stage, str] = {
    Stage.PLAN: "when the plan is made",
    Stage.HOURS: "in the hour of work",
    Stage.CLOSE: "when the work is recorded",
}
_ABOUT = "A rule can object; it cannot permit. What nobody has read is asked, never assumed."


def rule_page(number: str) -> Page | None:
    """Return the page of the rule of that number, in any case; None where there is none."""
    known = next((rule for rule in RULES.values() if rule.number.casefold() == number.casefold()), None)
    if known:
        told = sections(
            ("The rule", _lines(known)), ("What it reads", _reads(known)), ("For example", _examples(known))
        )
        return Page("rule", known.number, f"Rule {known.number}", (), (), (), known.sentence, told)
    for one in NOT_CHECKED:
        if one.number.casefold() == number.casefold():
            opening = f"{one.sentence} This version does not check it: see to it yourself, {_STAGES[one.stage]}."
            lines = (Line("not checked", "", f"nothing here weighs it; it comes up {_STAGES[one.stage]}"),)
            return Page("rule", one.number, f"Rule {one.number}", (), (), (), opening, sections(("The rule", lines)))
    return None


def rules_page(word: str = "") -> Page | None:
    """Return every rule, or those that hold the word in what they ask, read or rest on; None where none does."""
    weighed = [rule for rule in RULES.values() if _holds(word, _all_words(rule))]
    unweighed = [one for one in NOT_CHECKED if _holds(word, (one.number, one.sentence))]
    if not weighed and not unweighed:
        return None
    title = f"The rules that speak of {word}" if word else "The rules"
    opening = (
        f"{len(weighed)} rules are weighed{' for this word' if word else ''}, and {len(unweighed)} are known and not "
        f"checked by this version. {_ABOUT}"
    )
    by_stage = tuple(_unchecked(stage, unweighed) for stage in Stage)
    told = sections(("Weighed", [Line(rule.number, "", rule.sentence) for rule in weighed]), *by_stage)
    return Page("rules", word or "rules", title, (), (), (), opening, told)


def _unchecked(stage: Stage, rules: Iterable[object]) -> tuple[str, tuple[Line, ...]]:
    mine = [one for one in NOT_CHECKED if one in rules and one.stage is stage]
    return f"Not checked: see to it yourself, {_STAGES[stage]}", tuple(
        Line(one.number, "", one.sentence) for one in mine
    )


def _holds(word: str, words: Iterable[str]) -> bool:
    return word.casefold() in " ".join(words).casefold()


def _all_words(rule: Rule) -> tuple[str, ...]:
    return rule.number, rule.sentence, rule.basis.words, *(PATHS[path].words for path in rule.paths)


def _lines(rule: Rule) -> Iterator[Line]:
    yield Line("asks", "", rule.sentence)
    yield Line("rests on", "", f"{rule.basis.words} ({rule.basis.seen})")
    yield Line("weighed", "", f"{_STAGES[rule.stage]}, {_GROUPS[rule.group]}")
    yield Line("at worst", "", _CAP[rule.cap])
    if rule.needs_label:
        yield Line("silence", "", _SILENT[rule.when_silent])
        excused = [PATHS[path].words for path in rule.silence]
        if excused:
            yield Line("", "", f"but silence counts as an answer for {joined(excused)}")
        yield Line("not read yet", "", "asks, whatever it is")


def _examples(known: Rule) -> Iterator[Line]:
    shown = EXAMPLES[known.number]
    yield Line("passes", "", shown.passes.words)
    yield Line("fails", "", shown.fails.words)
    if objection := shown.fails.weighed_by(known):
        yield Line(f"says {objection.level.word}", "", objection.because)
        yield Line("way out", "", objection.clear)


_GROUPS = {
    "template": "once for each way and product",
    "place": "once for each unit",
    "totals": "over the sums of a unit and its year",
    "day": "when a day is prepared, for its loads and jugs",
}


def _reads(rule: Rule) -> Iterator[Line]:
    for path in rule.paths:
        room, _, _ = path.partition(".")
        yield Line(_ROOMS.get(room, room), "", sentence(PATHS[path].words).removesuffix("."))


_ROOMS = {
    "sheet": "label sheet",
    "plan": "plan",
    "place": "ground",
    "people": "crew",
    "total": "sums",
    "history": "earlier work",
}
