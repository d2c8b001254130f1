"""The command `rootcollar`: which commands there are, each imported only when it is asked for."""

from __future__ import annotations

import sys
from collections.abc import Mapping, Sequence
from importlib import import_module
from typing import Any, NamedTuple, NoReturn

import click

from rootcollar import __version__
from rootcollar.cli.shell import run

__all__ = ["COMMANDS", "LazyGroup", "Listed", "cli", "main"]


class Listed(NamedTuple):  # because importing dataclasses would cost --help a tenth of its time
    """A command that is not imported yet: where it stands (`module:attribute`) and its line in the list."""

    where: str
    short: str


_PLAN = "rootcollar.cli.plan_commands"
COMMANDS: Mapping[str, Listed] = {
    "demo": Listed(
        f"{_PLAN}:demo", "Write the invented property Hobbin Wood into FOLDER, plan it, and open it in the app."
    ),
    "open": Listed(
        "rootcollar.cli.open_command:open_folder", "Open FOLDER in the app, in the browser of this computer."
    ),
    "new": Listed(f"{_PLAN}:new", "Write commented templates for a property into a new FOLDER."),
    "choose": Listed(
        f"{_PLAN}:choose", "Say what to treat first, how, when and with how much, from the files in FOLDER."
    ),
    "prepare": Listed(
        f"{_PLAN}:prepare",
        "Make the work packet for FOLDER: day sheet, unit pages, mix cards, record sheet, rules weighed.",
    ),
    "shelf": Listed("rootcollar.cli.shelf_commands:shelf", "Type the label of a jug, show it, read it a second time."),
    "figure": Listed("rootcollar.cli.figure_commands:figure", "Answer a quick question of the shed, with its working."),
    "facts": Listed("rootcollar.cli.facts_commands:facts", "Show what is known, each fact with its source."),
}


class LazyGroup(click.Group):
    """A group that knows the names of its commands and imports one only to run it or to show its own help."""

    def __init__(self, *args: Any, listed: Mapping[str, Listed], **named: Any) -> None:
        """Keep the list; the rest is click's."""
        super().__init__(*args, **named)
        self.listed = listed

    def list_commands(self, ctx: click.Context) -> list[str]:
        """Return the names in the order a person meets them."""
        return list(self.listed)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        """Return the command of that name, imported now."""
        listed = self.listed.get(cmd_name)
        if listed is None:
            return None
        module, _, attribute = listed.where.partition(":")
        command: click.Command = getattr(import_module(module), attribute)
        return command

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """Write the list of commands without importing one."""
        with formatter.section("Commands"):
            formatter.write_dl([(name, listed.short) for name, listed in self.listed.items()])

    def main(self, args: Sequence[str] | None = None, *more: Any, **named: Any) -> NoReturn:
        """Run the command line and leave with its exit code; errors are said as sentences."""
        words = list(sys.argv[1:] if args is None else args)
        sys.exit(run(words, lambda: super(LazyGroup, self).main(words, "rootcollar", standalone_mode=False)))


@click.group(
    cls=LazyGroup, listed=COMMANDS, context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100}
)
@click.version_option(__version__, prog_name="rootcollar")
def cli() -> None:
    """Plan the removal of invasive woody plants from woodland, stem by stem, with hand tools.

    The label in your hand is the law; rootcollar weighs a plan against the sheet you typed from it and never says
    that work is safe or legal.

    \b
    Example: rootcollar figure mix --percent 3 --total "3 gal"
    """


def main() -> NoReturn:
    """Run the command line of this process."""
    cli.main()
