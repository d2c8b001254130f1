"""The command `figure buy`: which containers to buy for a need."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

import click

from rootcollar.cli.ask import amount, naming
from rootcollar.cli.figure_shared import answer, bad, not_with, optional, system, to
from rootcollar.cli.show import json_option

if TYPE_CHECKING:
    from rootcollar.kernel.units import Quantity
    from rootcollar.mix import Container

__all__ = ["buy"]

_BETWEEN = re.compile(r"\s*[,;]\s*|\s+and\s+", re.I)
_CLOSE_COMMA = re.compile(r"[0-9],[0-9]")
_CASE = re.compile(r"[0-9]\s*[x\u00d7*]\s*[0-9]", re.I)
_UNIT = re.compile(r"[a-z][a-z. ]*$", re.I)
_BARE = re.compile(r"[0-9./ -]+")
_COSTS = re.compile(r"(?P<size>.+?)\s*(?:=|:|@|\$|\bat\b|\bfor\b)\s*\$?\s*(?P<price>[0-9]+(?:\.[0-9]+)?)\s*\$?", re.I)


@click.command()
@click.option("--need", metavar="VOLUME", required=True, help="What is wanted, such as '2.3 gal'.")
@click.option("--sizes", metavar="SIZES", help="What the shop has: '1 qt, 1 gal, 2.5 gal'.")
@click.option("--price", "prices", metavar="PRICES", help="What they cost: '1 gal=95, 2.5 gal=210'.")
@click.option("--have", metavar="VOLUME", help="What is at hand and in date, such as '1 qt'.")
@click.option(
    "--kind", type=click.Choice(["liquid", "oil", "dye", "surfactant"]),
    help="Instead of --sizes: those usually sold. [default: liquid, a herbicide]",
)  # fmt: skip
@json_option
def buy(need: str, sizes: str | None, prices: str | None, have: str | None, kind: str | None, as_json: bool) -> None:
    """Work out which containers to buy at the least cost.

    Where not every price is told, the containers that leave least over.

    \b
    Example: rootcollar figure buy --need "2.3 gal" --price "1 gal=95, 2.5 gal=210" --have "1 qt"
    """
    from rootcollar.jobs.figure_buy import BuyAsk
    from rootcollar.jobs.figure_buy import buy as job
    from rootcollar.kernel.units import Kind

    given: dict[str, str] = {}
    wanted = amount("--need", need, Kind.VOLUME)
    given["need"] = need.strip()
    not_with("--kind", kind is not None and sizes is not None, "--sizes", "one of them: --sizes says what the shop has")
    not_with("--kind", kind is not None and prices is not None, "--price", "one of them: --price names the sizes too")
    at_hand = optional("have", have, Kind.VOLUME, given)
    told = {"sizes": sizes, "price": prices, "kind": kind}
    given |= {name: said.strip() for name, said in told.items() if said is not None}
    have_ml, shop = to(at_hand, "mL") or 0.0, _shop(sizes, prices)
    answer("figure-buy", job, BuyAsk(given, wanted.amount, have_ml, shop, kind or "", system(wanted)), as_json)


def _shop(sizes: str | None, prices: str | None) -> tuple[Container, ...]:
    """Return the sizes that were told, with their prices where those were; none where neither was."""
    from rootcollar.mix import Container

    priced = {} if prices is None else _prices(prices)
    found = {key: size for key, (size, _) in priced.items()} if sizes is None else _sizes(sizes)
    strange = [_name(size) for key, (size, _) in priced.items() if key not in found]
    if strange:
        raise bad(f"a price for {', '.join(strange)}", "prices of what is behind --sizes, or --price without --sizes")
    costs = {key: price for key, (_, price) in priced.items()}
    return tuple(Container(_name(size), size.amount, costs.get(key)) for key, size in found.items())


def _name(size: Quantity) -> str:
    from rootcollar.kernel.units import show

    return show(size.to(size.unit), size.unit)


def _volume(option: str, said: str) -> tuple[float, Quantity]:
    """Return a size, and first what tells it from others: its volume to the thousandth of a millilitre."""
    from rootcollar.kernel.units import Kind

    size = amount(option, said, Kind.VOLUME)
    return round(size.amount, 3), size


def _sizes(said: str) -> dict[float, Quantity]:
    """Return the sizes in a list, by volume; a size without a unit has that of the next: `1, 2.5 gal`."""
    from rootcollar.kernel.errors import Ambiguous

    with naming("--sizes"):
        if _CLOSE_COMMA.search(said):
            raise Ambiguous(said, "a space behind the comma between sizes, and no comma within a number")
        if _CASE.search(said):
            raise Ambiguous(said, "for a case of two jugs of 2.5 gal: 2.5 gal if one jug is sold, else 5 gal")
    parts = [part for part in _BETWEEN.split(said.strip()) if part]
    unit, found = "", []
    for part in reversed(parts):
        named = _UNIT.search(part)
        unit = named[0] if named else unit
        found.append(_volume("--sizes", f"{part} {unit}" if _BARE.fullmatch(part) else part))
    if not found:
        raise bad("no size behind --sizes", "sizes with their unit, such as 1 qt, 1 gal, 2.5 gal")
    if len(dict(found)) < len(found):
        raise bad("one size twice behind --sizes", "each size once")
    return dict(found[::-1])


def _prices(said: str) -> dict[float, tuple[Quantity, float]]:
    """Return each size with its price, by its volume."""
    from rootcollar.kernel.errors import UnitError

    found: dict[float, tuple[Quantity, float]] = {}
    for part in [one for one in _BETWEEN.split(said.strip()) if one]:
        pair = _COSTS.fullmatch(part)
        if pair is None:
            with naming("--price"):
                raise UnitError(part, "a size and its price, such as 1 gal=95; no comma within a number")
        key, size = _volume("--price", pair["size"])
        price = float(pair["price"])
        if not price > 0 or key in found:
            raise bad(f"{part!r} behind --price", "a price above 0, once for each size")
        found[key] = size, price
    if not found:
        raise bad("no price behind --price", "sizes and their prices, such as 1 gal=95, 2.5 gal=210")
    return found
