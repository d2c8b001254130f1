"""Preparing: the packet of the units and the day chosen, on the page, as a PDF and a picture; the address holds it."""

from __future__ import annotations

import re
import shutil
import struct
import subprocess
import time
from collections.abc import Callable
from datetime import date
from html import unescape
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from rootcollar.exchange import read_folder
from rootcollar.jobs.plan import Prepared, prepare
from rootcollar.kernel.verdict import Level
from rootcollar.web import Desk
from rootcollar.web.desk import KEPT, Open
from rootcollar.web.views import prepare as views
from rootcollar.web.views.packet import bars_of, figures, written
from tests.web.conftest import TODAY

Client = Callable[[Path], TestClient]
SHEETS = [
    "day-sheet", "mix-cards", "shopping", "gear-and-crew", "top-up-card", "spill-and-first-aid",
    "leftover-rinse-water-empty-jugs", "signs-and-notice", "tags", "signs",
]  # fmt: skip


def text_of(page: str) -> str:
    """Return what a page says, without its tags."""
    return " ".join(unescape(re.sub(r"<[^>]+>", " ", page)).split())


def ticked(page: str) -> list[str]:
    """Return the units that are ticked."""
    return re.findall(r'name="unit" value="([^"]+)" checked', page)


def stepper(page: str) -> list[tuple[str, bool]]:
    """Return the units to step to: (address, whether it is looked at)."""
    nav = page[page.index('class="stepper"') : page.index("</nav>", page.index('class="stepper"'))]
    return [(unescape(to), "aria-current" in rest) for to, rest in re.findall(r'<a href="([^"]+)"([^>]*)>', nav)]


def test_at_first_the_first_unit_with_work_is_looked_at_and_every_sheet_has_its_anchor(demo: TestClient) -> None:
    page = demo.get("/prepare").text
    assert ticked(page) == ["ridge"]
    assert re.findall(r'<li><a href="#([^"]+)">', page) == SHEETS
    for anchor in SHEETS:
        assert page.count(f'id="{anchor}"') == 1


def test_every_unit_is_a_step_away_and_so_are_all_together(demo: TestClient) -> None:
    asked = "day=2026-03-12&language=es&paper=a4"
    page = demo.get(f"/prepare?unit=bench&{asked}").text
    steps = stepper(page)
    keys = ["ridge", "bench", "trail-loop", "hollow", "brook-edge", "orchard-side"]
    assert [to for to, _ in steps] == [*(f"/prepare?unit={key}&{asked}" for key in keys), f"/prepare?units=all&{asked}"]
    assert [here for _, here in steps] == [key == "bench" for key in keys] + [False]
    whole = demo.get(steps[-1][0]).text
    assert ticked(whole) == keys
    assert stepper(whole)[-1] == (steps[-1][0], True)
    assert f'href="/prepare/packet.pdf?units=all&amp;{asked.replace("&", "&amp;")}"' in page
    all_ticked = demo.get("/prepare?" + "&".join(f"unit={key}" for key in keys)).text
    assert ticked(all_ticked) == keys


def test_a_unit_without_work_on_the_day_is_not_the_first_looked_at(woods: Path, client_of: Client) -> None:
    """In March pulling and coating the small buckthorn is in season, and nothing else of these."""
    tally = woods / "tally.csv"
    head, *rows = tally.read_text("utf-8").splitlines()
    later = [row for row in rows if row.startswith("bench") and ",0.1-0.5 in," not in row and ",1-2 in," not in row]
    hollow = [row.replace(",yes,", ",no,") for row in rows if row.startswith("hollow")]  # no seed: the bench first
    tally.write_text("\n".join([head, *later, *hollow]) + "\n", "utf-8")
    client = client_of(woods)
    assert ticked(client.get("/prepare").text) == ["bench"]
    page = client.get("/prepare?day=2026-03-12").text
    assert stepper(page)[0] == ("/prepare?unit=bench&day=2026-03-12", False)
    assert ticked(page) == ["hollow"]


def test_units_are_all_or_the_fault_is_told(demo: TestClient) -> None:
    assert demo.get("/prepare?units=some").status_code == 422


def test_only_the_day_sheet_is_unfolded(demo: TestClient) -> None:
    page = demo.get("/prepare").text
    folded = re.findall(r'<details class="section" id="([^"]+)"( open)?>', page)
    assert [anchor for anchor, _ in folded] == SHEETS
    assert [anchor for anchor, unfolded in folded if unfolded] == ["day-sheet"]


def test_what_stands_in_the_way_comes_first_and_worst_first(demo: TestClient) -> None:
    page = demo.get("/prepare?units=all").text
    assert page.index("What stands in the way") < page.index("Day sheet</a>") < page.index('id="mix-cards"')
    ways = page[page.index('id="in-the-way"') : page.index('id="to-print"')]
    levels = re.findall(r'<li class="verdict (\w+)">', ways)
    assert levels == sorted(levels, key=["stop", "ask"].index)
    assert "ask" in levels
    assert 'Holds on <a href="/choose/brook-edge">Brook edge</a>: porcelainberry 0.5–1 in, 1–2 in' in ways
    assert '<a href="/facts/L16">L16</a>' in ways


