"""How far to stand from somebody who fells: lengths of the tree that comes down."""

from __future__ import annotations

from rootcollar.kernel.formula import formula

__all__ = ["felling_distance_m"]


@formula("height_m * lengths", gives="m", source="CFR1910-266", height_m=(1, 40), lengths=(2, 3))
def felling_distance_m(height_m: float, lengths: float) -> float:
    """Return how far everybody else stays from a tree that is felled [m]. height_m: of the tree [m].

    lengths: tree lengths between people and tree; more on a slope where things roll.
    """
    return height_m * lengths
