"""A survey as typed: each fault is told with its row, all at once, and plots become a table of stems on a hectare."""

from dataclasses import replace

import numpy as np
import pytest
from shapely import box

from rootcollar.kernel.errors import BadInput
from rootcollar.survey.plots import Counted, Group, Known, Plot, Ring, check_survey, expanded

SMALL, LARGE = (0.0, 2.5), (2.5, 10.0)
NEST = (Ring(SMALL, 40.0), Ring(LARGE, 400.0))
KNOWN = Known({"rhca3", "lonicera"}, {"bench": box(0, 0, 100, 100), "ridge": None}, {"p1", "p2", "p3"})
PLOTS = [
    Plot("p1", "bench", NEST, east_m=20, north_m=20, slope_pct=30, slope_way="level distances", row="row 2"),
    Plot("p2", "bench", NEST, east_m=60, north_m=20, row="row 3"),
    Plot("p3", "ridge", NEST, east_m=900, north_m=900, row="row 4"),
]
FOUND = [
    Counted("p1", "rhca3", SMALL, 12, "root collar", "row 2"),
    Counted("p1", "rhca3", LARGE, 3, "root collar", "row 3"),
    Counted("p3", "lonicera", LARGE, 1, "root collar", "row 4"),
]


def faults(plots=PLOTS, found=FOUND, known=KNOWN):
    with pytest.raises(BadInput) as wrong:
        check_survey(plots, found, known)
    return [str(fault) for fault in wrong.value.faults]


def with_plot(**more):
    return [PLOTS[0], replace(PLOTS[1], **more), PLOTS[2]]


def with_count(**more):
    return [FOUND[0], replace(FOUND[1], **more), FOUND[2]]


def test_a_sound_survey_has_no_fault():
    check_survey(PLOTS, FOUND, KNOWN)


@pytest.mark.parametrize(
    ("given", "row", "said"),
    [
        ({"plots": [*PLOTS, replace(PLOTS[0], row="row 5")]}, "row 5", "plot p1 twice; allowed: each plot once; row 2"),
        ({"plots": with_plot(east_m=140)}, "row 3", "plot p2 40 m outside bench"),
        ({"plots": with_plot(unit="bank")}, "row 3", "unit 'bank'; allowed: bench, ridge"),
        ({"plots": with_plot(slope_pct=-8)}, "row 3", "a slope of -8 %"),
        ({"plots": with_plot(slope_pct=25)}, "row 3", "a slope without its way"),
        ({"plots": with_plot(slope_pct=25, slope_way="one larger radius")}, "row 3", "level distances, as row 2"),
        ({"plots": with_plot(rings=())}, "row 3", "no area"),
        ({"plots": with_plot(rings=(NEST[0], Ring(LARGE, 0)))}, "row 3", "an area of 0 m2"),
        ({"plots": with_plot(rings=NEST[:1])}, "row 3", "no area for the class 2.5-10 cm"),
        ({"plots": [replace(one, stratum="wet" if one.key == "p3" else "dry") for one in PLOTS]}, "row 4", "one plot"),
        ({"plots": PLOTS[:2], "found": FOUND[:2]}, "plot p3", "no row; allowed: a row for each plot laid out, 0 stems"),
        ({"plots": [*PLOTS, replace(PLOTS[1], key="p9", row="row 5")]}, "row 5", "plot p9"),
        ({"found": with_count(species="rosa")}, "row 3", "species 'rosa'; allowed: lonicera, rhca3"),
        ({"found": with_count(plot="p8")}, "row 3", "a count on plot 'p8'"),
        ({"found": with_count(band_cm=(10, 20))}, "row 3", "the class 10-20 cm; allowed: 0-2.5 cm, 2.5-10 cm"),
        ({"found": with_count(count=-1)}, "row 3", "-1 stems"),
        ({"found": with_count(band_cm=SMALL)}, "row 3", "twice; allowed: once; row 2 has it"),
        ({"found": with_count(measured_at="breast height")}, "row 3", "never mixed"),
        ({"found": with_count(measured_at=None)}, "row 3", "without the height"),
    ],
)
def test_a_fault_is_told_with_its_row(given, row, said):
    assert any(fault.startswith(row) and said in fault for fault in faults(**given)), faults(**given)


def test_every_fault_is_told_at_once():
    told = faults(plots=with_plot(slope_pct=-8, unit="bank"), found=with_count(species="rosa", count=-1))
    assert len(told) == 4


def test_a_plot_left_out_with_its_reason_is_no_fault():
    check_survey(PLOTS[:2], FOUND[:2], replace(KNOWN, left_out={"p3": "in the pond"}))


def test_each_class_goes_by_its_own_ring_and_empty_plots_count():
    table = expanded(reversed(PLOTS), FOUND)
    assert [plot.key for plot in table.plots] == ["p1", "p2", "p3"]
    assert table.groups == (Group("lonicera", LARGE), Group("rhca3", SMALL), Group("rhca3", LARGE))
    assert np.allclose(table.per_ha, [[0, 12 * 250, 3 * 25], [0, 0, 0], [25, 0, 0]])
    assert np.allclose(table.of("rhca3").total_per_ha, [3075, 0, 0])
