"""demo, new, choose, prepare from end to end: exit codes, one JSON object, and faults told as sentences."""

import json
import re
import shutil
from collections.abc import Callable
from functools import cache
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from rootcollar.cli.main import cli
from rootcollar.exchange import write_demo
from rootcollar.exchange.start import DEMO_DAY

DAY = "2026-09-15"


def rootcollar(*words: str | Path) -> Result:
    """Run the program in this process."""
    return CliRunner().invoke(cli, [str(word) for word in words])


@cache
def ridge_rows() -> str:
    """Return the ridge's rows of the demo's tally; nothing on the ridge is held."""
    from importlib.resources import files

    rows = (files("rootcollar.exchange") / "hobbin_wood" / "tally.csv").read_text(encoding="utf-8").splitlines()
    return "\n".join([rows[0], *(row for row in rows if row.startswith("ridge,"))]) + "\n"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """Return the demo's folder with the stems of the ridge only."""
    made = tmp_path / "wood"
    write_demo(made, DEMO_DAY)
    (made / "tally.csv").write_text(ridge_rows(), encoding="utf-8")
    return made


@pytest.fixture(scope="module")
def shown(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Result]:
    """Return the demo's folder and what making it said; run once."""
    made = tmp_path_factory.mktemp("cli") / "hobbin"
    return made, rootcollar("demo", made, "--no-open")


@pytest.fixture(scope="module")
def whole(shown: tuple[Path, Result]) -> Result:
    """Return what choosing on the whole demo says."""
    return rootcollar("choose", shown[0], "--on", DAY)


def edited(folder: Path, name: str, change: Callable[[str], str]) -> None:
    """Change a file of a folder; a change that changes nothing is a mistake of the test."""
    file = folder / name
    before = file.read_text(encoding="utf-8")
    assert change(before) != before
    file.write_text(change(before), encoding="utf-8")


# What comes back


def test_the_demo_ends_well_and_leaves_a_packet(shown: tuple[Path, Result]) -> None:
    folder, said = shown
    assert said.exit_code == 0
    packets = list((folder / "packets").glob("packet-*.pdf"))
    assert len(packets) == 1
    assert packets[0].read_bytes().startswith(b"%PDF-")
    assert str(packets[0]) in said.output
    assert "INVENTED LABEL, DEMO ONLY" in said.output


def test_the_demo_shows_a_newcomer_a_stop_and_a_question(shown: tuple[Path, Result]) -> None:
    assert "Struck out" in shown[1].output
    assert "Still asked" in shown[1].output


def test_choosing_where_a_question_stands_leaves_with_1(whole: Result) -> None:
    assert whole.exit_code == 1
    assert "HELD until answered" in whole.output


def test_choosing_where_nothing_stands_leaves_with_0(folder: Path) -> None:
    said = rootcollar("choose", folder, "--on", DAY)
    assert said.exit_code == 0, said.output
    assert "HELD" not in said.output
    assert "STRUCK" not in said.output


def test_without_permission_choosing_and_preparing_leave_with_1_and_say_so(folder: Path) -> None:
    edited(folder, "ground.toml", lambda text: re.sub(r"\npermission = .*", "", text))
    said = rootcollar("choose", folder, "--on", DAY)
    assert said.exit_code == 1
    assert "nobody has allowed work on this unit [P01]" in " ".join(said.output.split())
    assert rootcollar("prepare", folder, "--on", DAY).exit_code == 1


def test_choosing_twice_says_the_same(shown: tuple[Path, Result], whole: Result) -> None:
    assert rootcollar("choose", shown[0], "--on", DAY).output == whole.output


