"""The command `figure mix`: how much product makes a mix."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

import click

from rootcollar.cli.ask import amount, naming, one_of, share
from rootcollar.cli.figure_shared import CARRIERS, acid, answer, bad, not_with, optional, same_form, system, to
from rootcollar.cli.show import json_option

if TYPE_CHECKING:
    from rootcollar.jobs.figure_mix import Strength
    from rootcollar.kernel.units import Quantity

__all__ = ["mix"]


@click.command()
@click.option("--percent", metavar="PERCENT", help="Product as a share of the finished mix: 3, or 0.5%.")
@click.option("--ratio", metavar="1:N", help="One part product to N parts diluent: 1:4 is 20%.")
@click.option("--want-ae", metavar="STRENGTH", help="Acid wanted in the mix, such as '96 g ae/L'; needs --strength.")
@click.option("--strength", metavar="STRENGTH", help="Acid in the product as sold, such as '4 lb ae/gal'.")
@click.option("--total", metavar="VOLUME", help="Finished mix wanted, such as '3 gal'.")
@click.option("--add-to", metavar="VOLUME", help="Diluent that is there already and stays, such as '3 gal'.")
@click.option("--tank", metavar="VOLUME", help="What is filled each time, such as '4 gal': gives the loads.")
@click.option(
    "--carrier", type=click.Choice(["water", "oil"]), help="What the product is thinned with. [default: water]"
)
@json_option
def mix(as_json: bool, **told: str | None) -> None:
    """Work out how much product makes a mix.

    Percent means percent of the finished mix, as labels and tables mean it. No jug step is stronger than asked.

    \b
    Example: rootcollar figure mix --percent 3 --total "3 gal" --tank "4 gal"
    """
    from rootcollar.jobs.figure_mix import MixAsk
    from rootcollar.jobs.figure_mix import mix as job
    from rootcollar.kernel.units import Kind

    given: dict[str, str] = {}
    strength, acid = _mix_strength(told, given)
    where = one_of(
        {"--total": told["total"], "--add-to": told["add_to"]},
        "one of them: --total for the finished mix, or --add-to for a diluent that is there already",
    )
    wanted = amount(where, told["total"] or told["add_to"] or "", Kind.VOLUME)
    given[where.strip("-")] = f"{wanted.text.strip()} = {wanted.amount:.6g} mL"
    tank = optional("tank", told["tank"], Kind.VOLUME, given)
    not_with(
        "--add-to", where == "--add-to" and tank is not None, "--tank", "loads are of a finished mix; give --total"
    )
    given |= {name: said for name in ("carrier",) if (said := told[name])}
    ask = MixAsk(
        given, strength, wanted.amount, where == "--add-to", CARRIERS.get(told["carrier"], "water"),
        to(tank, "mL"), to(acid, "g/L"), system(wanted),
    )  # fmt: skip
    answer("figure-mix", job, ask, as_json)


def _mix_strength(told: Mapping[str, str | None], given: dict[str, str]) -> tuple[Strength, Quantity | None]:
    """Return the strength that was asked for, and the acid in the product where it was told."""
    from rootcollar.jobs.figure_mix import Strength

    product = None if told["strength"] is None else acid("--strength", told["strength"], given)
    options = {"--percent": told["percent"], "--ratio": told["ratio"], "--want-ae": told["want_ae"]}
    which = one_of(options, "one of them: --percent 20, --ratio 1:4, or --want-ae with --strength")
    said = options[which] or ""
    if which == "--percent":
        found = share(which, said)
        given["percent"] = said.strip()
        return Strength(pct=found.amount), product
    if which == "--ratio":
        given["ratio"] = said.strip()
        return Strength(parts_diluent=_parts(said)), product
    if product is None:
        raise bad(
            "--want-ae without --strength", "both: the acid wanted in the mix and the acid in the product as sold"
        )
    wanted = acid(which, said, given)
    same_form("--strength", product, which, wanted)
    return Strength(acid_g_per_l=(wanted.amount, product.amount)), product


def _parts(said: str) -> float:
    """Return the parts of diluent to one part of product."""
    from rootcollar.kernel.errors import UnitError
    from rootcollar.kernel.units import Kind, read

    with naming("--ratio"):
        if ":" not in said:
            raise UnitError(said, "parts of product to parts of diluent, such as 1:4")
        read(said, Kind.SHARE)
    product, _, diluent = said.partition(":")
    return float(diluent) / float(product)
