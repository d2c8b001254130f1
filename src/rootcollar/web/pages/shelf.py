"""Shelf: the products in the shed, what their labels say, and what nobody has read on them yet."""

from __future__ import annotations

from fastapi import APIRouter, Request
from fastapi.responses import HTMLResponse

from rootcollar.kernel.errors import NotFound
from rootcollar.web.desk import desk_of
from rootcollar.web.render import page
from rootcollar.web.views.shelf import jugs, sheet_view

__all__ = ["router"]

router = APIRouter(include_in_schema=False)


@router.get("/shelf")
def shelf(request: Request) -> HTMLResponse:
    """Show every product on the shelf."""
    return page(request, "shelf.html", {"jugs": jugs(desk_of(request).look())})


@router.get("/shelf/{key}")
def sheet(request: Request, key: str) -> HTMLResponse:
    """Show one label sheet, line by line."""
    here = desk_of(request).look()
    if key not in here.project.shelf:
        raise NotFound("label sheet", key, list(here.project.shelf))
    return page(request, "sheet.html", {"sheet": sheet_view(here, key)})
