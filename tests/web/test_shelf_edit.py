"""Typing a label in the app: in the label's order, whole or not at all, nothing typed lost, slips told at once."""

from __future__ import annotations

import html
import re
from collections.abc import Callable
from datetime import date
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from rootcollar.exchange import read_folder, sheet_as_typed
from rootcollar.exchange.start import DEMO_DAY
from rootcollar.shelf import SECTIONS
from tests.web.conftest import TODAY

Client = Callable[[Path], TestClient]
KEY = "triclopyr-ester-4-ec"
EDIT = f"/shelf/{KEY}/edit"
PNG = b"\x89PNG\r\n\x1a\n" + bytes(64)


def fields(page: str) -> dict[str, str]:
    """Return what a browser would send of the form: every field with its value, ticked boxes alone."""
    start = page.index('<form method="post"')
    form = page[start : page.index("</form>", start)]
    found: dict[str, str] = {}
    for tag in re.findall(r"<input[^>]*>", form):
        name, value = re.search(r' name="([^"]+)"', tag), re.search(r' value="([^"]*)"', tag)
        if name and ("checkbox" not in tag or " checked" in tag):
            found[name[1]] = html.unescape(value[1]) if value else ""
    for name, inside in re.findall(r'<select[^>]* name="([^"]+)"[^>]*>(.*?)</select>', form, re.S):
        chosen = re.search(r'<option value="([^"]*)" selected>', inside)
        first = re.search(r'<option value="([^"]*)"', inside)
        found[name] = html.unescape((chosen or first)[1]) if chosen or first else ""
    return found


def fault_at(page: str, address: str) -> str:
    found = re.search(rf'id="{re.escape(address)}-fault">(.*?)</p>', page)
    return html.unescape(found[1]) if found else ""


def test_the_form_has_the_label_s_parts_in_its_order(demo: TestClient) -> None:
    page = demo.get(EDIT).text
    places = [page.index(f'<h2 id="{one.key}-title">') for one in SECTIONS]
    assert places == sorted(places)
    assert "<b>173</b> of 173 lines read" in page


def test_saving_what_was_shown_changes_nothing(woods: Path, client_of: Client) -> None:
    path = woods / "shelf" / f"{KEY}.toml"
    before = path.read_bytes()
    client = client_of(woods)
    said = client.post(EDIT, data=fields(client.get(EDIT).text) | {"do": "save"}, follow_redirects=False)
    assert said.status_code == 303 and said.headers["location"] == f"/shelf/{KEY}"
    assert path.read_bytes() == before


def test_one_line_is_changed_and_the_rest_stays(woods: Path, client_of: Client) -> None:
    path = woods / "shelf" / f"{KEY}.toml"
    before = path.read_text(encoding="utf-8")
    client = client_of(woods)
    client.post(EDIT, data=fields(client.get(EDIT).text) | {"do": "save", "entry.rei_hours": "24"})
    assert path.read_text(encoding="utf-8") == before.replace("rei_hours = 12", "rei_hours = 24")


def test_a_new_label_is_begun_with_its_name_and_goes_on_where_it_was(woods: Path, client_of: Client) -> None:
    client = client_of(woods)
    typed = {
        "identity.product_name": "My jug",
        "silent.identity.lot": "yes",
        "identity.lot": "",
        "do": "save:first-aid",
    }
    said = client.post("/shelf/add", data=fields(client.get("/shelf/add").text) | typed, follow_redirects=False)
    assert said.headers["location"] == "/shelf/my-jug/edit?kept=1#first-aid"
    assert dict(sheet_as_typed(woods, "my-jug").cells) == {"identity.product_name": "My jug", "identity.lot": "silent"}
    assert "Saved." in client.get("/shelf/my-jug/edit?kept=1").text
    again = client.post("/shelf/add", data={"identity.product_name": "my jug", "do": "save"}, follow_redirects=False)
    assert again.headers["location"] == "/shelf/my-jug-2"


