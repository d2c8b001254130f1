"""The app over the demo, without a browser: a client that has the key of this start."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from datetime import date
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from rootcollar.cli.bench import ClickBench
from rootcollar.exchange import write_demo
from rootcollar.web import Desk, make_app
from rootcollar.web.guard import COOKIE

HOST = "127.0.0.1:8000"
KEY = "a-key-of-this-start"
TODAY = date(2026, 3, 2)


@pytest.fixture
def woods(tmp_path: Path) -> Path:
    """A fresh copy of the demo's folder, to be changed at will."""
    folder = tmp_path / "hobbin-wood"
    write_demo(folder, TODAY)
    return folder


@pytest.fixture
def client_of() -> Iterator[Callable[[Path], TestClient]]:
    """Make a client that has come in by the door, for a folder."""
    clients = []

    def made(folder: Path) -> TestClient:
        app = make_app(Desk(folder, lambda: TODAY), ClickBench(), KEY, frozenset({HOST}))
        client = TestClient(app, base_url=f"http://{HOST}", cookies={COOKIE: KEY})
        clients.append(client)
        return client

    yield made
    for client in clients:
        client.close()


@pytest.fixture(scope="session")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Iterator[TestClient]:
    """A client for the demo, shared by tests that only look."""
    folder = tmp_path_factory.mktemp("woods") / "hobbin-wood"
    write_demo(folder, TODAY)
    app = make_app(Desk(folder, lambda: TODAY), ClickBench(), KEY, frozenset({HOST}))
    with TestClient(app, base_url=f"http://{HOST}", cookies={COOKIE: KEY}) as client:
        yield client
