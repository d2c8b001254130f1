"""Starting the app on this computer: a free port, a key for this start, and the address to open."""

from __future__ import annotations

import secrets
import socket
from collections.abc import Callable
from datetime import date
from pathlib import Path

import uvicorn

from rootcollar.web.app import make_app
from rootcollar.web.bench import Bench
from rootcollar.web.desk import Desk

__all__ = ["Served", "start"]

_HERE = "127.0.0.1"  # never another address: the app is for this computer only


class Served:
    """An app that listens, ready to run. base: its address; address: the same with the key of this start."""

    def __init__(self, server: uvicorn.Server, listening: socket.socket, base: str, key: str) -> None:
        """Keep the server and the port it has."""
        self._server, self._listening = server, listening
        self.base, self.address = base, f"{base}/enter?key={key}"

    def run(self) -> None:
        """Answer until stopped or interrupted."""
        with self._listening:
            self._server.run(sockets=[self._listening])

    def stop(self) -> None:
        """Let `run` end."""
        self._server.should_exit = True


def start(folder: Path, today: Callable[[], date], bench: Bench, port: int = 0) -> Served:
    """Return the app for a folder, listening on this computer only. port: 0 for any that is free.

    Raises OSError when the port is taken.
    """
    key = secrets.token_urlsafe(24)
    listening = socket.socket()
    listening.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    listening.bind((_HERE, port))
    listening.listen()
    at = listening.getsockname()[1]
    app = make_app(Desk(folder, today), bench, key, frozenset({f"{_HERE}:{at}", f"localhost:{at}"}))
    config = uvicorn.Config(app, log_level="warning", access_log=False, server_header=False)
    return Served(uvicorn.Server(config), listening, f"http://{_HERE}:{at}", key)
