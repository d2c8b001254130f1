"""From values to a page: the templates, what every page has in common, and fragments for what is only swapped in."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import lru_cache
from pathlib import Path
from typing import Any

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from starlette.requests import Request
from starlette.responses import HTMLResponse

from rootcollar.web.desk import Open
from rootcollar.web.steps import SHELVES, STEPS
from rootcollar.web.views.answer import without_dashes
from rootcollar.web.views.packet import figures, runs, written
from rootcollar.web.views.working import Drawer

__all__ = ["opened", "page", "page_once", "templates"]

_TEMPLATES = Path(__file__).parent / "templates"


@lru_cache(maxsize=1)
def templates() -> Environment:
    """Return the templates: everything put into them is escaped, and a name that is missing is a fault of ours."""
    made = Environment(
        loader=FileSystemLoader(_TEMPLATES), autoescape=True, undefined=StrictUndefined, trim_blocks=True,
        lstrip_blocks=True,
    )  # fmt: skip
    made.filters |= {"field": without_dashes, "written": written, "figures": figures, "runs": runs, "options": _options}
    made.globals |= {"STEPS": STEPS, "SHELVES": SHELVES}
    return made


@lru_cache(maxsize=512)
def _options(choices: tuple[tuple[str, str], ...], said: str) -> str:
    """Return what may be picked from; kept, because a long table has the same list of all units in every row."""
    made: str = templates().get_template("options.html").module.options(choices, said)  # type: ignore[attr-defined]
    return made


def page(request: Request, name: str, values: Mapping[str, Any], status: int = 200) -> HTMLResponse:
    """Return a page, or, where htmx asks for part of it, only its main part. here: the path, for the row of steps."""
    shared = {"here": request.url.path, "desk": request.app.state.facts(), "whole": not _in_part(request)}
    return HTMLResponse(templates().get_template(name).render({**shared, **values}), status)


def page_once(here: Open, request: Request, make: Callable[[], HTMLResponse]) -> HTMLResponse:
    """Return a long page as it was made before: one that depends on its path and on what lies open, on nothing else."""
    key = page_once, request.url.path, _in_part(request)
    if key not in here.views:
        here.views[key] = make().body
    return HTMLResponse(here.views[key])


def opened(request: Request, drawer: Drawer) -> HTMLResponse:
    """Return what a number opens into: alone where htmx puts it beside its number, else as a page of its own."""
    if request.headers.get("hx-request") == "true":
        return HTMLResponse(templates().get_template("drawer.html").render(drawer=drawer))
    return page(request, "working.html", {"drawer": drawer})


def _in_part(request: Request) -> bool:
    return request.headers.get("hx-request") == "true" and request.headers.get("hx-target", "").startswith("main")
