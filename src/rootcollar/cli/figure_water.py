"""The command `figure water`: how hard it is, and the ammonium sulphate that offsets that."""

from __future__ import annotations

import re

import click

from rootcollar.cli.ask import naming
from rootcollar.cli.figure_shared import answer, bad, optional, system, to
from rootcollar.cli.show import json_option

__all__ = ["water"]

_AS = re.compile(r"\s*(?:as|of|in)?\s*(?:caco3|calcium carbonate)\s*$", re.I)


@click.command()
@click.option("--hardness", metavar="FIGURE", help="As CaCO3: '250 ppm', '250 mg/L' or '15 grains/gal'.")
@click.option("--calcium", metavar="FIGURE", help="Instead of --hardness, from a water report: '60 ppm'.")
@click.option("--magnesium", metavar="FIGURE", help="Instead of --hardness: '25 mg/L'.")
@click.option("--sodium", metavar="FIGURE", help="From a water report: '30 ppm'.")
@click.option("--potassium", metavar="FIGURE", help="From a water report: '5 ppm'.")
@click.option("--iron", metavar="FIGURE", help="From a water report: '0.3 ppm'.")
@click.option("--tank", metavar="VOLUME", help="Water in a tank, such as '4 gal': gives the weight for it.")
@json_option
def water(as_json: bool, **told: str | None) -> None:
    """Work out how hard water is and what offsets it.

    Hard water weakens glyphosate and weak acids like it. Ammonium sulphate goes in only where the label allows it.

    \b
    Example: rootcollar figure water --hardness "250 ppm" --tank "4 gal"
    """
    from rootcollar.jobs.figure_water import IONS, WaterAsk
    from rootcollar.jobs.figure_water import water as job
    from rootcollar.kernel.units import Kind

    given = {name: said.strip() for name, said in told.items() if said is not None and name != "tank"}
    if not given:
        raise bad("no figure of the water", "--hardness, such as '250 ppm', or --calcium and --magnesium from a report")
    hard = [f"--{name}" for name in ("calcium", "magnesium") if told[name] is not None]
    if told["hardness"] is not None and hard:
        raise bad(f"--hardness with {' and '.join(hard)}", "one of them: hardness is calcium and magnesium together")
    ions = {name: _ppm(f"--{name}", said) for name in IONS if (said := told[name]) is not None}
    hardness = None if told["hardness"] is None else _ppm("--hardness", told["hardness"])
    tank = optional("tank", told["tank"], Kind.VOLUME, given)
    answer("figure-water", job, WaterAsk(given, ions, hardness, to(tank, "L"), system(tank)), as_json)


def _ppm(option: str, said: str) -> float:
    """Return what a report says of a water [ppm, the same as mg/L]; grains are those in a gallon; 0 is a figure too."""
    from rootcollar.kernel.errors import UnitError
    from rootcollar.kernel.units import Kind, read

    wanted = "250 ppm, 250 mg/L or 15 grains/gal" if option == "--hardness" else "60 ppm or 60 mg/L"
    bare = _AS.sub("", said)
    with naming(option):
        try:
            found = read(bare)
        except UnitError as error:
            if "0 or more" in str(error):
                raise
            raise UnitError(said, f"a figure with its unit, such as {wanted}") from None
        if found.kind is Kind.MASS and found.unit == "grain":
            found = read(f"{bare}/gal")
        if found.kind is not Kind.STRENGTH or found.of:
            raise UnitError(said, f"a figure with its unit, such as {wanted}")
    return found.to("ppm")
