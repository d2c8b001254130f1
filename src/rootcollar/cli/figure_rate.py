"""The command `figure rate`: the rate of the product in hand for the same acid."""

from __future__ import annotations

from typing import TYPE_CHECKING

import click

from rootcollar.cli.ask import amount, naming
from rootcollar.cli.figure_shared import acid, answer, bad, not_with, same_form
from rootcollar.cli.show import json_option

if TYPE_CHECKING:
    from rootcollar.kernel.units import Quantity

__all__ = ["rate"]


@click.command()
@click.option("--have", metavar="STRENGTH", required=True, help="Acid in the product in hand, such as '4.5 lb ae/gal'.")
@click.option("--want", metavar="STRENGTH", help="Acid in the product the rate is printed for, such as '4 lb ae/gal'.")
@click.option(
    "--rate", "printed", metavar="RATE", required=True, help="'32 fl oz/ac', '2%' or, without --want, '1 lb ae/ac'."
)
@json_option
def rate(have: str, want: str | None, printed: str, as_json: bool) -> None:
    """Work out the rate of the product in hand for the same acid.

    Products of one ingredient come in several strengths; what works is the acid (ae), not the volume.

    \b
    Example: rootcollar figure rate --have "4.5 lb ae/gal" --want "4 lb ae/gal" --rate "32 fl oz/ac"
    """
    from rootcollar.jobs.figure_rate import RateAsk
    from rootcollar.jobs.figure_rate import rate as job
    from rootcollar.kernel.units import Kind

    given: dict[str, str] = {}
    mine = acid("--have", have, given)
    wanted = _rate(printed)
    given["rate"] = wanted.text.strip()
    by_acid = wanted.kind is Kind.MASS_RATE
    not_with("--want", want is not None and by_acid, "a rate of acid", "acid is acid: leave --want out")
    if not by_acid and want is None:
        raise bad("no --want", "the strength of the product the rate is printed for, such as 4 lb ae/gal")
    named = acid("--want", want, given) if want is not None else None
    same_form("--have", mine, "--want" if named else "--rate", named or wanted)
    as_typed = (wanted.amount, "%") if wanted.kind is Kind.SHARE else (wanted.to(wanted.unit), wanted.unit)
    ask = RateAsk(given, mine.amount, named.amount if named else None, *as_typed, mine.of)
    answer("figure-rate", job, ask, as_json)


def _rate(said: str) -> Quantity:
    """Return a rate: a volume per area, a share of the mix, or acid per area."""
    from rootcollar.kernel.errors import UnitError
    from rootcollar.kernel.units import Kind, read

    with naming("--rate"):
        found = read(said)
        if found.kind not in (Kind.VOLUME_RATE, Kind.SHARE, Kind.MASS_RATE):
            raise UnitError(said, "a rate, such as 32 fl oz/ac, 2% or 1 lb ae/ac")
    return amount("--rate", said, found.kind)
