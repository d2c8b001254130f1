"""Choose: the units in the order to work them; on each, what is done to which stems, why, and what the rules say."""

from __future__ import annotations

from difflib import get_close_matches

from fastapi import APIRouter, Request
from fastapi.responses import HTMLResponse, RedirectResponse, Response

from rootcollar.choose import Pick, opens_most
from rootcollar.exchange import keep_answer, keep_choice
from rootcollar.kernel.days import MONTHS
from rootcollar.kernel.errors import BadInput, NotFound
from rootcollar.label import Answer
from rootcollar.web.desk import Open, desk_of
from rootcollar.web.forms import Form, Typed, faults_told
from rootcollar.web.render import opened, page, page_once
from rootcollar.web.views.months import month_view, months_drawer
from rootcollar.web.views.questions import more_ways, questions
from rootcollar.web.views.reach import reach_drawer
from rootcollar.web.views.reasons import lines_drawer, order_drawer, reason_drawer
from rootcollar.web.views.unit import unit_cards, unit_view
from rootcollar.web.views.working import line_drawer, unit_drawer
from rootcollar.web.views.years import unit_years, year_drawer, years_told, years_view

__all__ = ["router"]

router = APIRouter(include_in_schema=False)


@router.get("/choose")
def units(request: Request) -> HTMLResponse:
    """Show every unit in the order to work them."""
    here = desk_of(request).look()
    return page_once(here, request, lambda: _units(request, here))


@router.get("/choose/questions")
def open_questions(request: Request) -> HTMLResponse:
    """Show every open question once, each with a form to answer it."""
    return page_once(desk_of(request).look(), request, lambda: _questions(request, Form()))


@router.post("/choose/questions")
def answer(request: Request, form: Typed) -> Response:
    """Keep an answer with name and date, and show what is still open."""
    desk = desk_of(request)
    rule, about = form.needed("rule", "the rule that asked"), form.needed("about", "the unit it is about")
    by = form.needed("by", "your name")
    if form.said("answer") not in ("yes", "no"):
        form.faults["answer"] = "Wanted: yes or no."
    if form.faults:
        return _questions(request, form, 422)
    note = form.said("note").strip()
    shelf = tuple((key, sheet.stamp) for key, sheet in desk.look().project.shelf.items())
    kept = Answer(rule, about, form.said("answer") == "yes", by, desk.today, note, form.said("page").strip(), shelf)
    try:
        keep_answer(desk.folder, kept)
    except BadInput as wrong:
        form.faults |= faults_told(wrong)
        return _questions(request, form, 422)
    return RedirectResponse("/choose/questions", 303)


@router.get("/choose/month/{month}")
def month(request: Request, month: int) -> HTMLResponse:
    """Show what can be done in a month, 1 to 12, unit by unit."""
    here = desk_of(request).look()
    return page(request, "month.html", {"month": month_view(here, month), "names": MONTHS})


@router.get("/choose/years")
def years(request: Request) -> HTMLResponse:
    """Show what each year holds: follow-up owed first, then new ground."""
    here = desk_of(request).look()
    return page_once(here, request, lambda: page(request, "years.html", {"years": years_view(here)}))


@router.get("/choose/years/{what}/{at}")
def year_working(request: Request, what: str, at: int) -> HTMLResponse:
    """Show how the hours of a year were come by; at: years from now."""
    return opened(request, year_drawer(desk_of(request).look(), what, at))


@router.get("/choose/months/{line:path}")
def months_working(request: Request, line: str) -> HTMLResponse:
    """Show why each month of a line is open or shut."""
    return opened(request, months_drawer(desk_of(request).look(), line))


@router.get("/choose/most/{number}/{line:path}")
def most_working(request: Request, number: str, line: str) -> HTMLResponse:
    """Show how much of a line's treatment an acre takes under its label, and how that was worked out."""
    return opened(request, reach_drawer(desk_of(request).look(), number, line))


@router.get("/choose/{key}/working/{what}")
def unit_working(request: Request, key: str, what: str) -> HTMLResponse:
    """Show how a unit's hours, cost, place or lines were come by; beside the number, or as a page of its own."""
    drawer = {"order": order_drawer, "lines": lines_drawer}.get(what)
    here = desk_of(request).look()
    return opened(request, drawer(here, key) if drawer else unit_drawer(here, what, key))


@router.get("/choose/working/{what}/{line:path}")
def working(request: Request, what: str, line: str) -> HTMLResponse:
    """Show how a line's number was worked out; swapped in beside the number, or as a page of its own."""
    return opened(request, line_drawer(desk_of(request).look(), what, line))


@router.get("/choose/reason/{what}/{line:path}")
def reason(request: Request, what: str, line: str, way: str = "") -> HTMLResponse:
    """Show how a number in a reason was worked out, of the way chosen or of one that was set aside."""
    return opened(request, reason_drawer(desk_of(request).look(), what, line, way))


@router.get("/choose/{key}")
def unit(request: Request, key: str) -> HTMLResponse:
    """Show one unit: its lines, its verdicts, its cost."""
    return _unit(request, key, Form())


@router.post("/choose/{key}")
def pick(request: Request, key: str, form: Typed) -> Response:
    """Keep a choice with its reason, and show the unit as it is now."""
    desk = desk_of(request)
    line, way = form.needed("line", "a line of this unit"), form.needed("way", "one of the ways")
    reason, by = form.needed("reason", "why, in a few words"), form.needed("by", "your name")
    known = [one.key for one in desk.look().project.stands]
    if line and line not in known:
        raise NotFound("line", line, get_close_matches(line, known))
    if form.faults:
        return _unit(request, key, form, 422)
    try:
        keep_choice(desk.folder, line, Pick(way, reason, by, desk.today))
    except BadInput as wrong:
        form.faults |= faults_told(wrong)
        return _unit(request, key, form, 422)
    return RedirectResponse(f"/choose/{key}#{line}", 303)


def _questions(request: Request, form: Form, status: int = 200) -> HTMLResponse:
    here = desk_of(request).look()
    values = {"questions": questions(here), "more": more_ways(here), "form": form}
    return page(request, "questions.html", values, status)


def _unit(request: Request, key: str, form: Form, status: int = 200) -> HTMLResponse:
    here = desk_of(request).look()
    if key not in here.project.ground.units:
        raise NotFound("unit", key, list(here.project.ground.units))
    return page(
        request, "unit.html", {"unit": unit_view(here, key), "form": form, "after": unit_years(here, key)}, status
    )


def _units(request: Request, here: Open) -> HTMLResponse:
    opening = opens_most(here.plan.choices) if here.plan else None
    now = here.on.month, MONTHS[here.on.month - 1]
    values = {"cards": unit_cards(here), "asked": len(questions(here)), "now": now, "years": years_told(here)}
    return page(request, "choose.html", {**values, "opening": opening.words if opening else ""})
