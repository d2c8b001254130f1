"""What a vehicle may carry of classed products as material of trade: most in a package, most in all."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from rootcollar.kernel.formula import formula, use
from rootcollar.kernel.units import convert
from rootcollar.reference import NamedFigure, named, numbers

__all__ = [
    "Package", "is_classed", "liquid_kg", "most_in_package_ml", "most_in_vehicle_kg", "packing_group", "too_large",
]  # fmt: skip

_GROUPS = {"1": "I", "2": "II", "3": "III"}
_UNCLASSED = frozenset({"", "not regulated", "none", "unregulated", "not classed"})


@dataclass(frozen=True, slots=True)
class Package:
    """A jug that goes along, in words. volume_ml: what it holds [mL]. weight_kg: its liquid [kg], None: not known."""

    words: str
    volume_ml: float
    weight_kg: float | None = None


@formula(
    "volume_ml / 1000 * density_g_per_ml",
    gives="kg",
    source="arithmetic",
    volume_ml=(100, 100000),
    density_g_per_ml=(0.8, 1.4),
)
def liquid_kg(volume_ml: float, density_g_per_ml: float) -> float:
    """Return the weight of a liquid, without its jug [kg]. volume_ml: of it [mL]. density_g_per_ml: [g/mL]."""
    return volume_ml / 1000 * density_g_per_ml


def packing_group(words: str) -> str:
    """Return the packing group that some words name, I, II or III ("PG III", "3"); "" for none of them."""
    found = re.fullmatch(r"(?:PG|PACKING GROUP)?\s*(III|II|I|[123])", words.strip().upper())
    return _GROUPS.get(found[1], found[1]) if found else ""


def is_classed(words: str) -> bool:
    """Return whether the words of a label or safety sheet name a transport class."""
    return words.strip().lower() not in _UNCLASSED


def too_large(package: Package, group: str, rows: Sequence[NamedFigure]) -> bool:
    """Return whether a jug holds more than one package of a classed product may, by volume or by weight [CFR173-6].

    group, rows: as `most_in_package_ml`. The jug's own weight is not counted.
    """
    if package.volume_ml > most_in_package_ml(group, rows):
        return True
    most_kg = convert(_figure(rows, "package_pg_ii_iii_lb"), "lb", "kg") if group in ("II", "III") else float("inf")
    return package.weight_kg is not None and package.weight_kg > most_kg


def most_in_package_ml(group: str, rows: Sequence[NamedFigure]) -> float:
    """Return the most that one package holds of a classed liquid [mL] [CFR173-6]; an unknown group counts as I.

    group: packing group I, II or III, "" while not known. rows: the topic `transport` of the facts.
    """
    if group in ("II", "III"):
        return convert(_figure(rows, "package_pg_ii_iii_gal"), "gal", "mL")
    return convert(_figure(rows, "package_pg_i_pt"), "pt", "mL")


def most_in_vehicle_kg(rows: Sequence[NamedFigure]) -> float:
    """Return the most that a vehicle carries of all classed products, packages weighed with them [kg] [CFR173-6]."""
    return convert(_figure(rows, "vehicle_lb"), "lb", "kg")


def _figure(rows: Sequence[NamedFigure], name: str) -> float:
    return use(numbers(named(rows, name))[0])
