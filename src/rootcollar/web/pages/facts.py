"""Facts: what is known of plants, ingredients, ways of working, rules and sources, each with who says so."""

from __future__ import annotations

from fastapi import APIRouter, Request
from fastapi.responses import HTMLResponse, RedirectResponse, Response

from rootcollar.jobs.facts_search import Looked, search
from rootcollar.kernel.errors import BadInput, NotFound
from rootcollar.kernel.sources import NOT_A_LABEL
from rootcollar.reference import load
from rootcollar.web.render import page
from rootcollar.web.views.facts import fact_pages, where
from rootcollar.web.views.facts_index import found, shelves

__all__ = ["router"]

router = APIRouter(include_in_schema=False)

_MOST = 100  # ours: letters of a search; the longest name has fewer


@router.get("/facts")
def index(request: Request, q: str = "") -> Response:
    """Show what there is to look up, or what fits the words that were typed; a whole name leads to its page."""
    words = " ".join(q.split())[:_MOST]
    if not words:
        return _index(request, None)
    looked = search(words, load()).value
    if looked.exact:
        return RedirectResponse(where(words), 303)
    return _index(request, looked)


@router.get("/facts/{name:path}")
def fact(request: Request, name: str) -> Response:
    """Show everything of one name, or the names that look like it."""
    if not name.strip():
        return RedirectResponse("/facts", 303)
    try:
        pages = fact_pages(name)
    except NotFound as missing:
        return _index(request, Looked(name, near=missing.near), 404)
    except BadInput:
        return _index(request, Looked(name), 404)
    return page(request, "fact.html", {"pages": pages, "name": name, "note": NOT_A_LABEL})


def _index(request: Request, looked: Looked | None, status: int = 200) -> HTMLResponse:
    values = {"shelves": shelves(), "found": found(looked) if looked else None, "note": NOT_A_LABEL}
    return page(request, "facts.html", values, status)
