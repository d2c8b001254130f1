"""The gates of the house close: a lint rule, a layer or a forbidden skip that is broken fails the checks."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
PROJECT = ROOT / "pyproject.toml"
UPPER = ("cli", "web", "jobs", "store", "exchange", "paper", "work", "choose", "label")
LOWER = ("mix", "dose", "timing", "survey", "site", "shelf", "hazard", "reference", "kernel")


def start(words: list[str], folder: Path, **environ: str) -> subprocess.CompletedProcess[str]:
    """Run a checker in a folder, in the environment of the tests."""
    return subprocess.run(words, cwd=folder, capture_output=True, text=True, env=os.environ | environ, check=False)


def lint(text: str, path: str) -> str:
    """Return what the linter says of a text as if it stood at this path."""
    words = [
        sys.executable,
        "-m",
        "ruff",
        "check",
        "--no-cache",
        "--output-format",
        "concise",
        "--stdin-filename",
        path,
    ]
    return subprocess.run([*words, "-"], cwd=ROOT, input=text, capture_output=True, text=True, check=False).stdout


CLOCK = "from datetime import {0}\n\n\ndef f() -> {0}:\n    return {0}.{1}\n"
BANNED = {
    "now": CLOCK.format("datetime", "now(tz=None)"),
    "today": CLOCK.format("date", "today()"),
    "time": "import time\n\nstart = time.time()\n",
    "random": "import random\n\nshare = random.random()\n",
    "sqlite3": "from sqlite3 import connect\n\nbase = connect('any')\n",
    "numpy.random": "import numpy as np\n\npick = np.random.default_rng(1)\n",
    "from numpy": "from numpy.random import default_rng\n\npick = default_rng(1)\n",
}


@pytest.mark.parametrize("banned", BANNED)
def test_no_room_reads_a_clock_or_throws_dice(banned: str) -> None:
    assert "TID251" in lint(BANNED[banned], "src/rootcollar/dose/one.py")
    assert "TID251" in lint(BANNED[banned], "src/rootcollar/jobs/one.py")


def test_only_kernel_doubt_throws_dice_and_only_cli_reads_the_clock() -> None:
    assert "TID251" not in lint(BANNED["numpy.random"], "src/rootcollar/kernel/doubt.py")
    assert "TID251" in lint(BANNED["numpy.random"], "src/rootcollar/kernel/units.py")
    assert "TID251" in lint(BANNED["sqlite3"], "src/rootcollar/store/doctor.py")
    assert "TID251" not in lint(BANNED["sqlite3"], "src/rootcollar/store/base.py")
    assert "TID251" not in lint(BANNED["now"], "src/rootcollar/cli/main.py")


@pytest.fixture(scope="module")
def house(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A copy of the house with empty rooms."""
    root = tmp_path_factory.mktemp("house")
    shutil.copy(PROJECT, root)
    for room in UPPER + LOWER:
        (root / "src" / "rootcollar" / room).mkdir(parents=True)
        (root / "src" / "rootcollar" / room / "__init__.py").touch()
    (root / "src" / "rootcollar" / "__init__.py").touch()
    return root


def layers(house: Path) -> subprocess.CompletedProcess[str]:
    """Check the imports of this house."""
    program = shutil.which("lint-imports", path=str(Path(sys.executable).parent))
    assert program is not None
    return start([program, "--no-cache"], house, PYTHONPATH=str(house / "src"))


