"""The count: typed in a table, kept whole or not at all, nothing typed lost; and the stems per acre it comes to."""

from __future__ import annotations

import html
import re
from collections.abc import Callable
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from rootcollar.exchange import read_folder
from rootcollar.reference import find_species
from rootcollar.web.views.count import COLUMNS

Client = Callable[[Path], TestClient]
PLACE = {column.name: at for at, column in enumerate(COLUMNS)}


def fields(page: str) -> dict[str, str]:
    """Return what a browser would send of the table: every field of it with its value."""
    form = page[page.index('<form method="post" action="/count"') : page.index("</form>")]
    found = {
        name: html.unescape(value) for name, value in re.findall(r'<input[^>]* name="(\w+)" value="([^"]*)"', form)
    }
    for name, inside in re.findall(r'<select[^>]* name="(\w+)"[^>]*>(.*?)</select>', form, re.S):
        chosen = re.search(r'<option value="([^"]*)" selected>', inside)
        found[name] = html.unescape(chosen[1]) if chosen else ""
    return found


def row(at: int, **cells: str) -> dict[str, str]:
    """Return the fields of one row; names of columns with _ for a space."""
    return {f"r{at}c{PLACE[name.replace('_', ' ')]}": said for name, said in cells.items()}


def new_row(at: int, **other: str) -> dict[str, str]:
    cells = {"unit": "ridge", "species": "porcelainberry", "diameter_class": "0.5-1 in", "count": "12"}
    return row(at, **{**cells, **other})


def rows_of(page: str) -> int:
    return len(re.findall(r'<th scope="row">', page))


def test_the_table_shows_every_row_and_five_to_type_in(demo: TestClient) -> None:
    page = demo.get("/count").text
    assert rows_of(page) == 33 + 5
    shown = fields(page)
    assert shown["r0c0"] == "bench"
    assert shown["r0c10"] == "seedlings; pull when the ground is wet"
    assert all(shown[f"r33c{at}"] == "" for at in range(11))


def test_saving_what_was_shown_changes_nothing(woods: Path, client_of: Client) -> None:
    before = (woods / "tally.csv").read_bytes()
    client = client_of(woods)
    said = client.post("/count", data=fields(client.get("/count").text) | {"do": "save"})
    assert said.status_code == 200
    assert said.url.path == "/count"
    assert "Saved: 33 rows." in said.text
    assert (woods / "tally.csv").read_bytes() == before


def test_a_row_typed_is_kept_and_counted_at_once(woods: Path, client_of: Client) -> None:
    client = client_of(woods)
    typed = new_row(35, low="8", high="20", note='by the "old" wall, north')
    said = client.post("/count", data=fields(client.get("/count").text) | typed | {"do": "save"})
    assert "Saved: 34 rows." in said.text
    assert fields(said.text)["r33c10"] == 'by the "old" wall, north'
    stands = {(one.unit, one.species, round(one.band_cm[0], 2)): one for one in read_folder(woods).stands}
    assert stands["ridge", find_species("porcelainberry").key, 1.27].stems[0] == 12


def test_an_emptied_row_is_dropped(woods: Path, client_of: Client) -> None:
    client = client_of(woods)
    shown = fields(client.get("/count").text)
    empty = {f"r0c{at}": "" for at in range(11)}
    said = client.post("/count", data=shown | empty | {"do": "save"})
    assert "Saved: 32 rows." in said.text
    assert fields(said.text)["r0c2"] == "0.5-1 in"


def test_a_fault_stands_beside_its_cell_and_nothing_typed_is_lost(woods: Path, client_of: Client) -> None:
    before = (woods / "tally.csv").read_bytes()
    client = client_of(woods)
    typed = new_row(34, species="porcelain bery", count="12.5", crown="wide", note="keep <me>")
    said = client.post("/count", data=fields(client.get("/count").text) | typed | {"do": "save"})
    assert said.status_code == 422
    assert (woods / "tally.csv").read_bytes() == before
    shown = fields(said.text)
    assert (shown["r33c1"], shown["r33c3"], shown["r33c7"]) == ("porcelain bery", "12.5", "wide")
    assert shown["r33c10"] == "keep <me>"
    for at in (1, 3, 7):
        assert re.search(rf'id="r33c{at}"[^>]*aria-invalid="true" aria-describedby="r33c{at}-fault"', said.text)
        assert re.search(rf'<p class="fault" id="r33c{at}-fault">Wanted: [^<]+</p>', said.text)
    assert said.text.count('aria-invalid="true"') == 3
    assert "3 cells need mending" in said.text


def test_more_rows_come_without_scripts_and_keep_what_was_typed(woods: Path, client_of: Client) -> None:
    client = client_of(woods)
    typed = row(33, species="half a row")
    said = client.post("/count", data=fields(client.get("/count").text) | typed | {"do": "more"})
    assert said.status_code == 200
    assert rows_of(said.text) == 38 + 5
    assert fields(said.text)["r33c1"] == "half a row"
    assert 'aria-invalid="true"' not in said.text


