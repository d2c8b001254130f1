"""What the commands of `figure` share: reading options, running the job watched, showing answer and working."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import asdict
from typing import TYPE_CHECKING, Any, Literal, TypeVar

import click

from rootcollar.cli.ask import amount, naming
from rootcollar.cli.show import heading, listed, print_json, steps, text

if TYPE_CHECKING:
    from rootcollar.jobs.figure import Answer, Worked
    from rootcollar.jobs.outcome import Outcome
    from rootcollar.kernel.errors import BadInput
    from rootcollar.kernel.units import Kind, Quantity
    from rootcollar.mix import Carrier
    from rootcollar.reference import Reference

__all__ = ["CARRIERS", "acid", "answer", "bad", "not_with", "optional", "same_form", "system", "to"]

A = TypeVar("A")

CARRIERS: Mapping[str | None, Carrier] = {"water": "water", "oil": "oil", "none": "none"}
_METRIC = ("mL", "L", "mm", "cm", "m")


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


def answer(command: str, job: Callable[[A, Reference], Outcome[Answer]], ask: A, as_json: bool) -> None:
    """Run a job watched and print its answer: the answer first, then how, whence and what to mind."""
    from rootcollar.jobs.figure import work_out
    from rootcollar.reference import load

    worked = work_out(job, ask, load())
    if as_json:
        print_json(command, _body(worked))
    else:
        _show(worked)


def _body(worked: Worked) -> Mapping[str, Any]:
    answer = worked.outcome.value
    return {**asdict(answer), "working": worked.working, "sources": [asdict(one) for one in worked.sources]}


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
