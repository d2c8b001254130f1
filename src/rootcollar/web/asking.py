"""Asking the bench from a face: the label sheet by its key on the shelf, faults at the field they belong to."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from starlette.requests import Request

from rootcollar.jobs.figure import Worked
from rootcollar.kernel.errors import BadInput, Fault, NotFound
from rootcollar.web.bench import Bench, Question
from rootcollar.web.desk import desk_of
from rootcollar.web.views.answer import without_dashes

__all__ = ["ask", "bench_of", "question_of", "sheets_of"]


def bench_of(request: Request) -> Bench:
    """Return the bench that the app was made with."""
    bench: Bench = request.app.state.bench
    return bench


def question_of(request: Request, name: str) -> Question:
    """Return the question of that name. Raises NotFound with the others."""
    known = {one.name: one for one in bench_of(request).questions()}
    if name not in known:
        raise NotFound("question", name, list(known))
    return known[name]


def sheets_of(request: Request) -> tuple[tuple[str, str], ...]:
    """Return the label sheets of the property that lies open, (key, product); none where its files cannot be read."""
    desk = desk_of(request)
    if not desk.there:
        return ()
    try:
        return tuple((key, sheet.product) for key, sheet in sorted(desk.look().project.shelf.items()))
    except BadInput:
        return ()


def ask(request: Request, question: Question, told: Mapping[str, Sequence[str]]) -> Worked:
    """Return the answer. told: by field, the texts as typed, empty ones left out.

    Raises BadInput, each fault with the field it is about or "" where it is about no one field, and NotCleared where
    the label named forbids it; Refusal outside the range of a formula.
    """
    known = [key for key, _ in sheets_of(request)]
    named = told.get("sheet", ())
    if strange := [one for one in named if one not in known]:
        raise BadInput(Fault(repr(strange[0]), "one of the sheets on the shelf", field="sheet"))
    shelf = desk_of(request).folder / "shelf"
    sent = {**told, "sheet": [str(shelf / f"{one}.toml") for one in named]} if named else told
    try:
        return bench_of(request).ask(question.name, sent)
    except BadInput as wrong:
        raise BadInput(*(_at_its_field(one, question) for one in wrong.faults)) from None


def _at_its_field(fault: Fault, question: Question) -> Fault:
    field = fault.field.strip("-").replace("-", "_")
    known = field in [one.name for one in question.entries]
    found, allowed = without_dashes(fault.found), without_dashes(fault.allowed)
    return replace(fault, found=found, allowed=allowed, field=field if known else "")
