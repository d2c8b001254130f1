"""How many examples the laws draw: all of them, or a share under the profile "quick"."""

from __future__ import annotations

from hypothesis import settings

__all__ = ["of"]

_ALL = 100  # what Hypothesis draws where nothing else is said


def of(examples: int, least: int = 5) -> int:
    """Return how many to draw where so many are wanted in a whole run. least: fewer would not show what is claimed."""
    return max(least, examples * min(settings.default.max_examples, _ALL) // _ALL)
