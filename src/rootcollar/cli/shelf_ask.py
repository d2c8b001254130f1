"""Asking for a line of a label in the terminal: one plain question, its unit and its choices, and what may be typed."""

from __future__ import annotations

import os
import textwrap
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

import click

from rootcollar.cli.show import columns

if TYPE_CHECKING:
    from rootcollar.shelf import Field

__all__ = ["Asker", "Enough", "HOW", "ON", "in_property"]

HOW = (
    "Type what the label says; silent, where you read it and it says nothing; nothing (Enter), where you have not "
    "looked yet. A minus sign alone takes a line back; > goes to the next part; Ctrl and C stops. All is kept."
)
ON = ">"  # typed to go on to the next part
_BACK = "-"  # typed to take a line back


class Enough(Exception):
    """The person goes on to the next part."""


@dataclass(frozen=True, slots=True)
class Asker:
    """Asks on the terminal; err: on its other stream, so that an answer as JSON stays alone on the first."""

    err: bool = False

    def say(self, words: str, *, bold: bool = False, indent: int = 0) -> None:
        """Print words, wrapped to the terminal."""
        inset = " " * indent
        lines = textwrap.fill(words, columns(), initial_indent=inset, subsequent_indent=inset, break_on_hyphens=False)
        click.secho(lines, bold=bold, err=self.err, color=False if os.environ.get("NO_COLOR") else None)

    def free(self, words: str, default: str = "") -> str:
        """Return a typed text, the default where nothing was typed."""
        said: str = click.prompt(words, default=default, show_default=bool(default), err=self.err)
        return said.strip()

    def yes(self, words: str) -> bool:
        """Return whether the person says yes; no where nothing was typed."""
        return click.confirm(words, default=False, err=self.err)

    def line(self, field: Field | None, words: str, now: str, take: Callable[[str], str]) -> None:
        """Ask for one line until it is taken. field: None for a page. now: as it is typed already.

        take: keeps what was typed ("" to take the line back) and returns what is wrong with it, in words, or "".
        Raises Enough where the person goes on to the next part.
        """
        from rootcollar.shelf import form_of

        form = form_of(field) if field else "a number or a few words"
        while True:
            said = self.free(f"{words} ({form}){f' [{now}]' if now else ''}" if form else words)
            if said == ON:
                raise Enough
            if not said:
                return
            wrong = take("" if said == _BACK else said)
            if not wrong:
                return
            self.say(wrong, indent=2)

    def checked(self, take: Callable[[str], str]) -> Callable[[str], str]:
        """Return a way of keeping an answer that says in words what it cannot hold."""
        from rootcollar.shelf import NotAllowed

        def kept(said: str) -> str:
            try:
                return take(said)
            except NotAllowed as wrong:
                return f"Wanted: {wrong}."

        return kept


def in_property(folder: Path) -> None:
    """Raise BadInput where a folder is none of a property."""
    from rootcollar.kernel.errors import BadInput, Fault

    if not (folder / "ground.toml").exists():
        raise BadInput(Fault(f"no property in {folder}", "a folder made by `rootcollar new` or begun in the app"))
