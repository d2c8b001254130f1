"""The command `figure carry`: what a load weighs."""

from __future__ import annotations

from typing import Any

import click

from rootcollar.cli.ask import naming, share
from rootcollar.cli.figure_shared import CARRIERS, answer, bad, not_with, optional, system, to
from rootcollar.cli.show import json_option

__all__ = ["carry", "density"]

# Ours: no liquid that is mixed or thinned with is lighter or heavier than this [g/mL].
_LIGHTEST, _HEAVIEST = 0.6, 1.8


@click.command()
@click.option("--volume", metavar="VOLUME", help="Mix in the sprayer, such as '4 gal'.")
@click.option("--percent", metavar="PERCENT", help="Product in it, as a share of the finished mix. [default: none]")
@click.option("--carrier", type=click.Choice(["water", "oil"]), help="What it is thinned with. [default: water]")
@click.option("--product", metavar="NAME", help="A formulation that rootcollar facts lists. [default: the heaviest]")
@click.option("--density", metavar="DENSITY", help="Of the product, such as '9.03 lb/gal'.")
@click.option("--empty", metavar="WEIGHT", help="The empty sprayer, such as '11 lb'.")
@click.option("--limit", metavar="WEIGHT", help="The most to be carried, sprayer and mix: '40 lb'.")
@json_option
def carry(as_json: bool, **told: Any) -> None:
    """Work out what a load weighs and how much can be carried.

    With --limit, the largest volume that keeps to it. Without --empty a limit counts a heavy sprayer.

    \b
    Example: rootcollar figure carry --volume "4 gal" --percent 20 --carrier oil --empty "11 lb" --limit "40 lb"
    """
    from rootcollar.jobs.figure_carry import CarryAsk, Heavy
    from rootcollar.jobs.figure_carry import carry as job
    from rootcollar.kernel.units import Kind

    if told["volume"] is None and told["limit"] is None:
        raise bad(
            "neither --volume nor --limit", "a load to weigh, such as --volume '4 gal', or --limit '40 lb', or both"
        )
    given: dict[str, str] = {}
    load = optional("volume", told["volume"], Kind.VOLUME, given)
    percent = None if told["percent"] is None else share("--percent", told["percent"])
    given |= {name: told[name].strip() for name in ("percent", "carrier", "product") if told[name] is not None}
    product = told["product"] if told["product"] is not None else told["density"]
    not_with(
        "a product", product is not None and percent is None, "no --percent", "how much of it is in the mix, such as 20"
    )
    not_with(
        "--product", None not in (told["product"], told["density"]), "--density", "one of them: the name or the density"
    )
    heavy = Heavy(
        percent.amount if percent else 0.0, CARRIERS[told["carrier"] or "water"], told["product"],
        density(told["density"], given),
    )  # fmt: skip
    empty, limit = (optional(name, told[name], Kind.MASS, given) for name in ("empty", "limit"))
    ask = CarryAsk(given, heavy, to(load, "mL"), to(limit, "kg"), to(empty, "kg"), system(load, empty, limit))
    answer("figure-carry", job, ask, as_json)


def density(said: str | None, given: dict[str, str]) -> float | None:
    """Return the density behind --density [g/mL], near that of water; None where it was left out."""
    from rootcollar.kernel.errors import UnitError
    from rootcollar.kernel.units import Kind, read

    if said is None:
        return None
    try:
        found = read(said, Kind.STRENGTH)
        fits = not found.of and _LIGHTEST <= found.to("g/mL") <= _HEAVIEST
    except UnitError:
        fits = False
    if not fits:
        with naming("--density"):
            raise UnitError(said, "the weight of the whole product, near water's 8.34 lb/gal, such as 9.03 lb/gal")
    given["density"] = said.strip()
    return found.to("g/mL")
