"""Which letters our type has; what stands in a text is made printable without losing any of it."""

from __future__ import annotations

import re
import struct
import unicodedata
from functools import lru_cache
from pathlib import Path

__all__ = ["FONTS", "printable"]

FONTS = Path(__file__).parent / "fonts"
_FACE = FONTS / "SourceSans3-Regular.ttf"
_LONG_WORD = 24  # letters; ours: a longer word may be broken anywhere after this many, so that no column bursts
_BREAK_HERE = "\u200b"
_PERCENT = re.compile(r"(?<=[0-9]) %")
_CHARACTERS_TABLE = 12  # the cmap format that covers all of Unicode [OpenType, cmap]


def printable(text: str) -> str:
    """Return the text with only letters our type has: other signs by name in brackets, endless words breakable.

    A number and its percent sign stay on one line.
    """
    known = letters()
    whole = unicodedata.normalize("NFC", text)
    said = "".join(sign if ord(sign) in known or sign == "\n" else _spelled(sign) for sign in whole)
    return _PERCENT.sub("\u00a0%", " ".join(_breakable(word) for word in said.split(" ")))


def _spelled(sign: str) -> str:
    """Return a sign we have no shape for as its name; nothing for signs that have no shape of their own."""
    if unicodedata.category(sign) in {"Cc", "Cf", "Mn"}:
        return " " if sign == "\t" else ""
    return f"[{unicodedata.name(sign, 'a sign without name').lower()}]"


def _breakable(word: str) -> str:
    """Return a very long word with invisible places to break it."""
    if len(word) <= _LONG_WORD:
        return word
    return _BREAK_HERE.join(word[start : start + _LONG_WORD // 2] for start in range(0, len(word), _LONG_WORD // 2))


@lru_cache(maxsize=1)
def letters() -> frozenset[int]:
    """Return the code points our type has a shape for, read from its character map [OpenType, cmap]."""
    face = _FACE.read_bytes()
    start = _table(face, b"cmap")
    (tables,) = struct.unpack_from(">H", face, start + 2)
    found: set[int] = set()
    for index in range(tables):
        (offset,) = struct.unpack_from(">I", face, start + 4 + 8 * index + 4)
        (kind,) = struct.unpack_from(">H", face, start + offset)
        if kind == _CHARACTERS_TABLE:
            (groups,) = struct.unpack_from(">I", face, start + offset + 12)
            for group in struct.iter_unpack(">III", face[start + offset + 16 : start + offset + 16 + 12 * groups]):
                found.update(range(group[0], group[1] + 1))
    return frozenset(found) - frozenset(range(ord(" "))) | {ord(_BREAK_HERE)}


def _table(face: bytes, name: bytes) -> int:
    """Return where a table of a font file begins [OpenType, table directory]."""
    (tables,) = struct.unpack_from(">H", face, 4)
    for index in range(tables):
        tag, _, offset, _ = struct.unpack_from(">4sIII", face, 12 + 16 * index)
        if tag == name:
            return int(offset)
    raise LookupError(f"the font has no table {name!r}")
