"""Prepare: the packet for the units and the day that were chosen, on a page, as a PDF, and as a picture of page one."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from fastapi import APIRouter, Request
from fastapi.responses import HTMLResponse, Response

from rootcollar.kernel.errors import BadInput
from rootcollar.web.desk import Open, desk_of, of_the_last_few
from rootcollar.web.forms import Form, faults_told
from rootcollar.web.render import opened, page, templates
from rootcollar.web.views.packet_numbers import number_drawer
from rootcollar.web.views.prepare import (
    FIRST_TONGUE,
    PAPER_WORDS,
    Wanted,
    first_with_work,
    packet_view,
    pdf_of,
    picture_of,
    wanted_of,
)

__all__ = ["router"]

router = APIRouter(include_in_schema=False)


@router.get("/prepare")
def packet(request: Request) -> HTMLResponse:
    """Show what is to be taken along; the address holds which units, which day, which language, which paper.

    No unit in it: the first with work, because one packet is looked at at a time.
    """
    here = desk_of(request).look()
    told = _told(request)
    if here.plan is None:
        return page(request, "prepare.html", {"packet": "", "counted": False})
    form = Form({name: said[0] for name, said in told.items()})
    try:
        wanted = wanted_of(here, told)
    except BadInput as wrong:
        form.faults = faults_told(wrong)
        return _page(request, here, form, {"packet": "", "ticked": told.get("unit", ())}, 422)
    if not wanted.units and not {"unit", "units"} & told.keys():
        wanted = replace(wanted, units=(first_with_work(here, wanted.day),))
    view = packet_view(here, wanted)
    ticked = [key for key, _ in view.units]
    return _page(request, here, form, {"packet": _packet(here, wanted), "ticked": ticked, "view": view})


@router.get("/prepare/working/{place:path}")
def working(request: Request, place: str) -> HTMLResponse:
    """Show how a number of the packet was worked out; swapped in beside the number, or as a page of its own."""
    here = desk_of(request).look()
    view = packet_view(here, wanted_of(here, _told(request)))
    return opened(request, number_drawer(view, place, here.setting.reference.sources))


@router.get("/prepare/packet.pdf")
def pdf(request: Request) -> Response:
    """Give the packet to print, shown by the browser under a plain file name."""
    here = desk_of(request).look()
    wanted = wanted_of(here, _told(request))
    headers = {"content-disposition": f'inline; filename="{packet_view(here, wanted).file}"'}
    return Response(pdf_of(here, wanted), media_type="application/pdf", headers=headers)


@router.get("/prepare/page-one.png")
def page_one(request: Request) -> Response:
    """Give the picture of page one."""
    here = desk_of(request).look()
    return Response(picture_of(here, wanted_of(here, _told(request))), media_type="image/png")


@of_the_last_few
def _packet(here: Open, wanted: Wanted) -> str:
    """Return what stands beneath the form; long, and the same for the same choice, so it is made once."""
    return templates().get_template("packet.html").render(view=packet_view(here, wanted))


def _told(request: Request) -> Mapping[str, Sequence[str]]:
    return {name: request.query_params.getlist(name) for name in request.query_params}


def _page(request: Request, here: Open, form: Form, values: Mapping[str, object], status: int = 200) -> HTMLResponse:
    tongues = here.setting.reference.tongues.items()
    shown = {
        "counted": True,
        "view": None,
        "form": form,
        "units": [(key, here.project.ground.units[key].name) for key, _ in here.plan.order] if here.plan else [],
        "tongues": [(code, one.names[0].title()) for code, one in tongues if code != FIRST_TONGUE],
        "papers": PAPER_WORDS,
    }
    return page(request, "prepare.html", {**shown, **values}, status)
