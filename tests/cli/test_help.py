"""Help: quick to come, plain, with an example each, and its caution first."""

import subprocess
import sys

import click
import pytest
from click.testing import CliRunner

from rootcollar.cli.figure_commands import FIGURES
from rootcollar.cli.main import COMMANDS, cli

CAUTION = (
    "The label in your hand is the law; rootcollar weighs a plan against the sheet you typed from it and never says "
    "that work is safe or legal."
)
HEAVY = ("numpy", "rich", "pydantic", "shapely", "pyproj", "typst", "tomllib", "json", "dataclasses")


def every() -> list[tuple[str, ...]]:
    """Return the words of every command and of every group in it."""
    found: list[tuple[str, ...]] = [(name,) for name in COMMANDS]
    context = click.Context(cli)
    for name in COMMANDS:
        command = cli.get_command(context, name)
        if isinstance(command, click.Group):
            found += [(name, inner) for inner in command.list_commands(context)]
    return found


def command(words: tuple[str, ...]) -> click.Command:
    """Return a command by its words."""
    found = cli.get_command(click.Context(cli), words[0])
    for word in words[1:]:
        assert isinstance(found, click.Group)
        found = found.get_command(click.Context(found), word)
    assert found is not None
    return found


def test_help_imports_no_library_but_click() -> None:
    asks = "import sys; from rootcollar.cli.main import cli\ntry: cli.main(['--help'])\nexcept SystemExit: pass\n"
    asks += "print('MODULES', *sys.modules)"
    said = subprocess.run([sys.executable, "-c", asks], capture_output=True, text=True, check=True, timeout=60).stdout
    modules = said.partition("MODULES")[2].split()
    assert "click" in modules
    assert [name for name in modules if name in HEAVY] == []
    ours = {name for name in modules if name.startswith("rootcollar")}
    assert ours == {"rootcollar", "rootcollar.cli", "rootcollar.cli.main", "rootcollar.cli.shell"}


@pytest.mark.parametrize("name", COMMANDS)
def test_the_list_of_commands_says_what_the_command_says_itself(name: str) -> None:
    assert f"{command((name,)).get_short_help_str(limit=200).rstrip('.')}." == COMMANDS[name].short


@pytest.mark.parametrize("name", FIGURES)
def test_the_list_of_questions_says_what_the_command_says_itself(name: str) -> None:
    assert f"{command(('figure', name)).get_short_help_str(limit=200).rstrip('.')}." == FIGURES[name].short


@pytest.mark.parametrize("words", every(), ids=" ".join)
def test_every_command_explains_itself_with_an_example_and_takes_json(words: tuple[str, ...]) -> None:
    said = CliRunner().invoke(cli, [*words, "--help"])
    assert said.exit_code == 0
    assert "Example: rootcollar " + " ".join(words) in said.stdout
    one = command(words)
    if not isinstance(one, click.Group):
        assert "--json" in said.stdout
        assert all(getattr(option, "help", "") for option in one.params if isinstance(option, click.Option))


def test_the_help_opens_with_what_it_is_for_and_the_caution() -> None:
    said = " ".join(CliRunner().invoke(cli, ["--help"]).stdout.split())
    assert said.index("Plan the removal of invasive woody plants") < said.index(CAUTION) < said.index("Commands:")


def test_version_is_told() -> None:
    assert "rootcollar, version " in CliRunner().invoke(cli, ["--version"]).stdout
