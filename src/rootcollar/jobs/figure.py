"""Figure: a quick question asked in the shed, answered with its working and its sources."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, Literal, TypeVar

from rootcollar.jobs.outcome import Outcome
from rootcollar.kernel.formula import Step, as_tree, watch
from rootcollar.kernel.sources import Source
from rootcollar.kernel.units import convert, show
from rootcollar.reference import Reference

__all__ = ["NOT_CHECKED", "Answer", "Poured", "System", "Worked", "bench_cautions", "volume", "work_out"]

NOT_CHECKED = "not checked against a label"

System = Literal["us", "metric"]
A = TypeVar("A")

_GALLON_ML = convert(1, "gal", "mL")


@dataclass(frozen=True, slots=True)
class Poured:
    """What an answer would have somebody pour, as a label sheet is asked about it.

    strength_pct: product in the finished mix [%]. carrier: water, oil or none. method: where the question names it.
    dose_ml, dose_per: mix in one cut, or on one stem [mL], where it is known. band_cm: stem diameters [cm].
    """

    strength_pct: float
    carrier: str
    method: str = ""
    dose_ml: float | None = None
    dose_per: str = ""
    band_cm: tuple[float, float] | None = None


@dataclass(frozen=True, slots=True)
class Answer:
    """What was asked and what came out.

    given: what was asked for, option by option, in words. says: the answer in one line. value, unit: the same as a
    number; low, high: its 10-90 % band where there is doubt. figures: other numbers by name, the name ends in the unit.
    details: what else follows, a line each. assumed: what the answer rests on that was not said. cautions: what can go
    wrong at the bench. poured: the mix a label can be asked about; None where nothing is poured.
    """

    question: str
    given: Mapping[str, str]
    says: str
    value: float
    unit: str
    low: float | None = None
    high: float | None = None
    figures: Mapping[str, float | tuple[float, ...]] = field(default_factory=dict)
    details: tuple[str, ...] = ()
    assumed: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    note: str = NOT_CHECKED
    poured: Poured | None = None


@dataclass(frozen=True, slots=True, eq=False)
class Worked:
    """An answer with its working, a tree whose root is the question, and every source it rests on."""

    outcome: Outcome[Answer]
    working: Mapping[str, Any]
    sources: tuple[Source, ...]


def work_out(job: Callable[[A, Reference], Outcome[Answer]], ask: A, reference: Reference) -> Worked:
    """Run a pure job watched and return its answer with the tree of formulas behind it.

    A node holds formula, says, inputs, result, unit, source (key, cite, url, mark) and steps. mark is how a figure
    came to us; it is empty where the step is a formula.
    """
    with watch() as steps:
        outcome = job(ask, reference)
    answer, sources = outcome.value, reference.sources
    root = {
        "formula": "answer", "says": answer.question, "inputs": dict(answer.given), "result": answer.value,
        "unit": answer.unit, "source": _source("", "", sources),
        "steps": [_resolved(as_tree(step), sources) for step in steps],
    }  # fmt: skip
    met = dict.fromkeys(_keys(steps))
    return Worked(outcome, root, tuple(sources[key] for key in met if key in sources))


def bench_cautions(reference: Reference) -> tuple[str, ...]:
    """Return what to mind when something is poured; the label says the rest."""
    habits = (reference.practice[key].words for key in ("mixing_risk", "gloves"))
    return (*habits, "Shield your eyes, and wear at least what the label asks for.")


def volume(ml: float, system: System) -> str:
    """Return a volume in both systems, the asked one first: `11.5 fl oz (341 mL)`."""
    us = show(convert(ml, "mL", "gal"), "gal") if ml >= _GALLON_ML else show(convert(ml, "mL", "fl oz"), "fl oz")
    metric = show(ml / 1000, "L") if ml >= 1000 else show(ml, "mL")
    return f"{us} ({metric})" if system == "us" else f"{metric} ({us})"


def _resolved(node: Mapping[str, Any], sources: Mapping[str, Source]) -> Mapping[str, Any]:
    mark = str(node["says"]).partition(":")[0] if node["formula"] == "figure" else ""
    return {
        **node,
        "source": _source(str(node["source"]), mark, sources),
        "steps": [_resolved(below, sources) for below in node["steps"]],
    }


def _source(key: str, mark: str, sources: Mapping[str, Source]) -> Mapping[str, str]:
    known = sources.get(key, Source(key, ""))
    return {"key": key, "cite": known.cite, "url": known.url, "mark": mark}


def _keys(steps: Sequence[Step]) -> Iterable[str]:
    for step in steps:
        yield step.formula.source
        yield from _keys(step.steps)
