"""Choose: plans for the whole property side by side."""

from __future__ import annotations

from fastapi import APIRouter, Request
from fastapi.responses import HTMLResponse

from rootcollar.web.desk import Open, desk_of
from rootcollar.web.render import opened, page, page_once
from rootcollar.web.views.plans import plan_cards, plan_drawer, share_words

__all__ = ["router"]

router = APIRouter(include_in_schema=False)


@router.get("/choose/plans")
def plans(request: Request) -> HTMLResponse:
    """Show every plan with its figures, which open."""
    here = desk_of(request).look()
    return page_once(here, request, lambda: _plans(request, here))


@router.get("/choose/plans/working/{key}/{what}")
def working(request: Request, key: str, what: str) -> HTMLResponse:
    """Show how a figure of a plan was added up; beside the number, or as a page of its own."""
    return opened(request, plan_drawer(desk_of(request).look(), key, what))


def _plans(request: Request, here: Open) -> HTMLResponse:
    cards = plan_cards(here)
    words = [name for name, _, _ in cards[0].figures] if cards else []
    return page(request, "plans.html", {"cards": cards, "words": words, "share": share_words(here)})
