"""Mixed thickets in the terminal and as plain values: what is flagged, one instruction, and what it costs beside."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from rootcollar.choose import Band, Prescription, Setting, Thicket, instruction, thickets
from rootcollar.cli.laid_out import wrapped
from rootcollar.work.thicket_words import size_words, thicket_words

__all__ = ["summary", "thickets_json"]

_MARK = {"": "(o)", "ask": "(?)", "stop": "[-]"}


def summary(plan: Prescription, setting: Setting) -> Iterator[str]:
    """Yield what is said of each mixed thicket; nothing where the tally marks none."""
    for one in thicket_words(plan, setting):
        yield ""
        yield f"{setting.ground.units[one.unit].name}. {one.title} {_MARK[one.level]}"
        for words in one.lines:
            yield from wrapped(f"{words}.", "   ")


def thickets_json(plan: Prescription, setting: Setting) -> list[dict[str, Any]]:
    """Return each mixed thicket as plain values, with the same sentences as on paper. Money as in the plan's prices."""
    said = thicket_words(plan, setting)
    return [
        _json(one, words.level) | {"words": list(words.lines)}
        for one, words in zip(thickets(plan.choices, setting), said, strict=True)
    ]


def _json(one: Thicket, level: str) -> dict[str, Any]:
    found = one.instruction
    return {
        "unit": one.unit,
        "thicket": one.name,
        "keep_inside": one.keep_inside,
        "level": level or "work",
        "why_none": one.why_none,
        "cost_by_kind_and_size": one.by_kind_cents / 100,
        "cost": None if found is None else found.cents / 100,
        "bands": [] if found is None else [_band(band) for band in found.bands],
        "passes": [] if found is None else [{"months": sorted(p.months), "bands": list(p.bands)} for p in found.passes],
        "left": [line.stand.key for line in one.left],
    }


def _band(band: Band) -> dict[str, Any]:
    return {
        "size": size_words(band.over, band.upto),
        "over_cm": band.over.diameter_cm.value if band.over else None,
        "upto_cm": band.upto.diameter_cm.value if band.upto else None,
        "instruction": ", ".join(instruction(band.lines[0].way)),
        "lines": {line.stand.key: line.way.key for line in band.lines},
    }
