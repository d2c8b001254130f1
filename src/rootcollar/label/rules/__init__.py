"""The rules, one file a theme, in the order they are weighed and printed."""

from rootcollar.label.rules import identity, sums, site_pest, method, strength, dose, people  # isort: skip
from rootcollar.label.rules import permission, surfactant, water, rates, yearly  # isort: skip
from rootcollar.label.rules import certified, handlers, overhead, mixing_place, roots, taken, readers  # isort: skip

__all__ = [
    "dose", "identity", "method", "people", "permission", "rates", "site_pest", "strength", "sums", "surfactant",
    "water", "yearly", "certified", "handlers", "mixing_place", "overhead", "readers", "roots", "taken",
]  # fmt: skip
