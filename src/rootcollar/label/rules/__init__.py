"""The rules, one file a theme, in the order they are weighed and printed."""

from rootcollar.label.rules import identity, sums, site_pest, method, strength, dose, people  # isort: skip
from rootcollar.label.rules import permission, surfactant, water, rates, yearly  # isort: skip
from rootcollar.label.rules import hazard, jug, carried, partner, less, day  # isort: skip

__all__ = [
    "carried", "day", "dose", "hazard", "identity", "jug", "less", "method", "partner", "people", "permission",
    "rates", "site_pest", "strength", "sums", "surfactant", "water", "yearly",
]  # fmt: skip
