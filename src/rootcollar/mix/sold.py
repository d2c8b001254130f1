"""The container sizes that are usually sold, from memory, until a crew writes down its shop's own."""

from __future__ import annotations

from rootcollar.kernel.units import convert, show
from rootcollar.mix.buy import Container
from rootcollar.reference import Reference, named, numbers

__all__ = ["KINDS", "sold"]

KINDS = ("liquid", "oil", "dye", "surfactant")


def sold(kind: str, reference: Reference) -> tuple[Container, ...]:
    """Return the sizes sold of a kind, one of `KINDS`, smallest first, without prices."""
    sizes = sorted({convert(one.value, one.unit, "gal") for one in numbers(named(reference.mixing["container"], kind))})
    return tuple(Container(_words(gallons), convert(gallons, "gal", "mL")) for gallons in sizes)


def _words(gallons: float) -> str:
    return show(gallons, "gal") if gallons >= 1 else show(convert(gallons, "gal", "qt"), "qt")
