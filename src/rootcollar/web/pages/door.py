"""The door: plan, open questions, facts and quick questions as described JSON, for the user's own programs."""

from __future__ import annotations

from fastapi import APIRouter, Request, Security
from fastapi.security import APIKeyCookie

from rootcollar.jobs.facts import look_up
from rootcollar.kernel.errors import BadInput, Fault, NotFound
from rootcollar.kernel.sources import NOT_A_LABEL
from rootcollar.reference import load
from rootcollar.web import door_models as told
from rootcollar.web.asking import ask, bench_of, question_of
from rootcollar.web.desk import Open, desk_of
from rootcollar.web.door_errors import DOOR, FAULTS, GUARD, MISSING, STOPS
from rootcollar.web.guard import COOKIE
from rootcollar.web.views.door import answer_told, plan_told, questions_told

__all__ = ["router"]

router = APIRouter(
    prefix=DOOR.rstrip("/"),
    tags=["door"],
    dependencies=[Security(APIKeyCookie(name=COOKIE, auto_error=False))],
    responses=GUARD,
)


@router.get("/plan.json", response_model=told.Plan, responses={**MISSING, **FAULTS})
def plan(request: Request) -> told.Plan:
    """Tell the plan: units in order, lines with method, mix and bands, and what the rules say of each."""
    return plan_told(_open(request))


@router.get("/questions.json", response_model=told.OpenQuestions, responses={**MISSING, **FAULTS})
def questions(request: Request) -> told.OpenQuestions:
    """Tell every open question that holds lines back."""
    return questions_told(_open(request))


@router.get("/facts/{name}.json", response_model=told.FactPages, responses={**MISSING, **FAULTS})
def facts(name: str) -> told.FactPages:
    """Tell what is known of a plant, ingredient, way of working, rule, topic or source, with who says so."""
    try:
        pages = look_up(name, load()).value
    except NotFound:
        raise
    except BadInput:
        raise NotFound("fact", name) from None
    return told.FactPages(pages=[told.FactPage.model_validate(one) for one in pages], note=NOT_A_LABEL)


@router.get("/figure.json", response_model=told.Questions)
def figures(request: Request) -> told.Questions:
    """Tell every quick question with its fields."""
    known = bench_of(request).questions()
    return told.Questions.model_validate({"questions": known})


@router.get("/figure/{name}.json", response_model=told.Answer, responses={**MISSING, **STOPS, **FAULTS})
def figure(request: Request, name: str) -> told.Answer:
    """Answer a quick question with its working; the fields go in the query, as `/door/figure.json` lists them."""
    question = question_of(request, name)
    known = [one.name for one in question.entries]
    sent = {key: request.query_params.getlist(key) for key in request.query_params}
    if strange := [key for key in sent if key not in known]:
        raise BadInput(*(Fault(repr(key), f"one of the fields {', '.join(known)}", field=key) for key in strange))
    filled = {key: [one for one in said if one.strip()] for key, said in sent.items()}
    return answer_told(ask(request, question, {key: said for key, said in filled.items() if said}))


def _open(request: Request) -> Open:
    desk = desk_of(request)
    if not desk.there:
        raise NotFound("property", desk.folder.name)
    return desk.look()
