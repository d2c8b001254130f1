"""The command `shelf second`: another person types the lines on which most hangs, without seeing the sheet."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

import click

from rootcollar.cli.shelf_ask import Asker, Enough, in_property
from rootcollar.cli.shelf_show import readers_words, sheet_body
from rootcollar.cli.show import json_option, print_json

if TYPE_CHECKING:
    from rootcollar.shelf import Again, Second, Sheet

__all__ = ["second"]

_HOW = (
    "Another person's sheet is checked here: type what you read on the label yourself. What stands on the sheet is "
    "not shown, so ask nobody. silent: it says nothing. Enter: later. > goes to the next part; Ctrl and C stops; all "
    "is kept."
)


@click.command()
@click.argument("folder", type=click.Path(path_type=Path))
@click.argument("key")
@click.option("--by", metavar="NAME", help="Who reads; another person than who typed the sheet.")
@json_option
def second(folder: Path, key: str, by: str | None, as_json: bool) -> None:
    """Type the lines on which most hangs a second time, by another person.

    Strength, limits, places, wear, and every line of which the first reader says that the label is silent. Where the
    two differ, neither counts until somebody has opened the label and typed the line again.

    \b
    Example: rootcollar shelf second my-woods my-jug --by "Elspeth Tarn"
    """
    from rootcollar.exchange import sheet_as_typed, with_second
    from rootcollar.shelf import twice

    in_property(folder)
    asker = Asker(err=as_json)
    sheet = with_second(sheet_as_typed(folder, key).sheet, folder / "shelf")
    try:
        sheet = _read(folder, sheet, by, asker)
    except click.Abort:
        click.echo(err=as_json)
        asker.say("Stopped. What was typed is kept.", bold=True)
        sheet = with_second(sheet, folder / "shelf")
    if as_json:
        print_json("shelf-second", sheet_body(sheet))
    else:
        _tell(sheet, asker)
    if not twice(sheet).agrees:
        raise click.exceptions.Exit(1)


def _read(folder: Path, sheet: Sheet, by: str | None, asker: Asker) -> Sheet:
    """Ask what is not read a second time yet, and what the two read differently; return the sheet as it stands."""
    from rootcollar.exchange import keep_second
    from rootcollar.shelf import Second, twice

    before = sheet.second
    begun = Second(by or asker.free("who reads the label now"), date.today(), {})
    begun = _taken_up(begun, before, asker)
    keep_second(folder, sheet, begun)
    sheet = replace(sheet, second=begun)
    both = twice(sheet)
    asker.say(_HOW)
    parts: dict[str, list[Again]] = {}
    for one in (*both.differ, *both.left):
        parts.setdefault(one.section, []).append(one)
    order = list(dict.fromkeys(one.section for one in both.lines))
    for section in sorted(parts, key=order.index):
        click.echo(err=asker.err)
        asker.say(section, bold=True)
        for again in sorted(parts[section], key=both.lines.index):
            try:
                sheet = _ask(folder, sheet, again, asker)
            except Enough:
                break
    return sheet


def _taken_up(begun: Second, before: Second | None, asker: Asker) -> Second:
    """Return the reading with what the same person typed before; another person begins anew, and says so."""
    from rootcollar.shelf import same_person

    if before is None or not before.lines:
        return begun
    if same_person(before.read_by, begun.read_by):
        return replace(begun, lines=before.lines)
    asker.say(f"{before.read_by} has read {len(before.lines)} lines a second time, {before.read_on.isoformat()}.")
    if not asker.yes(f"Begin anew as {begun.read_by}?"):
        raise click.Abort
    return begun


def _ask(folder: Path, sheet: Sheet, again: Again, asker: Asker) -> Sheet:
    """Ask one line blind, keep the answer, and return the sheet with it."""
    from rootcollar.exchange import keep_second
    from rootcollar.shelf import value_again

    kept = [sheet]

    def take(said: str) -> str:
        now = kept[-1].second
        assert now is not None
        lines: Mapping[str, str] = {one: words for one, words in now.lines.items() if one != again.ask}
        lines = {**lines, again.ask: value_again(again, said)} if said else lines
        made = replace(now, lines=lines)
        keep_second(folder, kept[-1], made)
        kept.append(replace(kept[-1], second=made))
        return ""

    asker.line(again.field, again.words, "", asker.checked(take))
    return kept[-1]


def _tell(sheet: Sheet, asker: Asker) -> None:
    from rootcollar.shelf import twice

    both = twice(sheet)
    click.echo()
    asker.say(readers_words(sheet), bold=True)
    for one in both.differ:
        page = f" (label page {one.page})" if one.page else ""
        asker.say(f"{one.words}{page}: the sheet has {one.first}; {both.second} read {one.second}.", indent=2)
    if both.differ:
        asker.say("Neither counts yet. Open the label together; whoever read it wrongly types the line again.")
