"""The command `figure plots-needed`: how many plots to count."""

from __future__ import annotations

import click

from rootcollar.cli.ask import one_of
from rootcollar.cli.ask_plots import between, counts
from rootcollar.cli.figure_shared import answer, not_with, optional, system, to
from rootcollar.cli.show import json_option

__all__ = ["plots_needed"]

_MOST_PCT = 1000.0  # ours: plots that differ by more than ten times their mean are a slip of typing


@click.command()
@click.option("--within", metavar="PERCENT", required=True, help="How close to the truth: '20%' of the mean.")
@click.option("--spread", metavar="PERCENT", help="How much plots differ: standard deviation over mean, '80%'.")
@click.option(
    "--counts", "first", metavar="COUNTS", help="Instead of --spread, stems on plots of a first walk: '3 0 5 2'."
)
@click.option("--sure", metavar="PERCENT", help="How sure. [default: 95%]")
@click.option("--plot", metavar="AREA", help="Of one plot: '1/20 ac'; with --ground.")
@click.option("--ground", metavar="AREA", help="All the ground: '12 ac'; with --plot.")
@json_option
def plots_needed(as_json: bool, **told: str | None) -> None:
    """Work out how many plots to count.

    More where plots differ more. Half as far from the truth takes about four times as many.

    \b
    Example: rootcollar figure plots-needed --spread 80% --within 20% --plot "1/20 ac" --ground "40 ac"
    """
    from rootcollar.jobs.figure_plots_needed import PlotsNeededAsk
    from rootcollar.jobs.figure_plots_needed import plots_needed as job
    from rootcollar.kernel.units import Kind
    from rootcollar.survey.design import USUALLY_SURE_PCT

    one_of({"--spread": told["spread"], "--counts": told["first"]}, "one of them: --spread 80%, or --counts '3 0 5 2'")
    not_with(
        "--plot", (told["plot"] is None) != (told["ground"] is None), "no --ground, or that alone", "both or neither"
    )
    given = {name.replace("first", "counts"): said.strip() for name, said in told.items() if said is not None}
    within = between("--within", told["within"] or "")
    spread = _wide(told["spread"]) if told["spread"] is not None else None
    sure = between("--sure", told["sure"]) if told["sure"] is not None else USUALLY_SURE_PCT
    seen = counts("--counts", told["first"]) if told["first"] is not None else ()
    plot, ground = (optional(name, told[name], Kind.AREA, given) for name in ("plot", "ground"))
    _fits(to(plot, "m2"), to(ground, "m2"))
    ask = PlotsNeededAsk(given, within, sure, spread, seen, to(plot, "m2"), to(ground, "m2"), system(plot, ground))
    answer("figure-plots-needed", job, ask, as_json)


def _wide(said: str) -> float:
    """Return how much plots differ [%], which may be more than 100, as a quantity of a mix may not."""
    from rootcollar.cli.ask import naming
    from rootcollar.kernel.errors import UnitError

    bare = said.strip().removesuffix("%").removesuffix("percent").strip()
    with naming("--spread"):
        try:
            found = float(bare)
        except ValueError:
            raise UnitError(said, "a percent, such as 80%") from None
        if not 0 < found <= _MOST_PCT:
            raise UnitError(said, f"above 0, at most {_MOST_PCT:g} %")
    return found


def _fits(plot_m2: float | None, ground_m2: float | None) -> None:
    not_with(
        "--plot", plot_m2 is not None and ground_m2 is not None and plot_m2 > ground_m2, "less ground than one plot",
        "a plot that fits on the ground",
    )  # fmt: skip
