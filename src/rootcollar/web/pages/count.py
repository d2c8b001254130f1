"""Count: the tally as a table to type in, kept whole or not at all, and the stems per acre it comes to."""

from __future__ import annotations

from fastapi import APIRouter, Request
from fastapi.responses import HTMLResponse, RedirectResponse, Response

from rootcollar.exchange import Changed, TypedTally, keep_tally, tally_as_typed, tally_cells
from rootcollar.kernel.errors import BadInput
from rootcollar.reference import load
from rootcollar.web.desk import desk_of
from rootcollar.web.forms import Typed
from rootcollar.web.render import opened, page, page_once
from rootcollar.web.views.count import (
    COLUMNS,
    count_drawer,
    density_drawer,
    density_of,
    easiest_of,
    grid_of,
    rows_typed,
    theirs,
)

__all__ = ["router"]

router = APIRouter(include_in_schema=False)

_EMPTY = 5  # rows to type in behind those that stand there


@router.get("/count")
def tally(request: Request, kept: str = "") -> HTMLResponse:
    """Show the tally as its file stands; kept: how many rows were just written."""
    said = f"Saved: {kept} {'row' if kept == '1' else 'rows'}." if kept.isdecimal() else ""
    desk = desk_of(request)

    def shown() -> HTMLResponse:
        return _grid(request, tally_cells(desk.folder), said=said)

    try:
        here = desk.look()
    except BadInput:  # a cell to mend, perhaps: this is where it is mended
        return shown()
    return shown() if said else page_once(here, request, shown)


@router.post("/count")
def typed(request: Request, form: Typed) -> Response:
    """Write the tally, or show it again as it was typed: with more rows, its faults, or what changed meanwhile."""
    folder = desk_of(request).folder
    rows = rows_typed(form.typed)
    now = tally_cells(folder)
    mine = tally_as_typed(rows, form.said("stamp"), now.units)
    if form.said("do") == "more":
        return _grid(request, TypedTally(mine.rows, mine.stamp, mine.units), len(rows) - len(mine.rows) + _EMPTY)
    if mine.faults:
        return _grid(request, mine, status=422)
    try:
        keep_tally(folder, mine)
    except Changed:
        return _grid(request, TypedTally(mine.rows, now.stamp, now.units), status=409, now=now)
    return RedirectResponse(f"/count?kept={len(mine.rows)}", 303)


@router.get("/count/working/{key:path}")
def working(request: Request, key: str) -> HTMLResponse:
    """Show how the stems per acre of a size, or of all sizes of a plant, were worked out."""
    return opened(request, density_drawer(desk_of(request).look(), key))


@router.get("/count/stems/{key:path}")
def counted(request: Request, key: str) -> HTMLResponse:
    """Show where the stems of a size come from, or how those of all sizes of a plant were added up."""
    return opened(request, count_drawer(desk_of(request).look(), key))


def _grid(
    request: Request, typed: TypedTally, empty: int = _EMPTY, status: int = 200, said: str = "",
    now: TypedTally | None = None,
) -> HTMLResponse:  # fmt: skip
    """Return the page. now: the file as another has changed it meanwhile, to be compared."""
    desk = desk_of(request)
    plants = (one.common_name for one in load().species.values())
    try:
        here = desk.look()
        dense, easiest = density_of(here), easiest_of(here)
    except BadInput:
        dense, easiest = None, ()
    values = {
        "grid": grid_of(typed, plants, empty), "columns": COLUMNS, "dense": dense, "easiest": easiest,
        "said": said,
        "now": theirs(now, typed) if now else None, "typed": request.method == "POST", "folder": desk.folder.name,
    }  # fmt: skip
    return page(request, "count.html", values, status)
