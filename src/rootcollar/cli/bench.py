"""The quick questions for the app: the same options, read by the same commands, the answer handed over unprinted."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from functools import lru_cache

import click

from rootcollar.cli.figure_commands import FIGURES, figure
from rootcollar.cli.figure_shared import handed_over
from rootcollar.jobs.figure import Worked
from rootcollar.kernel.errors import BadInput, Fault, NotFound
from rootcollar.web.bench import Entry, Question

__all__ = ["ClickBench"]

_HINT = re.compile(r"'([^']+)'")


class ClickBench:
    """The bench as the commands of `figure` have it."""

    def questions(self) -> Sequence[Question]:
        """Return every question, in the order of the commands."""
        return tuple(_question(name) for name in FIGURES)

    def ask(self, name: str, told: Mapping[str, Sequence[str]]) -> Worked:
        """Run a command with the fields as its options and return what it would have printed."""
        command = _command(name)
        options: list[str] = []
        plain: list[str] = []
        for param in _params(command):
            for said in told.get(param.name or "", ()):
                if isinstance(param, click.Argument):
                    plain.append(said)
                else:
                    options.append(f"{param.opts[-1]}={said}")
        with handed_over() as answers:
            try:
                command.main([*options, "--", *plain], name, standalone_mode=False)
            except click.UsageError as wrong:
                option = getattr(getattr(wrong, "param", None), "name", "") or ""
                raise BadInput(Fault(wrong.format_message().rstrip("."), "see the field", field=option)) from None
        return answers[0]


def _command(name: str) -> click.Command:
    found = figure.get_command(click.Context(figure), name) if name in FIGURES else None
    if found is None:
        raise NotFound("question", name, list(FIGURES))
    return found


def _params(command: click.Command) -> list[click.Parameter]:
    return [one for one in command.params if one.name not in ("as_json", "help")]


@lru_cache(maxsize=64)
def _question(name: str) -> Question:
    command = _command(name)
    return Question(name, FIGURES[name].short, tuple(_entry(one) for one in _params(command)))


def _entry(param: click.Parameter) -> Entry:
    name = param.name or ""
    words = (param.opts[-1] if isinstance(param, click.Option) else name).strip("-").replace("-", " ")
    help_ = (getattr(param, "help", "") or "").replace("\n", " ")
    needed = param.required and not param.multiple
    if name == "sheet":
        return Entry(name, "label sheet", "weigh the answer against it", "sheet")
    if isinstance(param.type, click.Choice):
        return Entry(name, words, help_, "choice", tuple(map(str, param.type.choices)), needed)
    return Entry(name, words, help_, "several" if param.multiple or param.nargs != 1 else "text", (), needed)
