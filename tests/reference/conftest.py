"""The package's own fact files as texts, to be spoilt one at a time."""

from __future__ import annotations

from importlib.resources import files

import pytest

from rootcollar.reference import Reference, load


@pytest.fixture
def texts() -> dict[str, str]:
    """Every fact file by name, as `read` takes them."""
    root = files("rootcollar.reference") / "data"
    found = {}
    for entry in root.iterdir():
        if entry.is_dir():
            for inner in entry.iterdir():
                found[f"{entry.name}/{inner.name}"] = inner.read_text(encoding="utf-8")
        else:
            found[entry.name] = entry.read_text(encoding="utf-8")
    return found


@pytest.fixture(scope="session")
def facts() -> Reference:
    """The facts of the package."""
    return load()
