"""What a search covers: track walked, width in which it finds, and the chance to have come upon a plant."""

from __future__ import annotations

from math import exp, log

from rootcollar.kernel.formula import formula

__all__ = ["chance_found", "times_swept", "track_needed_m"]


@formula(
    "track_m * width_m / area_m2",
    gives="",
    source="COOPER",
    track_m=(0, 20000),
    width_m=(1, 40),
    area_m2=(1000, 500_000),
)
def times_swept(track_m: float, width_m: float, area_m2: float) -> float:
    """Return how often the ground was swept over, on average; looks that know nothing of each other add up.

    track_m: walked by all searchers within the ground [m]. width_m: effective width, twice the effective half-width
    of a detection curve, not the distance at which a crew believes to see a plant [m]. area_m2: of the ground [m2].
    """
    return track_m * width_m / area_m2


@formula("100 * (1 - exp(-times_swept))", gives="%", source="COOPER", times_swept=(0, 4))
def chance_found(times_swept: float) -> float:
    """Return the chance that a search came upon a plant that stands there [%], for a search at random (Koopman).

    Very even sweeps do somewhat better. Plants that are hard to see stay hard: a second pass of the same person adds
    less than this says.
    """
    return 100 * (1 - exp(-times_swept))


@formula(
    "-log(1 - wanted_pct / 100) * area_m2 / width_m",
    gives="m",
    source="COOPER",
    wanted_pct=(1, 99),
    area_m2=(1000, 500_000),
    width_m=(1, 40),
)
def track_needed_m(wanted_pct: float, area_m2: float, width_m: float) -> float:
    """Return the track that gives a wanted chance to come upon a plant [m]. wanted_pct: below 100 [%]."""
    return -log(1 - wanted_pct / 100) * area_m2 / width_m
