"""Ground: what lies on a property, how large, how far from what.

Question: where may the work go, and how near does it come to water, wells, trails and plants to keep?
Inputs: units and features as typed: polygons and points in degrees, or distances and areas measured by the user.
Outputs: `Ground` with areas [m2] and distances [m] filled in from the map (`measure`), how each was come by
(`how_measured`), and a plan to draw (`sketch`).
Sources: geodesic area and azimuthal equidistant projection on the WGS 84 ellipsoid, by the open library PROJ.
Refuses: an area typed that is more than twice, or less than half, the area drawn; a shape that crosses itself.
Three answers, never two: a distance is None while nobody has looked, infinite where somebody looked and there is
none, else metres. Where the map and the user's own measure differ, the smaller is used and a note says so.
"""

from rootcollar.site.geometry import area_m2, distance_m, flat, outline_fault
from rootcollar.site.ground import (
    FOR_WHOM,
    PURPOSES,
    SITE_CLASSES,
    SOILS,
    TAKEN,
    Feature,
    Ground,
    LonLat,
    Mixing,
    Permission,
    Taken,
    Unit,
)
from rootcollar.site.measure import MEASURED, Measured, how_measured, measure
from rootcollar.site.shapes import (
    along_slope_m2,
    circle_m2,
    level_m2,
    oval_m2,
    rectangle_m2,
    slope_pct_from_degrees,
    triangle_m2,
)  # fmt: skip
from rootcollar.site.sketch import Plan, sketch

__all__ = [
    "Ground", "Unit", "Feature", "Permission", "Mixing", "Taken", "LonLat",
    "SITE_CLASSES", "FOR_WHOM", "PURPOSES", "TAKEN", "SOILS",
    "measure", "how_measured", "Measured", "MEASURED", "sketch", "Plan",
    "area_m2", "distance_m", "flat", "outline_fault",
    "along_slope_m2", "circle_m2", "level_m2", "oval_m2", "rectangle_m2", "slope_pct_from_degrees", "triangle_m2",
]  # fmt: skip
