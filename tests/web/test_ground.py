"""The ground: a map that reads without scripts, what is known of each unit, what is asked and where to write it."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import pytest
from shapely import Point, Polygon
from starlette.testclient import TestClient

from rootcollar.exchange import Begun, begin, read_folder
from rootcollar.site import flat
from rootcollar.site.geometry import centre

Client = Callable[[Path], TestClient]
UNITS = ["bench", "brook-edge", "hollow", "orchard-side", "ridge", "trail-loop"]


def read(page: str) -> str:
    """Return a page as it reads: its numbers without the links they open by."""
    return re.sub(r'<a class="open"[^>]*>([^<]*)</a>', r"\1", page)


def outlines(page: str) -> dict[str, Polygon]:
    """Return the units as they are drawn."""
    found = re.findall(r'<a href="/ground/([a-z-]+)" class="unit"[^>]*><polygon points="([^"]+)"', page)
    return {key: Polygon([tuple(map(float, point.split(","))) for point in points.split()]) for key, points in found}


def test_every_unit_is_drawn_as_a_link_and_named(demo: TestClient) -> None:
    page = demo.get("/ground").text
    drawn = outlines(page)
    assert list(drawn) == UNITS
    for name in ("The bench", "Brook edge", "old oak 1", "the brook", "the spring", "the gate", "the loop"):
        assert f">{name}</text>" in page
    for key in UNITS:
        assert demo.get(f"/ground/{key}").status_code == 200


def test_the_map_keeps_the_shape_of_the_ground_and_its_bar_the_length_it_says(demo: TestClient, woods: Path) -> None:
    page = demo.get("/ground").text
    drawn = outlines(page)
    ground = read_folder(woods).ground
    around = centre([point for unit in ground.units.values() for point in unit.polygon or ()])
    real = {key: Polygon(flat(unit.polygon or (), around)) for key, unit in ground.units.items()}
    bar = re.search(r'd="M0-8V0H(\d+)V-8"/><text[^>]*>([\d,]+) ft', page)
    assert bar is not None
    m_per_step = float(bar[2].replace(",", "")) * 0.3048 / float(bar[1])
    for key, shape in drawn.items():
        assert shape.area * m_per_step**2 == pytest.approx(real[key].area, rel=0.02)
    first, start = drawn["bench"].centroid, real["bench"].centroid
    for key, shape in drawn.items():
        east, south = shape.centroid.x - first.x, shape.centroid.y - first.y
        assert east * m_per_step == pytest.approx(real[key].centroid.x - start.x, abs=3)
        assert -south * m_per_step == pytest.approx(real[key].centroid.y - start.y, abs=3)


def test_no_name_stands_over_another_and_a_units_name_stands_in_it(demo: TestClient) -> None:
    page = demo.get("/ground").text
    names = [
        (words, float(x), float(y))
        for x, y, words in re.findall(r'<text(?: class="place")? x="(\d+)" y="(\d+)">([^<]+)</text>', page)
        if words != "N" and not words.endswith("m)")
    ]
    assert len(names) > 12
    for at, (one, x, y) in enumerate(names):
        for other, far, down in names[:at]:
            assert abs(y - down) >= 24 or abs(x - far) >= (len(one) + len(other)) * 11 / 2, (one, other)
    at = {words: Point(x, y) for words, x, y in names}
    drawn = outlines(page)
    ground = {"bench": "The bench", "hollow": "The hollow", "ridge": "The ridge", "orchard-side": "Orchard side"}
    assert all(drawn[key].contains(at[name]) for key, name in ground.items())


def test_what_is_not_known_is_asked_with_the_line_to_write(demo: TestClient) -> None:
    page = demo.get("/ground").text
    assert "Kind of place: not known yet" in page
    assert "Write site_class in ground.toml" in page
    unit = demo.get("/ground/orchard-side").text
    assert "write <b>site_class</b>: forest, natural_area" in unit
    assert "not known yet: the class of place the unit is" in unit
    assert "Not known yet" not in demo.get("/ground/bench").text


def test_the_list_and_the_units_page_tell_the_same_facts(demo: TestClient) -> None:
    pairs = (
        "<dt>Slope</dt><dd>14 %</dd>\n<dt>Permission</dt><dd>the Hobbin Wood trustees (invented), until 2030-12-31</dd>"
    )
    assert pairs in read(demo.get("/ground").text)
    assert pairs in read(demo.get("/ground/bench").text)


def test_a_unit_tells_what_is_known_in_pairs_and_leads_on(demo: TestClient) -> None:
    page = read(demo.get("/ground/bench").text)
    for words, says in [
        ("Area", "20.2 ac"), ("Kind of place", "natural area"), ("Slope", "14 %"), ("Well", "158 ft"),
        ("Permission", r"the Hobbin Wood trustees \(invented\), until 2030-12-31"),
        ("Trail", r"[\d,]+ ft|touches it or lies within"),
        ("Wanted plants beneath", "nothing wanted"), ("Tree or patch to keep", "touches it or lies within"),
        ("Power line", "none there"), ("Soil", "loam"), ("Worked for", "nature"), ("Taken from it", "nothing"),
        ("Wanted tree or shrub, from the stems", "40 ft"), ("The crew works for", "its employer"),
        ("Mixed at", "the gravel at the gate: well 240 ft, water 1,800 ft, sinkhole none there"),
    ]:  # fmt: skip
        assert re.search(f"<dt>{words}</dt><dd>(?:{says})</dd>", page), words
    assert 'href="/count#bench"' in page
    assert 'href="/choose/bench"' in page
    assert "<td>common buckthorn</td><td>1–2 in</td><td" in page


def test_a_permission_that_ran_out_says_so(woods: Path, client_of: Client) -> None:
    file = woods / "ground.toml"
    file.write_text(file.read_text("utf-8").replace("until = 2030-12-31", "until = 2026-03-01", 1), "utf-8")
    assert "ran out on 2026-03-01" in client_of(woods).get("/ground/bench").text


def test_a_property_of_which_nothing_is_known_reads_and_asks_for_everything(tmp_path: Path, client_of: Client) -> None:
    begin(tmp_path / "mine", Begun("Quillet", "WI", "North bench"))
    client = client_of(tmp_path / "mine")
    page = client.get("/ground").text
    assert "Nothing is drawn yet" in page
    assert '<svg class="map"' not in page
    unit = client.get("/ground/north-bench").text
    said_once = (
        "power",
        "road",
        "building",
        "parking",
        "boundary",
        "wanted_roots",
        "soil",
        "ground_water",
        "purpose",
        "for_whom",
        "mixing",
        "taken",
    )
    for key in (
        "area",
        "worked",
        "site_class",
        "slope",
        "permission",
        "water",
        "well",
        "trail",
        "keep",
        "wanted_beneath",
        *said_once,
    ):
        assert f"write <b>{key}</b>" in unit
    assert client.get("/ground/map.json").json() == {"type": "FeatureCollection", "features": []}


def test_the_door_tells_every_place_as_geojson_and_is_described(demo: TestClient, woods: Path) -> None:
    said = demo.get("/door/ground.json")
    assert said.json() == demo.get("/ground/map.json").json()
    ground = read_folder(woods).ground
    assert len(said.json()["features"]) == len(ground.units) + len(ground.features)
    units = {one["properties"]["key"]: one for one in said.json()["features"] if one["properties"]["kind"] == "unit"}
    ring = units["bench"]["geometry"]["coordinates"][0]
    assert ring[0] == ring[-1]
    assert [tuple(one) for one in ring[:-1]] == list(ground.units["bench"].polygon or ())
    kinds = {one["properties"]["kind"]: one["geometry"]["type"] for one in said.json()["features"]}
    assert kinds["boundary"] == "LineString"  # as a shape it would lie on every unit and take its clicks
    assert units["orchard-side"]["properties"]["open"] > units["ridge"]["properties"]["open"] == 0
    described = demo.get("/door/openapi.json").json()["paths"]
    assert described["/door/ground.json"]["get"]["tags"] == ["ground"]
    assert "/ground/map.json" not in described


def test_a_name_with_a_tag_in_it_stays_a_name(woods: Path, client_of: Client) -> None:
    file = woods / "ground.toml"
    file.write_text(file.read_text("utf-8").replace('name = "the spring"', "name = \"<b>spring</b> & 'co'\""), "utf-8")
    page = client_of(woods).get("/ground").text
    assert "<b>spring" not in page
    assert "&lt;b&gt;spring&lt;/b&gt; &amp;" in page


def test_a_unit_that_is_not_there_names_those_that_are(demo: TestClient) -> None:
    said = demo.get("/ground/bensh")
    assert said.status_code == 404
    assert "bench" in said.text


def test_the_units_pages_warn_of_dead_trees_where_they_stand(demo: TestClient) -> None:
    for page in ("/choose", "/ground"):
        assert "12 white mulberry" in demo.get(f"{page}/ridge").text
        assert "This plan leaves dead on their feet: 2 white mulberry" in demo.get(f"{page}/ridge").text
        assert "Dead standing" not in demo.get(f"{page}/bench").text
