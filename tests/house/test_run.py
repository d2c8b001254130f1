"""run.py: readable to old Pythons, quick the second time, and helpful when something is missing."""

import ast
import os
import subprocess
import sys
from pathlib import Path

import pytest

import run

TEXT = Path(run.__file__).read_text(encoding="utf-8")
PLACE = run.place_of("/somewhere")
STAMP = run.stamp_of(PLACE, [b"numpy==1", b"[project]"])


@pytest.fixture
def room(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder that run.py takes for its own, whose installs only note what they were asked for."""
    venv = tmp_path / ".venv"
    places = {"HERE": tmp_path, "VENV": venv, "PLACE": venv / "place", "UNFINISHED": venv / "unfinished"}
    places |= {"PYTHON": venv / "python", "COMMAND": venv / "rootcollar"}
    for name, path in places.items():
        monkeypatch.setattr(run, name, str(path))

    def made(place: bytes) -> None:
        note(tmp_path, "venv")
        venv.mkdir(exist_ok=True)
        (venv / "place").write_bytes(place)
        (venv / "python").touch()
        (venv / "rootcollar").touch()

    monkeypatch.setattr(run, "make_venv", made)
    monkeypatch.setattr(run, "install", lambda kind: note(tmp_path, kind))
    (tmp_path / "constraints.txt").write_text("numpy==1")
    (tmp_path / "pyproject.toml").write_text("[project]")
    return tmp_path


def note(room: Path, what: str) -> None:
    """Write down that something was done."""
    with (room / "noted").open("a") as file:
        file.write(what + " ")


def noted(room: Path) -> str:
    """Return what was done since last asked."""
    path = room / "noted"
    words = path.read_text().strip() if path.exists() else ""
    path.unlink(missing_ok=True)
    return words


def test_it_parses_on_old_pythons() -> None:
    """Python 2.7 reads no annotation, f-string, keyword-only argument, walrus, unpacking, `from` of an error."""
    assert TEXT.isascii()
    new = (ast.JoinedStr, ast.NamedExpr, ast.AnnAssign, ast.AsyncFunctionDef, ast.Await, ast.Match, ast.Nonlocal)
    for node in ast.walk(ast.parse(TEXT, feature_version=(3, 4))):
        assert not isinstance(node, new), ast.unparse(node)
        if isinstance(node, ast.arg):
            assert node.annotation is None, ast.unparse(node)
        if isinstance(node, ast.arguments):
            assert not node.kwonlyargs, ast.unparse(node)
        if isinstance(node, ast.FunctionDef):
            assert node.returns is None, ast.unparse(node)
        if isinstance(node, ast.Raise):
            assert node.cause is None, ast.unparse(node)
        if isinstance(node, ast.List | ast.Tuple | ast.Set):
            assert not any(isinstance(part, ast.Starred) for part in node.elts), ast.unparse(node)
        if isinstance(node, ast.Dict):
            assert None not in node.keys, ast.unparse(node)
        if isinstance(node, ast.Call):
            stars = [n for n, part in enumerate(node.args) if isinstance(part, ast.Starred)]
            assert stars in ([], [len(node.args) - 1]), ast.unparse(node)
            assert not (stars and node.keywords), ast.unparse(node)
            assert not (isinstance(node.func, ast.Name) and node.func.id == "print")


@pytest.mark.parametrize(
    "other",
    [
        run.stamp_of(run.place_of("/elsewhere"), [b"numpy==1", b"[project]"]),
        run.stamp_of(PLACE, [b"numpy==2", b"[project]"]),
        run.stamp_of(PLACE, [b"numpy==1", b"[project ]"]),
        run.stamp_of(PLACE, [b"numpy==1\n[project]", b""]),
    ],
)
def test_a_stamp_changes_with_folder_pins_and_project(other: bytes) -> None:
    assert other != STAMP


def test_a_stamp_stays_the_same_when_nothing_changed() -> None:
    assert run.stamp_of(run.place_of("/somewhere"), [b"numpy==1", b"[project]"]) == STAMP


def test_a_place_names_python_system_and_folder(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "version_info", (3, 99, 0))
    assert run.place_of("/somewhere") != PLACE
    monkeypatch.undo()
    monkeypatch.setattr(run.sysconfig, "get_platform", lambda: "other")
    assert run.place_of("/somewhere") != PLACE


def test_the_second_start_does_nothing(room: Path) -> None:
    run.prepare("run")
    assert noted(room) == "venv run"
    run.prepare("run")
    assert noted(room) == ""


def test_the_checks_are_added_to_what_is_there_and_serve_for_a_run(room: Path) -> None:
    run.prepare("run")
    run.prepare("test")
    assert noted(room) == "venv run test"
    run.prepare("run")
    assert noted(room) == ""


def test_a_half_finished_install_is_made_anew(room: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def killed(kind: str) -> None:
        raise KeyboardInterrupt

    with monkeypatch.context() as patch, pytest.raises(KeyboardInterrupt):
        patch.setattr(run, "install", killed)
        run.prepare("run")
    noted(room)
    run.prepare("run")
    assert noted(room) == "venv run"


def test_checks_that_could_not_be_added_leave_a_finished_run_alone(room: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def offline(kind: str) -> None:
        raise run.Trouble("no network")

    run.prepare("run")
    with monkeypatch.context() as patch, pytest.raises(run.Trouble):
        patch.setattr(run, "install", offline)
        run.prepare("test")
    noted(room)
    run.prepare("run")
    assert noted(room) == ""


def test_new_pins_are_installed_in_place(room: Path) -> None:
    run.prepare("test")
    noted(room)
    (room / "constraints.txt").write_text("numpy==2")
    run.prepare("run")
    assert noted(room) == "run"
    assert not (room / ".venv" / "ready-test").exists()


@pytest.mark.parametrize("gone", ["python", "place"])
def test_a_broken_environment_is_made_anew(room: Path, gone: str) -> None:
    run.prepare("run")
    noted(room)
    (room / ".venv" / gone).unlink()
    (room / ".venv" / "ready-run").unlink()
    run.prepare("run")
    assert noted(room) == "venv run"


def test_what_leads_python_or_pip_astray_is_left_out_and_the_rest_kept() -> None:
    kept = run.clean({"PYTHONPATH": "a", "PYTHONHOME": "b", "PIP_USER": "1", "PIP_TARGET": "c", "NO_COLOR": "1"})
    assert kept == {"NO_COLOR": "1", "PYTHONUTF8": "1"}


def test_a_python_without_environments_names_the_package(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "ensurepip", None)
    with pytest.raises(run.Trouble, match="apt install python3-venv"):
        run.make_venv(PLACE)


def test_an_old_python_hands_over_to_a_newer_one(monkeypatch: pytest.MonkeyPatch) -> None:
    taken = []
    monkeypatch.setattr(sys, "version_info", (3, 8, 0))
    monkeypatch.setattr(run, "newer_python", lambda: ["/bin/python3.11"])
    monkeypatch.setattr(run, "become", lambda command, environ: taken.append(command))
    run.main(["demo", "--no-open"])
    assert taken == [["/bin/python3.11", str(Path(run.__file__).absolute()), "demo", "--no-open"]]


def test_an_old_python_with_no_newer_one_says_what_it_needs(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(sys, "version_info", (3, 8, 0))
    monkeypatch.setattr(run, "newer_python", lambda: None)
    assert run.main(["demo"]) == 2
    assert "needs Python 3.11 or newer; this is 3.8" in capsys.readouterr().err


@pytest.mark.skipif(os.name == "nt", reason="needs a shell script as a program")
def test_only_a_python_that_starts_and_is_new_enough_is_taken(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    for name, line in {"python3": "exit 1", "python3.12": "exit 127", "python3.13": "exit 0"}.items():
        (tmp_path / name).write_text(f"#!/bin/sh\n{line}\n")
        (tmp_path / name).chmod(0o755)
    monkeypatch.setenv("PATH", str(tmp_path))
    assert run.newer_python() == [str(tmp_path / "python3.13")]


def test_a_failing_pip_shows_what_it_said(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(run, "PYTHON", sys.executable)
    monkeypatch.setattr(run, "LOG", str(tmp_path / "pip.log"))
    with pytest.raises(run.Trouble, match=r"(?s)no such option: --nonsense.*What to try"):
        run.pip("install", "--nonsense")


def test_words_but_test_go_to_the_installed_command(monkeypatch: pytest.MonkeyPatch) -> None:
    taken = []
    monkeypatch.setattr(run, "prepare", taken.append)
    monkeypatch.setattr(run, "become", lambda command, environ: taken.append(command))
    run.main(["choose", "a folder"])
    assert taken == ["run", [run.COMMAND, "choose", "a folder"]]


def test_no_words_give_help_without_setting_anything_up() -> None:
    said = subprocess.run([sys.executable, run.__file__], capture_output=True, text=True, check=True)
    assert "run.py demo" in said.stdout
    assert said.stderr == ""
