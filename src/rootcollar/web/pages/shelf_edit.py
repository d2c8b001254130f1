"""Shelf, to type: a label sheet as a form in the label's order, kept whole or not at all; photographs of the label."""

from __future__ import annotations

from collections.abc import Mapping

from fastapi import APIRouter, Request, UploadFile
from fastapi.responses import FileResponse, HTMLResponse, RedirectResponse, Response

from rootcollar.exchange import (
    Changed,
    TypedSheet,
    keep_photo,
    keep_sheet,
    new_key,
    photo_file,
    sheet_as_typed,
    sheet_changed,
)
from rootcollar.jobs.sheet import sheet_doubts
from rootcollar.kernel.errors import BadInput, NotFound
from rootcollar.shelf import Shape, in_order
from rootcollar.web.desk import desk_of
from rootcollar.web.forms import Form, Typed, faults_told
from rootcollar.web.render import page
from rootcollar.web.views.sheet_form import cells_typed, shape_typed, sheet_form

__all__ = ["router"]

router = APIRouter(include_in_schema=False)

_NAME = "identity.product_name"


@router.get("/shelf/add")
def empty(request: Request) -> HTMLResponse:
    """Show an empty sheet."""
    return _form(request, None, {}, {})


@router.post("/shelf/add")
def begun(request: Request, form: Typed) -> Response:
    """Begin a sheet under a name made from the product's, or show it again as it was typed."""
    name = form.said(_NAME).strip()
    try:
        key = new_key(desk_of(request).folder, name)
    except BadInput:
        key = ""
    typed = sheet_as_typed(desk_of(request).folder, key, new=True) if key else None
    return _kept(request, form, typed)


@router.get("/shelf/photos/{name}")
def photo(request: Request, name: str) -> Response:
    """Show a photograph of a label."""
    path = photo_file(desk_of(request).folder, name)
    if path is None:
        raise NotFound("photograph", name)
    return FileResponse(path)


@router.get("/shelf/{key}/edit")
def edit(request: Request, key: str, kept: str = "") -> HTMLResponse:
    """Show a sheet to be typed further."""
    typed = sheet_as_typed(desk_of(request).folder, key)
    return _form(request, typed, typed.cells, {}, said="Saved." if kept else "")


@router.post("/shelf/{key}/edit")
def edited(request: Request, key: str, form: Typed) -> Response:
    """Write the sheet, or show it again as it was typed: with more blocks, its faults, or what changed meanwhile."""
    return _kept(request, form, sheet_as_typed(desk_of(request).folder, key))


@router.post("/shelf/{key}/photos")
def photographed(request: Request, key: str, photo: UploadFile) -> Response:
    """Keep a photograph of the label and enter it on the sheet."""
    folder = desk_of(request).folder
    typed = sheet_as_typed(folder, key)
    name = keep_photo(folder, key, photo.file.read())
    before = typed.cells.get("proof.photos", "")
    names = [one for one in (before, name) if one not in ("", "none", "silent")]
    keep_sheet(folder, sheet_changed(typed, {"proof.photos": "; ".join(names)}))
    return RedirectResponse(f"/shelf/{key}#photos", 303)


def _kept(request: Request, form: Form, before: TypedSheet | None) -> Response:
    """Write what was typed; before: the sheet as its file stands, None while it has no name."""
    shape = shape_typed(form.typed)
    cells, faults = cells_typed(form.typed, in_order(shape))
    do = form.said("do")
    if do.startswith("more:"):
        return _form(request, before, cells, {}, shape=shape, stamp=form.said("stamp"))
    if before is None:
        faults[_NAME] = "Wanted: the name of the product as printed."
        return _form(request, None, cells, faults, shape=shape, status=422)
    if before.stamp != form.said("stamp"):
        return _form(request, before, cells, faults, shape=shape, status=409, now=before.cells)
    try:
        made = sheet_changed(before, {one: said for one, said in cells.items() if one not in faults})
    except BadInput as wrong:
        return _form(request, before, cells, {**faults_told(wrong), **faults}, shape=shape, status=422)
    doubts = sheet_doubts(made.sheet)
    if faults or (doubts and not form.said("as_printed")):
        return _form(request, before, cells, {**doubts, **faults}, shape=shape, status=422, doubted=not faults)
    try:
        keep_sheet(desk_of(request).folder, made)
    except Changed:
        return _form(request, before, cells, {}, shape=shape, status=409, now=before.cells)
    part = do.partition(":")[2]
    return RedirectResponse(f"/shelf/{made.key}/edit?kept=1#{part}" if part else f"/shelf/{made.key}", 303)


def _form(
    request: Request, typed: TypedSheet | None, cells: Mapping[str, str], faults: Mapping[str, str],
    *, shape: Shape | None = None, status: int = 200, **more: object,
) -> HTMLResponse:  # fmt: skip
    """Return the page. more: said, of what was kept; doubted, whether only contradictions are left; now, the file."""
    key = typed.key if typed and typed.text else ""
    form = sheet_form(cells, faults, shape)
    now = more.get("now")
    values = {
        "key": key, "name": cells.get(_NAME) or "A new label", "form": form, "faults": faults,
        "stamp": more.get("stamp", typed.stamp if typed else ""), "said": more.get("said", ""),
        "doubted": more.get("doubted", False), "now": _differ(now, cells) if isinstance(now, Mapping) else None,
    }  # fmt: skip
    return page(request, "sheet_form.html", values, status)


def _differ(now: Mapping[str, str], mine: Mapping[str, str]) -> list[tuple[str, str, str]]:
    """Return the lines in which a file differs from what was typed: (address, the file, typed)."""
    told = ((one, now.get(one, ""), said) for one, said in mine.items())
    return [(one, theirs or "not read", said or "not read") for one, theirs, said in told if theirs != said]