def test_every_line_that_is_not_work_stands_in_the_way_and_none_that_is(woods: Path) -> None:
    here = Desk(woods, lambda: TODAY).look()
    assert here.plan is not None
    kept = {one.stand for one in here.plan.choices if one.option is None or one.level >= Level.ASK}
    view = views.packet_view(here, views.Wanted())
    named = {(unit, plants) for one in view.barriers for unit, _, plants in one.lines}
    assert {unit for unit, _ in named} == {one.unit for one in kept}
    for stand in kept:
        plant = here.setting.reference.species[stand.species].common_name
        assert any(unit == stand.unit and plant in words for unit, words in named)


def test_only_the_units_chosen_are_prepared_for(demo: TestClient) -> None:
    page = demo.get("/prepare?unit=bench").text
    assert ticked(page) == ["bench"]
    assert "The bench, day sheet" in page
    said = text_of(page[page.index('class="sheets"') :])
    assert "The ridge" not in said
    assert "Place The bench, Hobbin Wood" in said
    assert 'href="/prepare/packet.pdf?unit=bench"' in page
    assert 'src="/prepare/page-one.png?unit=bench"' in page
    hollow = demo.get("/prepare?unit=hollow").text
    assert "No known rule holds a line of these units back" in hollow


def test_the_page_shows_the_packet_that_the_terminal_prints(woods: Path) -> None:
    here = Desk(woods, lambda: TODAY).look()
    for day in (None, date(2026, 9, 21)):
        view = views.packet_view(here, views.Wanted(("trail-loop",), day, ("es",), "a4"))
        assert view.packet == prepare(read_folder(woods), TODAY, ["trail-loop"], day, ["es"]).value.packet
        assert view.query == f"?unit=trail-loop{'&day=2026-09-21' if day else ''}&language=es&paper=a4"


def test_a_mix_card_has_its_steps_true_percent_order_cautions_and_working(demo: TestClient) -> None:
    page = demo.get("/prepare?unit=hollow").text
    card = page[page.index('id="mix-c"') :]
    said = text_of(card[: card.index("</article>")])
    for words in (
        "Dry sprayer, no water in it.", "Then it is 20", "Order in the jug", "Mind", "Buy", "Working of mix C",
        "product in ml: total ml * pct / 100",
    ):  # fmt: skip
        assert words in said


def test_on_a_day_out_of_season_lines_are_struck_out_with_the_months(demo: TestClient) -> None:
    page = demo.get("/prepare?unit=bench&day=2026-03-30").text
    assert 'value="2026-03-30"' in page
    ways = text_of(page[page.index('id="in-the-way"') : page.index('id="to-print"')])
    assert "not in March: open in August to November" in ways
    assert "Strikes out on The bench" in ways
    assert "Another day" in ways


def test_where_nothing_is_cleared_it_says_what_to_do(demo: TestClient) -> None:
    page = demo.get("/prepare?unit=orchard-side&unit=brook-edge").text
    assert "Nothing chosen here may be worked yet" in page
    ways = page[page.index('id="in-the-way"') : page.index('id="to-print"')]
    assert 'href="/choose/questions"' in ways
    assert 'id="mix-cards"' not in page
    assert 'class="tags"' not in page


@pytest.mark.parametrize(
    ("asked", "field", "said"),
    [
        ("unit=bench&day=32+May&paper=a4", "day", "32 May"),
        (
            "unit=bench&unit=bensh&day=2026-10-09",
            "unit",
            "Found unit &#39;bensh&#39;; wanted: a unit with stems, such as",
        ),
        ("unit=bench&language=tlh", "language", "Found language &#39;tlh&#39;"),
        ("unit=bench&paper=foolscap", "paper", "wanted: us-letter or a4"),
    ],
)
def test_what_cannot_be_read_is_told_at_its_field_and_nothing_typed_is_lost(
    asked: str, field: str, said: str, demo: TestClient
) -> None:
    answer = demo.get(f"/prepare?{asked}")
    assert answer.status_code == 422
    page = answer.text
    assert f'id="{field}-fault"' in page
    assert f'aria-describedby="{field}-fault"' in page
    assert said in page
    assert ticked(page) == ["bench"]
    for name, value in (one.split("=") for one in asked.split("&")):
        typed = value.replace("+", " ")
        if name == "day":
            assert f'value="{typed}"' in page
        elif name in ("language", "paper"):
            assert f'<option value="{typed}" selected>' in page
    assert 'class="sheets"' not in page
    assert demo.get(f"/prepare/packet.pdf?{asked}").status_code == 422
    assert demo.get(f"/prepare/page-one.png?{asked}").status_code == 422


