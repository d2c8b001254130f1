"""Ground: the map of the units and of what lies there; what is known of each unit, and what is still asked."""

from __future__ import annotations

from fastapi import APIRouter, Request
from fastapi.responses import HTMLResponse

from rootcollar.kernel.errors import NotFound
from rootcollar.web.desk import desk_of
from rootcollar.web.render import opened, page, page_once
from rootcollar.web.views.ground import units_ground
from rootcollar.web.views.map import GroundMap, as_geojson, drawn, kinds
from rootcollar.web.views.measured import measured_drawer, property_drawer

__all__ = ["router"]

router = APIRouter()


@router.get("/ground", include_in_schema=False)
def ground(request: Request) -> HTMLResponse:
    """Show the map, and every unit with what is known and asked."""
    here = desk_of(request).look()
    notes = here.project.ground.notes

    def shown() -> HTMLResponse:
        values = {"map": drawn(here), "kinds": kinds(here), "units": units_ground(here), "notes": notes}
        return page(request, "ground.html", values)

    return page_once(here, request, shown)


@router.get("/door/ground.json", tags=["ground"], summary="The ground as GeoJSON")
@router.get("/ground/map.json", include_in_schema=False)
def places(request: Request) -> GroundMap:
    """Return every unit that is drawn and every feature with a position, for a map or a GIS; longitude first."""
    return as_geojson(desk_of(request).look())


@router.get("/ground/working/area", include_in_schema=False)
def whole_area(request: Request) -> HTMLResponse:
    """Show how the area of the whole property was added up."""
    return opened(request, property_drawer(desk_of(request).look()))


@router.get("/ground/{key}/working/{what}", include_in_schema=False)
def working(request: Request, key: str, what: str) -> HTMLResponse:
    """Show how a measure of a unit was come by; swapped in beside it, or as a page of its own."""
    return opened(request, measured_drawer(desk_of(request).look(), key, what))


@router.get("/ground/{key}", include_in_schema=False)
def unit(request: Request, key: str) -> HTMLResponse:
    """Show one unit: what is known, what is asked, what is counted."""
    units = {one.key: one for one in units_ground(desk_of(request).look())}
    if key not in units:
        raise NotFound("unit", key, list(units))
    return page(request, "ground_unit.html", {"unit": units[key]})
