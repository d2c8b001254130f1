"""The command `figure plot-radius`: how far a round plot reaches."""

from __future__ import annotations

import click

from rootcollar.cli.ask import amount, count, one_of
from rootcollar.cli.figure_shared import answer, system, to
from rootcollar.cli.show import json_option

__all__ = ["plot_radius"]


@click.command()
@click.option("--plot", metavar="AREA", help="Its area on the level: '1/20 ac' or '100 m2'.")
@click.option("--per-acre", metavar="STEMS", help="Instead of --plot, stems guessed on an acre: '200'.")
@click.option("--slope", "leaning", metavar="SLOPE", help="Of the ground: '30%', a rise in a hundred, or '17 deg'.")
@json_option
def plot_radius(plot: str | None, per_acre: str | None, leaning: str | None, as_json: bool) -> None:
    """Work out how far a round plot reaches.

    On a slope it is the radius for a tape laid on the ground. With --per-acre, a usual plot with about ten stems.

    \b
    Example: rootcollar figure plot-radius --plot "1/20 ac" --slope 30%
    """
    from rootcollar.cli.figure_area import slope
    from rootcollar.jobs.figure_plot_radius import PlotRadiusAsk
    from rootcollar.jobs.figure_plot_radius import plot_radius as job
    from rootcollar.kernel.units import Kind

    one_of({"--plot": plot, "--per-acre": per_acre}, "one of them: --plot '1/20 ac', or --per-acre 200")
    given: dict[str, str] = {}
    area = stems = None
    if plot is not None:
        area, given["plot"] = amount("--plot", plot, Kind.AREA), plot.strip()
    if per_acre is not None:
        stems, given["per-acre"] = count("--per-acre", per_acre), per_acre.strip()
    pct, degrees = slope(leaning, given)
    ask = PlotRadiusAsk(given, to(area, "m2"), stems, pct, degrees, system(area))
    answer("figure-plot-radius", job, ask, as_json)