ALLOWED = {
    "cli": "import click, rich, time, pathlib, rootcollar.jobs",
    "web": "import fastapi, starlette, uvicorn, jinja2, pydantic, pathlib, rootcollar.jobs",
    "jobs": "import pathlib, rootcollar.exchange, rootcollar.paper",
    "paper": "import typst, pathlib, rootcollar.work",
    "exchange": "import pydantic, io, shapely",
    "store": "import pathlib, shapely, numpy, rootcollar.work",
    "shelf": "import pydantic, rootcollar.reference",
    "dose": "import numpy, rootcollar.site",
    "reference": "import pathlib, importlib.resources",
}
BROKEN = [
    ("dose", "rootcollar.mix"),
    ("kernel", "rootcollar.reference"),
    ("paper", "rootcollar.exchange"),
    ("site", "rootcollar.jobs"),
    ("jobs", "rootcollar.cli"),
    ("web", "rootcollar.cli"),
    ("jobs", "fastapi"),
    ("jobs", "numpy"),
    ("jobs", "shapely"),
    ("label", "click"),
    ("jobs", "rich"),
    ("mix", "pydantic"),
    ("work", "typst"),
    ("choose", "pathlib"),
    ("survey", "os"),
    ("dose", "time"),
    ("store", "sqlite3"),
    ("exchange", "sqlite3"),
    ("store", "pyogrio"),
    ("store", "rootcollar.exchange"),
]


def test_what_the_rooms_may_import_passes(house: Path) -> None:
    for room, line in ALLOWED.items():
        (house / "src" / "rootcollar" / room / "one.py").write_text(line + "\n")
    said = layers(house)
    for room in ALLOWED:
        (house / "src" / "rootcollar" / room / "one.py").unlink()
    assert said.returncode == 0, said.stdout


@pytest.mark.parametrize(
    ("room", "module"), [*BROKEN[:3], *(pytest.param(*one, marks=pytest.mark.slow) for one in BROKEN[3:])]
)
def test_an_import_that_goes_up_or_out_is_found(house: Path, room: str, module: str) -> None:
    bad = house / "src" / "rootcollar" / room / "bad.py"
    bad.write_text(f"import {module}\n")
    said = layers(house)
    bad.unlink()
    assert said.returncode == 1
    assert f"rootcollar.{room}.bad -> {module}" in said.stdout or f"rootcollar.{room} is not allowed" in said.stdout


def test_a_room_without_a_place_in_the_order_is_found(house: Path) -> None:
    extra = house / "src" / "rootcollar" / "attic"
    extra.mkdir()
    (extra / "__init__.py").touch()
    said = layers(house)
    shutil.rmtree(extra)
    assert said.returncode == 1
    assert "attic" in said.stdout


SKIPS = {
    "a test": 'import pytest\n\n\n@pytest.mark.skip(reason="no tool")\ndef test_it():\n    pass\n',
    "a test as it runs": 'import pytest\n\n\ndef test_it():\n    pytest.skip("no tool")\n',
    "a file": 'import pytest\n\npytest.skip("no tool", allow_module_level=True)\n',
}
EXPECTED = "import pytest\n\n\n@pytest.mark.xfail\ndef test_it():\n    assert False\n"


def pytest_on(folder: Path, text: str, *words: str) -> subprocess.CompletedProcess[str]:
    """Run pytest with our conftest on one file of tests."""
    shutil.copy(ROOT / "tests" / "conftest.py", folder)
    (folder / "pytest.ini").write_text("[pytest]\n")
    (folder / "test_one.py").write_text(text)
    return start([sys.executable, "-m", "pytest", "-q", "-p", "no:cacheprovider", *words], folder)


@pytest.mark.slow
@pytest.mark.parametrize("skip", SKIPS)
def test_a_forbidden_skip_is_a_failure_and_an_allowed_one_is_told(tmp_path: Path, skip: str) -> None:
    allowed = pytest_on(tmp_path, SKIPS[skip] + "\n\ndef test_other():\n    pass\n")
    assert "not run here: no tool (1)" in allowed.stdout
    forbidden = pytest_on(tmp_path, SKIPS[skip], "--no-skips")
    assert forbidden.returncode != 0
    assert "no tool, but with --no-skips nothing may be skipped" in forbidden.stdout


@pytest.mark.slow
def test_an_expected_failure_is_no_skip(tmp_path: Path) -> None:
    assert "1 xfailed" in pytest_on(tmp_path, EXPECTED, "--no-skips").stdout
