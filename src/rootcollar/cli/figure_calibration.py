"""The command `figure calibration`: what a sprayer and the person with it put out."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

import click

from rootcollar.cli.ask import amount, count, ground, naming, one_of, seconds, share, with_unit
from rootcollar.cli.figure_shared import CARRIERS, METHODS, answer, bad, optional, system, to
from rootcollar.cli.show import json_option

if TYPE_CHECKING:
    from rootcollar.kernel.units import Quantity

__all__ = ["calibration"]

Told = Mapping[str, Any]

_CATCH = "a catch: --caught '150 fl oz' --seconds 75, with --plot where it is not 1/128 acre"
_WALK = "a moving sprayer: --swath '36 in', --speed or --feet with --seconds, and --flow or --caught"
_AREA = "gallons used on an area: --used '1.5 gal' --area '1000 sq ft'"
_PLANTS = "gallons used on plants: --used '6 gal' --plants 50"
_BATCH = "a proving batch: --used, --stems, --count, --method and --strength, and --carrier or --product if need be"
_COURSE = "the length of a walking course: --swath '6 ft' alone"
_FOR = "tank rate"
_BESIDE = "one of them beside --used: --area '1000 sq ft', --plants 50, or --stems '2 in' of a proving batch"
_WAYS: Mapping[str, tuple[str, str]] = {
    "--caught": (_CATCH, f"caught seconds caught_in plot swath new_flow {_FOR}"),
    "a moving sprayer": (_WALK, f"swath speed feet seconds flow caught caught_in new_flow {_FOR}"),
    "--used and --area": (_AREA, f"used area {_FOR}"),
    "--used and --plants": (_PLANTS, "used plants count strength tank"),
    "--used and --stems": (_BATCH, "used stems count method strength product carrier"),
    "--swath alone": (_COURSE, "swath plot"),
}
_ALL = (
    "one way: --caught with --seconds; --swath with --flow and --speed; or --used with --area, --plants or, for a "
    "proving batch, --stems"
)


@click.command()
@click.option("--caught", metavar="VOLUME", help="Caught in a jug: '150 fl oz'.")
@click.option(
    "--seconds",
    "runs",
    metavar="TIME",
    multiple=True,
    help="What the plot or walk took: 75, '1:15'. Once for each run.",
)
@click.option("--plot", metavar="SIZE", help="The plot: '18.5 ft x 18.5 ft', '340 sq ft'. [default: 1/128 acre]")
@click.option("--caught-in", metavar="TIME", help="Time of the catch, where the plot or walk took another.")
@click.option(
    "--tank", metavar="VOLUME", help="What the sprayer holds: gives what a tank covers and how long it lasts."
)
@click.option("--rate", metavar="RATE", help="Product on an acre, such as '2 qt/ac': gives product in a tank.")
@click.option("--swath", metavar="WIDTH", help="Width that is sprayed: '36 in'. Alone: the course to walk.")
@click.option("--flow", metavar="FLOW", help="What comes out: '0.25 gal/min'.")
@click.option("--speed", metavar="SPEED", help="Walked while spraying: '2 mph'.")
@click.option("--feet", metavar="LENGTH", help="Walked in --seconds: 100, or '30 m'.")
@click.option("--new-flow", metavar="FLOW", help="What the nozzle gave when new: tells a worn one.")
@click.option("--used", metavar="VOLUME", help="Gone from the tank or bottle; with --area, --plants or --stems.")
@click.option("--area", metavar="SIZE", help="What was sprayed with --used: '1000 sq ft', '100 ft x 60 ft'.")
@click.option("--plants", metavar="N", help="How many plants --used went on.")
@click.option("--stems", metavar="SIZE", help="Mean diameter of the stems --used went on: '2 in'.")
@click.option("--count", "many", metavar="N", help="How many plants there are, or stems were treated.")
@click.option("--method", type=click.Choice(["basal-bark", "cut-stump"]), help="How the stems were treated.")
@click.option("--strength", metavar="PERCENT", help="Product in the finished mix.")
@click.option("--product", metavar="NAME", help="A formulation that rootcollar facts lists, for a proving batch.")
@click.option("--carrier", type=click.Choice(["water", "oil", "none"]), help="What it was thinned with.")
@json_option
def calibration(as_json: bool, **told: Any) -> None:
    """Work out what a sprayer and the person with it put out.

    From a timed catch on a plot, a walk, what was used on an area or on plants, or a proving batch on measured stems.

    \b
    Example: rootcollar figure calibration --plot "18.5 ft x 18.5 ft" --seconds 75 --caught "150 fl oz" --tank "25 gal"
    """
    told = {**told, "seconds": told["runs"] or None, "count": told["many"]}
    way = _way(told)
    if way == "--used and --plants":
        _plants(told, as_json)
    elif way == "--used and --stems":
        _batch(told, as_json)
    else:
        _output(told, way, as_json)


def _way(told: Told) -> str:
    """Return which of the ways was measured; BadInput where none was, or what was told does not go together."""
    has = {name for name, said in told.items() if said is not None and name not in ("runs", "many")}
    walked = has & {"flow", "speed", "feet"}
    if "used" in has:
        if other := sorted(has & {"flow", "speed", "feet", "caught"}):
            raise bad(f"--used with {_option(other[0])}", f"one way of measuring: {_CATCH}; or {_AREA}")
        beside = {f"--{name}": told[name] for name in ("area", "plants", "stems")}
        way = f"--used and {one_of(beside, _BESIDE)}"
    elif walked:
        way = "a moving sprayer"
    elif "caught" in has:
        way = "--caught"
    elif has and has <= {"swath", "plot"} and "swath" in has:
        way = "--swath alone"
    else:
        raise bad(" and ".join(map(_option, sorted(has))) or "nothing that was measured", _ALL)
    words, takes = _WAYS[way]
    if stray := sorted(has - set(takes.split())):
        raise bad(f"{_option(stray[0])} with {way}", words)
    return way


def _option(name: str) -> str:
    return f"--{name.replace('_', '-')}"


def _output(told: Told, way: str, as_json: bool) -> None:
    from rootcollar.jobs.figure_calibration import CalibrationAsk, course
    from rootcollar.jobs.figure_calibration import calibration as job
    from rootcollar.kernel.units import Kind

    given: dict[str, str] = {}
    if way == "a moving sprayer":
        _walk(told)
    elif told["caught_in"] is not None and told["seconds"] is None:
        raise bad("--caught-in without --seconds", "both: --seconds for the plot, --caught-in for the catch")
    kinds = {
        "caught": Kind.VOLUME, "used": Kind.VOLUME, "swath": Kind.LENGTH, "flow": Kind.FLOW, "speed": Kind.SPEED,
        "new_flow": Kind.FLOW, "tank": Kind.VOLUME, "rate": Kind.VOLUME_RATE,
    }  # fmt: skip
    read = {name: optional(name.replace("_", "-"), told[name], kind, given) for name, kind in kinds.items()}
    plot = _ground("plot", told, given) or _ground("area", told, given)
    runs = tuple(seconds("--seconds", one) for one in told["seconds"] or ())
    given |= {"seconds": ", ".join(one.strip() for one in told["seconds"])} if runs else {}
    caught_s = None if told["caught_in"] is None else seconds("--caught-in", told["caught_in"])
    given |= {} if caught_s is None else {"caught-in": told["caught_in"].strip()}
    walked = optional("feet", told["feet"] and with_unit(told["feet"], "ft"), Kind.LENGTH, given)
    _can_tell_wear(told)
    ask = CalibrationAsk(
        given, to(read["caught"], "mL"), to(read["used"], "mL"),
        tuple(one.amount for one in plot), runs, caught_s, to(read["swath"], "m"),
        to(read["flow"], "mL/s"), to(read["speed"], "m/s"), to(walked, "m"),
        to(read["tank"], "mL"), to(read["rate"], "L/ha"), to(read["new_flow"], "mL/s"),
        system(*read.values(), *plot, walked),
    )  # fmt: skip
    answer("figure-calibration", course if way == "--swath alone" else job, ask, as_json)


def _walk(told: Told) -> None:
    """Raise BadInput where a walk lacks a part of what tells its output, or has one twice."""
    if told["swath"] is None:
        raise bad("no --swath", f"the width that is sprayed; {_WALK}")
    speed = one_of({"--speed": told["speed"], "--feet": told["feet"]}, "one of them: '2 mph', or 100 feet in --seconds")
    flow = one_of({"--flow": told["flow"], "--caught": told["caught"]}, "one of them: '0.25 gal/min', or a catch")
    if speed == "--feet" and told["seconds"] is None:
        raise bad("--feet without --seconds", "both: how far, and how long it took")
    if speed == "--speed" and told["seconds"] is not None:
        raise bad("--seconds with --speed", "one of them; --caught-in for the time of a catch")
    if flow == "--flow" and told["caught_in"] is not None:
        raise bad("--caught-in with --flow", "one of them: the flow, or --caught and its time")
    if flow == "--caught" and speed == "--speed" and told["caught_in"] is None:
        raise bad("--caught without --caught-in", "both: what was caught, and in what time, such as 30")


def _can_tell_wear(told: Told) -> None:
    timed = told["flow"] or (told["caught"] and (told["caught_in"] or told["seconds"]))
    if told["new_flow"] is not None and not timed:
        raise bad("--new-flow and no time", "the time of the catch too: --seconds 75, or --caught-in 30")


def _ground(name: str, told: Told, given: dict[str, str]) -> tuple[Quantity, ...]:
    if told[name] is None:
        return ()
    given[name] = told[name].strip()
    return ground(f"--{name}", told[name])


def _plants(told: Told, as_json: bool) -> None:
    from rootcollar.jobs.figure_batch import PlantsAsk, per_plant
    from rootcollar.kernel.units import Kind

    given: dict[str, str] = {}
    used = amount("--used", told["used"], Kind.VOLUME)
    given |= {name: told[name].strip() for name in ("used", "plants", "count", "strength") if told[name] is not None}
    tank = optional("tank", told["tank"], Kind.VOLUME, given)
    ask = PlantsAsk(
        given, used.amount, count("--plants", told["plants"], "plants"),
        None if told["count"] is None else count("--count", told["count"], "plants"),
        None if told["strength"] is None else share("--strength", told["strength"]).amount,
        to(tank, "mL"), system(used, tank),
    )  # fmt: skip
    answer("figure-calibration", per_plant, ask, as_json)


def _batch(told: Told, as_json: bool) -> None:
    from rootcollar.jobs.figure_batch import BatchAsk, proving
    from rootcollar.kernel.units import Kind

    missing = [f"--{name}" for name in ("count", "method", "strength") if told[name] is None]
    if missing:
        raise bad(
            f"a proving batch without {' and '.join(missing)}",
            "--count 25, --method basal-bark and --strength 20, all three",
        )
    used = amount("--used", told["used"], Kind.VOLUME)
    stem = _mean("--stems", told["stems"])
    names = ("used", "stems", "count", "method", "strength", "product", "carrier")
    given = {name: told[name].strip() for name in names if told[name] is not None}
    ask = BatchAsk(
        given, used.amount, count("--count", told["count"]), stem.to("cm"), METHODS[told["method"]],
        share("--strength", told["strength"]).amount, told["product"], CARRIERS.get(told["carrier"]),
        system(used, stem),
    )  # fmt: skip
    answer("figure-calibration", proving, ask, as_json)


def _mean(option: str, said: str) -> Quantity:
    """Return one diameter; a class is asked about, because the stems of a proving batch are measured."""
    from rootcollar.kernel.errors import UnitError
    from rootcollar.kernel.units import Kind, read_range

    try:
        read_range(said, Kind.LENGTH)
    except UnitError:
        return amount(option, said, Kind.LENGTH)
    with naming(option):
        raise UnitError(said, "one diameter, the mean of the stems you measured, such as 2 in")
