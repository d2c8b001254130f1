"""Calibration: what a sprayer and the person with it put on the ground, from a catch, a walk, plants or a batch."""

from __future__ import annotations

from collections.abc import Sequence

from rootcollar.kernel.formula import formula

__all__ = [
    "above_new_pct", "course_m", "flow_ml_per_s", "in_time_ml", "mean_of", "mean_run_s", "moving_l_per_ha",
    "off_mean_pct", "on_area_mix_ml", "on_plants_ml", "output_l_per_ha", "per_plant_ml", "speed_m_per_s",
    "tank_area_m2", "tank_s", "treated_cm2",
]  # fmt: skip


@formula("10 * volume_ml / area_m2", gives="L/ha", source="NCSU", volume_ml=(100, 10000), area_m2=(10, 5000))
def output_l_per_ha(volume_ml: float, area_m2: float) -> float:
    """Return what was put on an area [L/ha]: on 1/128 acre the fluid ounces are gallons an acre [NCSU, UFAL].

    volume_ml: caught in the time the area takes, or used on it [mL]. area_m2: [m2].
    """
    return 10 * volume_ml / area_m2


@formula("volume_ml / seconds", gives="mL/s", source="ALBW", volume_ml=(50, 10000), seconds=(5, 300))
def flow_ml_per_s(volume_ml: float, seconds: float) -> float:
    """Return the flow of a timed catch [mL/s] [ALBW, MESA]. volume_ml: caught [mL]. seconds: of the catch [s]."""
    return volume_ml / seconds


@formula("flow_ml_per_s * seconds", gives="mL", source="arithmetic", flow_ml_per_s=(1, 300), seconds=(5, 300))
def in_time_ml(flow_ml_per_s: float, seconds: float) -> float:
    """Return what flows in a time [mL], when the catch took other seconds than the plot. flow_ml_per_s: [mL/s]."""
    return flow_ml_per_s * seconds


@formula(
    "10 * flow_ml_per_s / (speed_m_per_s * swath_m)",
    gives="L/ha",
    source="MESA",
    flow_ml_per_s=(1, 300),
    speed_m_per_s=(0.2, 4),
    swath_m=(0.2, 10),
)
def moving_l_per_ha(flow_ml_per_s: float, speed_m_per_s: float, swath_m: float) -> float:
    """Return what a moving sprayer puts out [L/ha]: 5,940 gal/min over mph and inches in SI [MESA, ALBW].

    5,940 is 43,560 x 12 x 60 / 5,280, exactly. flow_ml_per_s: [mL/s]. speed_m_per_s: [m/s]. swath_m: its width [m].
    """
    return 10 * flow_ml_per_s / (speed_m_per_s * swath_m)


@formula("length_m / seconds", gives="m/s", source="UNL", length_m=(5, 200), seconds=(5, 300))
def speed_m_per_s(length_m: float, seconds: float) -> float:
    """Return a walking speed [m/s]: 88 feet in a minute are 1 mph [UNL]. length_m: walked [m]. seconds: it took [s]."""
    return length_m / seconds


def mean_of(runs_s: Sequence[float]) -> float:
    """Return the mean of repeated runs [s]; of one run, that run."""
    return runs_s[0] if len(runs_s) == 1 else mean_run_s(sum(runs_s), len(runs_s))


@formula("total_s / runs", gives="s", source="NCSU", total_s=(20, 900), runs=(2, 9))
def mean_run_s(total_s: float, runs: float) -> float:
    """Return the mean of repeated runs [s] [NCSU]. total_s: all together [s]. runs: how many."""
    return total_s / runs


@formula(
    "100 * maximum(run_s - mean_s, mean_s - run_s) / mean_s",
    gives="%",
    source="ours",
    run_s=(10, 120),
    mean_s=(10, 120),
)
def off_mean_pct(run_s: float, mean_s: float) -> float:
    """Return how far a run lies from the mean of all [% of the mean]. run_s, mean_s: [s]."""
    return 100 * abs(run_s - mean_s) / mean_s


@formula("volume_ml / plants", gives="mL", source="arithmetic", volume_ml=(100, 20000), plants=(1, 500))
def per_plant_ml(volume_ml: float, plants: float) -> float:
    """Return what one plant took [mL]. volume_ml: used on all [mL]. plants: how many were sprayed."""
    return volume_ml / plants


@formula("each_ml * plants", gives="mL", source="arithmetic", each_ml=(1, 2000), plants=(1, 5000))
def on_plants_ml(each_ml: float, plants: float) -> float:
    """Return the mix for so many plants [mL]. each_ml: on one [mL]."""
    return each_ml * plants


@formula(
    "area_m2 * output_l_per_ha / 10", gives="mL", source="arithmetic", area_m2=(100, 50000), output_l_per_ha=(20, 2000)
)
def on_area_mix_ml(area_m2: float, output_l_per_ha: float) -> float:
    """Return the mix that an area takes [mL]. area_m2: [m2]. output_l_per_ha: of the person and sprayer [L/ha]."""
    return area_m2 * output_l_per_ha / 10


@formula("each_cm2 * stems", gives="cm2", source="arithmetic", each_cm2=(10, 5000), stems=(1, 200))
def treated_cm2(each_cm2: float, stems: float) -> float:
    """Return the surface of all stems of a proving batch [cm2]. each_cm2: of one, at their mean diameter [cm2]."""
    return each_cm2 * stems


@formula(
    "10 * tank_ml / output_l_per_ha", gives="m2", source="arithmetic", tank_ml=(500, 100000), output_l_per_ha=(20, 2000)
)
def tank_area_m2(tank_ml: float, output_l_per_ha: float) -> float:
    """Return the ground that one tank covers [m2]. tank_ml: [mL]. output_l_per_ha: [L/ha]."""
    return 10 * tank_ml / output_l_per_ha


@formula("tank_ml / flow_ml_per_s", gives="s", source="arithmetic", tank_ml=(500, 100000), flow_ml_per_s=(1, 300))
def tank_s(tank_ml: float, flow_ml_per_s: float) -> float:
    """Return how long a tank lasts while it sprays [s]. tank_ml: [mL]. flow_ml_per_s: [mL/s]."""
    return tank_ml / flow_ml_per_s


@formula(
    "100 * (flow_ml_per_s / new_ml_per_s - 1)",
    gives="%",
    source="arithmetic",
    flow_ml_per_s=(1, 300),
    new_ml_per_s=(1, 300),
)
def above_new_pct(flow_ml_per_s: float, new_ml_per_s: float) -> float:
    """Return by how much a nozzle gives more than a new one [%]; below 0 where it gives less. Both: [mL/s]."""
    return 100 * (flow_ml_per_s / new_ml_per_s - 1)


@formula("plot_m2 / width_m", gives="m", source="NCSU", plot_m2=(20, 100), width_m=(0.3, 5))
def course_m(plot_m2: float, width_m: float) -> float:
    """Return the length of a walking course that has the plot's area [m]: 340 / width in feet [NCSU].

    plot_m2: [m2]. width_m: of the swath [m].
    """
    return plot_m2 / width_m