def test_a_change_made_meanwhile_is_not_written_over_and_both_are_shown(woods: Path, client_of: Client) -> None:
    client = client_of(woods)
    shown = fields(client.get("/count").text)
    other = row(0, count="901", note="their word")
    assert client.post("/count", data=shown | other | {"do": "save"}).status_code == 200
    theirs = (woods / "tally.csv").read_bytes()
    said = client.post("/count", data=shown | new_row(33, note="my word") | {"do": "save"})
    assert said.status_code == 409
    assert (woods / "tally.csv").read_bytes() == theirs
    assert fields(said.text)["r33c10"] == "my word"
    assert "<td>their word</td><td></td><td></td><td><b>not in yours</b></td>" in said.text
    assert said.text.count("<td>the same</td>") == 32
    over = client.post("/count", data=fields(said.text) | {"do": "save"})
    assert over.status_code == 200
    assert b"my word" in (woods / "tally.csv").read_bytes()
    assert b"their word" not in (woods / "tally.csv").read_bytes()


def test_a_form_without_a_stamp_writes_over_nothing(woods: Path, client_of: Client) -> None:
    before = (woods / "tally.csv").read_bytes()
    assert client_of(woods).post("/count", data=new_row(0) | {"do": "save"}).status_code == 409
    assert (woods / "tally.csv").read_bytes() == before


def test_a_faulty_file_is_mended_here(woods: Path, client_of: Client) -> None:
    file = woods / "tally.csv"
    file.write_text(file.read_text("utf-8").replace("bench,common buckthorn,1-2 in", "bench,oak,1-2 in"), "utf-8")
    client = client_of(woods)
    page = client.get("/count")
    assert page.status_code == 200
    assert 'id="r2c1-fault"' in page.text
    assert "1 cell that needs mending" in page.text
    assert "once every file of the property reads" in page.text
    mended = client.post("/count", data=fields(page.text) | row(2, species="common buckthorn") | {"do": "save"})
    assert "Saved: 33 rows." in mended.text
    assert client.get("/choose").status_code == 200


@pytest.mark.slow
def test_a_long_tally_is_taken_whole(woods: Path, client_of: Client) -> None:
    client = client_of(woods)
    shown = fields(client.get("/count").text)
    many = {}
    for at in range(300):
        many |= row(
            40 + at,
            unit="ridge",
            species="porcelainberry",
            diameter_class=f"{at / 10:g}-{at / 10 + 0.1:g} in",
            count="1",
        )
    said = client.post("/count", data=shown | many | {"do": "save"})
    assert "Saved: 333 rows." in said.text


def test_stems_per_acre_are_told_with_their_doubt_and_open_into_their_working(demo: TestClient) -> None:
    page = demo.get("/count").text
    bench = page[page.index('<section id="dense"') :].split("<h3>")[1]
    line = re.search(r"<td>common buckthorn</td><td>1–2 in</td>(.*?)</tr>", bench, re.S)
    assert line is not None
    assert "260" in line[1]
    assert "210–320" in line[1]
    per_acre = re.search(r'href="(/count/working/[^"]+)"[^>]*>([\d.]+)</a>', line[1])
    assert per_acre is not None
    assert float(per_acre[2]) == pytest.approx(260 / 20.2, abs=0.5)
    opened = demo.get(per_acre[1]).text
    assert "stems / area acre = 260 / 20." in opened
    assert "all sizes" in bench


def test_a_unit_whose_area_nobody_knows_is_counted_and_said(woods: Path, client_of: Client) -> None:
    file = woods / "ground.toml"
    text = file.read_text("utf-8")
    start = text.index("polygon", text.index('key = "ridge"'))
    file.write_text(text[:start] + text[text.index("]\nsite_class", start) + 2 :], "utf-8")
    page = client_of(woods).get("/count").text
    ridge = page[page.index('<a href="/ground/ridge">') :].split("<h3>")[0]
    assert "area not known" in ridge
    assert "Stems per acre need the area" in ridge
    assert "110" in ridge
    assert "/count/working/ridge" not in page


def test_the_first_row_of_each_unit_can_be_gone_to(demo: TestClient) -> None:
    page = demo.get("/count").text
    for unit in ("bench", "brook-edge", "hollow", "orchard-side", "ridge", "trail-loop"):
        assert page.count(f'id="{unit}"') == 1


def test_many_units_are_picked_from_one_list_and_not_from_one_in_every_row(woods: Path, client_of: Client) -> None:
    ground = woods / "ground.toml"
    more = "".join(f'\n[[unit]]\nkey = "u{at}"\nname = "Unit {at}"\narea = "2 ac"\n' for at in range(60))
    ground.write_text(ground.read_text(encoding="utf-8") + more, encoding="utf-8")
    page = client_of(woods).get("/count").text
    assert page.count('<option value="u7">Unit 7</option>') == 1
    assert re.search(r'<input id="r0c0" name="r0c0" value="bench"[^>]* list="units"', page)
