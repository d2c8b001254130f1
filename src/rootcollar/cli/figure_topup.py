"""The command `figure topup`: what to add to what is left in a tank."""

from __future__ import annotations

from typing import Any

import click

from rootcollar.cli.ask import amount, share
from rootcollar.cli.figure_shared import CARRIERS, answer, method_option, sheet_option, system
from rootcollar.cli.show import json_option

__all__ = ["topup"]


@click.command()
@click.option("--left", metavar="VOLUME", required=True, help="What is left in the tank, such as '1.5 gal'.")
@click.option("--to", "full", metavar="VOLUME", required=True, help="What it is filled to, such as '4 gal'.")
@click.option("--percent", metavar="PERCENT", required=True, help="Product wanted in the finished mix: 2, or 0.5%.")
@click.option("--left-percent", metavar="PERCENT", help="Product in what is left, where it is not --percent.")
@click.option("--carrier", type=click.Choice(["water", "oil"]), help="What it is thinned with. [default: water]")
@sheet_option
@method_option
@json_option
def topup(as_json: bool, **told: Any) -> None:
    """Work out what to add to what is left in a tank.

    The marks never make it stronger than asked. What is left and is too strong is not thinned past the tank's mark.

    \b
    Example: rootcollar figure topup --left "1.5 gal" --to "4 gal" --percent 2
    """
    from rootcollar.jobs.figure_topup import TopupAsk
    from rootcollar.jobs.figure_topup import topup as job
    from rootcollar.kernel.units import Kind

    names = {"left": "left", "to": "full", "percent": "percent", "left-percent": "left_percent", "carrier": "carrier"}
    given = {name: told[key].strip() for name, key in names.items() if told[key] is not None}
    left, full = amount("--left", told["left"], Kind.VOLUME), amount("--to", told["full"], Kind.VOLUME)
    percent = share("--percent", told["percent"]).amount
    held = told["left_percent"]
    ask = TopupAsk(
        given, left.amount, percent if held is None else share("--left-percent", held).amount, full.amount, percent,
        CARRIERS[told["carrier"] or "water"], system(left, full),
    )  # fmt: skip
    answer("figure-topup", job, ask, as_json, told)
