"""The group `figure`: which quick questions there are, each imported only when it is asked."""

from __future__ import annotations

from collections.abc import Mapping

import click

from rootcollar.cli.main import LazyGroup, Listed

__all__ = ["FIGURES", "figure"]

FIGURES: Mapping[str, Listed] = {
    "mix": Listed("rootcollar.cli.figure_mix:mix", "Work out how much product makes a mix."),
    "dose": Listed("rootcollar.cli.figure_dose:dose", "Work out how much mix stems of a size take."),
    "loads": Listed("rootcollar.cli.figure_loads:loads", "Work out loads and the product in each."),
    "topup": Listed("rootcollar.cli.figure_topup:topup", "Work out what to add to what is left in a tank."),
    "carry": Listed("rootcollar.cli.figure_carry:carry", "Work out what a load weighs and how much can be carried."),
    "calibration": Listed(
        "rootcollar.cli.figure_calibration:calibration", "Work out what a sprayer and the person with it put out."
    ),
    "area": Listed("rootcollar.cli.figure_area:area", "Work out the area of a plain shape, and of a slope."),
    "rate": Listed("rootcollar.cli.figure_rate:rate", "Work out the rate of the product in hand for the same acid."),
    "strength": Listed(
        "rootcollar.cli.figure_strength:strength", "Work out whether percent, density and strength fit."
    ),
    "buy": Listed("rootcollar.cli.figure_buy:buy", "Work out which containers to buy at the least cost."),
    "water": Listed("rootcollar.cli.figure_water:water", "Work out how hard water is and what offsets it."),
    "rinse": Listed("rootcollar.cli.figure_rinse:rinse", "Work out the water for rinsing a jug or a sprayer."),
    "signal-word": Listed(
        "rootcollar.cli.figure_signal_word:signal_word", "Work out the signal word of toxicity categories."
    ),
    "sun": Listed("rootcollar.cli.figure_weather:sun", "Work out sunrise, sunset and the still hours around them."),
    "delta-t": Listed("rootcollar.cli.figure_weather:delta_t", "Work out how fast a drop dries in this air."),
    "degree-days": Listed(
        "rootcollar.cli.figure_weather:degree_days", "Work out the warmth of a day above a threshold."
    ),
    "drift-fall": Listed(
        "rootcollar.cli.figure_weather:drift_fall", "Work out how long a drop falls and how far wind takes it."
    ),
    "glove": Listed("rootcollar.cli.figure_glove:glove", "Work out which gloves hold against a mix."),
    "plot-radius": Listed("rootcollar.cli.figure_plot_radius:plot_radius", "Work out how far a round plot reaches."),
    "plots-needed": Listed("rootcollar.cli.figure_plots_needed:plots_needed", "Work out how many plots to count."),
    "stems": Listed("rootcollar.cli.figure_stems:stems", "Work out stems on an acre and in all from plots."),
    "clean-visits": Listed(
        "rootcollar.cli.figure_clean_visits:clean_visits",
        "Work out how many clean visits before ground is called clear.",
    ),
    "area-infested": Listed(
        "rootcollar.cli.figure_area_infested:area_infested", "Work out gross, infested and canopy area of a patch."
    ),
}


@click.group(cls=LazyGroup, listed=FIGURES)
def figure() -> None:
    """Answer a quick question of the shed, with its working.

    Each answers one question and shows how, from which sources, and what it had to assume.

    \b
    Example: rootcollar figure rate --have "4.5 lb ae/gal" --want "4 lb ae/gal" --rate "32 fl oz/ac"
    """
