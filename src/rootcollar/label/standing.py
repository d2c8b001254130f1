"""Trees that die on their feet: which are big enough to hurt somebody when they fall, and how far they may reach."""

from __future__ import annotations

from rootcollar.kernel.units import convert

__all__ = ["most_tall_m", "thick_enough", "too_low"]

_SLENDER = 100  # ours: no stem stands taller than so many times its thickness; trees in close stands come near it

# Ours: a dead stem no thicker or no taller falls as brush does. No source found draws this line; the national forest
# inventory calls a stem a tree, standing dead ones too, from 5 in on (read), so this errs on the careful side.
_BRUSH_IN = 4.0
_HAIR = 1 + 1e-9  # a size class that ends at the limit ends there in centimetres too
_BRUSH_FT = 10.0  # ours, as above: hardly above a head and a raised arm


def most_tall_m(stature: tuple[float | None, float]) -> float:
    """Return how tall stems may stand [m]: as counted, or the most that their thickness lets them.

    stature: their height [m], None where not counted; the thickest stem [cm]. Only for what stops, and stops too often.
    """
    height_m, thickest_cm = stature
    return _SLENDER * thickest_cm / 100 if height_m is None else height_m


def thick_enough(thickest_cm: float) -> bool:
    """Return whether a dead stem so thick [cm] falls harder than brush."""
    return convert(thickest_cm, "cm", "in") > _BRUSH_IN * _HAIR


def too_low(height_m: float | None) -> bool:
    """Return whether a stem so tall [m] falls as brush does; where nobody counted (None), it is not taken for brush."""
    return height_m is not None and convert(height_m, "m", "ft") <= _BRUSH_FT * _HAIR
