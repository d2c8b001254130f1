"""The command `figure area`: how large a plain shape is."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Any

import click

from rootcollar.cli.ask import amount, naming, sides
from rootcollar.cli.figure_shared import answer, bad, system
from rootcollar.cli.show import json_option

if TYPE_CHECKING:
    from rootcollar.jobs.figure_area import Shape
    from rootcollar.kernel.units import Quantity

__all__ = ["area", "slope"]

_SLOPE = re.compile(r"([0-9]+(?:\.[0-9]+)?|\.[0-9]+)\s*(%|percent|pct|deg\.?|degrees?|\u00b0)$", re.I)
_CORNER_DEGREES = 90  # straight up (definition)
_WAYS = (
    "one shape: '100 ft x 60 ft', --diameter or --radius for a circle, --sides a,b,c for a triangle, --oval 'a x b', "
    "or --strip LENGTH WIDTH"
)


@click.command()
@click.argument("size", required=False)
@click.option("--diameter", metavar="LENGTH", help="Of a circle, straight across: '40 ft'.")
@click.option("--radius", metavar="LENGTH", help="Of a circle, from its middle: '20 ft'.")
@click.option("--sides", "three", metavar="A,B,C", help="The three sides of a triangle: '60 ft, 80 ft, 100 ft'.")
@click.option("--oval", metavar="SIZE", help="An oval, across both ways: '60 ft x 40 ft'.")
@click.option("--strip", metavar="LENGTH WIDTH", nargs=2, help="A strip: '1/4 mi' '33 ft'.")
@click.option("--slope", metavar="SLOPE", help="Of the ground: '30%', a rise in a hundred, or '17 deg'.")
@json_option
def area(as_json: bool, **told: Any) -> None:
    """Work out the area of a plain shape, and of a slope.

    SIZE is a rectangle, such as "100 ft x 60 ft". A slope gives both, the ground along it and the level area of maps.

    \b
    Example: rootcollar figure area "100 ft x 60 ft" --slope 30%
    """
    from rootcollar.jobs.figure_area import AreaAsk
    from rootcollar.jobs.figure_area import area as job

    shape, name, found = _shape(told)
    said = told["three" if name == "sides" else name]
    given = {name: " x ".join(said) if isinstance(said, tuple) else said.strip()}
    sizes = tuple(one.to("m") for one in found)
    pct, degrees = slope(told["slope"], given)
    ask = AreaAsk(given, shape, (2 * sizes[0],) if name == "radius" else sizes, pct, degrees, system(*found))
    answer("figure-area", job, ask, as_json)


def _shape(told: dict[str, Any]) -> tuple[Shape, str, tuple[Quantity, ...]]:
    """Return the shape, the option it was told by, and its sizes."""
    from rootcollar.kernel.units import Kind

    names = {"size": "a size", "diameter": "--diameter", "radius": "--radius", "three": "--sides", "oval": "--oval"}
    found = [name for name in (*names, "strip") if told[name]]
    if len(found) != 1:
        raise bad(" and ".join(names.get(name, "--strip") for name in found) or "no shape", _WAYS)
    name = found[0]
    if name in ("diameter", "radius"):
        return "circle", name, (amount(f"--{name}", told[name], Kind.LENGTH),)
    if name == "three":
        return "triangle", "sides", _three(told["three"])
    if name == "strip":
        return "strip", name, tuple(amount("--strip", one, Kind.LENGTH) for one in told["strip"])
    return ("oval" if name == "oval" else "rectangle"), name, sides(names[name].replace("a size", "SIZE"), told[name])


def _three(said: str) -> tuple[Quantity, ...]:
    """Return the three sides of a triangle; a unit at the end counts for all."""
    from rootcollar.kernel.errors import UnitError
    from rootcollar.kernel.units import Kind

    parts = [part.strip() for part in re.split(r"[,;]|\s+x\s+|\s+and\s+", said)]
    if len(parts) != 3 or not all(parts):
        with naming("--sides"):
            raise UnitError(said, "three sides without a comma inside a number, such as 60 ft, 80 ft, 100 ft")
    unit = re.sub(r"^[0-9./\s]+", "", parts[-1])
    told = (part if re.search(r"[^0-9./\s]", part) else f"{part} {unit}" for part in parts)
    return tuple(amount("--sides", part, Kind.LENGTH) for part in told)


def slope(said: str | None, given: dict[str, str]) -> tuple[float | None, float | None]:
    """Return a slope in percent or in degrees; None for both where none was told."""
    from rootcollar.kernel.errors import Ambiguous, UnitError

    if said is None:
        return None, None
    found = _SLOPE.fullmatch(said.strip())
    with naming("--slope"):
        if re.fullmatch(r"[0-9.]+", said.strip()):
            raise Ambiguous(said, "30% for a rise in a hundred, or 30 deg for degrees?")
        if not found or (not found[2].lower().startswith(("%", "p")) and float(found[1]) >= _CORNER_DEGREES):
            raise UnitError(said, "a rise in a hundred, such as 30%, or degrees below 90, such as 17 deg")
    given["slope"] = said.strip()
    value = float(found[1])
    return (value, None) if found[2].lower().startswith(("%", "p")) else (None, value)
