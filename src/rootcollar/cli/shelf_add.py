"""The command `shelf add`: a label typed line by line in its printed order, kept after every answer."""

from __future__ import annotations

from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

import click

from rootcollar.cli.shelf_ask import HOW, ON, Asker, Enough, in_property
from rootcollar.cli.shelf_show import sheet_body, unread_words
from rootcollar.cli.show import json_option, print_json

if TYPE_CHECKING:
    from rootcollar.exchange import TypedSheet
    from rootcollar.shelf import Section, Shape

__all__ = ["add"]

_NAME, _BY, _ON = "identity.product_name", "proof.read_by", "proof.read_on"
_WAYS = "the ways of using it that it gives directions for"
_MOST = 40  # blocks of one kind (ours): a figure beyond it is a slip


@click.command()
@click.argument("folder", type=click.Path(path_type=Path))
@click.argument("key", required=False)
@click.option("--all", "everything", is_flag=True, help="Ask the lines that are read already, too.")
@json_option
def add(folder: Path, key: str | None, everything: bool, as_json: bool) -> None:
    """Type what the label of a jug says, line by line in its own order.

    KEY takes up a sheet begun before: what nobody has read yet is asked. Every answer is kept at once; stop whenever
    you like.

    \b
    Example: rootcollar shelf add my-woods
    """
    in_property(folder)
    asker = Asker(err=as_json)
    try:
        walk = _Walk(folder, _begun(folder, key, asker), asker, everything)
    except click.Abort:
        asker.say("\nStopped before anything was typed.")
        raise
    try:
        walk.go()
    except click.Abort:
        click.echo(err=as_json)
        asker.say("Stopped. What was typed is kept.", bold=True)
    typed = walk.typed
    if as_json:
        print_json("shelf-add", sheet_body(typed.sheet))
        return
    click.echo()
    asker.say(f"shelf/{typed.key}.toml has {len(typed.cells)} lines.", bold=True)
    for line in unread_words(typed.sheet):
        asker.say(line, indent=2)
    asker.say(f"Take it up again: rootcollar shelf add {folder} {typed.key}")
    asker.say(f"Then let another person read it: rootcollar shelf second {folder} {typed.key}")


def _begun(folder: Path, key: str | None, asker: Asker) -> TypedSheet:
    """Return the sheet to type: the one named, begun if need be, or a new one after the product's name."""
    from rootcollar.exchange import new_key, sheet_as_typed, sheet_changed

    if key:
        return sheet_as_typed(folder, key, new=True)
    asker.say("A sheet for the jug in your hand. Type from its label, not from memory.", bold=True)
    name = ""
    while not name:
        name = asker.free("name of the product as printed")
    return sheet_changed(sheet_as_typed(folder, new_key(folder, name), new=True), {_NAME: name})


class _Walk:
    """A walk over the lines of one sheet. typed: the sheet as it stands and is kept."""

    def __init__(self, folder: Path, typed: TypedSheet, asker: Asker, everything: bool) -> None:
        from rootcollar.exchange import keep_sheet

        self.folder, self.asker, self.everything = folder, asker, everything
        self.typed = keep_sheet(folder, typed) if typed.text else typed

    def go(self) -> None:
        """Ask part after part; who reads is asked first."""
        from rootcollar.shelf import SECTIONS

        self.asker.say(HOW)
        if not self.typed.cells.get(_BY):
            self._ask(_BY)
        if self.typed.cells.get(_BY) and not self.typed.cells.get(_ON):
            self._take(_ON, date.today().isoformat())
        for section in SECTIONS:
            try:
                self._part(section)
            except Enough:
                continue

    def _part(self, section: Section) -> None:
        from rootcollar.shelf import walk

        counted = {"ingredient", "site", "method"} & set(section.lines)
        if not counted and not self._left(list(walk(section, self._shape()))):
            return
        click.echo(err=self.asker.err)
        self.asker.say(f"{section.title} ({section.place})", bold=True)
        shape = self._counted(counted, self._shape())
        for address in self._left(list(walk(section, shape))):
            self._ask(address)

    def _left(self, addresses: list[str]) -> list[str]:
        return [one for one in addresses if self.everything or not self.typed.cells.get(one)]

    def _shape(self) -> Shape:
        from rootcollar.shelf import shape_of

        return shape_of(self.typed.cells)

    def _counted(self, blocks: set[str], now: Shape) -> Shape:
        """Return how often the blocks are there as the person counts them; as they are typed where Enter is pressed."""
        from rootcollar.shelf import METHODS, Field, Shape, raw_of

        ingredients, sites, methods = now.ingredients, now.sites, now.methods
        if "ingredient" in blocks:
            ingredients = self._number("how many active ingredients it names", ingredients)
        if "site" in blocks:
            sites = self._number("how many kinds of place it allows or forbids", sites)
        if "method" in blocks:
            field = Field("method", "choices", _WAYS, among=METHODS)
            found: list[tuple[str, ...]] = []

            def take(said: str) -> str:
                raw = raw_of(field, said or "silent")
                found.append(tuple(raw) if isinstance(raw, list) else ())
                return ""

            self.asker.line(field, _WAYS, "; ".join(methods).replace("_", " "), self.asker.checked(take))
            methods = tuple(dict.fromkeys((*methods, *(found[-1] if found else ()))))
        return Shape(ingredients, sites, methods)

    def _number(self, words: str, now: int) -> int:
        while True:
            said = self.asker.free(f"{words} [{now}]")
            if said == ON:
                raise Enough
            if not said or (said.isdecimal() and 0 < int(said) <= _MOST):
                return max(now, int(said or now))
            self.asker.say(f"Wanted: a whole number, 1 to {_MOST}.", indent=2)

    def _ask(self, address: str) -> None:
        from rootcollar.shelf import block_of, field_at, page_words

        now, field = self.typed.cells.get(address, ""), field_at(address)
        words = f"{self._of(address)}{field.words if field else page_words(block_of(address))}"
        self.asker.line(field, words, now, lambda said: self._take(address, said))

    def _of(self, address: str) -> str:
        block, which, *_ = address.split(".")
        if block == "ingredient":
            return f"{self.typed.cells.get(f'ingredient.{which}.common_name', f'active ingredient {which}')}: "
        return {"site": f"place {which}: ", "method": f"{which.replace('_', ' ')}: "}.get(block, "")

    def _take(self, address: str, said: str) -> str:
        """Keep an answer and return "", or return what is wrong with it; a contradiction may be the label's own."""
        from rootcollar.exchange import keep_sheet, sheet_changed
        from rootcollar.jobs.sheet import sheet_doubts
        from rootcollar.kernel.errors import BadInput

        try:
            made = sheet_changed(self.typed, {address: said})
        except BadInput as wrong:
            return "; ".join(f"Found {one.found}; wanted: {one.allowed}." for one in wrong.faults)
        before = sheet_doubts(self.typed.sheet)
        new = [words for at, words in sheet_doubts(made.sheet).items() if before.get(at) != words]
        for words in new:
            self.asker.say(f"{words}.", indent=2)
        if new and not self.asker.yes("  Does the label print it so?"):
            return "Not kept: look once more."
        self.typed = keep_sheet(self.folder, made)
        return ""
