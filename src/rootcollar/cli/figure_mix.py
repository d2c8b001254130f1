"""The command `figure mix`: how much product makes a mix."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

import click

from rootcollar.cli.ask import amount, naming, one_of, share
from rootcollar.cli.figure_shared import (
    CARRIERS,
    METHODS,
    acid,
    answer,
    bad,
    method_option,
    not_with,
    optional,
    read_told,
    same_form,
    sheet_option,
    system,
    to,
)
from rootcollar.cli.show import json_option

if TYPE_CHECKING:
    from rootcollar.jobs.figure_mix import Strength
    from rootcollar.kernel.units import Quantity
    from rootcollar.mix import Carrier, Limits

__all__ = ["mix"]

_RATIO = re.compile(r"([0-9.]+)\s*(?:parts?\s*)?(?::|to)\s*([0-9.]+)(?:\s*parts?)?", re.I)
_WAYS = (
    "one of them: --percent 20, --ratio 1:4, --want-ae with --strength, --rate with --output, "
    "--weight-percent for a product that is weighed, or --active-percent with --strength"
)


@click.command()
@click.option("--percent", metavar="PERCENT", help="Product as a share of the finished mix: 3, or 0.5%.")
@click.option("--ratio", metavar="1:N", help="One part product to N parts diluent: 1:4 is 20%.")
@click.option("--want-ae", metavar="STRENGTH", help="Acid wanted in the mix, such as '96 g ae/L'; needs --strength.")
@click.option("--rate", "rate", metavar="RATE", help="Product on an area, such as '2 qt/ac'; needs --output.")
@click.option("--output", metavar="RATE", help="Mix your sprayer puts out, such as '25 gal/ac': calibrate it.")
@click.option(
    "--weight-percent", metavar="PERCENT", help="A weighed product, by weight of the water: 1 is 38 g a gallon."
)
@click.option("--active-percent", metavar="PERCENT", help="Active by weight in the spray; needs --strength.")
@click.option("--strength", metavar="STRENGTH", help="Acid in the product as sold, such as '4 lb ae/gal'.")
@click.option("--total", metavar="VOLUME", help="Finished mix wanted, such as '3 gal'.")
@click.option("--add-to", metavar="VOLUME", help="Diluent that is there already and stays, such as '3 gal'.")
@click.option("--tank", metavar="VOLUME", help="What is filled each time, such as '4 gal': gives the loads.")
@click.option(
    "--carrier", type=click.Choice(["water", "oil"]), help="What the product is thinned with. [default: water]"
)
@sheet_option
@method_option
@json_option
def mix(as_json: bool, **told: Any) -> None:
    """Work out how much product makes a mix.

    Percent means percent of the finished mix, as labels and tables mean it. No jug step is stronger than asked.

    \b
    Example: rootcollar figure mix --percent 3 --total "3 gal" --tank "4 gal"
    """
    from rootcollar.kernel.units import Kind

    given: dict[str, str] = {}
    output = optional("output", told["output"], Kind.VOLUME_RATE, given)
    not_with(
        "--output",
        output is not None and told["rate"] is None,
        "no --rate",
        "both: a rate of product, and what is put out",
    )
    where = one_of(
        {"--total": told["total"], "--add-to": told["add_to"]},
        "one of them: --total for the finished mix, or --add-to for a diluent that is there already",
    )
    wanted = amount(where, told["total"] or told["add_to"] or "", Kind.VOLUME)
    given[where.strip("-")] = f"{wanted.text.strip()} = {wanted.amount:.6g} mL"
    carrier: Carrier = CARRIERS.get(told["carrier"], "water")
    given |= {name: said for name in ("carrier",) if (said := told[name])}
    if told["weight_percent"] is not None or _weighed_rate(told):
        _weighed(told, given, wanted, output, carrier, as_json)
    else:
        _poured(told, given, (where, wanted), output, carrier, as_json)


def _poured(
    told: Mapping[str, Any], given: dict[str, str], asked: tuple[str, Quantity], output: Quantity | None,
    carrier: Carrier, as_json: bool,
) -> None:  # fmt: skip
    from rootcollar.jobs.figure_mix import MixAsk
    from rootcollar.jobs.figure_mix import mix as job
    from rootcollar.kernel.units import Kind

    where, wanted = asked
    on_top = where == "--add-to"
    strength, product = _strength(told, given, output)
    tank = optional("tank", told["tank"], Kind.VOLUME, given)
    not_with("--add-to", on_top and tank is not None, "--tank", "loads are of a finished mix; give --total")
    not_with(
        "--add-to", on_top and strength.active_pct is not None, "--active-percent", "--total, for the finished mix"
    )
    ask = MixAsk(
        given, strength, wanted.amount, on_top, carrier, to(tank, "mL"), to(product, "g/L"), _limits(told),
        system(wanted),
    )  # fmt: skip
    answer("figure-mix", job, ask, as_json, told)


def _weighed(
    told: Mapping[str, Any], given: dict[str, str], wanted: Quantity, output: Quantity | None, carrier: Carrier,
    as_json: bool,
) -> None:  # fmt: skip
    from rootcollar.jobs.figure_weighed import WeighedAsk, weighed
    from rootcollar.kernel.units import Kind

    weight_pct = _which(told) == "--weight-percent"
    not_with(
        "a weighed product", told["tank"] is not None, "--tank", "the weight for one tank: give its volume as --total"
    )
    not_with(
        "a weighed product", told["sheet"] is not None, "--sheet", "no sheet: labels limit percents by volume here"
    )
    if weight_pct:
        pct = share("--weight-percent", told["weight_percent"])
        given["weight-percent"] = told["weight_percent"].strip()
        ask = WeighedAsk(given, wanted.amount, pct.amount, None, carrier, system(wanted))
    else:
        rate = amount("--rate", told["rate"], Kind.MASS_RATE)
        given["rate"] = told["rate"].strip()
        ask = WeighedAsk(given, wanted.amount, None, (rate.amount, _needed(output).amount), carrier, system(wanted))
    answer("figure-mix", weighed, ask, as_json)


def _which(told: Mapping[str, Any]) -> str:
    """Return the one option by which the strength was told."""
    names = ("percent", "ratio", "want_ae", "rate", "weight_percent", "active_percent")
    return one_of({f"--{name.replace('_', '-')}": told[name] for name in names}, _WAYS)


def _weighed_rate(told: Mapping[str, Any]) -> bool:
    """Return whether the rate is a weight of product: `2 oz wt/ac`, but not of acid, which goes by the strength."""
    from rootcollar.kernel.units import Kind, read

    if told["rate"] is None:
        return False
    with naming("--rate"):
        found = read(told["rate"])
    return found.kind is Kind.MASS_RATE and found.of not in ("ae", "ai")


def _needed(output: Quantity | None) -> Quantity:
    if output is None:
        raise bad(
            "--rate without --output", "both: a rate on an area needs what the sprayer puts out, such as 25 gal/ac"
        )
    return output


def _strength(
    told: Mapping[str, Any], given: dict[str, str], output: Quantity | None
) -> tuple[Strength, Quantity | None]:
    """Return the strength that was asked for, and the acid in the product where it was told."""
    from rootcollar.jobs.figure_mix import Strength

    product = None if told["strength"] is None else acid("--strength", told["strength"], given)
    which = _which(told)
    said: str = told[which.strip("-").replace("-", "_")]
    given[which.strip("-")] = said.strip()
    if which == "--percent":
        return Strength(pct=share(which, said).amount), product
    if which == "--ratio":
        return Strength(parts_diluent=_parts(said)), product
    if which == "--rate":
        return _by_rate(said, product, _needed(output)), product
    if product is None:
        raise bad(f"{which} without --strength", "both: what is wanted in the mix, and the acid in the product as sold")
    if which == "--active-percent":
        return Strength(active_pct=(share(which, said).amount, product.amount)), product
    wanted = acid(which, said, given)
    same_form("--strength", product, which, wanted)
    return Strength(acid_g_per_l=(wanted.amount, product.amount)), product


def _by_rate(said: str, product: Quantity | None, output: Quantity) -> Strength:
    """Return the strength of a rate on an area: of product by volume, or of acid from the product's strength."""
    from rootcollar.jobs.figure_mix import Strength
    from rootcollar.kernel.units import Kind, read

    with naming("--rate"):
        found = read(said)
    if found.kind is not Kind.MASS_RATE:
        return Strength(rate_l_per_ha=(amount("--rate", said, Kind.VOLUME_RATE).amount, output.amount))
    if product is None:
        raise bad("a rate of acid without --strength", "both: the acid on an area, and the acid in the product as sold")
    same_form("--strength", product, "--rate", found)
    rate = amount("--rate", said, Kind.MASS_RATE).amount
    return Strength(acid_kg_per_ha=(rate, product.amount, output.amount))


def _limits(told: Mapping[str, Any]) -> Limits:
    """Return the strengths of the named sheet for the method; its weakest only where a weaker mix is forbidden."""
    from rootcollar.mix import Limits

    sheet, method = read_told(told), METHODS.get(told["method"] or "", "")
    if sheet is None or not method:
        return Limits()
    forbidden = sheet.says("less_than_low_forbidden", method)
    return Limits(
        sheet.says("concentration.high", method), sheet.says("concentration.low", method) if forbidden else None
    )


def _parts(said: str) -> float:
    """Return the parts of diluent to one part of product: `1:4`, `1 to 4`, `1 part to 4`."""
    from rootcollar.kernel.errors import UnitError
    from rootcollar.kernel.units import Kind, read

    found = _RATIO.fullmatch(said.strip())
    with naming("--ratio"):
        if found is None:
            raise UnitError(said, "parts of product to parts of diluent, such as 1:4")
        read(f"{found[1]}:{found[2]}", Kind.SHARE)
    return float(found[2]) / float(found[1])
