"""The command `figure clean-visits`: how many before ground is called clear."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

import click

from rootcollar.cli.ask import amount, count, naming, one_of
from rootcollar.cli.ask_plots import between
from rootcollar.cli.figure_shared import answer, bad
from rootcollar.cli.show import json_option

if TYPE_CHECKING:
    from rootcollar.jobs.figure_clean_visits import Swept
    from rootcollar.kernel.units import Quantity

__all__ = ["clean_visits"]

_YEARS = re.compile(r"([0-9]{1,3}(?:\.[0-9]+)?)\s*(?:years?|yrs?)?$", re.I)
_BEFORE_PCT = 50.0  # ours: as likely as not, where nobody says
_LEFT_PCT = 5.0  # ours: one in twenty is borne, where nobody says


@click.command()
@click.option("--found", metavar="PERCENT", help="Chance that a visit finds what stands: '60%'.")
@click.option(
    "--track", metavar="LENGTH", help="Instead of --found, walked on a visit: '2 mi'; with --width, --ground."
)
@click.option("--width", metavar="LENGTH", help="Effective width of the search, from a calibration walk: '30 ft'.")
@click.option("--ground", metavar="AREA", help="The ground searched: '10 ac'.")
@click.option("--species", metavar="NAME", help="Whose seed is in the ground: 'common buckthorn'.")
@click.option("--seed-years", metavar="YEARS", help="Instead of --species, how long its seed lives: '6'.")
@click.option("--before", metavar="PERCENT", help="Chance, before, that something is left. [default: 50%]")
@click.option("--left", metavar="PERCENT", help="Chance of something left that is borne. [default: 5%]")
@click.option("--visits-a-year", metavar="COUNT", help="Visits in season. [default: 1]")
@json_option
def clean_visits(as_json: bool, **told: str | None) -> None:
    """Work out how many clean visits before ground is called clear.

    The longer of two rules: looks that found nothing, and the life of seed in the ground.

    \b
    Example: rootcollar figure clean-visits --found 60% --species "common buckthorn"
    """
    from rootcollar.cli.figure_shared import system
    from rootcollar.jobs.figure_clean_visits import CleanVisitsAsk
    from rootcollar.jobs.figure_clean_visits import clean_visits as job

    given = {name.replace("_", "-"): said.strip() for name, said in told.items() if said is not None}
    one_of({"--found": told["found"], "--track": told["track"]}, "--found 60%, or --track with --width and --ground")
    seed = {"--species": told["species"], "--seed-years": told["seed_years"]}
    one_of(seed, "one of them: how long seed lives in the ground is not to be left out")
    found = between("--found", told["found"]) if told["found"] is not None else None
    swept, typed = _swept(told)
    ask = CleanVisitsAsk(
        given,
        between("--before", told["before"]) if told["before"] is not None else _BEFORE_PCT,
        between("--left", told["left"]) if told["left"] is not None else _LEFT_PCT,
        count("--visits-a-year", told["visits_a_year"], "visits") if told["visits_a_year"] is not None else 1,
        found,
        swept,
        _years(told["seed_years"]),
        (told["species"] or "").strip(),
        system(*typed),
    )
    answer("figure-clean-visits", job, ask, as_json)


def _swept(told: dict[str, str | None]) -> tuple[Swept | None, tuple[Quantity, ...]]:
    """Return how the ground was searched, and the quantities as typed; all three, or none."""
    from rootcollar.jobs.figure_clean_visits import Swept
    from rootcollar.kernel.units import Kind

    kinds = {"track": Kind.LENGTH, "width": Kind.LENGTH, "ground": Kind.AREA}
    said = {name: text for name in kinds if (text := told[name]) is not None}
    if not said:
        return None, ()
    if len(said) < len(kinds):
        missing = " and ".join(f"--{name}" for name in kinds if name not in said)
        raise bad(f"no {missing}", "--track, --width and --ground together, or --found alone")
    track, width, ground = typed = tuple(amount(f"--{name}", text, kinds[name]) for name, text in said.items())
    return Swept(track.to("m"), width.to("m"), ground.to("m2")), typed


def _years(said: str | None) -> float | None:
    from rootcollar.kernel.errors import UnitError

    if said is None:
        return None
    found = _YEARS.match(said.strip())
    with naming("--seed-years"):
        if not found:
            raise UnitError(said, "years, such as 6; 0 where seed does not live over winter")
    return float(found[1])
