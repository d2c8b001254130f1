"""The rules, one file a theme, in the order they are weighed and printed."""

from rootcollar.label.rules import identity, sums, site_pest, method, strength, dose, people  # isort: skip
from rootcollar.label.rules import permission, surfactant, water, rates, yearly  # isort: skip
from rootcollar.label.rules import certified, handlers, overhead, fall, mixing_place, roots, taken  # isort: skip
from rootcollar.label.rules import readers, hazard, jug, carried, partner, less, day  # isort: skip

__all__ = [
    "carried", "certified", "day", "dose", "fall", "handlers", "hazard", "identity", "jug", "less", "method",
    "mixing_place", "overhead", "partner", "people", "permission", "rates", "readers", "roots", "site_pest",
    "strength", "sums", "surfactant", "taken", "water", "yearly",
]  # fmt: skip
