"""The command `shelf show`: what a label says, where, what nobody has read yet, and who has read it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from rootcollar.cli.show import heading, json_option, print_json, text

if TYPE_CHECKING:
    from rootcollar.shelf import Sheet

__all__ = ["readers_words", "sheet_body", "show", "unread_words"]

_NAMED = 6  # unread lines named one by one (ours); more are counted


@click.command()
@click.argument("folder", type=click.Path(path_type=Path))
@click.argument("key", required=False)
@json_option
def show(folder: Path, key: str | None, as_json: bool) -> None:
    """Show what the labels on the shelf say and what is not read yet.

    Without KEY: every sheet in a line. With KEY: that sheet, line by line in the label's order.

    \b
    Example: rootcollar shelf show hobbin-wood glyphosate-3-sl
    """
    from rootcollar.exchange import read_folder
    from rootcollar.kernel.errors import NotFound

    sheets = read_folder(folder).shelf
    if key is not None and key not in sheets:
        raise NotFound("label sheet", key, sorted(sheets))
    if as_json:
        wanted = [sheets[key]] if key else [sheets[one] for one in sorted(sheets)]
        print_json("shelf-show", {"sheets": [sheet_body(one) for one in wanted]})
        return
    if key:
        _whole(sheets[key])
        return
    for name in sorted(sheets):
        _short(sheets[name])
    if not sheets:
        text(f"No label sheet yet. Begin one: rootcollar shelf add {folder}")


def sheet_body(sheet: Sheet) -> Mapping[str, Any]:
    """Return a sheet as JSON has it: what is read by address, what is not, and how two readings stand."""
    from rootcollar.jobs.sheet import sheet_parts
    from rootcollar.shelf import twice

    lines = [one for part in sheet_parts(sheet) for one in part.lines]
    both = twice(sheet)
    return {
        "key": sheet.key,
        "product": sheet.product,
        "lines": {one.address: {"says": one.says, "page": one.page} for one in lines if one.state != "unread"},
        "unread": [one.address for one in lines if one.state == "unread"],
        "read_by": both.first,
        "second_reader": both.second,
        "readings_agree": both.agrees,
        "differ": [
            {"line": one.ask, "sheet": one.first, "second": one.second, "page": one.page} for one in both.differ
        ],
        "second_left": [one.ask for one in both.left],
    }


def unread_words(sheet: Sheet) -> Iterator[str]:
    """Yield what nobody has read yet, a sentence for each part of the label."""
    from rootcollar.jobs.sheet import sheet_parts

    for part in sheet_parts(sheet):
        words = [f"{one.of}: {one.words}" if one.of else one.words for one in part.unread]
        if words:
            named = "; ".join(words) if len(words) <= _NAMED else f"{len(words)} of {len(part.lines)} lines"
            yield f"Not read yet, {part.title[:1].lower()}{part.title[1:]}: {named}."


def readers_words(sheet: Sheet) -> str:
    """Return who has read a sheet, and whether the two agree, in a sentence."""
    from rootcollar.work import readers

    return readers(sheet)


def _short(sheet: Sheet) -> None:
    from rootcollar.jobs.sheet import sheet_parts

    left = sum(len(part.unread) for part in sheet_parts(sheet))
    number, word = sheet.says("identity.epa_reg_no"), sheet.says("hazard.signal_word")
    text(f"{sheet.key}: {sheet.product}", bold=True)
    text(f"EPA Reg. No. {number or 'not read yet'}; signal word {word or 'not read yet'}; "
         f"{left or 'no'} {'line' if left == 1 else 'lines'} not read yet.", indent=2)  # fmt: skip
    text(readers_words(sheet), indent=2)


def _whole(sheet: Sheet) -> None:
    from rootcollar.jobs.sheet import sheet_parts

    text(sheet.product, bold=True)
    text(readers_words(sheet))
    for part in sheet_parts(sheet):
        heading(part.title)
        of = ""
        for line in part.lines:
            if line.of != of:
                text(line.of, indent=2, bold=True)
                of = line.of
            page = f" (page {line.page})" if line.page else ""
            text(
                f"{line.words}: {line.says}{page}",
                indent=2,
                hang=2,
                loud="not read yet" if line.state == "unread" else "",
            )