@pytest.mark.slow
def test_the_packet_is_a_pdf_of_its_unit_and_made_once(demo: TestClient) -> None:
    first = demo.get("/prepare/packet.pdf?unit=trail-loop&language=es")
    assert first.headers["content-type"] == "application/pdf"
    assert first.headers["content-disposition"] == 'inline; filename="packet-hobbin-wood-invented-demo-2026-03-02.pdf"'
    assert first.content.startswith(b"%PDF")
    begun = time.perf_counter()
    assert demo.get("/prepare/packet.pdf?language=es&unit=trail-loop").content == first.content
    assert time.perf_counter() - begun < 0.3  # setting it takes longer by far
    reader = shutil.which("pdftotext")
    if reader is None:
        pytest.skip("poppler's pdftotext is not installed (package poppler-utils)")
    said = subprocess.run([reader, "-", "-"], input=first.content, capture_output=True, check=True).stdout.decode()
    assert "Trail loop, day sheet" in said
    assert "Quién" in said


@pytest.mark.parametrize("paper", ["us-letter", "a4"])
def test_the_picture_is_a_png_of_the_size_that_the_page_keeps_free(paper: str, demo: TestClient) -> None:
    page = demo.get(f"/prepare?unit=trail-loop&paper={paper}").text
    found = re.search(
        r'<img src="(/prepare/page-one\.png[^"]+)" width="(\d+)" height="(\d+)" loading="lazy" alt="Page one', page
    )
    assert found is not None
    picture = demo.get(unescape(found[1]))
    assert picture.headers["content-type"] == "image/png"
    assert picture.content.startswith(b"\x89PNG\r\n\x1a\n")
    assert struct.unpack(">II", picture.content[16:24]) == (int(found[2]), int(found[3]))


def test_nothing_is_rendered_for_the_page_itself_and_a_second_look_makes_nothing(
    woods: Path, client_of: Client, monkeypatch: pytest.MonkeyPatch
) -> None:
    made: list[str] = []
    for name in ("prepare", "render_packet", "render_picture"):
        whole = getattr(views, name)
        monkeypatch.setattr(views, name, lambda *a, _n=name, _w=whole, **k: (made.append(_n), _w(*a, **k))[1])
    client = client_of(woods)
    for _ in range(2):
        client.get("/prepare?unit=trail-loop")
    client.get("/prepare/working/mix-cards/0/0/0/0?unit=trail-loop")
    assert made == ["prepare"]
    for _ in range(2):
        client.get("/prepare/page-one.png?unit=trail-loop")
    assert made == ["prepare", "render_picture"]


def test_of_what_was_printed_only_the_last_few_are_kept(woods: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    made: list[date | None] = []
    here = Desk(woods, lambda: TODAY).look()
    prepared = views.prepare(here.project, TODAY, ("bench",)).value

    def again(here: Open, wanted: views.Wanted) -> Prepared:
        made.append(wanted.day)
        return prepared

    monkeypatch.setattr(views, "_made", again)
    monkeypatch.setattr(views, "render_picture", lambda packet, **how: b"picture")
    wanted = [views.Wanted(("bench",), date(2026, 9, day)) for day in range(1, KEPT + 4)]
    for one in wanted:
        views.picture_of(here, one)
    assert len(made) == len(wanted)
    views.picture_of(here, wanted[3])  # the oldest that is still there: now the newest
    assert len(made) == len(wanted)
    views.picture_of(here, wanted[0])
    views.picture_of(here, wanted[3])
    assert [one.day for one in wanted[:1]] == made[len(wanted) :]
    pictures = here.views[views.__name__, "picture_of"]
    assert len(pictures) == KEPT


def test_where_nothing_is_counted_it_leads_to_the_tally(woods: Path, client_of: Client) -> None:
    tally = woods / "tally.csv"
    tally.write_text(tally.read_text("utf-8").splitlines()[0] + "\n", "utf-8")
    client = client_of(woods)
    page = client.get("/prepare")
    assert page.status_code == 200
    assert "Nothing is counted yet" in page.text
    assert '<a href="/count">' in page.text
    assert client.get("/prepare/packet.pdf").status_code == 422


def test_lines_to_write_on_are_lines(demo: TestClient) -> None:
    page = demo.get("/prepare?unit=bench").text
    assert "___" not in page[page.index('class="sheets"') :]
    assert page.count('class="blank"') > 10
    assert written("wind ___ mph, left ____") == (
        ("wind ", False), ("___", True), (" mph, left ", False), ("____", True),
    )  # fmt: skip


def test_tape_is_drawn_bar_under_bar_a_wide_one_wider_than_a_narrow_one() -> None:
    drawn = bars_of((1, 2, 1))
    (a, thin), (b, thick), (c, _) = drawn.bars
    assert a == 0
    assert thick > 2 * thin
    assert b - (a + thin) == c - (b + thick) > 0
    assert drawn.height == c + thin


def test_only_columns_of_bare_figures_line_up_at_the_right() -> None:
    rows = (("Bench", "1,400", "$3", "–", "2 (1–3)"), ("All", "", "$217", "–", ""))
    assert figures(rows) == (False, True, True, True, False)
