"""The command `figure dose`: how much mix stems of a size take."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, NamedTuple

import click

from rootcollar.cli.ask import count, share, sides, size
from rootcollar.cli.figure_shared import (
    CARRIERS,
    METHODS,
    answer,
    bad,
    not_with,
    optional,
    read_told,
    sheet_option,
    system,
    to,
)
from rootcollar.cli.show import json_option

if TYPE_CHECKING:
    from rootcollar.kernel.units import Quantity

__all__ = ["dose"]


@click.command()
@click.argument("method", type=click.Choice([*METHODS, "drill"]))
@click.option("--diameter", metavar="SIZE", help="Of the stem or stump: '2 in', or a class '1-2 in'.")
@click.option("--count", "stems", metavar="N", default="1", show_default=True, help="How many stems.")
@click.option("--strength", metavar="PERCENT", help="Product in the finished mix. [default: what the sources give]")
@click.option("--product", metavar="NAME", help="A formulation that rootcollar facts lists. [default: a plain one]")
@click.option("--carrier", type=click.Choice(["water", "oil", "none"]), help="What the product is thinned with.")
@click.option("--crown", metavar="WIDTH", help="Width of the leaves to be wetted, such as '4 ft' (foliar).")
@click.option("--band", metavar="HEIGHT", help="Height of the band on the bark, such as '12 in' (basal-bark).")
@click.option(
    "--spacing", metavar="LENGTH", help="Stem diameter for each cut (hack-squirt), or bark between holes (drill)."
)
@click.option("--each", metavar="VOLUME", help="The label's most mix in one cut or hole, such as '1 mL'.")
@click.option("--hole", metavar="'WIDTH x DEPTH'", help="A drilled hole, such as '3/8 in x 2 in' (drill).")
@click.option("--bark", type=click.Choice(["smooth", "rough", "thick"]), help="What the bark is like (basal-bark).")
@sheet_option
@json_option
def dose(method: str, as_json: bool, **told: Any) -> None:
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
    given |= {name: said for name in ("product", "carrier", "bark", "hole") if (said := told[name])}
    if method == "drill":
        _drilled(told, given, stems, _Typed(ends, strength, lengths["spacing"], each), as_json)
        return
    not_with("--hole", told["hole"] is not None, method, "--hole with drill only")
    ask = DoseAsk(
        given, METHODS[method], stems, ends and (ends[0].to("cm"), ends[1].to("cm")),
        strength_pct=to(strength, "%"), product=told["product"], carrier=CARRIERS.get(told["carrier"]),
        crown_m=to(lengths["crown"], "m"), band_cm=to(lengths["band"], "cm"),
        spacing_cm=to(lengths["spacing"], "cm"), each_ml=to(each, "mL"), bark=told["bark"], sheet=read_told(told),
        system=system(*(ends or ()), *lengths.values()),
    )  # fmt: skip
    answer("figure-dose", job, ask, as_json, told)


class _Typed(NamedTuple):
    """What was read of the options that drilling shares with the other ways."""

    ends: tuple[Quantity, Quantity] | None
    strength: Quantity | None
    spacing: Quantity | None
    each: Quantity | None


def _drilled(told: Mapping[str, Any], given: dict[str, str], stems: int, typed: _Typed, as_json: bool) -> None:
    from rootcollar.jobs.figure_drill import DrillAsk, drill

    if typed.ends is None:
        raise bad("no --diameter", "the stem's diameter where it is drilled, such as 6 in")
    if typed.each is None or told["hole"] is None:
        raise bad(
            "no --each or no --hole", "both: the label's mix in one hole, such as 1 mL, and the hole, 3/8 in x 2 in"
        )
    wide, deep = sides("--hole", told["hole"])
    ask = DrillAsk(
        given, typed.ends[1].to("cm"), (wide.to("cm"), deep.to("cm")), typed.each.to("mL"), stems,
        to(typed.spacing, "cm"), to(typed.strength, "%") or 100.0, system(*typed.ends),
    )  # fmt: skip
    answer("figure-dose", drill, ask, as_json, told)
