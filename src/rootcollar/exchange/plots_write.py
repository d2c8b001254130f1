"""Lists of plots for a spreadsheet, a map program or a satellite receiver, as text, with nothing but plain rows."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Sequence
from typing import TYPE_CHECKING
from xml.sax.saxutils import escape, quoteattr

if TYPE_CHECKING:
    from rootcollar.survey.design import PlotPoint  # the room of curves takes a while to load

__all__ = ["plots_as_csv", "plots_as_geojson", "plots_as_gpx"]

_PLACES = 7  # decimals of a degree: about a centimetre, finer than any receiver


def plots_as_csv(points: Sequence[PlotPoint]) -> str:
    """Return plots as comma-separated rows: plot, unit, longitude, latitude [degrees, WGS 84]."""
    out = io.StringIO(newline="")
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(("plot", "unit", "lon", "lat"))
    writer.writerows((one.key, one.unit, *_degrees(one)) for one in points)
    return out.getvalue()


def plots_as_geojson(points: Sequence[PlotPoint]) -> str:
    """Return plots as GeoJSON (RFC 7946): a collection of points, each with its plot and unit."""
    features = [
        {
            "type": "Feature", "id": one.key,
            "geometry": {"type": "Point", "coordinates": [float(part) for part in _degrees(one)]},
            "properties": {"plot": one.key, "unit": one.unit},
        }
        for one in points
    ]  # fmt: skip
    return json.dumps({"type": "FeatureCollection", "features": features}, ensure_ascii=False, indent=1) + "\n"


def plots_as_gpx(points: Sequence[PlotPoint]) -> str:
    """Return plots as GPX 1.1: a waypoint each, named by its plot, its unit in the description."""
    rows = [
        f"  <wpt lat={quoteattr(lat)} lon={quoteattr(lon)}><name>{escape(one.key)}</name>"
        f"<desc>{escape(one.unit)}</desc></wpt>"
        for one in points
        for lon, lat in [_degrees(one)]
    ]
    head = (
        '<?xml version="1.0" encoding="UTF-8"?>',
        '<gpx version="1.1" creator="rootcollar" xmlns="http://www.topografix.com/GPX/1/1">',
    )
    return "\n".join((*head, *rows, "</gpx>", ""))


def _degrees(one: PlotPoint) -> tuple[str, str]:
    return f"{one.lon:.{_PLACES}f}", f"{one.lat:.{_PLACES}f}"
