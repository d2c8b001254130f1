"""An empty label sheet to type into: every line there, commented out, with its words."""

from __future__ import annotations

from collections.abc import Iterator

from rootcollar.shelf.fields import FIELDS, METHODS, Field
from rootcollar.shelf.parse import SCHEMA

__all__ = ["template"]

_HEAD = f"""\
# A label sheet. Type what the label on your own jug says, nothing else.
#
# Take away the # before a line and write the value behind the =. Write "silent" (with the quotes) where you have read
# the label and it says nothing. Leave the # where you have not looked yet: a rule that needs the line will then ask.
# In any block you may add  page = 7  to say where on the label it stands.
# No sheet for a real product comes with this program: only the label in your hand counts.

sheet = "{SCHEMA}"
"""

_LISTS = {
    "ingredient": "The active ingredients: one block each. Take away the # of the heading too, and repeat it for each.",
    "site": "The places it may be used: one block each, and one for each place it forbids.",
    "method": "The directions: one block for each way of using it. Copy the block, give it its kind, fill its lines.",
}


def template() -> str:
    """Return an empty sheet as TOML text; untouched, it is a sheet of which nothing has been read."""
    parts = [_HEAD]
    for block in dict.fromkeys(path.split(".")[0] for path in FIELDS):
        rows = [row for path, row in FIELDS.items() if path.startswith(f"{block}.")]
        parts.append("\n".join(_block(block, rows)) + "\n")
    return "\n".join(parts)


def _block(name: str, rows: list[Field]) -> Iterator[str]:
    if name in _LISTS:
        yield f"# {_LISTS[name]}"
        yield f"# [[{name}]]"
    else:
        yield f"[{name}]"
    if name == "method":
        yield from _line("kind", f"which way of using it ({' | '.join(METHODS)})")
    for row in rows:
        yield from _line(row.path.removeprefix(f"{name}."), _words(row))


def _line(key: str, words: str) -> Iterator[str]:
    yield f"# {key} ="
    yield f"#     {words}"


def _words(row: Field) -> str:
    form = {
        "text": '"in quotes"',
        "texts": '["a list", "in quotes"]',
        "states": '["WV", "OH"]',
        "flag": "true or false",
        "number": "a number",
        "count": "a whole number",
        "percent": "a number, 0 to 100",
        "date": "year-month-day",
        "choice": " | ".join(f'"{one}"' for one in row.among),
        "choices": "a list of " + ", ".join(f'"{one}"' for one in row.among),
        "distances": '[{ from = "surface water", ft = 0, methods = ["foliar"] }]',
    }[row.kind]
    unit = f" [{row.unit}]" if row.unit else ""
    only = f" ({', '.join(row.methods)} only)" if row.methods else ""
    return f"{row.words}{unit}{only}: {form}"
