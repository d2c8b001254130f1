"""A pourable answer of the bench, weighed against one label sheet: a stop gives no amount at all."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from rootcollar.jobs.figure import Poured, Worked
from rootcollar.jobs.outcome import Outcome
from rootcollar.kernel.errors import BadInput, Fault, NotCleared, Refusal
from rootcollar.kernel.verdict import Level, Verdict, worst, worst_first
from rootcollar.label import Planned, Rule, law_facts, template_facts, weigh_mix
from rootcollar.mix import Carrier, Recipe
from rootcollar.reference import load
from rootcollar.shelf import Sheet, actives, ae_g_per_l

__all__ = ["Against", "against"]

_CARRIERS: dict[str, Carrier] = {"water": "water", "oil": "oil", "none": "none"}
_ANY_STEM = (0.0, 0.0)  # stands for stems of which nothing was said: the rules of stem size are then not weighed


@dataclass(frozen=True, slots=True, eq=False)
class Against:
    """A label sheet to weigh an answer against. method: a method's key, or "" where the question names it.

    demo: whether the sheet lies in the invented demo property, whose placeholder numbers stand for no product.
    """

    sheet: Sheet
    method: str = ""
    demo: bool = False


def against(worked: Worked, label: Against) -> Worked:
    """Return the answer with what the label says of it; its verdicts decide the exit code.

    Raises Refusal where nothing is poured, BadInput where the label gives several methods and none is named, and
    NotCleared, naming every stop with its way out, where the label forbids the mix: no amount is given then.
    """
    answer = worked.outcome.value
    if answer.poured is None:
        raise Refusal("--sheet", limit="this question pours nothing that a label limits", do="Leave --sheet out.")
    method = answer.poured.method or label.method or _only_method(label.sheet)
    said, left_out = _weighed(answer.poured, method, label)
    stops = [one for one in said if one.level is Level.STOP]
    if stops:
        raise NotCleared([f"{label.sheet.product}: {_told(one)}" for one in stops])
    open_said = [one for one in worst_first(said) if one.level > Level.OK]
    waits = ", ".join(rule.number for rule in left_out)
    told = replace(
        answer,
        note=_note(label.sheet, said, open_said),
        details=(*answer.details, *(f"{one.level.word.capitalize()}: {_told(one)}" for one in open_said)),
        cautions=(*answer.cautions, f"Not weighed at the bench, because plant, place, people and sums count: {waits}."),
    )
    return replace(worked, outcome=Outcome(told, said))


def _weighed(poured: Poured, method: str, label: Against) -> tuple[tuple[Verdict, ...], Sequence[Rule]]:
    sheet, first = label.sheet, next(iter(actives(label.sheet)), None)
    recipe = Recipe(
        sheet.key, "", (first.common_name or "") if first else "", (ae_g_per_l(first) or 0.0) if first else 0.0,
        poured.strength_pct, "none" if poured.strength_pct >= 100 else _CARRIERS[poured.carrier],
    )  # fmt: skip
    planned = Planned(method, (), recipe, poured.band_cm or _ANY_STEM, poured.dose_ml, poured.dose_per)
    facts = dict(template_facts(planned, sheet, state=None, demo=label.demo, wear=None))
    facts |= law_facts(load().hazard)
    del facts["plan.species"]
    if poured.band_cm is None:
        del facts["plan.band_cm"]
    return weigh_mix(facts, sheet.key)


def _only_method(sheet: Sheet) -> str:
    known = sorted(sheet.methods)
    if len(known) == 1:
        return known[0]
    names = ", ".join(one.replace("_", "-") for one in known) or "a method"
    found = "no --method" if known else "no directions for any method on the sheet"
    raise BadInput(Fault(found, f"how it is put on, because the label limits each way apart: {names}"))


def _note(sheet: Sheet, said: Sequence[Verdict], open_said: Sequence[Verdict]) -> str:
    asks = sum(one.level is Level.ASK for one in open_said)
    head = f"weighed against the sheet of {sheet.product} by {len(said)} rules"
    if asks:
        return f"{head}: {asks} {'question stands' if asks == 1 else 'questions stand'}, see below"
    return f"{head}: {'none of them objects' if worst(said) is Level.OK else 'mind what is said below'}"


def _told(one: Verdict) -> str:
    page = f", label page {one.page}" if one.page else ""
    return f"{one.because} [{one.rule}{page}]" + (f". {one.clear[:1].upper()}{one.clear[1:]}" if one.clear else "")
