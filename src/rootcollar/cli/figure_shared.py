"""What the commands of `figure` share: reading options, running the job watched, showing answer and working."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import asdict
from pathlib import Path
from types import MappingProxyType
from typing import TYPE_CHECKING, Any, Literal, TypeVar

import click

from rootcollar.cli.ask import amount, naming
from rootcollar.cli.show import heading, listed, print_json, steps, text
from rootcollar.kernel.verdict import Level

if TYPE_CHECKING:
    from rootcollar.jobs.figure import Answer, Worked
    from rootcollar.jobs.outcome import Outcome
    from rootcollar.kernel.errors import BadInput
    from rootcollar.kernel.units import Kind, Quantity
    from rootcollar.kernel.verdict import Verdict
    from rootcollar.mix import Carrier
    from rootcollar.reference import Reference
    from rootcollar.shelf import Sheet

__all__ = [
    "CARRIERS",
    "METHODS",
    "acid",
    "answer",
    "bad",
    "handed_over",
    "method_option",
    "not_with",
    "optional",
    "read_told",
    "same_form",
    "sheet_option",
    "system",
    "to",
]

A = TypeVar("A")
Told = Mapping[str, Any]

CARRIERS: Mapping[str | None, Carrier] = {"water": "water", "oil": "oil", "none": "none"}
METHODS: Mapping[str, str] = {
    "basal-bark": "basal_bark", "hack-squirt": "hack_squirt", "cut-stump": "cut_stump", "foliar": "foliar",
    "vine": "vine_cut",
}  # fmt: skip
_waiting: ContextVar[list[Worked] | None] = ContextVar("waiting", default=None)
_METRIC = frozenset({
    "mL", "L", "mm", "cm", "m", "km", "m2", "ha", "g", "kg", "L/ha", "mL/ha", "mL/m2", "L/min", "mL/min", "mL/s", "m/s",
    "km/h", "m/min", "g/mL", "kg/L", "g/L",
})  # fmt: skip

sheet_option = click.option(
    "--sheet", metavar="FILE", type=click.Path(path_type=Path), help="A label sheet to weigh the answer against."
)
method_option = click.option(
    "--method", type=click.Choice(list(METHODS)), help="How it is put on, for --sheet: labels limit each way apart."
)


def acid(option: str, said: str, given: dict[str, str]) -> Quantity:
    """Return a strength that says whether it is acid or active ingredient."""
    from rootcollar.kernel.errors import Ambiguous
    from rootcollar.kernel.units import Kind

    found = amount(option, said, Kind.STRENGTH)
    with naming(option):
        if found.of not in ("ae", "ai"):
            raise Ambiguous(
                said, "lb ae/gal for acid equivalent, or lb ai/gal for active ingredient: the label says which"
            )
    given[option.strip("-")] = f"{said.strip()} = {found.amount:.6g} g {found.of}/L"
    return found


def same_form(option: str, one: Quantity, other_option: str, other: Quantity) -> None:
    """Ask when one amount is of acid and the other of active ingredient."""
    from rootcollar.kernel.errors import Ambiguous
    from rootcollar.kernel.units import Kind

    if one.of != other.of and other.kind in (Kind.STRENGTH, Kind.MASS_RATE):
        with naming(other_option):
            raise Ambiguous(
                other.text, f"{one.of}, as {option} is, because acid (ae) and active ingredient (ai) weigh differently"
            )


def optional(option: str, said: str | None, kind: Kind, given: dict[str, str]) -> Quantity | None:
    """Return the quantity behind an option that may be left out; what was typed goes into `given`."""
    if said is None:
        return None
    given[option] = said.strip()
    return amount(f"--{option}", said, kind)


def to(found: Quantity | None, unit: str) -> float | None:
    """Return a quantity in a unit; None where it was left out."""
    return None if found is None else found.to(unit)


def system(*found: Quantity | None) -> Literal["us", "metric"]:
    """Return the system to answer in: metric where any quantity was typed so."""
    return "metric" if any(one is not None and one.unit in _METRIC for one in found) else "us"


def not_with(option: str, wrong: bool, other: str, allowed: str) -> None:
    """Raise BadInput where two options contradict each other."""
    if wrong:
        raise bad(f"{option} with {other}", allowed)


def bad(found: str, allowed: str) -> BadInput:
    """Return the error for input that is not about one option."""
    from rootcollar.kernel.errors import BadInput, Fault

    return BadInput(Fault(found=found, allowed=allowed))


@contextmanager
def handed_over() -> Iterator[list[Worked]]:
    """Collect the answers of commands that run inside the block, instead of printing them."""
    answers: list[Worked] = []
    token = _waiting.set(answers)
    try:
        yield answers
    finally:
        _waiting.reset(token)


def answer(
    command: str,
    job: Callable[[A, Reference], Outcome[Answer]],
    ask: A,
    as_json: bool,
    told: Told = MappingProxyType({}),
) -> None:
    """Run a job watched and print its answer: the answer first, then how, whence and what to mind.

    told: the options as typed; with `sheet` among them the answer is weighed against that label first, and an open
    question leaves with 1.
    """
    from rootcollar.jobs.figure import work_out
    from rootcollar.reference import load

    worked = _weighed(work_out(job, ask, load()), told)
    waiting = _waiting.get()
    if waiting is not None:
        waiting.append(worked)
        return
    if as_json:
        print_json(command, _body(worked))
    else:
        _show(worked)
    if worked.outcome.level >= Level.ASK:
        raise click.exceptions.Exit(1)


def read_told(told: Told) -> Sheet | None:
    """Return the label sheet that was named; None where none was."""
    from rootcollar.exchange import read_sheet

    return read_sheet(told["sheet"])[0] if told.get("sheet") else None


def _weighed(worked: Worked, told: Told) -> Worked:
    from rootcollar.exchange import read_sheet
    from rootcollar.jobs.figure_label import Against, against

    if told.get("sheet") is None:
        if told.get("method") is not None:
            raise bad("--method without --sheet", "both: the method says which of the sheet's directions count")
        return worked
    sheet, demo = read_sheet(told["sheet"])
    return against(worked, Against(sheet, METHODS.get(told.get("method") or "", ""), demo))


def _body(worked: Worked) -> Mapping[str, Any]:
    answer = worked.outcome.value
    said = {name: value for name, value in asdict(answer).items() if name != "poured"}
    return {
        **said,
        "verdicts": [_verdict(one) for one in worked.outcome.verdicts],
        "working": worked.working,
        "sources": [asdict(one) for one in worked.sources],
    }


def _verdict(one: Verdict) -> Mapping[str, str]:
    return {"level": one.level.word, "because": one.because, "clear": one.clear, "rule": one.rule, "page": one.page}


def _show(worked: Worked) -> None:
    answer = worked.outcome.value
    text(f"{answer.says} ({answer.note}).", bold=True)
    if answer.details:
        click.echo()
        listed(answer.details, indent=0)
    heading("How")
    for name, said in answer.given.items():
        text(f"{name}: {said}", indent=2)
    steps(worked.working["steps"])
    if answer.assumed:
        heading("Assumed")
        listed(answer.assumed)
    heading("Sources")
    listed([f"{one.key}: {one.cite}" + (f" {one.url}" if one.url else "") for one in worked.sources])
    heading("Mind")
    listed(answer.cautions)
