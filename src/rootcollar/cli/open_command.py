"""The command `open`: the app on this computer, for a property's folder."""

from __future__ import annotations

import webbrowser
from datetime import date
from pathlib import Path

import click

__all__ = ["open_folder", "run_app"]


@click.command("open")
@click.argument("folder", type=click.Path(path_type=Path))
@click.option("--no-open", is_flag=True, help="Print the address and open no browser.")
@click.option("--port", type=click.IntRange(0, 65535), default=0, help="The port to listen on. [default: any free one]")
@click.option("--json", "as_json", is_flag=True, help="Print the address as one JSON object.")
def open_folder(folder: Path, no_open: bool, port: int, as_json: bool) -> None:
    """Open FOLDER in the app, in the browser of this computer.

    A folder that is not there yet is begun with four questions. The app answers only this computer; it ends with
    Ctrl and C.

    \b
    Example: rootcollar open my-woods
    """
    run_app(folder, port, open_browser=not no_open, as_json=as_json)


def run_app(folder: Path, port: int = 0, *, open_browser: bool, as_json: bool = False) -> None:
    """Serve a folder until it is interrupted, and open the browser on it if asked to."""
    from rootcollar.cli.bench import ClickBench
    from rootcollar.cli.show import emit
    from rootcollar.web import start

    try:
        app = start(folder.absolute(), date.today, ClickBench(), port)
    except OSError as fault:
        from rootcollar.kernel.errors import BadInput, Fault

        raise BadInput(Fault(f"port {port}, which is taken ({fault.strerror})", "another --port, or none")) from None
    lines = [f"Open {app.address}", "It answers only this computer; leave with Ctrl and C."]
    emit("open", {"address": app.address}, lines, as_json)
    if open_browser:
        webbrowser.open(app.address)
    app.run()
