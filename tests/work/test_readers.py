"""A packet names who has read the labels it rests on, and a plan on real ground waits for the second of them."""

from dataclasses import replace

from rootcollar.kernel.verdict import Level
from rootcollar.work import Project, readers
from tests.work.packets import earnest, hobbin_packet, made


def read_by(project: Project, lines: dict[str, str] | None) -> Project:
    """Return the project with other second readings: none, or some lines read otherwise."""
    shelf = {
        key: replace(
            sheet, second=None if lines is None else replace(sheet.second, lines={**sheet.second.lines, **lines})
        )
        for key, sheet in project.shelf.items()
    }
    return replace(project, shelf=shelf)


def test_the_packet_names_both_readers() -> None:
    told = made(earnest()).rules.readers
    assert told
    assert all("Read by Ottoline Fernwick (invented), 2026-02-14" in words for _, words in told)
    assert all("a second time by Elspeth Tarn, 2026-03-01: the two agree." in words for _, words in told)


def test_without_a_second_reading_real_ground_has_no_work_and_the_demo_has() -> None:
    packet = made(read_by(earnest(), None))
    assert packet.day.sizes == ()
    assert {rule: level for rule, _, level in packet.rules.weighed}["P09"] == Level.ASK.word
    assert hobbin_packet().day.sizes


def test_two_readings_that_differ_hold_the_work_and_say_where() -> None:
    packet = made(read_by(earnest(), {"limits.per_year.amount": "1.25"}))
    assert packet.day.sizes == ()
    said = [one.because for one in packet.rules.questions if one.rule == "P09"]
    assert said and all("Elspeth Tarn read 1.25 (label page 8)" in one for one in said)


def test_a_sentence_says_how_two_readings_stand() -> None:
    sheet = next(iter(earnest().shelf.values()))
    assert readers(replace(sheet, second=None)).endswith("Nobody has read it a second time.")
    assert "1 line read differently" in readers(
        replace(sheet, second=replace(sheet.second, lines={**sheet.second.lines, "limits.per_year.amount": "99"}))
    )
    nobody = replace(sheet, lines={path: line for path, line in sheet.lines.items() if path != "proof.read_by"})
    assert readers(nobody).startswith("Nobody has said who read it")