def test_a_label_without_a_name_is_not_written_and_nothing_typed_is_lost(woods: Path, client_of: Client) -> None:
    before = sorted((woods / "shelf").iterdir())
    said = client_of(woods).post("/shelf/add", data={"do": "save", "identity.lot": "A 17", "identity.product_name": ""})
    assert said.status_code == 422 and "name of the product" in fault_at(said.text, "identity.product_name")
    assert fields(said.text)["identity.lot"] == "A 17"
    assert sorted((woods / "shelf").iterdir()) == before


@pytest.mark.parametrize(
    ("typed", "address", "words"),
    [
        ({"entry.rei_hours": "a day"}, "entry.rei_hours", "a number in h"),
        ({"weather.wind_mph.low": "12"}, "weather.wind_mph.low", "at most the high of 10"),
        ({"identity.lot": "A 17"}, "identity.lot", "not both"),
        ({"ingredient.1.ae_lb_per_gal": "3"}, "ingredient.1.ae_lb_per_gal", "but 3 lb/gal was typed"),
        ({"formulation.other_ingredients_percent": "48.4"}, "formulation.other_ingredients_percent", "not 100 %"),
        ({"hazard.category.eye": "I"}, "hazard.category.eye", "leads to the signal word DANGER"),
        ({"hazard.signal_word": "DANGER"}, "hazard.signal_word", "DANGER was typed"),
        ({"identity.epa_reg_no": "00000-ZZ-0"}, "identity.epa_reg_no", "the establishment number"),
    ],
)
def test_a_slip_is_told_at_its_line_and_nothing_is_written(
    typed: dict[str, str], address: str, words: str, woods: Path, client_of: Client
) -> None:
    before = (woods / "shelf" / f"{KEY}.toml").read_bytes()
    client = client_of(woods)
    said = client.post(EDIT, data=fields(client.get(EDIT).text) | {"do": "save", **typed})
    assert said.status_code == 422
    assert words in fault_at(said.text, address)
    assert f'href="#{address}">Go to the first' in said.text
    assert all(fields(said.text)[one] == value for one, value in typed.items())
    assert (woods / "shelf" / f"{KEY}.toml").read_bytes() == before


def test_a_contradiction_that_the_label_prints_is_kept_when_somebody_has_looked_again(
    woods: Path, client_of: Client
) -> None:
    client = client_of(woods)
    typed = fields(client.get(EDIT).text) | {"do": "save", "ingredient.1.ae_lb_per_gal": "3"}
    asked = client.post(EDIT, data=typed)
    assert "the label prints it just so" in asked.text
    assert "the label prints it just so" not in client.post(EDIT, data=typed | {"entry.rei_hours": "x"}).text
    done = client.post(EDIT, data=typed | {"as_printed": "yes"}, follow_redirects=False)
    assert done.status_code == 303
    assert sheet_as_typed(woods, KEY).cells["ingredient.1.ae_lb_per_gal"] == "3"


@pytest.mark.parametrize(
    ("sent", "field"),
    [
        ({"do": "more:ingredient"}, "ingredient.2.common_name"),
        ({"do": "more:site"}, "site.5.words"),
        ({"do": "more:method", "way": "wipe"}, "method.wipe.carrier"),
    ],
)
def test_another_block_comes_and_what_was_typed_stays(
    sent: dict[str, str], field: str, woods: Path, client_of: Client
) -> None:
    client = client_of(woods)
    before = fields(client.get(EDIT).text)
    assert field not in before
    page = client.post(EDIT, data=before | {"identity.lot": "half typed", "silent.identity.lot": ""} | sent).text
    shown = fields(page)
    assert field in shown and shown["identity.lot"] == "half typed"
    client.post(EDIT, data=shown | {"do": "save", field: "water" if "wipe" in field else "new"})
    assert sheet_as_typed(woods, KEY).cells[field] in ("water", "new")


