"""The shell around every command: what went wrong is said in a sentence and told by the exit code, never by a trace."""

from __future__ import annotations

import os
import sys
from collections.abc import Callable, Mapping, Sequence
from typing import Any

import click

__all__ = ["BAD_INPUT", "INTERRUPTED", "OURS", "PIPE_CLOSED", "run"]

BAD_INPUT, OURS = 2, 3
INTERRUPTED, PIPE_CLOSED = 130, 141  # what shells give for a program ended by an interrupt or by a closed pipe


def run(words: Sequence[str], command: Callable[[], object]) -> int:
    """Run a command and return its exit code; errors are said on stderr, or as JSON on stdout where `--json` asks."""
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):  # because a console of old Windows has no sign for ≤ and must not stop there
            stream.reconfigure(errors="replace")
    try:
        code = command()
        sys.stdout.flush()
    except click.exceptions.NoArgsIsHelpError as asked:
        click.echo(asked.format_message())
        return 0
    except (click.Abort, KeyboardInterrupt):
        return INTERRUPTED
    except SystemExit:  # click's own way out when nobody reads any more; it has quieted the streams
        return PIPE_CLOSED
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())  # the reader left; the last flush must not fail
        return PIPE_CLOSED
    except Exception as error:
        return _tell(error, as_json="--json" in words)
    return code if isinstance(code, int) else 0


def _tell(error: Exception, as_json: bool) -> int:
    code, kind, message, faults = _told(error)
    if code == OURS and os.environ.get("ROOTCOLLAR_TRACE") == "1":
        sys.excepthook(type(error), error, error.__traceback__)
    if as_json:
        import json

        body = {"schema": "rootcollar/error/1", "kind": kind, "faults": faults, "message": message}
        click.echo(json.dumps(body, indent=2))
    elif isinstance(error, click.ClickException):
        error.show()
    else:
        click.echo(message, err=True)
    return code


def _told(error: Exception) -> tuple[int, str, str, list[Mapping[str, Any]]]:
    """Return exit code, kind, message and faults of an error."""
    from rootcollar.kernel.errors import BadInput, RootcollarError

    kind = type(error).__name__
    if isinstance(error, BadInput):
        faults: list[Mapping[str, Any]] = [
            {"file": one.file, "row": one.row, "field": one.field, "found": one.found, "allowed": one.allowed}
            for one in error.faults
        ]
        return error.exit_code, kind, str(error), faults
    if isinstance(error, RootcollarError):
        return error.exit_code, kind, str(error), []
    if isinstance(error, click.ClickException):
        return BAD_INPUT, "Usage", error.format_message(), []
    if isinstance(error, OSError) and error.filename is not None:
        return BAD_INPUT, "File", f"{error.filename}: {error.strerror}", []
    return OURS, "Ours", _our_fault(error), []


def _our_fault(error: Exception) -> str:
    said = f"{type(error).__name__}: {error}" if str(error) else type(error).__name__
    return (
        f"Something went wrong on our side, not yours ({' '.join(said.split())}); nothing here may be relied on. "
        "Set ROOTCOLLAR_TRACE=1 and run it again to see where, and please report it."
    )
