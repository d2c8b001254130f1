"""The tree carries nothing of the machine it was written on, and the licence of what it carries from others."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
MADE = {
    ".git",
    ".venv",
    "__pycache__",
    ".mypy_cache",
    ".ruff_cache",
    ".pytest_cache",
    ".hypothesis",
    ".import_linter_cache",
}
WORDS = re.compile(
    r"(?<![\w.)}*~/-])/(?:work|root|home/\w+|tmp/\w+|opt)/"  # a folder of one machine
    r"|\b(?:pypi|pythonhosted|npmjs|anaconda)\.(?:org|com)\b"  # a registry
    r"|\b(?:localhost|127\.0\.0\.1):\d{2,5}/simple"
)
FONTS = ROOT / "src" / "rootcollar" / "paper" / "fonts"


def files() -> Iterator[Path]:
    """Yield every file that belongs to the project."""
    for path in ROOT.rglob("*"):
        if path.is_file() and not MADE & set(path.relative_to(ROOT).parts):
            yield path


def test_no_file_names_a_registry_or_a_folder_of_one_machine() -> None:
    found = []
    for path in files():
        text = path.read_bytes().decode("utf-8", "ignore") if path.suffix != ".ttf" else ""
        found += [f"{path.relative_to(ROOT)}: {word.group()}" for word in WORDS.finditer(text)]
    assert found == []


@pytest.mark.parametrize(
    "text", ["'/wo" + "rk/main'", "see /ro" + "ot/x", "https://py" + "pi.org/simple", "/tm" + "p/rc/x"]
)
def test_such_names_would_be_found(text: str) -> None:
    assert WORDS.search(text)


@pytest.mark.parametrize("text", ["src/rootcollar/work/packet.py", "tests/work/", "a/opt/in"])
def test_folders_of_the_project_are_not_such_names(text: str) -> None:
    assert WORDS.search(text) is None


def test_the_fonts_come_with_their_licence_and_stay_small() -> None:
    fonts = list(FONTS.glob("*.ttf"))
    assert {font.stem for font in fonts} == {f"SourceSans3-{cut}" for cut in ("Regular", "Italic", "SemiBold", "Bold")}
    assert sum(font.stat().st_size for font in fonts) < 1_600_000
    licence = (FONTS / "OFL.txt").read_text(encoding="utf-8")
    assert "SIL OPEN FONT LICENSE Version 1.1" in licence
    assert licence.startswith("Copyright")


def test_the_gate_of_the_machines_can_be_started() -> None:
    gate = ROOT / ".ci" / "run"
    assert gate.read_text(encoding="utf-8").startswith("#!/usr/bin/env bash\n")
    assert gate.stat().st_mode & 0o100
