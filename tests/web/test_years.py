"""What each year holds, as a page: what is owed first, what does not fit, and every number opens."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

from starlette.testclient import TestClient

Client = Callable[[Path], TestClient]
OWED = (
    "date,unit,product,ingredient,amount of product,strength,area,species,method,diameter,stems,down,note\n"
    "2025-01-10,hollow,triclopyr-ester-4-ec,triclopyr,24 fl oz,4 lb ae/gal,0.6 ac,"
    "common buckthorn,basal bark,1-2 in,200,,\n"
)


def _opens(page: str, start: str) -> list[str]:
    return list(dict.fromkeys(re.findall(rf'hx-get="({start}[^"]*)"', page)))


def test_the_page_names_each_year_seed_and_what_is_not_known(demo: TestClient) -> None:
    told = demo.get("/choose/years").text
    assert "Nobody has said what a year holds" in told
    assert "Seed of common buckthorn is looked after for 2 years [schuster2023, read]" in told
    assert "seed of white mulberry comes up is not known" in told
    assert "looks for seedlings" in told


def test_every_number_of_a_year_opens_into_its_working(demo: TestClient) -> None:
    numbers = _opens(demo.get("/choose/years").text, "/choose/years/")
    assert len(numbers) >= 20
    for one in (*numbers[:4], numbers[-1]):
        said = demo.get(one)
        assert said.status_code == 200
        assert "all together" in said.text


def test_a_year_or_number_that_is_not_there_is_not_found(demo: TestClient) -> None:
    assert demo.get("/choose/years/owed/99").status_code == 404
    assert demo.get("/choose/years/other/0").status_code == 404


def test_what_is_owed_comes_first_on_the_choose_page_and_on_its_unit(woods: Path, client_of: Client) -> None:
    (woods / "applied.csv").write_text(OWED, encoding="utf-8")
    client = client_of(woods)
    listed = re.findall(r"\d\. <a href=\"/choose/([\w-]+)\"", client.get("/choose").text)
    assert listed[0] == "hollow"
    assert "Follow-up is owed on 1 unit" in client.get("/choose").text
    unit = client.get("/choose/hollow").text
    assert "common buckthorn was treated 2025-01-10" in unit
    assert "missed follow-up loses the money" in unit
    assert "by 2026-01-10" in client.get("/choose/years").text


def test_the_limit_of_a_year_names_what_does_not_fit_as_advice(woods: Path, client_of: Client) -> None:
    (woods / "applied.csv").write_text(OWED, encoding="utf-8")
    before = client_of(woods).get("/prepare").text
    (woods / "own.toml").write_text("[year]\nhours = 40\n", encoding="utf-8")
    client = client_of(woods)
    told = client.get("/choose/years").text
    assert "A year holds 40 h" in told
    assert "would fit in the year from" in told or "fits in no year reckoned" in told
    assert "nothing is refused" in told
    assert client.get("/prepare").text.count("Bench") == before.count("Bench")


def test_a_place_in_the_order_opens_into_its_points(demo: TestClient) -> None:
    said = demo.get("/choose/ridge/working/order").text
    assert "of 100 points" in said
    assert "weight of the share of stems that bear seed" in said
    assert "then what is owed longest" in said


def test_own_weights_change_the_order_and_stand_in_its_working(woods: Path, client_of: Client) -> None:
    (woods / "own.toml").write_text("[first]\nfruit = 0\nroom = 9\n", encoding="utf-8")
    said = client_of(woods).get("/choose/ridge/working/order").text
    assert "[first] in own.toml" in said
