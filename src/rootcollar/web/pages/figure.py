"""Figure: the quick questions of the shed, each a short form, answered with its working."""

from __future__ import annotations

from collections.abc import Mapping

from fastapi import APIRouter, Request
from fastapi.responses import HTMLResponse

from rootcollar.kernel.errors import BadInput, NotCleared, Refusal
from rootcollar.web.asking import ask, bench_of, question_of, sheets_of
from rootcollar.web.bench import Question
from rootcollar.web.forms import faults_told
from rootcollar.web.render import page
from rootcollar.web.views.answer import AnswerView, answer_view, without_dashes

__all__ = ["router"]

router = APIRouter(include_in_schema=False)


@router.get("/figure")
def questions(request: Request) -> HTMLResponse:
    """Show every question."""
    return page(request, "figures.html", {"questions": bench_of(request).questions()})


@router.get("/figure/{name}")
def question(request: Request, name: str) -> HTMLResponse:
    """Show one question, and its answer once something was filled in; the address holds what was asked."""
    known = question_of(request, name)
    typed = {key: [one for one in request.query_params.getlist(key) if one.strip()] for key in request.query_params}
    told = {key: said for key, said in typed.items() if said}
    answer, faults, stops = _asked(request, known, told) if told else (None, {}, ())
    status = 422 if faults else 409 if stops else 200
    values: dict[str, object] = {"question": known, "typed": told, "answer": answer, "faults": faults, "stops": stops}
    return page(request, "figure.html", {**values, "sheets": sheets_of(request)}, status)


def _asked(
    request: Request, question: Question, told: Mapping[str, list[str]]
) -> tuple[AnswerView | None, Mapping[str, str], tuple[str, ...]]:
    """Return the answer; or the faults by field, "" for what is about no one field; or the label's stops."""
    try:
        return answer_view(ask(request, question, told)), {}, ()
    except NotCleared as no:
        return None, {}, no.standing
    except Refusal as no:
        return None, {"": without_dashes(str(no))}, ()
    except BadInput as wrong:
        return None, faults_told(wrong), ()
