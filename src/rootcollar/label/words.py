"""Comparing names as people write them: case, hyphens and plurals do not count."""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import cache

from rootcollar.kernel.units import show

__all__ = ["METHOD_NAMES", "apart", "flat", "listing", "method_words", "mentions"]

METHOD_NAMES: dict[str, tuple[str, ...]] = {
    "hack_squirt": ("hack and squirt", "hack squirt", "frill"),
    "cut_stump": ("cut stump", "stump"),
    "basal_bark": ("basal bark", "basal"),
    "foliar": ("foliar", "foliar spray"),
    "vine_cut": ("vine cut", "cut vine"),
    "injection": ("injection", "stem injection", "tree injection"),
    "wipe": ("wipe", "wick"),
    "soil": ("soil",),
    "thinline": ("thinline", "thin line", "streamline"),
}


_MOST_DIGITS = 12  # figures that a typed number can carry


def apart(found: float, limit: float, unit: str) -> tuple[str, str]:
    """Return two figures in words with as many digits as it takes to tell them apart: 30.0004% above 30%."""
    for digits in range(3, _MOST_DIGITS):
        words = show(found, unit, digits), show(limit, unit, digits)
        if words[0] != words[1]:
            break
    return words


@cache
def flat(text: str) -> str:
    """Return a name for comparing: lower case, single spaces, no hyphens, no plural s."""
    words = re.sub(r"[-_/,;()]+", " ", text.lower()).split()
    return " ".join(
        word[:-1] if len(word) > 2 and word.endswith("s") and not word.endswith("ss") else word for word in words
    )


def mentions(text: str, names: Iterable[str]) -> bool:
    """Return whether a text holds one of the names as whole words."""
    padded = f" {flat(text)} "
    return any(f" {flat(name)} " in padded for name in names)


def method_words(method: str) -> str:
    """Return a method's key as words: hack_squirt as `hack and squirt`."""
    return METHOD_NAMES.get(method, (method.replace("_", " "),))[0]


def listing(items: Iterable[str]) -> str:
    """Return items as a list in words, or `nothing`."""
    return ", ".join(items) or "nothing"
