"""A folder is read whole or refused whole; nothing a person can type brings a traceback."""

import tempfile
from datetime import date
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from rootcollar.exchange import new_folder, read_folder, write_demo
from rootcollar.exchange.start import DEMO_DAY
from rootcollar.jobs.plan import choose
from rootcollar.kernel.errors import BadInput
from tests import draws

GROUND = 'name = "W"\n[[unit]]\nkey = "bench"\nname = "The bench"\n'
TALLY = "unit,species,diameter class,count\nbench,rhca3,1-2 in,7\n"


@pytest.fixture
def wood(tmp_path: Path) -> Path:
    (tmp_path / "ground.toml").write_text(GROUND)
    (tmp_path / "tally.csv").write_text(TALLY)
    return tmp_path


def _faults(path: Path) -> list[str]:
    with pytest.raises(BadInput) as caught:
        read_folder(path)
    return [str(fault) for fault in caught.value.faults]


def test_two_files_are_enough_and_the_rest_is_unknown(wood):
    project = read_folder(wood)
    assert [stand.key for stand in project.stands] == ["bench/rhca3/2.5-5.1cm"]
    assert (project.shelf, project.answers, project.history.rows, project.history.complete) == ({}, (), (), None)
    assert (project.crew.people, project.crew.wear, project.crew.tank_l) == ((), None, None)


def test_the_faults_of_all_files_are_told_at_once(wood):
    (wood / "ground.toml").write_text(GROUND + "slopee = 3\n")
    (wood / "tally.csv").write_text(TALLY + "bench,nonsense,1-2 in,7\n")
    (wood / "crew.toml").write_text('tank = "4"\n')
    (wood / "answers.toml").write_text("answer = 3\n")
    (wood / "applied.csv").write_text("date\n")
    (wood / "shelf").mkdir()
    (wood / "shelf" / "ester.toml").write_text('sheet = "label-sheet/1"\n[identity]\nrestricted_use = "no"\n')
    (wood / "shelf" / "broken.toml").write_text("sheet = \n")
    files = {fault.split(",")[0].split(":")[0] for fault in _faults(wood)}
    assert files == {
        "ground.toml", "tally.csv", "crew.toml", "answers.toml", "applied.csv", "shelf/ester.toml", "shelf/broken.toml",
    }  # fmt: skip


def test_the_unit_of_a_tally_is_not_called_wrong_for_a_broken_ground(wood):
    (wood / "ground.toml").write_text("name = \n")
    assert len(_faults(wood)) == 1


def test_a_missing_folder_says_how_to_make_one(tmp_path):
    (said,) = _faults(tmp_path / "nowhere")
    assert "rootcollar new" in said
    (said,) = _faults(tmp_path)
    assert "rootcollar new" in said and "ground.toml" in said
    (tmp_path / "a").write_text("")
    (said,) = _faults(tmp_path / "a")
    assert "file" in said
    (said,) = _faults(tmp_path / ("long" * 100))
    assert "cannot be opened" in said


@pytest.mark.parametrize("name", ["ground.toml", "tally.csv"])
def test_a_needed_file_that_is_missing_is_a_fault_that_says_how_to_get_one(wood, name):
    (wood / name).unlink()
    said = _faults(wood)
    assert any(one.startswith(name) and "rootcollar new" in one for one in said)


def test_a_folder_in_place_of_a_file_is_a_fault(wood):
    (wood / "tally.csv").unlink()
    (wood / "tally.csv").mkdir()
    assert any("tally.csv" in one and "opened" in one for one in _faults(wood))


def test_text_that_is_not_utf_8_is_a_fault_with_its_line(wood):
    (wood / "tally.csv").write_bytes(TALLY.encode() + "bench,rhca3,2-4 in,7,é\n".encode("latin-1"))
    (said,) = _faults(wood)
    assert "line 3" in said and "UTF-8" in said
    (wood / "tally.csv").write_bytes(TALLY.encode("utf-16"))
    (said,) = _faults(wood)
    assert "UTF-8" in said
    (wood / "tally.csv").write_bytes(b"unit\0")
    (said,) = _faults(wood)
    assert "zero byte" in said


