"""The command `figure stems`: stems on an acre and in all, from plots."""

from __future__ import annotations

import click

from rootcollar.cli.ask import amount
from rootcollar.cli.ask_plots import counts as read_counts
from rootcollar.cli.figure_shared import answer, optional, system, to
from rootcollar.cli.show import json_option

__all__ = ["stems"]


@click.command()
@click.option("--counts", metavar="COUNTS", required=True, help="Stems on each plot, empty plots too: '3 0 5 2 7'.")
@click.option("--plot", metavar="AREA", required=True, help="Of one plot, on the level: '1/20 ac' or '100 m2'.")
@click.option("--ground", metavar="AREA", help="All the ground, for the stems in all: '12 ac'.")
@json_option
def stems(counts: str, plot: str, ground: str | None, as_json: bool) -> None:
    """Work out stems on an acre and in all from plots.

    For plots of one size laid at random. None found is told as the most that may stand.

    \b
    Example: rootcollar figure stems --counts "3 0 5 2 7 1 0 4" --plot "1/20 ac" --ground "12 ac"
    """
    from rootcollar.jobs.figure_stems import StemsAsk
    from rootcollar.jobs.figure_stems import stems as job
    from rootcollar.kernel.units import Kind

    given = {"counts": counts.strip(), "plot": plot.strip()}
    one, whole = amount("--plot", plot, Kind.AREA), optional("ground", ground, Kind.AREA, given)
    ask = StemsAsk(given, read_counts("--counts", counts), one.to("m2"), to(whole, "m2"), system(one, whole))
    answer("figure-stems", job, ask, as_json)
