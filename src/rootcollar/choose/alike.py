"""Lines that are treated alike, put together: what a crew does is one instruction, whatever the sizes."""

from __future__ import annotations

from collections.abc import Sequence

from rootcollar.choose.option import Choice

__all__ = ["alike"]


def alike(lines: Sequence[Choice]) -> tuple[tuple[Choice, ...], ...]:
    """Return the lines in groups of the same way, mix and fallback, thinnest stems first within each.

    Groups come in the order of their thinnest line; months must agree too, or a crew would come in the wrong season;
    of lines that are left, the reasons.
    """
    groups: dict[object, list[Choice]] = {}
    for line in sorted(lines, key=lambda one: (one.stand.species, one.stand.band_cm, one.stand.key)):
        option, back = line.option, line.fallback
        way = option.way if option else None
        key = (
            way and (way.visit.method, way.visit.recipe, way.visit.months),
            back and (back.option.way.visit.method, back.option.way.visit.recipe),
            line.level,
            line.because if option is None else "",
        )
        groups.setdefault(key, []).append(line)
    return tuple(tuple(group) for group in groups.values())
