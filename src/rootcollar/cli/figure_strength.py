"""The command `figure strength`: do percent, density and strength of a label fit each other?"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

import click

from rootcollar.cli.ask import amount, naming, share
from rootcollar.cli.figure_shared import acid, answer, bad, to
from rootcollar.cli.show import json_option

if TYPE_CHECKING:
    from rootcollar.kernel.units import Quantity

__all__ = ["strength"]

_FORM = re.compile(r"\s*(?:of\s+)?(a\.?e\.?|a\.?i\.?)\s*$", re.I)
_BY_WEIGHT = re.compile(r"\s*(?:w/w|wt|by weight|by wt)\.?\s*$", re.I)
_GRAVITY = re.compile(r"\s*(?:s\.?g\.?|sp\.?\s?gr\.?|specific gravity)\s*[:=]?\s*([0-9.]+)\s*$", re.I)


@click.command()
@click.option(
    "--percent", metavar="PERCENT", required=True, help="By weight, as the ingredient list gives it: 41, or '31% ae'."
)
@click.option("--density", metavar="DENSITY", help="Of the product: '9.76 lb/gal', '1.17 g/mL', 'SG 1.17'.")
@click.option("--says", metavar="STRENGTH", help="What the label says, or was typed: '4 lb ai/gal', '3 lb ae/gal'.")
@click.option("--form", metavar="NAME", help="Salt or ester, to come from ai to ae: glyphosate-ipa, triclopyr-bee.")
@json_option
def strength(as_json: bool, **told: str | None) -> None:
    """Work out whether percent, density and strength fit.

    A percent by weight and a density make a strength; a slip in one of the three shows in the other two. Leaves with 1
    where they do not fit.

    \b
    Example: rootcollar figure strength --percent 41 --density "9.76 lb/gal" --says "4 lb ai/gal"
    """
    from rootcollar.jobs.figure_strength import StrengthAsk
    from rootcollar.jobs.figure_strength import strength as job

    if told["density"] is None and told["says"] is None:
        raise bad("only a percent", "--density of the product, --says for the strength that was typed, or both")
    given: dict[str, str] = {}
    percent, percent_of = _percent(told["percent"] or "")
    given["percent"] = (told["percent"] or "").strip()
    density = None if told["density"] is None else _density(told["density"])
    if density is not None:
        given["density"] = f"{(told['density'] or '').strip()} = {density.to('g/mL'):.6g} g/mL"
    said = None if told["says"] is None else acid("--says", told["says"], given)
    if told["form"] is not None:
        given["form"] = told["form"].strip()
    _same(percent_of, said, told["form"])
    ask = StrengthAsk(
        given, percent, percent_of or "ai",
        to(density, "g/mL"), to(said, "g/L"), said.of if said else "", told["form"],
    )  # fmt: skip
    answer("figure-strength", job, ask, as_json)


def _percent(said: str) -> tuple[float, str]:
    """Return a percent by weight, and of what: "ai", "ae", or "" where it was not said."""
    form = _FORM.search(said)
    bare = _BY_WEIGHT.sub("", said[: form.start()] if form else said)
    return share("--percent", bare).amount, form[1].replace(".", "").lower() if form else ""


def _density(said: str) -> Quantity:
    from rootcollar.kernel.errors import UnitError
    from rootcollar.kernel.units import Kind

    gravity = _GRAVITY.match(said)
    try:
        found = amount("--density", f"{gravity[1]} g/mL" if gravity else said, Kind.STRENGTH)
    except UnitError as error:
        if "more than 0" in str(error) or "0 or more" in str(error):
            raise
        with naming("--density"):
            raise UnitError(
                said, "the weight of the product by volume, such as 9.76 lb/gal, 1.17 g/mL or SG 1.17"
            ) from None
    with naming("--density"):
        if found.of:
            raise UnitError(
                said, f"the weight of the whole product, such as 9.76 lb/gal; lb {found.of}/gal is its strength"
            )
    return found


def _same(percent_of: str, said: Quantity | None, form: str | None) -> None:
    """Ask where percent and strength count different things, or may do."""
    if said is None or percent_of == said.of:
        return
    if percent_of == "ae":
        raise bad("a percent of ae with a strength in ai", "both in ae or both in ai, as the label prints them")
    if said.of == "ae" and form is None:
        raise bad(
            "a strength in ae and no --form",
            "the salt or ester, such as --form glyphosate-ipa; or --percent '31% ae' where that percent is of the acid",
        )
