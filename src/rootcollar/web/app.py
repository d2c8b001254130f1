"""The app: its pages, its files, and what it says when something was wrong."""

from __future__ import annotations

from pathlib import Path

from fastapi import FastAPI, Request
from fastapi.responses import JSONResponse, RedirectResponse, Response
from fastapi.staticfiles import StaticFiles
from starlette.exceptions import HTTPException

from rootcollar import paper
from rootcollar.kernel.errors import BadInput, NotCleared, NotFound, RootcollarError
from rootcollar.web.bench import Bench
from rootcollar.web.described import described
from rootcollar.web.desk import Desk
from rootcollar.web.door_errors import DOOR, error_told
from rootcollar.web.guard import Guard
from rootcollar.web.pages import ROUTERS
from rootcollar.web.render import page
from rootcollar.web.row import shared_facts

__all__ = ["make_app"]

_STATIC = Path(__file__).parent / "static"
_TYPE = Path(paper.__file__).parent / "fonts"


def make_app(desk: Desk, bench: Bench, key: str, hosts: frozenset[str]) -> FastAPI:
    """Return the app for a property's folder. key: of this start. hosts: the names it may be called by, with port."""
    app = FastAPI(title="rootcollar", docs_url=None, redoc_url=None, openapi_url="/door/openapi.json")
    app.state.desk = desk
    app.state.bench = bench
    app.state.facts = lambda: shared_facts(desk)
    for router in ROUTERS:
        app.include_router(router)
    app.openapi = described(app, bench)  # type: ignore[method-assign]  # as FastAPI has it extended
    app.mount("/static", StaticFiles(directory=_STATIC), name="static")
    app.mount("/type", StaticFiles(directory=_TYPE), name="type")
    app.add_exception_handler(RootcollarError, _told)
    app.add_exception_handler(HTTPException, _missing)
    app.add_api_route("/", _home, include_in_schema=False)
    app.add_middleware(Guard, key=key, hosts=hosts)
    return app


def _home(request: Request) -> Response:
    """Lead to the step where the work stands: the ground while nothing is counted, else the choice."""
    desk: Desk = request.app.state.desk
    if not desk.there:
        return RedirectResponse("/start", 303)
    return RedirectResponse("/ground" if desk.look().plan is None else "/choose", 303)


def _told(request: Request, error: Exception) -> Response:
    """Say what was wrong with what was typed, all of it, or that a name is not known; at the door as JSON."""
    if isinstance(error, RootcollarError) and request.url.path.startswith(DOOR):
        return error_told(error)
    faults = error.faults if isinstance(error, BadInput) else ()
    status = 404 if isinstance(error, NotFound) else 409 if isinstance(error, NotCleared) else 422
    return page(request, "wrong.html", {"words": str(error), "faults": faults}, status)


def _missing(request: Request, error: Exception) -> Response:
    """Say that a page is not there, or not asked so; to programs at the door as JSON."""
    assert isinstance(error, HTTPException)
    words = "There is no such page." if error.status_code == 404 else str(error.detail)
    if request.url.path.startswith(DOOR):
        return JSONResponse({"what": words, "near": []}, error.status_code, error.headers)
    said = page(request, "wrong.html", {"words": words, "faults": ()}, error.status_code)
    said.headers.update(error.headers or {})
    return said
