"""The page and the figure that tell how often each interval held the truth."""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from typing import TypeVar

import numpy as np

__all__ = ["Row", "figure", "page"]

T = TypeVar("T")

MAPS = {
    "longleaf": "584 longleaf pines on 200 x 200 m, Georgia (Platt, Evans & Rathbun 1988)",
    "lansing": "2,251 trees in a square of 924 ft, Michigan (Gerrard 1969)",
    "bei": "3,604 trees on 1,000 x 500 m",
    "bramblecanes": "823 bramble canes in a square of 9 m",
    "waka": "504 trees on 100 x 100 m",
    "made": "clumps drawn by the program, no real stems",
}
SAYS = "Share of surveys whose interval held the truth; hollow: said 80 %, filled: said 95 %"
LEAST = "40 or less"
WIDE, HIGH, LEFT, TOP = 760, 92, 230, 54


@dataclass(frozen=True)
class Row:
    """One line: a map, stems on the mean plot, plots, kind and level; how many surveys gave an interval, and the shares
    of them that lay wholly below and wholly above the truth. wide: median width over the truth."""

    map: str
    stems: float
    plots: int
    kind: str
    level: float
    surveys: int
    below: float
    above: float
    wide: float

    @property
    def held(self) -> float:
        """The share that held the truth."""
        return 1 - self.below - self.above


def page(rows: Sequence[Row], surveys: int) -> str:
    """Return docs/coverage.md."""
    names = list(dict.fromkeys(row.map for row in rows))
    total = surveys * len({(row.map, row.stems, row.plots) for row in rows})
    lines = [
        "# How often the intervals hold the truth",
        "",
        f"{total:,} surveys, {surveys:,} for each line below, were drawn from maps on which every stem is known: round",
        "plots at random, near the edge by walking through. Plots of two sizes, with 2 and 6 stems on the mean one. An",
        "interval is honest when it holds the truth as often as it says, and misses it equally on both sides. Too low:",
        "the whole interval was below the truth, so that too little would be bought.",
        "",
        "Written by `python benchmarks/coverage.py --maps FOLDER --write`; the maps are kept by the R package",
        "spatstat.data, not by this project.",
        "",
        *(f"- **{name}**: {MAPS.get(name, 'a map of yours')}" for name in names),
        "",
        "![How often each kind of interval held the truth, by map and number of plots](coverage.svg)",
        "",
        "## On the mean of all maps",
        "",
        "| interval | said | plots | held | too low | too high | could not be had |",
        "| --- | --- | --- | --- | --- | --- | --- |",
    ]
    for (kind, level, plots), some in _grouped(rows, lambda row: (row.kind, row.level, row.plots)):
        had = sum(row.surveys for row in some) / (surveys * len(some))
        cells = [
            kind,
            _pct(level),
            str(plots),
            _pct(_mean(some, "held")),
            _pct(_mean(some, "below")),
            _pct(_mean(some, "above")),
        ]
        lines.append(f"| {' | '.join([*cells, _pct(1 - had)])} |")
    lines += ["", *_verdict(rows), "", "## Map by map, 80 % and 95 %", ""]
    lines += ["| map | stems a plot | plots | interval | said | held | too low | too high | width |"]
    lines += ["| --- | --- | --- | --- | --- | --- | --- | --- | --- |"]
    for row in rows:
        cells = [row.map, f"{row.stems:g}", str(row.plots), row.kind, _pct(row.level), _pct(row.held), _pct(row.below)]
        lines.append(f"| {' | '.join([*cells, _pct(row.above), f'{row.wide:.2f}'])} |")
    return "\n".join(lines) + "\n"


def _verdict(rows: Sequence[Row]) -> list[str]:
    """Return which kind is nearest to what it says, measured over both levels and both tails."""
    off = {kind: _off(some) for kind, some in _grouped(rows, lambda row: row.kind)}
    order = sorted(off, key=lambda kind: (off[kind], kind))
    told = "; ".join(f"{kind} {100 * off[kind]:.1f}" for kind in order)
    return [
        f"Nearest to what it says, over both levels and both sides: **{order[0]}**, and so it is the usual one.",
        "How far a tail is from what it should be on the mean, in points of percent:",
        f"{told}.",
    ]


def _off(rows: Iterable[Row]) -> float:
    return float(np.mean([abs(tail - (1 - row.level) / 2) for row in rows for tail in (row.below, row.above)]))


def figure(rows: Sequence[Row]) -> str:
    """Return docs/coverage.svg: a dot for each map and number of plots, by kind, at what was said to be 80 and 95 %."""
    kinds = [kind for kind, _ in _grouped(rows, lambda row: row.kind)]
    high = TOP + HIGH * len(kinds) + 40
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {WIDE} {high}" font-family="sans-serif" font-size="13">',
        f'<rect width="{WIDE}" height="{high}" fill="white"/>',
        f'<text x="{LEFT}" y="22">{SAYS}</text>',
    ]
    for pct in range(40, 101, 10):
        x = _x(pct / 100)
        parts.append(f'<line x1="{x}" x2="{x}" y1="{TOP - 14}" y2="{high - 36}" stroke="#ddd"/>')
        parts.append(f'<text x="{x}" y="{high - 16}" text-anchor="middle">{LEAST if pct == 40 else pct} %</text>')
    for level in (0.8, 0.95):
        x = _x(level)
        parts.append(f'<line x1="{x}" x2="{x}" y1="{TOP - 14}" y2="{high - 36}" stroke="#555" stroke-dasharray="4 3"/>')
    for i, kind in enumerate(kinds):
        y = TOP + HIGH * i
        parts.append(f'<text x="{LEFT - 12}" y="{y + 36}" text-anchor="end">{kind}</text>')
        for j, plots in enumerate(sorted({row.plots for row in rows})):
            parts.append(
                f'<text x="{WIDE - 8}" y="{y + 14 + 22 * j}" text-anchor="end" fill="#555">{plots} plots</text>'
            )
            for row in rows:
                if row.kind == kind and row.plots == plots:
                    fill = "#1b6e3c" if row.level > 0.9 else "white"
                    x = _x(max(row.held, 0.4))
                    parts.append(f'<circle cx="{x}" cy="{y + 10 + 22 * j}" r="4" fill="{fill}" stroke="#1b6e3c"/>')
    return "\n".join([*parts, "</svg>"]) + "\n"


def _x(share: float) -> str:
    return f"{LEFT + (share - 0.4) / 0.6 * (WIDE - LEFT - 80):.1f}"


def _grouped(rows: Iterable[Row], key: Callable[[Row], T]) -> list[tuple[T, list[Row]]]:
    groups: dict[T, list[Row]] = {}
    for row in rows:
        groups.setdefault(key(row), []).append(row)
    return list(groups.items())


def _mean(rows: Sequence[Row], what: str) -> float:
    return float(np.mean([getattr(row, what) for row in rows]))


def _pct(share: float) -> str:
    return f"{100 * share:.1f} %"
