"""The style budget is held: each way to break it is found, and a module within it passes."""

import pytest

from tools.style import FUNCTION_LINES, MODULE_LINES, faults, main

HEAD = '"""A room."""\n\n__all__ = ["f"]\n\n'
SOURCED = "LIMIT_CM = 7.5  # ours\n\n\n"
GOOD = HEAD + SOURCED + 'def f(dbh_cm: float) -> float:\n    """Say it."""\n    return min(dbh_cm / 2, LIMIT_CM)\n'


def f(body: str = "return 1", arguments: str = "", doc: str = '"""Say it."""', result: str = " -> float") -> str:
    return f"{HEAD}def f({arguments}){result}:\n    {doc}\n    {body}\n"


BAD = {
    "module of": GOOD + "# more\n" * MODULE_LINES,
    "without __all__": '"""A room."""\n\nLIMIT = 1\n',
    "module without docstring": '__all__ = ["a"]\n',
    "lines of code": f("\n    ".join(["a = 1"] * FUNCTION_LINES + ["return 1"])),
    "7 arguments": f(arguments=", ".join(f"a{n}: int" for n in range(7))),
    "8 arguments": f(arguments="a: int, /, b: int, *, " + ", ".join(f"c{n}: int" for n in range(6))),
    "f without docstring": f(doc="pass"),
    "type of its result": f(result=""),
    "type of a": f(arguments="a"),
    "type of rest": f(arguments="*rest"),
    "C without docstring": HEAD + "class C:\n    pass\n",
    "m without docstring": HEAD + 'class C:\n    """Say it."""\n\n    def m(self) -> None:\n        pass\n',
    "open()": f("return open('x')"),
    ".read_text()": f("return place.read_text()"),
    "figure 7.5": f("return 7.5"),
    "figure 0.3": f(arguments="share: float = 0.3"),
    "figure 5": HEAD + 'class C:\n    """Say it."""\n\n    days: int = 5\n',
    "figure 60": HEAD + "minutes = 60\n",
    "LIMIT_CM without its source": HEAD + "LIMIT_CM = 7.5\n",
}


@pytest.mark.parametrize("fault", BAD)
def test_a_module_out_of_budget_is_told_so(fault: str) -> None:
    assert fault in " ".join(what for _, what in faults(BAD[fault], "dose"))


def test_a_module_within_the_budget_passes() -> None:
    assert faults(GOOD, "dose") == []
    assert faults("", "dose") == []


def test_blank_comment_and_docstring_lines_are_not_code() -> None:
    long = f(
        "\n    ".join(["a = 1", "# why", ""] * (FUNCTION_LINES - 2) + ["return 1"]), doc='"""Say\n\n    it.\n    """'
    )
    assert faults(long, "dose") == []


def test_rooms_that_keep_files_and_rooms_without_formulas_have_their_own_limits() -> None:
    assert faults(f("return place.read_text()"), "exchange") == []
    assert faults(f("return 7.5"), "kernel") == []


def test_a_fault_names_its_line() -> None:
    assert faults(f("return 7.5"), "dose")[0][0] == 7


def test_the_checker_says_file_line_and_fault(
    tmp_path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    room = tmp_path / "src" / "rootcollar" / "dose"
    room.mkdir(parents=True)
    (room / "bad.py").write_text(f("return 7.5"), encoding="utf-8")
    monkeypatch.setattr("tools.style.SOURCE", room.parent)
    assert main() == 1
    assert capsys.readouterr().out.replace("\\", "/").startswith("src/rootcollar/dose/bad.py:7: the figure 7.5")
    (room / "bad.py").write_text(GOOD, encoding="utf-8")
    assert main() == 0
