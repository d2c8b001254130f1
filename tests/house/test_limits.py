"""The pinned list holds every distribution that any system would install, at the release that is installed."""

import re
import tomllib
from importlib import metadata
from pathlib import Path

import pytest
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

import rootcollar

ROOT = Path(__file__).resolve().parents[2]
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
LINES = [line for line in (ROOT / "constraints.txt").read_text().splitlines() if not line.startswith("#")]
PINS = {canonicalize_name(name): release for name, release in (line.split("==") for line in LINES)}
EXTRAS = PROJECT["project"]["optional-dependencies"]
ASKED = [*PROJECT["project"]["dependencies"], *EXTRAS["dev"], *PROJECT["build-system"]["requires"], "editables"]
SYSTEMS = [("linux", "Linux", "posix"), ("darwin", "Darwin", "posix"), ("win32", "Windows", "nt")]


def needed(system: tuple[str, str, str], python: str) -> set[str]:
    """Return the names of all that is installed on a system, the needs of the needs included."""
    words = dict(zip(("sys_platform", "platform_system", "os_name"), system, strict=True))
    words |= {"python_version": python, "python_full_version": f"{python}.0"}
    found: set[str] = set()
    waiting = [(Requirement(text), {""}) for text in ASKED]
    while waiting:
        one, extras = waiting.pop()  # the extras that were asked of whatever needs it
        name = canonicalize_name(one.name)
        wanted = not one.marker or any(one.marker.evaluate(words | {"extra": extra}) for extra in extras)
        if name in found or not wanted:
            continue
        found.add(name)
        if name != "colorama":  # only Windows has it installed, and it needs nothing
            waiting += [(Requirement(text), {"", *one.extras}) for text in metadata.requires(name) or []]
    return found


@pytest.mark.parametrize("system", SYSTEMS, ids=lambda system: system[0])
@pytest.mark.parametrize("python", ["3.11", "3.14"])
def test_every_distribution_is_pinned(system: tuple[str, str, str], python: str) -> None:
    assert needed(system, python) - set(PINS) == set()


def test_nothing_is_pinned_that_nobody_needs() -> None:
    everywhere = set().union(*(needed(system, python) for system in SYSTEMS for python in ("3.11", "3.14")))
    assert set(PINS) - everywhere == set()


def test_each_line_is_a_name_and_an_exact_release() -> None:
    for line in LINES:
        assert re.fullmatch(r"[a-z0-9-]+==[0-9][0-9a-z.]*", line), line


@pytest.mark.parametrize("text", ASKED)
def test_a_pin_satisfies_what_the_project_asks_for(text: str) -> None:
    asked = Requirement(text)
    assert PINS[canonicalize_name(asked.name)] in asked.specifier
    assert not any(limit.operator in {"<", "<=", "==", "~="} for limit in asked.specifier), "no upper bounds"


@pytest.mark.parametrize("name", sorted(set(PINS) - {"colorama"}))
def test_the_checks_run_with_the_pinned_releases(name: str) -> None:
    assert metadata.version(name) == PINS[name]


def test_the_version_is_a_release_number() -> None:
    assert re.fullmatch(r"[0-9]+\.[0-9]+\.[0-9]+", rootcollar.__version__)
