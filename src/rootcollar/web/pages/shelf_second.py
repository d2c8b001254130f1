"""Shelf, the second reading: another person types the lines on which most hangs, without seeing the sheet."""

from __future__ import annotations

from collections.abc import Mapping

from fastapi import APIRouter, Request
from fastapi.responses import HTMLResponse, RedirectResponse, Response

from rootcollar.exchange import keep_second, second_stamp, sheet_as_typed, with_second
from rootcollar.kernel.errors import BadInput
from rootcollar.shelf import NotAllowed, Second, Sheet, first_reader, twice, value_again
from rootcollar.web.desk import desk_of
from rootcollar.web.forms import Typed, faults_told
from rootcollar.web.render import page
from rootcollar.web.views.sheet_form import again_parts, cells_typed

__all__ = ["router"]

router = APIRouter(include_in_schema=False)


@router.get("/shelf/{key}/second")
def asked(request: Request, key: str, anew: str = "") -> HTMLResponse:
    """Ask the lines blind; what this reader has typed before stands there, unless another person begins anew."""
    sheet = _sheet(request, key)
    taken_up = sheet.second if not anew else None
    typed = taken_up.lines if taken_up else {}
    return _form(request, sheet, taken_up.read_by if taken_up else "", typed, {})


@router.post("/shelf/{key}/second")
def typed(request: Request, key: str, form: Typed) -> Response:
    """Keep the second reading, or show it again as it was typed."""
    sheet = _sheet(request, key)
    lines = twice(sheet).lines
    cells, faults = cells_typed(form.typed, [one.ask for one in lines])
    by = form.said("read_by").strip()
    kept: dict[str, str] = {}
    for one in lines:
        try:
            if cells.get(one.ask) and one.ask not in faults:
                kept[one.ask] = value_again(one, cells[one.ask])
        except NotAllowed as wrong:
            faults[one.ask] = f"Wanted: {wrong}."
    desk = desk_of(request)
    if form.said("stamp") != second_stamp(desk.folder, key):
        return _form(request, sheet, by, cells, faults, 409)
    if not faults:
        try:
            keep_second(desk.folder, sheet, Second(by, desk.today, kept))
        except BadInput as wrong:
            faults |= faults_told(wrong)
    return _form(request, sheet, by, cells, faults, 422) if faults else RedirectResponse(f"/shelf/{key}#readings", 303)


def _sheet(request: Request, key: str) -> Sheet:
    folder = desk_of(request).folder
    return with_second(sheet_as_typed(folder, key).sheet, folder / "shelf")


def _form(
    request: Request, sheet: Sheet, by: str, cells: Mapping[str, str], faults: Mapping[str, str], status: int = 200
) -> HTMLResponse:
    both = twice(sheet)
    taken_up = sheet.second is not None and sheet.second.read_by == by
    differ = frozenset(one.ask for one in both.differ) if taken_up else frozenset()
    values = {
        "key": sheet.key, "name": sheet.product, "first": first_reader(sheet), "by": by, "faults": faults,
        "parts": again_parts(both.lines, cells, faults, differ), "changed": status == 409, "second": both.second,
        "stamp": second_stamp(desk_of(request).folder, sheet.key), "differ": len(differ),
    }  # fmt: skip
    return page(request, "second.html", values, status)
