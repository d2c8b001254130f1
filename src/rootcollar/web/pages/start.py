"""Start: a new property in four short questions, or the demo; for a folder in which nothing stands yet."""

from __future__ import annotations

from fastapi import APIRouter, Request
from fastapi.responses import HTMLResponse, RedirectResponse, Response

from rootcollar.exchange import Begun, begin, write_demo
from rootcollar.kernel.days import read_date
from rootcollar.kernel.errors import BadInput
from rootcollar.web.desk import desk_of
from rootcollar.web.forms import Form, Typed, faults_told
from rootcollar.web.render import page

__all__ = ["router"]

router = APIRouter(include_in_schema=False)


@router.get("/start")
def questions(request: Request) -> Response:
    """Ask the four questions; a folder that has a property already leads to its ground."""
    return RedirectResponse("/ground", 303) if desk_of(request).there else _asked(request, Form())


@router.post("/start")
def answered(request: Request, form: Typed) -> Response:
    """Write the templates with the answers in them, and lead to the ground."""
    desk = desk_of(request)
    name = form.needed("name", "what people call the place")
    unit = form.needed("unit", "a name for the piece you start with")
    until = None
    try:
        until = read_date(form.said("until")) if form.said("until").strip() else None
    except BadInput as wrong:
        form.faults["until"] = f"Wanted: {wrong.faults[0].allowed}."
    if not form.faults:
        said = Begun(name, form.said("state").strip(), unit, form.said("area").strip(), form.said("by").strip(), until)
        try:
            begin(desk.folder, said)
        except BadInput as wrong:
            form.faults |= faults_told(wrong)
    return _asked(request, form, 422) if form.faults else RedirectResponse("/ground", 303)


@router.post("/start/demo")
def demo(request: Request) -> Response:
    """Write the invented property into the folder, and lead to its plan."""
    desk = desk_of(request)
    write_demo(desk.folder, desk.today)
    return RedirectResponse("/choose", 303)


def _asked(request: Request, form: Form, status: int = 200) -> HTMLResponse:
    return page(request, "start.html", {"form": form, "folder": desk_of(request).folder}, status)
