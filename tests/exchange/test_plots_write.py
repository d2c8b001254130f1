"""Lists of plots: what is written can be read back by others, to about a centimetre."""

import csv
import json
import subprocess
import sys
from xml.etree import ElementTree

import pytest

from rootcollar.exchange.plots_write import plots_as_csv, plots_as_geojson, plots_as_gpx
from rootcollar.survey.design import PlotPoint

POINTS = (
    PlotPoint("bench-01", "bench", -89.900123456789, 43.3000000049),
    PlotPoint('o"k & <ash>-02', 'o"k & <ash>', 1e-8, -0.5),
)


def test_rows_of_a_spreadsheet() -> None:
    rows = list(csv.DictReader(plots_as_csv(POINTS).splitlines()))
    assert [row["plot"] for row in rows] == [one.key for one in POINTS]
    assert [row["unit"] for row in rows] == [one.unit for one in POINTS]
    for row, one in zip(rows, POINTS, strict=True):
        assert (float(row["lon"]), float(row["lat"])) == pytest.approx((one.lon, one.lat), abs=5.1e-8)


def test_points_of_a_map() -> None:
    body = json.loads(plots_as_geojson(POINTS))
    assert body["type"] == "FeatureCollection"
    for row, one in zip(body["features"], POINTS, strict=True):
        assert row["geometry"]["type"] == "Point"
        assert row["geometry"]["coordinates"] == pytest.approx([one.lon, one.lat], abs=5.1e-8)  # longitude first
        assert row["properties"] == {"plot": one.key, "unit": one.unit}


def test_waypoints_of_a_receiver() -> None:
    names = {"g": "http://www.topografix.com/GPX/1/1"}
    tree = ElementTree.fromstring(plots_as_gpx(POINTS).encode())  # noqa: S314  written a line above
    for row, one in zip(tree.findall("g:wpt", names), POINTS, strict=True):
        assert (float(row.attrib["lon"]), float(row.attrib["lat"])) == pytest.approx((one.lon, one.lat), abs=5.1e-8)
        assert row.findtext("g:name", namespaces=names) == one.key
        assert row.findtext("g:desc", namespaces=names) == one.unit


def test_the_room_of_files_starts_without_the_curves() -> None:
    said = "import sys, rootcollar.exchange, rootcollar.survey; sys.exit('scipy' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", said], check=False).returncode == 0


def test_no_plots_are_an_empty_list() -> None:
    assert plots_as_csv(()).splitlines() == ["plot,unit,lon,lat"]
    assert json.loads(plots_as_geojson(()))["features"] == []
    assert "<wpt" not in plots_as_gpx(())
