"""The style page: every element of the look once, so that a change can be seen in one place."""

from __future__ import annotations

from fastapi import APIRouter, Request
from fastapi.responses import HTMLResponse

from rootcollar.web.render import page
from rootcollar.work.packet import Said

__all__ = ["router"]

router = APIRouter(include_in_schema=False)

_VERDICTS = (
    Said("stop", "The oil mix within 25 ft of the brook.", "The water-borne mix there.", "L26", "9"),
    Said("ask", "Any wanted tree within 10 ft of the cut stems?", "Unmapped trees count too."),
    Said("warn", "Spined twigs at face height.", "Treaters keep goggles on."),
    Said("ok", "No known rule objects."),
)


@router.get("/style")
def style(request: Request) -> HTMLResponse:
    """Show the style page."""
    return page(request, "style.html", {"verdicts": _VERDICTS})
