"""The app in a real browser: served on a free port of this computer, looked at by headless Chromium."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from datetime import date
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, expect, sync_playwright

from rootcollar.exchange import write_demo
from rootcollar.web.serve import Served
from tools.shots import CHROMIUM, FLAGS, serving

TODAY = date(2026, 3, 2)
PATIENCE_MS = 90_000  # a busy machine is slow, not wrong

expect.set_options(timeout=PATIENCE_MS)


@pytest.fixture(scope="session")
def chromium() -> Iterator[Browser]:
    """One browser for all tests of a worker."""
    if CHROMIUM is None:
        pytest.skip("no Chromium on this machine: install chromium")
    with sync_playwright() as player:
        browser = player.chromium.launch(executable_path=CHROMIUM, args=FLAGS)
        yield browser
        browser.close()


@pytest.fixture
def woods(tmp_path: Path) -> Path:
    """A fresh copy of the demo's folder."""
    folder = tmp_path / "hobbin-wood"
    write_demo(folder, TODAY)
    return folder


@pytest.fixture
def served(woods: Path) -> Iterator[Served]:
    """The app over a fresh copy of the demo."""
    with serving(woods, TODAY) as app:
        yield app


@contextmanager
def come_in(chromium: Browser, served: Served, *, scripts: bool) -> Iterator[BrowserContext]:
    """A window that has come in by the door; every request to another host is a failure."""
    made = chromium.new_context(java_script_enabled=scripts)
    made.set_default_timeout(PATIENCE_MS)
    elsewhere: list[str] = []
    made.on("request", lambda one: None if one.url.startswith((served.base, "data:")) else elsewhere.append(one.url))
    made.new_page().goto(served.address)
    yield made
    made.close()
    assert elsewhere == []


@pytest.fixture
def context(chromium: Browser, served: Served) -> Iterator[BrowserContext]:
    """A window with scripts."""
    with come_in(chromium, served, scripts=True) as made:
        yield made


@pytest.fixture
def bare(chromium: Browser, served: Served) -> Iterator[Page]:
    """A page in a window without scripts."""
    with come_in(chromium, served, scripts=False) as made:
        yield made.pages[0]


@pytest.fixture
def page(context: BrowserContext, served: Served) -> Page:
    """A page on the first step; what its console complains of is a failure of the test."""
    return context.pages[0]