def test_every_mix_that_is_named_is_explained(whole: Result) -> None:
    named = set(re.findall(r"mix\s+([A-Z]\d*)\b", re.sub(r"HELD.*?below\.", "", whole.output)))
    clean = whole.output.split("Mixes\n")[0]
    kept = {
        letter
        for part in re.split(r"\n   (?=[\[(])", clean)
        if "HELD" not in part and "STRUCK" not in part
        for letter in re.findall(r"mix\s+([A-Z]\d*)\b", part)  # lines are wrapped
    }
    listed = set(re.findall(r"^   ([A-Z]\d*)  ", whole.output.split("Mixes\n")[1], re.M))
    assert kept
    assert kept == listed
    assert kept <= named


def test_no_line_is_wider_than_a_terminal(whole: Result) -> None:
    assert max(len(line) for line in whole.output.splitlines()) <= 110


def test_one_json_object_holds_every_line(shown: tuple[Path, Result]) -> None:
    said = rootcollar("choose", shown[0], "--on", DAY, "--json")
    body = json.loads(said.output)
    assert said.exit_code == 1
    assert body["schema"] == "rootcollar/choose/1"
    assert len(body["lines"]) == 33
    for line in body["lines"]:
        assert line["level"] in {"ok", "warn", "ask", "stop"}
        assert line["set_aside"]
        worst = max(("ok", "warn", "ask", "stop").index(one["level"]) for one in line["verdicts"])
        assert ("ok", "warn", "ask", "stop")[worst] == line["level"]
        for band in ("stems", "mix_ml", "minutes", "kill"):
            assert line[band]["low"] <= line[band]["high"]
    assert {line["mix"] for line in body["lines"]} - {""} <= set(body["mixes"])
    assert body["order"][0]["unit"] == "ridge"


@pytest.mark.slow
def test_the_other_commands_answer_in_json_too(folder: Path, tmp_path: Path) -> None:
    prepared = json.loads(rootcollar("prepare", folder, "--on", DAY, "--json").output)
    assert prepared["schema"] == "rootcollar/prepare/1"
    assert Path(prepared["packet"]).exists()
    assert prepared["level"] in {"ok", "warn"}
    made = json.loads(rootcollar("new", tmp_path / "mine", "--json").output)
    assert made["schema"] == "rootcollar/new/1"
    assert "ground.toml" in made["files"]


@pytest.mark.slow
def test_preparing_writes_where_it_is_told(folder: Path, tmp_path: Path) -> None:
    there = tmp_path / "out" / "packet.pdf"
    there.parent.mkdir()
    said = rootcollar("prepare", folder, "--on", DAY, "--to", there)
    assert said.exit_code == 0
    assert there.read_bytes().startswith(b"%PDF-")
    assert not (folder / "packets").exists()


