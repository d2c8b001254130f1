"""A count mended for what was missed, its doubt carried along."""

from __future__ import annotations

import numpy as np

from rootcollar.kernel.doubt import Worlds
from rootcollar.kernel.formula import formula

__all__ = ["mended", "mended_count"]


@formula("counted / share", gives="stems", source="BURNHAM80", counted=(0, 1000), share=(0.05, 1))
def mended_count(counted: Worlds, share: Worlds) -> Worlds:
    """Return the stems that stand where so many were counted. share: of all that is seen, above 0 to 1;
    worlds in, worlds out."""
    return counted / share


def mended(counted: Worlds, share: Worlds) -> Worlds:
    """Return a count mended for detection, world by world, so that both doubts are in it; a sure number is one world.

    share: of stems seen, in each world above 0 to 1; a share of nothing cannot mend a count. Raises ValueError else.
    """
    if not np.all((share > 0) & (share <= 1)):
        raise ValueError("want a share seen above 0, at most 1, in every world")
    return mended_count(counted, share)
