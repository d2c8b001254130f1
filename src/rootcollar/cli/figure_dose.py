"""The command `figure dose`: how much mix stems of a size take."""

from __future__ import annotations

import click

from rootcollar.cli.ask import count, share, size
from rootcollar.cli.figure_shared import CARRIERS, answer, optional, system, to
from rootcollar.cli.show import json_option

__all__ = ["dose"]

_METHODS = {
    "basal-bark": "basal_bark", "hack-squirt": "hack_squirt", "cut-stump": "cut_stump", "foliar": "foliar",
    "vine": "vine_cut",
}  # fmt: skip


@click.command()
@click.argument("method", type=click.Choice(list(_METHODS)))
@click.option("--diameter", metavar="SIZE", help="Of the stem or stump: '2 in', or a class '1-2 in'.")
@click.option("--count", "stems", metavar="N", default="1", show_default=True, help="How many stems.")
@click.option("--strength", metavar="PERCENT", help="Product in the finished mix. [default: what the sources give]")
@click.option("--product", metavar="NAME", help="A formulation that rootcollar facts lists. [default: a plain one]")
@click.option("--carrier", type=click.Choice(["water", "oil", "none"]), help="What the product is thinned with.")
@click.option("--crown", metavar="WIDTH", help="Width of the leaves to be wetted, such as '4 ft' (foliar).")
@click.option("--band", metavar="HEIGHT", help="Height of the band on the bark, such as '12 in' (basal-bark).")
@click.option("--spacing", metavar="LENGTH", help="Stem diameter for each cut, such as '1 in' (hack-squirt).")
@click.option("--each", metavar="VOLUME", help="The label's most mix in one cut, such as '1 mL' (hack-squirt).")
@json_option
def dose(method: str, as_json: bool, **told: str | None) -> None:
    """Work out how much mix stems of a size take.

    The answer has a likely range and names the coverage it rests on; a proving batch of your own replaces it.

    \b
    Example: rootcollar figure dose basal-bark --diameter "2 in" --count 120
    """
    from rootcollar.jobs.figure_dose import DoseAsk
    from rootcollar.jobs.figure_dose import dose as job
    from rootcollar.kernel.units import Kind

    given: dict[str, str] = {}
    stems = count("--count", told["stems"] or "")
    given["count"] = str(stems)
    ends = None if told["diameter"] is None else size("--diameter", told["diameter"])
    if told["diameter"] is not None:
        given["diameter"] = told["diameter"].strip()
    strength = None if told["strength"] is None else share("--strength", told["strength"])
    if strength is not None:
        given["strength"] = strength.text.strip()
    lengths = {option: optional(option, told[option], Kind.LENGTH, given) for option in ("crown", "band", "spacing")}
    each = optional("each", told["each"], Kind.VOLUME, given)
    given |= {name: said for name in ("product", "carrier") if (said := told[name])}
    ask = DoseAsk(
        given, _METHODS[method], stems, ends and (ends[0].to("cm"), ends[1].to("cm")),
        strength_pct=to(strength, "%"), product=told["product"], carrier=CARRIERS.get(told["carrier"]),
        crown_m=to(lengths["crown"], "m"), band_cm=to(lengths["band"], "cm"),
        spacing_cm=to(lengths["spacing"], "cm"), each_ml=to(each, "mL"),
        system=system(*(ends or ()), *lengths.values()),
    )  # fmt: skip
    answer("figure-dose", job, ask, as_json)
