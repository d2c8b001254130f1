"""The group `figure`: which quick questions there are, each imported only when it is asked."""

from __future__ import annotations

from collections.abc import Mapping

import click

from rootcollar.cli.main import LazyGroup, Listed

__all__ = ["FIGURES", "figure"]

FIGURES: Mapping[str, Listed] = {
    "mix": Listed("rootcollar.cli.figure_mix:mix", "Work out how much product makes a mix."),
    "dose": Listed("rootcollar.cli.figure_dose:dose", "Work out how much mix stems of a size take."),
    "rate": Listed("rootcollar.cli.figure_rate:rate", "Work out the rate of the product in hand for the same acid."),
}


@click.group(cls=LazyGroup, listed=FIGURES)
def figure() -> None:
    """Answer a quick question of the shed, with its working.

    Each answers one question and shows how, from which sources, and what it had to assume.

    \b
    Example: rootcollar figure rate --have "4.5 lb ae/gal" --want "4 lb ae/gal" --rate "32 fl oz/ac"
    """
