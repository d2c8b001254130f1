"""The commands `figure sun`, `delta-t`, `degree-days` and `drift-fall`: what the sky and the air do."""

from __future__ import annotations

import re
from datetime import UTC, tzinfo
from typing import TYPE_CHECKING, Literal

import click

from rootcollar.cli.ask import naming, share
from rootcollar.cli.figure_shared import answer, bad, optional, system, to
from rootcollar.cli.show import json_option

if TYPE_CHECKING:
    from rootcollar.kernel.units import Quantity

__all__ = ["degree_days", "delta_t", "drift_fall", "sun"]

_NEGATIVE = re.compile(r"\s*[-\u2212]\s*(?=[0-9.])")
_MICRO = re.compile(r"\s*(?:um|\u00b5m|\u03bcm|microns?|micrometers?|micrometres?)?\s*$", re.I)
_POLE = 90.0  # degrees, by definition
_HALF_TURN = 180.0  # degrees, by definition


@click.command()
@click.option("--on", metavar="DAY", required=True, help="The day, such as 2027-03-20.")
@click.option("--lat", metavar="DEGREES", required=True, help="North of the equator, such as 43.3; south is below 0.")
@click.option("--lon", metavar="DEGREES", required=True, help="East of Greenwich; the Americas are below 0: -89.9.")
@click.option("--zone", metavar="NAME", help="The clock's zone, such as America/Chicago. [default: universal time]")
@json_option
def sun(as_json: bool, **told: str | None) -> None:
    """Work out sunrise, sunset and the still hours around them.

    \b
    Example: rootcollar figure sun --on 2027-10-15 --lat 43.3 --lon -89.9 --zone America/Chicago
    """
    from rootcollar.jobs.figure_sun import SunAsk
    from rootcollar.jobs.figure_sun import sun as job
    from rootcollar.kernel.days import read_date

    given = {name: said.strip() for name, said in told.items() if said is not None}
    with naming("--on"):
        on = read_date(given["on"])
    lat, lon = _degrees("--lat", given["lat"], _POLE), _degrees("--lon", given["lon"], _HALF_TURN)
    zone, clock = _zone(told["zone"])
    answer("figure-sun", job, SunAsk(given, on, lat, lon, zone, clock), as_json)


@click.command("delta-t")
@click.option("--air", metavar="TEMPERATURE", required=True, help="In the shade, such as '75 F' or '24 C'.")
@click.option("--humidity", metavar="PERCENT", required=True, help="Relative humidity, such as '40%'.")
@click.option("--height", metavar="LENGTH", help="Of the place above the sea, such as '1,200 ft'. [default: the sea's]")
@json_option
def delta_t(as_json: bool, **told: str | None) -> None:
    """Work out how fast a drop dries in this air.

    Delta T is the dry bulb less the wet bulb: advice, never a leave to spray.

    \b
    Example: rootcollar figure delta-t --air "75 F" --humidity "40%"
    """
    from rootcollar.jobs.figure_delta_t import DeltaTAsk
    from rootcollar.jobs.figure_delta_t import delta_t as job
    from rootcollar.kernel.units import Kind

    given: dict[str, str] = {}
    air = _temperature("air", told["air"] or "", given)
    given["humidity"] = (told["humidity"] or "").strip()
    humidity = share("--humidity", given["humidity"]).amount
    height = optional("height", told["height"], Kind.LENGTH, given)
    ask = DeltaTAsk(given, air.to("\u00b0C"), humidity, to(height, "m"), _system(air))
    answer("figure-delta-t", job, ask, as_json)


