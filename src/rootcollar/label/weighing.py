"""Weighing the rules by what they read: once a template, once a unit, and over the sums of a unit."""

from __future__ import annotations

from functools import cache

from rootcollar.kernel.verdict import Level, Verdict
from rootcollar.label.rule import RULES, Facts, Group, Rule, weigh
from rootcollar.label.rules import identity as _identity  # noqa: F401  every rule is entered before any is weighed
from rootcollar.shelf import Sheet, unread

__all__ = [
    "must_read", "no_label", "rules_of", "weigh_day", "weigh_mix", "weigh_place", "weigh_template", "weigh_totals",
]  # fmt: skip


def weigh_template(facts: Facts, about: str) -> tuple[Verdict, ...]:
    """Return what the rules say of a line of work wherever it is done.

    Each rule speaks once, `ok` included. Where a product has no label sheet, one question stands for all rules that
    read it. Where nothing is applied, no rule of the label speaks.
    """
    return _weigh("template", facts, about)


def weigh_mix(facts: Facts, about: str) -> tuple[tuple[Verdict, ...], tuple[Rule, ...]]:
    """Return what the rules say of a mix at the bench, and the rules that cannot be weighed there.

    A rule is weighed where it reads nothing but the label and what is known of the mix; plant, place, people and sums
    are not known at the bench, so the rules that read them are returned, not passed over in silence.
    """
    there = {number: known for number, known in RULES.items() if known.needs_label and _met_at_the_bench(known, facts)}
    weighed = tuple(weigh(known, facts, about) for known in there.values())
    return weighed, tuple(known for number, known in RULES.items() if number not in there)


def _met_at_the_bench(known: Rule, facts: Facts) -> bool:
    return all(path in facts for path in known.paths if not path.startswith("sheet."))


def weigh_place(facts: Facts, about: str) -> tuple[Verdict, ...]:
    """Return what the rules that read the ground say, each once."""
    return _weigh("place", facts, about)


def weigh_totals(facts: Facts, about: str) -> tuple[Verdict, ...]:
    """Return what the rules that read sums and history say, each once."""
    return _weigh("totals", facts, about)


def weigh_day(facts: Facts, about: str) -> tuple[Verdict, ...]:
    """Return what the rules say that read what is known only when a day is prepared, each once."""
    return tuple(weigh(known, facts, about) for known in rules_of("day", labelled=True))


def must_read(sheet: Sheet, method: str) -> tuple[str, ...]:
    """Return the paths of lines that nobody has read on a sheet and that some rule needs for the method."""
    needed = {path.removeprefix("sheet.") for known in RULES.values() for path in known.paths}
    return tuple(path for path in unread(sheet, method) if path in needed or path.startswith(("ingredient.", "site.")))


def _weigh(group: Group, facts: Facts, about: str) -> tuple[Verdict, ...]:
    if "sheet.key" in facts:
        return tuple(weigh(known, facts, about) for known in rules_of(group, labelled=True))
    said = tuple(weigh(known, facts, about) for known in rules_of(group, labelled=False))
    applied = "plan.strength_pct" in facts
    return (no_label(about), *said) if applied and group == "template" else said


@cache
def rules_of(group: Group, *, labelled: bool) -> tuple[Rule, ...]:
    """Return the rules of a group; labelled: with those that read a label."""
    return tuple(one for one in RULES.values() if one.group == group and (labelled or not one.needs_label))


def no_label(about: str) -> Verdict:
    """Return the one question that stands for all rules of a label, where there is no sheet of it."""
    return Verdict(
        Level.ASK,
        "no label sheet: no line of a label could be weighed",
        "put the label of your own jug on the shelf as a sheet",
        rule="L01",
        about=about,
    )