def test_preparing_for_a_day_prints_it(folder: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The day reaches the packet that is printed; looked at before it is set in type."""
    seen = []
    monkeypatch.setattr(
        "rootcollar.paper.render_packet", lambda packet, *, made_on: seen.append((packet, made_on)) or b"%PDF-"
    )
    said = rootcollar("prepare", folder, "--on", DAY, "--day", "2026-10-09", "--to", tmp_path / "p.pdf")
    assert said.exit_code == 0
    ((packet, made_on),) = seen
    assert packet.day.when == "Friday 9 October 2026"
    assert made_on.isoformat() == DAY


def test_preparing_in_a_language_adds_its_day_sheet_and_one_we_lack_is_told(
    folder: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    seen = []
    monkeypatch.setattr("rootcollar.paper.render_packet", lambda packet, *, made_on: seen.append(packet) or b"%PDF-")
    edited(folder, "crew.toml", lambda text: text.replace('language = "es"', 'language = "en"'))
    for languages in ((), ("--language", "Spanish"), ("--language", "es", "--language", "en")):
        rootcollar("prepare", folder, "--on", DAY, "--to", tmp_path / "p.pdf", *languages)
    assert [[code for code, _ in packet.days] for packet in seen] == [[], ["es"], ["es"]]
    refused = rootcollar("prepare", folder, "--on", DAY, "--language", "fr")
    assert refused.exit_code == 2
    assert "es (spanish)" in refused.output


def test_a_unit_that_is_not_there_is_told_with_those_that_are(folder: Path) -> None:
    said = rootcollar("prepare", folder, "--unit", "rigde", "--on", DAY)
    assert said.exit_code == 2
    assert "rigde" in said.output
    assert "ridge" in said.output.replace("rigde", "")
    assert not (folder / "packets").exists()


# A new folder


def test_a_new_folder_says_what_to_fill_in_first(tmp_path: Path) -> None:
    said = rootcollar("new", tmp_path / "mine")
    assert said.exit_code == 0
    assert "ground.toml" in said.output and "tally.csv" in said.output


def test_an_untouched_new_folder_is_told_what_it_lacks(tmp_path: Path) -> None:
    rootcollar("new", tmp_path / "mine")
    said = rootcollar("choose", tmp_path / "mine")
    assert said.exit_code == 2
    assert "tally.csv" in said.output
    assert "at least one row" in said.output


def test_a_new_folder_with_one_row_asks_rather_than_assumes(tmp_path: Path) -> None:
    rootcollar("new", tmp_path / "mine")
    (tmp_path / "mine" / "tally.csv").write_text(
        "unit,species,diameter class,count\nunit-1,common buckthorn,2-3 in,40\n", encoding="utf-8"
    )
    said = rootcollar("choose", tmp_path / "mine", "--on", DAY)
    assert said.exit_code == 1
    assert "nobody has allowed work" in " ".join(said.output.split())


@pytest.mark.parametrize("command", ["new", pytest.param("demo", marks=pytest.mark.slow)])
def test_what_is_there_is_never_written_over(command: str, folder: Path) -> None:
    before = {one: one.read_bytes() for one in folder.rglob("*") if one.is_file()}
    rootcollar(command, folder)
    assert {one: one.read_bytes() for one in before} == before


# Bad input: file and row named, all at once, no trace

HEAD = "unit,species,diameter class,count,low,high,measured at,crown,height,fruiting,note\n"

TALLY = [
    ("ridge,common buckthron,1-2 in,10,,,,,,,", "common buckthorn"),  # an unknown name, the near one told
    ("ridge,common buckthorn,2-1 in,10,,,,,,,", "diameter class"),
    ("ridge,common buckthorn,0 in,10,,,,,,,", "diameter class"),
    ("ridge,common buckthorn,-1-2 in,10,,,,,,,", "diameter class"),
    ("ridge,common buckthorn,400-500 in,10,,,,,,,", "diameter class"),
    ("ridge,common buckthorn,1-2,10,,,,,,,", "diameter class"),  # no unit of length
    ("ridge,common buckthorn,1-2 in,-10,,,,,,,", "count"),
    ("ridge,common buckthorn,1-2 in,many,,,,,,,", "count"),
    ("ridge,common buckthorn,1-2 in,2.5,,,,,,,", "count"),
    ("ridge,common buckthorn,1-2 in,10,20,30,,,,,", "low"),
    ("moon,common buckthorn,1-2 in,10,,,,,,,", "unit"),
    ("ridge,common buckthorn,1-2 in,10,,,,0 ft,5 ft,,", "crown"),
    ("ridge,common buckthorn,1-2 in,10,,,knee,,,,", "measured at"),
]


def refused(said: Result) -> str:
    """Return the message of a refusal: exit code 2, sentences, no trace."""
    assert said.exit_code == 2, said.output
    assert "Traceback" not in said.output
    assert "our side" not in said.output
    return said.output


@pytest.mark.parametrize(("row", "named"), TALLY)
def test_a_row_that_cannot_be_is_named_by_file_row_and_column(row: str, named: str, folder: Path) -> None:
    good = "ridge,Amur honeysuckle,1-2 in,5,,,,,,,"
    (folder / "tally.csv").write_text(f"{HEAD}{good}\n{row}\n", encoding="utf-8")
    told = refused(rootcollar("choose", folder))
    assert re.search(r"tally\.csv, row 3\b", told), told
    assert named in told
    assert len(told.strip().splitlines()) == 1


def test_two_systems_in_one_tally_are_told_at_the_first_row_that_differs(folder: Path) -> None:
    rows = ["ridge,Amur honeysuckle,1-2 in,5,,,,,,,", "ridge,common buckthorn,2-5 cm,5,,,,,,,"]
    (folder / "tally.csv").write_text(HEAD + "\n".join(rows) + "\n", encoding="utf-8")
    told = refused(rootcollar("choose", folder))
    assert re.search(r"tally\.csv, row 3\b", told)
    assert "inches" in told


def test_all_faults_of_all_files_are_told_at_once(folder: Path) -> None:
    rows = [row for row, _ in TALLY]
    (folder / "tally.csv").write_text(HEAD + "\n".join(rows) + "\n", encoding="utf-8")
    edited(folder, "crew.toml", lambda text: text.replace("2030-12-31", "2030-13-31"))
    edited(folder, "applied.csv", lambda text: text.replace("2026-03-12", "2026-02-30"))
    told = refused(rootcollar("choose", folder))
    for number in range(2, len(rows) + 2):
        assert re.search(rf"tally\.csv, row {number}\b", told), number
    assert "crew.toml" in told
    assert "applied.csv, row 2" in told


@pytest.mark.parametrize("text", ["", "\n", HEAD])
def test_an_empty_tally_is_told(text: str, folder: Path) -> None:
    (folder / "tally.csv").write_text(text, encoding="utf-8")
    assert "tally.csv" in refused(rootcollar("choose", folder))


@pytest.mark.parametrize("name", ["ground.toml", "crew.toml", "answers.toml", "shelf/glyphosate-3-sl.toml"])
def test_a_file_that_is_no_toml_is_told_by_name(name: str, folder: Path) -> None:
    (folder / name).write_text("name = [unclosed\n", encoding="utf-8")
    assert name in refused(rootcollar("choose", folder))


GROUND = [
    (lambda text: text.replace('name = "Hobbin Wood (invented demo)"\n', ""), "name"),  # a needed key is missing
    (lambda text: text.replace('key = "ridge"\n', ""), "key"),
    (lambda text: text.replace("until = 2030-12-31", "until = 2030-02-30", 1), ""),  # a date that does not exist
    (lambda text: text.replace('slope = "14%"', 'slope = "114 pct of nothing"'), "slope"),
    (lambda text: text.replace('site_class = "forest"', 'site_class = "moor"'), "site_class"),
    (lambda text: text.replace('slope = "14%"', 'slop = "14%"'), "slop"),
]


@pytest.mark.parametrize(("change", "named"), GROUND)
def test_a_fault_of_the_ground_is_named(change: Callable[[str], str], named: str, folder: Path) -> None:
    edited(folder, "ground.toml", change)
    told = refused(rootcollar("choose", folder))
    assert "ground.toml" in told
    assert named in told


SHEET = [
    (lambda text: text.replace("low = 25.0, high = 100.0", "low = 25.0, high = 101.0", 1), "concentration"),
    (lambda text: text.replace("ae_percent = 30.4", "ae_percent = 130.4"), "ae_percent"),
    (lambda text: text.replace("read_on = 2026-02-14", "read_on = 2026-02-30"), ""),
    (lambda text: text.replace("amount = 3.75", "amount = -3.75"), "amount"),
]


@pytest.mark.parametrize(("change", "named"), SHEET)
def test_a_fault_of_a_label_sheet_is_named(change: Callable[[str], str], named: str, folder: Path) -> None:
    edited(folder, "shelf/glyphosate-3-sl.toml", change)
    told = refused(rootcollar("choose", folder))
    assert "shelf/glyphosate-3-sl.toml" in told
    assert named in told


@pytest.mark.parametrize("option", ["--on", "--day"])
@pytest.mark.parametrize("day", ["2026-02-30", "tomorrow", "9.10.2026"])
def test_a_day_that_is_none_is_refused(option: str, day: str, folder: Path) -> None:
    said = rootcollar("prepare", folder, option, day)
    assert repr(day) in refused(said)
    assert not (folder / "packets").exists()


@pytest.mark.parametrize("command", ["choose", "prepare"])
def test_a_folder_that_is_none_is_refused(command: str, tmp_path: Path) -> None:
    assert "no folder" in refused(rootcollar(command, tmp_path / "nowhere"))
    (tmp_path / "file").write_text("x", encoding="utf-8")
    assert "which is a file" in refused(rootcollar(command, tmp_path / "file"))
    (tmp_path / "empty").mkdir()
    assert "tally.csv" in refused(rootcollar(command, tmp_path / "empty"))


def test_faults_come_as_json_where_json_is_asked_for(folder: Path) -> None:
    (folder / "tally.csv").write_text(HEAD + TALLY[0][0] + "\n" + TALLY[6][0] + "\n", encoding="utf-8")
    said = rootcollar("choose", folder, "--json")
    body = json.loads(said.output)
    assert said.exit_code == 2
    assert body["schema"] == "rootcollar/error/1"
    assert [(one["file"], one["field"]) for one in body["faults"]] == [("tally.csv", "species"), ("tally.csv", "count")]


def test_a_sheet_that_nothing_is_planned_with_is_named(folder: Path) -> None:
    edited(folder, "shelf/triclopyr-amine-3-sl.toml", lambda text: re.sub(r"\na[ei]_lb_per_gal = .*", "", text))
    said = " ".join(rootcollar("choose", folder, "--on", DAY).output.split())
    assert "shelf/triclopyr-amine-3-sl.toml is not planned with" in said


def test_a_file_with_a_name_slightly_wrong_is_named(folder: Path) -> None:
    shutil.move(folder / "crew.toml", folder / "crews.toml")
    said = " ".join(rootcollar("choose", folder, "--on", DAY).output.split())
    assert "crews.toml is not read" in said


def test_what_opens_most_is_told_first(folder: Path) -> None:
    """Without a shelf the mixes have no label: what is missing stands above the units."""
    shutil.rmtree(folder / "shelf")
    (folder / "stock.csv").unlink()
    told = " ".join(rootcollar("choose", folder, "--on", DAY).output.split())
    assert "Missing now: no label sheet" in told
    assert told.index("Do first: ") < told.index(" 1. ")


def test_a_plan_of_work_alone_has_nothing_to_open(folder: Path) -> None:
    assert json.loads(rootcollar("choose", folder, "--on", DAY, "--json").output)["opens_most"] is None


def test_a_month_tells_of_every_line_whether_it_is_open_and_why(shown: tuple[Path, Result]) -> None:
    said = rootcollar("choose", shown[0], "--on", DAY, "--month", "3", "--json")
    told = json.loads(said.output)
    whole = json.loads(rootcollar("choose", shown[0], "--on", DAY, "--json").output)
    open_then = {one["line"] for one in whole["lines"] if 3 in one.get("months", ())}
    assert {one["line"] for one in told["lines"] if one["state"] != "shut"} == open_then
    assert all(one["because"] and one["best_months"] for one in told["lines"])
    in_text = rootcollar("choose", shown[0], "--on", DAY, "--month", "3").output
    assert "what can be done in March" in in_text
    assert "not now" in in_text


def test_a_month_that_is_none_is_refused(shown: tuple[Path, Result]) -> None:
    assert rootcollar("choose", shown[0], "--month", "13").exit_code == 2


# Plans side by side


def test_plans_stand_side_by_side_with_what_they_take_and_leave(folder: Path) -> None:
    said = rootcollar("choose", folder, "--plans", "--on", DAY)
    assert said.exit_code == 0, said.output
    names = re.findall(r"^[0-9]\. ([^:]+):", said.output, re.M)
    assert names == ["As chosen", "Cheapest for each stand", "Simplest kit", "Least hit beside", "Without herbicide"]
    assert said.output.count("Cost, all visits") == len(names)
    by_hand = said.output.partition("5. Without herbicide")[2]
    assert "no way without herbicide is open" in " ".join(by_hand.split())


def test_plans_as_json_name_every_line_of_the_tally(folder: Path) -> None:
    told = json.loads(rootcollar("choose", folder, "--plans", "--json", "--on", DAY).output)
    lines = json.loads(rootcollar("choose", folder, "--json", "--on", DAY).output)
    whole = {one["line"] for one in lines["lines"]}
    for one in told["plans"]:
        assert {each["line"] for each in (*one["lines"], *one["without"])} == whole
        assert set(one["figures"]) == {"cost", "visits", "years", "herbicide", "side", "left", "mixes"}
    by_hand = told["plans"][-1]
    assert by_hand["figures"]["herbicide"]["best"] == 0
    assert by_hand["without"]


def test_a_month_and_plans_are_two_questions(folder: Path) -> None:
    said = rootcollar("choose", folder, "--plans", "--month", "10")
    assert said.exit_code == 2
    assert "two questions" in said.output


def test_what_is_owed_and_what_a_year_holds_are_told(folder: Path) -> None:
    row = "2025-03-12,ridge,,triclopyr,24 fl oz,4 lb ae/gal,0.6 ac,common buckthorn,basal bark,1-2 in,200,,\n"
    head = "date,unit,product,ingredient,amount of product,strength,area,species,method,diameter,stems,down,note\n"
    (folder / "applied.csv").write_text(head + row, encoding="utf-8")
    (folder / "own.toml").write_text("[year]\nhours = 0.2\n", encoding="utf-8")
    said = " ".join(rootcollar("choose", folder, "--on", DAY).output.split())
    assert "first, because common buckthorn was treated 2025-03-12" in said
    assert "A year holds 0.2 h ([year] in own.toml)" in said
    assert "MORE THAN THE YEAR HOLDS" in said
    told = json.loads(rootcollar("choose", folder, "--on", DAY, "--json").output)
    (owed,) = told["owed"]
    assert (owed["unit"], owed["what"], owed["due"]) == ("ridge", "visit", "2026-03-12")
    assert told["years"]["limit_minutes"] == 12
    assert told["years"]["by_year"][0]["too_much"] is True
    assert [one["unit"] for one in told["places"]] == [one["unit"] for one in told["order"]]


def test_years_of_seed_count_in_the_rounds_of_the_plan(folder: Path) -> None:
    told = json.loads(rootcollar("choose", folder, "--on", DAY, "--json").output)
    lines = [one for one in told["lines"] if "seed_years" in one]
    assert lines
    for one in lines:
        bank = one["seed_years"] or 0
        assert len(one["years_after"]) == one["years_after"].count("visit") + max(one["judge_years"], bank)
    assert told["rounds"]["years"] == max(len(one["years_after"]) for one in lines)


def test_dead_trees_are_told_of_before_the_work_beneath_them(shown: tuple[Path, Result]) -> None:
    said, body = rootcollar("choose", shown[0], "--on", DAY), rootcollar("choose", shown[0], "--on", DAY, "--json")
    ridge = said.output.index("The ridge")
    assert ridge < said.output.index("Dead standing") < said.output.index("\n2. ")
    assert "This plan leaves dead on their feet: 2 white mulberry" in " ".join(said.output.split())
    (dead,) = json.loads(body.output)["dead_standing"]
    assert (dead["unit"], dead["species"], dead["method"], dead["stems"]) == ("ridge", "moal", "hack_squirt", 12)
    assert json.loads(body.output)["dead_standing_not_known"] == []
