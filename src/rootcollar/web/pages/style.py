"""The style page: every element of the look once, so that a change can be seen in one place."""

from __future__ import annotations

from fastapi import APIRouter, Request
from fastapi.responses import HTMLResponse

from rootcollar.web.render import opened, page
from rootcollar.web.views.count import COLUMNS
from rootcollar.web.views.style import SAMPLE, SAMPLE_DRAWER

__all__ = ["router"]

router = APIRouter(include_in_schema=False)


@router.get("/style")
def style(request: Request) -> HTMLResponse:
    """Show the style page."""
    return page(request, "style.html", {"sample": SAMPLE, "columns": COLUMNS, "drawer": SAMPLE_DRAWER})


@router.get("/style/working")
def working(request: Request) -> HTMLResponse:
    """Show what a number of the style page opens into."""
    return opened(request, SAMPLE_DRAWER)
