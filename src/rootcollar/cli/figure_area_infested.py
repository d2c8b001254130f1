"""The command `figure area-infested`: gross, infested and canopy area of a patch."""

from __future__ import annotations

import click

from rootcollar.cli.ask import amount, share
from rootcollar.cli.figure_shared import answer, not_with, system
from rootcollar.cli.show import json_option

__all__ = ["area_infested"]


@click.command()
@click.option("--gross", metavar="AREA", required=True, help="Within the outline of the patch: '12 ac'.")
@click.option("--infested", metavar="PERCENT", help="Of it within the edge of the canopies. [default: 100%]")
@click.option("--cover", metavar="PERCENT", help="Of the infested ground beneath canopy: '25%'.")
@click.option("--gone", type=click.Choice(["yes"]), help="A known patch that was visited again and is gone.")
@json_option
def area_infested(gross: str, infested: str | None, cover: str | None, gone: str | None, as_json: bool) -> None:
    """Work out gross, infested and canopy area of a patch.

    Three areas that are often taken for each other, of one species.

    \b
    Example: rootcollar figure area-infested --gross "12 ac" --infested 40% --cover 25%
    """
    from rootcollar.jobs.figure_area_infested import AreaInfestedAsk
    from rootcollar.jobs.figure_area_infested import area_infested as job
    from rootcollar.kernel.units import Kind
    from rootcollar.survey.areas import Patch

    not_with(
        "--gone", gone is not None and (infested or cover) is not None, "--infested or --cover", "alone: none is left"
    )
    said = {"gross": gross, "infested": infested, "cover": cover, "gone": gone}
    given = {name: text.strip() for name, text in said.items() if text is not None}
    area = amount("--gross", gross, Kind.AREA)
    part = share("--infested", infested).amount if infested is not None else 0.0 if gone else 100.0
    canopy = share("--cover", cover).amount if cover is not None else None
    patch = Patch(area.to("m2"), part, canopy, gone is not None)
    answer("figure-area-infested", job, AreaInfestedAsk(given, patch, system(area)), as_json)
