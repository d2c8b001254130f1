"""The command `figure loads`: how many loads, and the product in each."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import click

from rootcollar.cli.ask import amount, ground, one_of, share
from rootcollar.cli.figure_carry import density
from rootcollar.cli.figure_shared import (
    CARRIERS,
    answer,
    bad,
    method_option,
    not_with,
    optional,
    sheet_option,
    system,
    to,
)
from rootcollar.cli.show import json_option

if TYPE_CHECKING:
    from rootcollar.jobs.figure_mix import Strength
    from rootcollar.kernel.units import Quantity

__all__ = ["loads"]


@click.command()
@click.option("--total", metavar="VOLUME", help="Finished mix wanted, such as '37.5 gal'.")
@click.option("--area", metavar="SIZE", help="What is to be sprayed: '3.2 ac', '100 ft x 60 ft'; needs --output.")
@click.option(
    "--output", metavar="RATE", help="Mix that you put out, such as '25 gal/ac': figure calibration tells it."
)
@click.option("--percent", metavar="PERCENT", help="Product as a share of the finished mix: 3, or 0.5%.")
@click.option("--rate", metavar="RATE", help="Product on an area, such as '2 qt/ac'; needs --output.")
@click.option("--tank", metavar="VOLUME", required=True, help="What is filled each time, such as '4 gal'.")
@click.option("--carrier", type=click.Choice(["water", "oil"]), help="What it is thinned with. [default: water]")
@click.option("--product", metavar="NAME", help="A formulation that rootcollar facts lists, for the weight.")
@click.option("--density", metavar="DENSITY", help="Of the product, such as '9.03 lb/gal', for the weight.")
@click.option("--carry", metavar="WEIGHT", help="The most to be carried, sprayer and mix: '40 lb'.")
@click.option("--empty", metavar="WEIGHT", help="The empty sprayer, such as '11 lb'; needs --carry.")
@sheet_option
@method_option
@json_option
def loads(as_json: bool, **told: Any) -> None:
    """Work out loads and the product in each.

    No jug step is stronger than asked. A weight that somebody accepts to carry may leave the tank part empty.

    \b
    Example: rootcollar figure loads --area "3.2 ac" --output "25 gal/ac" --percent 2 --tank "4 gal"
    """
    from rootcollar.jobs.figure_loads import LoadsAsk
    from rootcollar.jobs.figure_loads import loads as job
    from rootcollar.kernel.units import Kind

    given: dict[str, str] = {}
    where = one_of(
        {"--total": told["total"], "--area": told["area"]},
        "one of them: --total '37.5 gal', or --area '3.2 ac' with --output '25 gal/ac'",
    )
    total = optional("total", told["total"], Kind.VOLUME, given)
    area = () if told["area"] is None else ground("--area", told["area"])
    given |= {"area": told["area"].strip()} if area else {}
    output = optional("output", told["output"], Kind.VOLUME_RATE, given)
    if where == "--area" and output is None:
        raise bad("--area without --output", "both: the ground, and the mix that you put out on it, such as 25 gal/ac")
    strength = _strength(told, given, output, where)
    tank = amount("--tank", told["tank"], Kind.VOLUME)
    given["tank"] = told["tank"].strip()
    given |= {name: told[name].strip() for name in ("carrier", "product") if told[name] is not None}
    carry, empty = (optional(name, told[name], Kind.MASS, given) for name in ("carry", "empty"))
    for name in ("empty", "product", "density"):
        not_with(
            f"--{name}", told[name] is not None and carry is None, "no --carry", "the weight to keep to, such as 40 lb"
        )
    ask = LoadsAsk(
        given, strength, tank.amount, to(total, "mL"), tuple(one.amount for one in area), to(output, "L/ha"),
        CARRIERS[told["carrier"] or "water"], told["product"], density(told["density"], given),
        to(carry, "kg"), to(empty, "kg"),
        system(total, *area, output, tank),
    )  # fmt: skip
    answer("figure-loads", job, ask, as_json, told)


def _strength(told: dict[str, Any], given: dict[str, str], output: Quantity | None, where: str) -> Strength:
    """Return the strength as a percent, or as a rate at the output."""
    from rootcollar.jobs.figure_mix import Strength
    from rootcollar.kernel.units import Kind

    which = one_of(
        {"--percent": told["percent"], "--rate": told["rate"]},
        "one of them: --percent 2, or --rate '2 qt/ac' with --output '25 gal/ac'",
    )
    given[which.strip("-")] = told[which.strip("-")].strip()
    if which == "--percent":
        not_with("--output", output is not None and where == "--total", "--total and --percent", "leave --output out")
        return Strength(pct=share("--percent", told["percent"]).amount)
    if output is None:
        raise bad("--rate without --output", "both: product on an area, and the mix that you put out on it")
    return Strength(rate_l_per_ha=(amount("--rate", told["rate"], Kind.VOLUME_RATE).amount, output.amount))
