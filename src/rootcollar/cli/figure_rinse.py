"""The command `figure rinse`: water for a jug or a sprayer, where it goes, what stays behind."""

from __future__ import annotations

import re

import click

from rootcollar.cli.ask import amount, count, one_of
from rootcollar.cli.figure_shared import answer, not_with, optional, system, to
from rootcollar.cli.show import json_option

__all__ = ["rinse"]

_TIMES = re.compile(r"\s*(?:x|times|rinses)\s*$", re.I)


@click.command()
@click.option("--jug", metavar="VOLUME", help="What the empty jug holds, such as '2.5 gal'.")
@click.option("--sprayer", metavar="VOLUME", help="Instead of --jug: what the sprayer's tank holds, such as '4 gal'.")
@click.option(
    "--kind", type=click.Choice(["shake", "large", "pressure"]), help="How the jug is rinsed. [default: by its size]"
)
@click.option("--times", metavar="N", help="How many rinses. [default: 3, as the rule has it]")
@click.option("--left", metavar="VOLUME", help="Liquid that stays in when it is drained, such as '4 fl oz'.")
@click.option(
    "--tank", metavar="VOLUME", help="Water that the mix in the spray tank takes: gives what is still to add."
)
@json_option
def rinse(as_json: bool, **told: str | None) -> None:
    """Work out the water for rinsing a jug or a sprayer.

    The rinsate of a jug goes into the tank and is a part of its water; a sprayer is flushed out onto a labelled site.

    \b
    Example: rootcollar figure rinse --jug "2.5 gal" --tank "20 gal"
    """
    from rootcollar.jobs.figure_rinse import Kind as How
    from rootcollar.jobs.figure_rinse import RinseAsk
    from rootcollar.jobs.figure_rinse import rinse as job
    from rootcollar.kernel.units import Kind

    given: dict[str, str] = {}
    which = one_of(
        {"--jug": told["jug"], "--sprayer": told["sprayer"]}, "one of them: --jug '2.5 gal', or --sprayer '4 gal'"
    )
    flushed = which == "--sprayer"
    for option, what in (
        ("kind", "a sprayer is flushed: leave --kind out"),
        ("tank", "a flush is sprayed out: leave it out"),
    ):
        not_with("--sprayer", flushed and told[option] is not None, f"--{option}", what)
    container = amount(which, told["jug"] or told["sprayer"] or "", Kind.VOLUME)
    given[which.strip("-")] = container.text.strip()
    given |= {name: said.strip() for name in ("kind", "times") if (said := told[name])}
    times = None if told["times"] is None else count("--times", _TIMES.sub("", told["times"]), "rinses")
    left = optional("left", told["left"], Kind.VOLUME, given)
    tank = optional("tank", told["tank"], Kind.VOLUME, given)
    hows: dict[str | None, How] = {"shake": "shake", "large": "large", "pressure": "pressure"}
    ask = RinseAsk(
        given, container.to("mL"), "sprayer" if flushed else hows.get(told["kind"]), times, to(left, "mL"),
        to(tank, "mL"), system(container),
    )  # fmt: skip
    answer("figure-rinse", job, ask, as_json)