def test_a_byte_order_mark_is_read_over(wood):
    for name, text in (("ground.toml", GROUND), ("tally.csv", TALLY)):
        (wood / name).write_text(text, encoding="utf-8-sig")
    assert len(read_folder(wood).stands) == 1


@pytest.mark.parametrize(
    ("text", "line"),
    [
        (GROUND + "area = 3.2 ac\n", "line 5"),
        ("name = W\n" + GROUND, "line 1"),
        (GROUND + 'key = "again"\n', "line 5"),
        (GROUND + 'note = """\nnever closed\n', "line 6"),
        ("x = " + "[" * 5000, "ground.toml"),
        ("x = 1" + "0" * 5000, "line 1"),
    ],
)
def test_what_is_not_toml_is_a_fault_with_its_line(wood, text, line):
    (wood / "ground.toml").write_text(text)
    assert any(line in one and one.startswith("ground.toml") for one in _faults(wood))


def test_a_sheet_nobody_typed_in_is_no_product(wood):
    (wood / "shelf").mkdir()
    (wood / "shelf" / "mine-template.toml").write_text("not = even = toml")
    (wood / "shelf" / "ester.toml").write_text('sheet = "label-sheet/1"\n')
    assert list(read_folder(wood).shelf) == ["ester"]


def test_a_file_with_a_name_slightly_wrong_is_noted(wood):
    (wood / "answer.toml").write_text("")
    (wood / "photo.jpg").write_text("")
    (note,) = read_folder(wood).ground.notes
    assert "answer.toml" in note and "answers.toml" in note


def test_notes_of_map_and_table_stand_together(wood):
    square = "[[-89.901, 43.299], [-89.899, 43.299], [-89.899, 43.301], [-89.901, 43.301]]"
    (wood / "ground.toml").write_text(GROUND + f'polygon = {square}\narea = "8 ac"\n')
    (wood / "tally.csv").write_text(TALLY.replace(",", ";"))
    notes = read_folder(wood).ground.notes
    assert len(notes) == 2 and "smaller" in notes[0] and "semicolons" in notes[1]


FILES = ("ground.toml", "tally.csv", "crew.toml", "answers.toml", "applied.csv", "shelf/triclopyr-amine-3-sl.toml")
noise = st.one_of(
    st.binary(max_size=40),
    st.text(max_size=40).map(lambda text: text.encode("utf-8", "surrogatepass")),
    st.sampled_from(
        [b"[[unit]]", b"x = {", b'"', b"=", b"[", b"\n\n", b"silent", b"1979-13-01", b"nan", b"inf", b"-1", b",,,,"]
    ),
)


@pytest.mark.slow
@settings(max_examples=draws.of(150))
@given(st.sampled_from(FILES), st.floats(0, 1), st.integers(0, 80), noise)
def test_no_slip_of_the_pen_brings_a_traceback(name, where, cut, put):
    """Cut a piece out of a file of the demo, put noise in its place: it is read, or refused in words."""
    with tempfile.TemporaryDirectory() as folder:
        wood = Path(folder) / "wood"
        write_demo(wood, DEMO_DAY)
        raw = (wood / name).read_bytes()
        at = int(where * len(raw))
        (wood / name).write_bytes(raw[:at] + put + raw[at + cut :])
        try:
            read_folder(wood)
        except BadInput as wrong:
            assert wrong.faults and all(fault.found and fault.allowed for fault in wrong.faults)


def test_a_new_folder_reads_with_nothing_counted_and_the_plan_asks_for_a_count(tmp_path):
    new_folder(tmp_path / "mine")
    project = read_folder(tmp_path / "mine")
    assert project.stands == ()
    with pytest.raises(BadInput, match="tally.csv: found no stems counted"):
        choose(project, date(2026, 3, 2))