def test_a_sheet_changed_meanwhile_is_compared_and_not_written_over(woods: Path, client_of: Client) -> None:
    client = client_of(woods)
    typed = fields(client.get(EDIT).text) | {"do": "save", "entry.rei_hours": "24"}
    path = woods / "shelf" / f"{KEY}.toml"
    path.write_text(
        path.read_text(encoding="utf-8").replace("slaughter_days = 3", "slaughter_days = 5"), encoding="utf-8"
    )
    before = path.read_bytes()
    said = client.post(EDIT, data=typed)
    assert said.status_code == 409 and path.read_bytes() == before
    assert "<td>5</td><td>3</td>" in said.text and "<td>12</td><td>24</td>" in said.text
    client.post(EDIT, data=fields(said.text) | {"do": "save", "food_and_stock.slaughter_days": "5"})
    kept = sheet_as_typed(woods, KEY).cells
    assert (kept["entry.rei_hours"], kept["food_and_stock.slaughter_days"]) == ("24", "5")


def test_what_was_typed_is_shown_escaped(woods: Path, client_of: Client) -> None:
    page = client_of(woods).post("/shelf/add", data={"do": "more:site", "identity.lot": '"><b>x'}).text
    assert "<b>x" not in page and fields(page)["identity.lot"] == '"><b>x'


@pytest.mark.parametrize("path", ["/shelf/no-such/edit", "/shelf/no-such/second", "/shelf/photos/no-such-1.png"])
def test_what_is_not_there_is_not_found(path: str, demo: TestClient) -> None:
    assert demo.get(path).status_code == 404


def test_a_photograph_is_kept_under_a_name_of_ours_and_entered_on_the_sheet(woods: Path, client_of: Client) -> None:
    client = client_of(woods)
    for number in (1, 2):
        client.post(f"/shelf/{KEY}/photos", files={"photo": ("../../evil.png", PNG, "image/png")})
        assert (woods / "shelf" / "photos" / f"{KEY}-{number}.png").read_bytes() == PNG
    assert sheet_as_typed(woods, KEY).cells["proof.photos"] == f"photos/{KEY}-1.png; photos/{KEY}-2.png"
    shown = client.get(f"/shelf/photos/{KEY}-1.png")
    assert shown.content == PNG and shown.headers["content-type"] == "image/png"
    assert f'href="/shelf/photos/{KEY}-1.png"' in client.get(f"/shelf/{KEY}").text


@pytest.mark.parametrize(("content", "status"), [(b"<svg onload=alert(1)>", 422), (PNG + bytes(2_000_001), 413)])
def test_no_picture_and_too_large_a_one_are_refused(
    content: bytes, status: int, woods: Path, client_of: Client
) -> None:
    said = client_of(woods).post(f"/shelf/{KEY}/photos", files={"photo": ("label.png", content, "image/png")})
    assert said.status_code == status
    assert not (woods / "shelf" / "photos").exists()


def test_the_sheet_s_page_shows_version_pages_and_both_readers(demo: TestClient) -> None:
    page = " ".join(demo.get(f"/shelf/{KEY}").text.split())
    assert "<dt>Label version</dt><dd>demo-1</dd>" in page
    read_again = TODAY - (DEMO_DAY - date(2026, 2, 21))  # the demo's days move with the day it is written
    assert f"a second time by Elspeth Tarn (invented), {read_again.isoformat()}: the two agree." in page
    assert re.search(
        r"Most on an acre in a year, the figure</td><td>8</td><td><span class=\"soft\">p.</span> 8</td>", page
    )
    other = demo.get("/shelf/glyphosate-3-sl").text
    assert "Nobody has read it a second time." in other


def test_the_folder_reads_what_the_app_wrote(woods: Path, client_of: Client) -> None:
    client = client_of(woods)
    client.post("/shelf/add", data={"identity.product_name": "My jug", "do": "save"})
    assert "my-jug" in read_folder(woods).shelf
    assert "My jug" in client.get("/shelf").text