@click.command("degree-days")
@click.option("--low", metavar="TEMPERATURE", required=True, help="The day's least, such as '45 F'.")
@click.option("--high", metavar="TEMPERATURE", required=True, help="The day's most, such as '75 F'.")
@click.option("--base", metavar="TEMPERATURE", required=True, help="The threshold, such as '50 F'.")
@click.option("--cap", metavar="TEMPERATURE", help="An upper threshold, such as '86 F', where there is one.")
@json_option
def degree_days(as_json: bool, **told: str | None) -> None:
    """Work out the warmth of a day above a threshold.

    By each way in use, side by side: a total means nothing without its way.

    \b
    Example: rootcollar figure degree-days --low "45 F" --high "75 F" --base "50 F"
    """
    from rootcollar.jobs.figure_degree_days import DegreeDaysAsk
    from rootcollar.jobs.figure_degree_days import degree_days as job

    given: dict[str, str] = {}
    low, high, base = (_temperature(name, told[name] or "", given) for name in ("low", "high", "base"))
    cap = None if told["cap"] is None else _temperature("cap", told["cap"], given)
    c = "\u00b0C"
    ask = DegreeDaysAsk(given, low.to(c), high.to(c), base.to(c), to(cap, c), _system(low, high, base))
    answer("figure-degree-days", job, ask, as_json)


@click.command("drift-fall")
@click.option("--drop", metavar="MICROMETRES", required=True, help="Across, such as '100 um'.")
@click.option("--height", metavar="LENGTH", required=True, help="It starts at, such as '3 ft'.")
@click.option("--wind", metavar="SPEED", required=True, help="Such as '3 mph' or '1.5 m/s'.")
@json_option
def drift_fall(as_json: bool, **told: str | None) -> None:
    """Work out how long a drop falls and how far wind takes it.

    A picture of size, and why coarse drops matter. It is never a distance at which anything is out of reach.

    \b
    Example: rootcollar figure drift-fall --drop "100 um" --height "3 ft" --wind "3 mph"
    """
    from rootcollar.jobs.figure_drift_fall import SIZES_UM, DriftFallAsk
    from rootcollar.jobs.figure_drift_fall import drift_fall as job
    from rootcollar.kernel.units import Kind

    given = {"drop": (told["drop"] or "").strip()}
    least, most = SIZES_UM
    drop = _number("--drop", _MICRO.sub("", given["drop"]), f"{least:g} to {most:,.0f} um", least, most)
    height = optional("height", told["height"], Kind.LENGTH, given)
    wind = optional("wind", told["wind"], Kind.SPEED, given)
    if height is None or wind is None:
        raise bad("no height or no wind", "--height '3 ft' and --wind '3 mph'")
    ask = DriftFallAsk(given, drop, height.to("m"), wind.to("m/s"), system(height, wind))
    answer("figure-drift-fall", job, ask, as_json)


def _zone(name: str | None) -> tuple[tzinfo, str]:
    """Return the zone of a clock and its name in words."""
    from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

    if name is None:
        return UTC, "universal time (no --zone was given)"
    try:
        return ZoneInfo(name.strip()), name.strip()
    except (ZoneInfoNotFoundError, ValueError, OSError):
        with naming("--zone"):
            raise bad(repr(name), "a zone of the IANA list, such as America/Chicago or America/New_York") from None


def _degrees(option: str, said: str, most: float) -> float:
    return _number(option, said.removesuffix("\u00b0"), f"degrees from {-most:g} to {most:g}", -most, most)


def _number(option: str, said: str, allowed: str, least: float = 0.0, most: float = 100.0) -> float:
    from rootcollar.kernel.errors import UnitError

    with naming(option):
        try:
            found = float(_NEGATIVE.sub("-", said).strip())
        except ValueError:
            raise UnitError(said, allowed) from None
        if not least <= found <= most:
            raise UnitError(said, allowed)
    return found


def _temperature(option: str, said: str, given: dict[str, str]) -> Quantity:
    """Return a temperature, which may be below zero."""
    from rootcollar.kernel.units import Kind, read

    given[option] = said.strip()
    with naming(f"--{option}"):
        return read(said, Kind.TEMPERATURE)


def _system(*found: Quantity) -> Literal["us", "metric"]:
    return "metric" if any("C" in one.unit for one in found) else "us"
