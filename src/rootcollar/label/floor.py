"""Categories and wear as typed on a sheet, ready for the federal figures: what they lead to and what is lacking."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from rootcollar.hazard import ROUTES, Category, Route
from rootcollar.label.words import flat, mentions

__all__ = ["CATEGORIES", "categories_of", "demands_eyewear", "lacking"]

CATEGORIES = tuple(f"hazard.category.{route}" for route in ROUTES)  # the lines of a sheet, in the order of the routes

# What labels call the items of the floor; the one word is as good as the other.
_ALSO = {
    "long sleeves": ("long sleeved shirt", "long sleeve shirt"),
    "long trousers": ("long pants",),
    "shoes and socks": ("shoes plus socks", "socks and shoes", "socks plus shoes"),
    "protective eyewear": ("goggles", "face shield", "safety glasses"),
}
_EYES = ("eyewear", "goggles", "face shield", "safety glasses")


def categories_of(said: Sequence[str | None]) -> dict[Route, Category]:
    """Return the categories that are known. said: as typed, in the order of the routes; None where it is not said."""
    return {route: Category[name] for route, name in zip(ROUTES, said, strict=True) if name}


def lacking(floor: Iterable[str], listed: Iterable[str]) -> tuple[str, ...]:
    """Return the items of a floor that a label's list does not hold; gloves of any kind count as gloves."""
    have = {flat(one) for one in listed}
    parts = {word for one in have for word in one.split(" and ")}
    gloved = any("glove" in one for one in have)
    said = have | parts
    return tuple(
        one
        for one in floor
        if not any(mentions(kept, (one, *_ALSO.get(one, ()))) for kept in said) and not ("glove" in one and gloved)
    )


def demands_eyewear(items: Iterable[str]) -> bool:
    """Return whether a list of wear holds something for the eyes."""
    return any(word in item.lower() for item in items for word in _EYES)
