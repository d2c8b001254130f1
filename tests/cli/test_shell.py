"""The shell: every error is a sentence with its exit code, on any console, and never a trace."""

import json
import os
import subprocess
import sys

import click
import pytest
from click.testing import CliRunner, Result

from rootcollar.cli import main as cli_main
from rootcollar.cli.main import COMMANDS, Listed, cli
from rootcollar.kernel.errors import Ambiguous, BadInput, Fault, NotCleared, Refusal

ERROR_KEYS = {"schema", "kind", "faults", "message"}
FAULT_KEYS = {"file", "row", "field", "found", "allowed"}


def rootcollar(*words: str, **environ: str) -> subprocess.CompletedProcess[str]:
    """Run the real program."""
    return subprocess.run(
        [sys.executable, "-m", "rootcollar", *words], capture_output=True, encoding="utf-8", check=False,
        env={**os.environ, "PYTHONIOENCODING": "utf-8", **environ}, timeout=60,
    )  # fmt: skip


def raising(error: BaseException, monkeypatch: pytest.MonkeyPatch, *words: str) -> Result:
    """Run a command that raises."""

    @click.command()
    @click.option("--json", "as_json", is_flag=True)
    def fail(as_json: bool) -> None:
        raise error

    monkeypatch.setattr(cli_main, "fail", fail, raising=False)
    monkeypatch.setitem(COMMANDS, "fail", Listed("rootcollar.cli.main:fail", "Fail."))
    return CliRunner().invoke(cli, ["fail", *words])


CASES = [
    (BadInput(Fault("'x'", "a number", "tally.csv", "7", "stems"), Fault("''", "a name", "tally.csv", "9", "unit")), 2),
    (Ambiguous("3 oz", "fl oz or oz wt?"), 2),
    (Refusal("a 20 cm stem", limit="basal bark ends at 15 cm [UF]", do="Fill cuts instead."), 2),
    (NotCleared(["Bench: the label says no"]), 1),
    (FileNotFoundError(2, "No such file or directory", "tally.csv"), 2),
    (ZeroDivisionError("float division by zero"), 3),
    (KeyError("stems"), 3),
    (RecursionError(), 3),
]


@pytest.mark.parametrize(("error", "code"), CASES, ids=lambda case: type(case).__name__)
def test_an_error_is_said_in_words_with_its_exit_code(
    error: Exception, code: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    said = raising(error, monkeypatch)
    assert said.exit_code == code
    assert said.stdout == ""
    assert "Traceback" not in said.stderr
    for told in str(error).splitlines() if code < 3 and not isinstance(error, OSError) else [type(error).__name__]:
        assert told in said.stderr or isinstance(error, OSError)
    assert said.stderr.strip()


@pytest.mark.parametrize(("error", "code"), CASES, ids=lambda case: type(case).__name__)
def test_an_error_in_json_holds_all_its_faults(error: Exception, code: int, monkeypatch: pytest.MonkeyPatch) -> None:
    said = raising(error, monkeypatch, "--json")
    body = json.loads(said.stdout)
    assert said.exit_code == code
    assert set(body) == ERROR_KEYS
    assert body["schema"] == "rootcollar/error/1"
    assert body["message"]
    assert len(body["faults"]) == (len(error.faults) if isinstance(error, BadInput) else 0)
    assert all(set(fault) == FAULT_KEYS for fault in body["faults"])
    assert said.stderr == ""


def test_our_own_fault_says_so_and_how_to_see_more(monkeypatch: pytest.MonkeyPatch) -> None:
    said = raising(ZeroDivisionError("by zero"), monkeypatch)
    assert "our side" in said.stderr
    assert "ZeroDivisionError: by zero" in said.stderr
    assert "ROOTCOLLAR_TRACE=1" in said.stderr
    assert len(said.stderr.strip().splitlines()) == 1


def test_a_trace_is_shown_when_asked_for(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("ROOTCOLLAR_TRACE", "1")
    assert "Traceback" in raising(ZeroDivisionError("by zero"), monkeypatch).stderr
    assert "Traceback" not in raising(Refusal("x", limit="y", do="z"), monkeypatch).stderr


def test_a_missing_file_is_named(monkeypatch: pytest.MonkeyPatch) -> None:
    said = raising(PermissionError(13, "Permission denied", "ground.toml"), monkeypatch)
    assert said.stderr.strip() == "ground.toml: Permission denied"


def test_an_interrupt_is_quiet(monkeypatch: pytest.MonkeyPatch) -> None:
    said = raising(KeyboardInterrupt(), monkeypatch)
    assert (said.exit_code, said.output.strip()) == (130, "")


@pytest.mark.parametrize("words", [["fcats"], ["facts", "--nonsense"], ["figure", "mix", "--percent"]])
def test_a_wrong_command_line_is_told_with_exit_code_2(words: list[str]) -> None:
    said = CliRunner().invoke(cli, words)
    assert said.exit_code == 2
    assert "Error" in said.stderr
    assert json.loads(CliRunner().invoke(cli, [*words, "--json"]).stdout)["kind"] == "Usage" or "--percent" in words


def test_without_a_word_the_help_is_shown() -> None:
    said = CliRunner().invoke(cli, [])
    assert said.exit_code == 0
    assert said.stdout == CliRunner().invoke(cli, ["--help"]).stdout


def test_the_real_program_leaves_with_the_same_codes() -> None:
    done, bad = rootcollar("facts", "gloves"), rootcollar("facts", "glvoes of lead", "--json")
    assert (done.returncode, bad.returncode) == (0, 2)
    assert json.loads(bad.stdout)["faults"][0]["found"]
    assert "Traceback" not in done.stderr + bad.stderr


@pytest.mark.parametrize(("error", "code"), [("NotCleared(['x: stop'])", 1), ("ZeroDivisionError('by zero')", 3)])
def test_a_real_process_leaves_with_the_code_of_the_error(error: str, code: int) -> None:
    program = f"""
import click
from rootcollar.cli import main
from rootcollar.kernel.errors import NotCleared
@click.command()
def fail():
    raise {error}
main.fail = fail
main.COMMANDS["fail"] = main.Listed("rootcollar.cli.main:fail", "Fail.")
main.main()
"""
    said = subprocess.run(
        [sys.executable, "-c", program, "fail"], capture_output=True, text=True, check=False, timeout=60
    )
    assert said.returncode == code
    assert "Traceback" not in said.stderr
    assert said.stderr.strip()


def test_an_old_console_is_no_reason_to_stop() -> None:
    said = rootcollar("facts", "rhca3", PYTHONIOENCODING="latin-1")  # has no sign for the dash of a span
    assert said.returncode == 0, said.stderr
    assert "1?2 years" in said.stdout


def test_a_reader_who_leaves_early_hears_no_complaint() -> None:
    program = subprocess.Popen(
        [sys.executable, "-m", "rootcollar", "facts", "triclopyr"], stdout=subprocess.PIPE, stderr=subprocess.PIPE
    )
    assert program.stdout is not None and program.stderr is not None
    program.stdout.close()
    said = program.stderr.read()
    program.stderr.close()
    assert program.wait(timeout=60) == 141
    assert said == b""
