"""How often the intervals hold the truth: thousands of surveys drawn from maps of real stems, each map counted in full.

    python benchmarks/coverage.py --maps FOLDER [--scale 0.01] [--write]

FOLDER holds one text file a map, NAME.csv: `# west east south north` in the first line, then `x,y` of each stem, all in
one unit. The maps are not part of this project; docs/coverage.md names them and where they are kept. Without a folder a
made map is drawn, which shows that the program runs and nothing else. --write puts table and figure into docs.

Plots are round, laid at random with their centres anywhere on the map; stems near its edge count twice where walking
through the stem ends outside. The truth is the count of the map over its area.
"""

import argparse
import sys
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from shapely import Polygon, box

from rootcollar.kernel.errors import Refusal
from rootcollar.survey.estimate import (
    Estimate,
    by_t_of_log,
    clumped,
    counted_by_chance,
    limits,
    none_found,
    simple,
    with_curve,
)  # fmt: skip
from rootcollar.survey.plots import radius_m, walk_through

if __package__:
    from benchmarks.coverage_page import Row, figure, page
else:  # run as a program, when only its own folder is looked through
    from coverage_page import Row, figure, page

__all__ = ["KINDS", "Map", "main", "read_map", "surveyed"]

DOCS = Path(__file__).resolve().parent.parent / "docs"
SURVEYS = 1000  # of each map, size and number of plots
PLOTS = (10, 20, 40)
STEMS_A_PLOT = (2.0, 6.0)  # the two sizes of plots: so many stems on the mean plot
LEVELS = (0.8, 0.95)
KINDS = ("t", "t on the log scale", "negative binomial profile", "exact limits of a Poisson count")

Places = NDArray[np.float64]


@dataclass(frozen=True)
class Map:
    """A map of stems that was counted in full, turned to metres by its own unit: only ratios matter."""

    name: str
    stems: Places
    tract: Polygon


def read_map(path: Path) -> Map:
    """Return a map as read from its file."""
    head, *lines = path.read_text(encoding="utf-8").splitlines()
    west, east, south, north = (float(one) for one in head.lstrip("# ").split())
    stems = np.array([[float(one) for one in line.split(",")] for line in lines if line])
    # as large as is handy: ten thousand square metres, whatever the unit was
    times = np.sqrt(10_000 / ((east - west) * (north - south)))
    stems = (stems - (west, south)) * times
    return Map(path.stem, stems, box(0, 0, (east - west) * times, (north - south) * times))


def made_map() -> Map:
    """Return a made map of clumps, for want of a real one."""
    rng = np.random.default_rng(1)
    parents = rng.uniform(0, 100, (60, 2))
    stems = (parents[:, None] + rng.normal(0, 4, (60, 10, 2))).reshape(-1, 2)
    return Map("made", stems[((stems > 0) & (stems < 100)).all(axis=1)], box(0, 0, 100, 100))


def counts_of(one: Map, plot_m2: float, number: int, rng: np.random.Generator) -> Places:
    """Return the stems counted on so many plots at random."""
    _, _, east, north = one.tract.bounds
    centres = rng.uniform((0, 0), (east, north), (number, 2))
    return walk_through(centres, one.stems, radius_m(plot_m2), one.tract)


def estimates(counts: Places, plot_m2: float) -> Iterator[Estimate]:
    """Yield the estimate by each kind of interval that can be had from the counts; where none, none is yielded."""
    keys = tuple(f"p{i}" for i in range(len(counts)))
    if not counts.any():
        yield none_found(keys, plot_m2)
        return
    plain = simple(counts * (10_000 / plot_m2), keys)
    yield plain
    yield with_curve(plain, by_t_of_log)
    with suppress(Refusal):
        yield clumped(counts.tolist(), keys, plot_m2)
    yield counted_by_chance(float(counts.sum()), keys, plot_m2 * len(counts))


def surveyed(one: Map, stems_a_plot: float, number: int, surveys: int, rng: np.random.Generator) -> list[Row]:
    """Return for each kind and level how often it held the truth, was wholly below it and wholly above it."""
    truth = len(one.stems)  # on a hectare
    plot_m2 = stems_a_plot / truth * 10_000
    told: dict[tuple[str, float], list[tuple[float, float]]] = {}
    for _ in range(surveys):
        for found in estimates(counts_of(one, plot_m2, number, rng), plot_m2):
            for level in LEVELS:
                said = limits(found, level)
                told.setdefault((said.kind, level), []).append((said.low, said.high))
    rows = []
    for (kind, level), pairs in told.items():
        low, high = np.array(pairs).T
        wide = float(np.median(high - low) / truth)
        below, above = float((high < truth).mean()), float((low > truth).mean())
        rows.append(Row(one.name, stems_a_plot, number, kind, level, len(pairs), below, above, wide))
    return rows


def main(words: list[str] | None = None) -> int:
    """Draw the surveys, print the table, and with --write put it into docs."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--maps", type=Path, help="folder of maps")
    parser.add_argument("--scale", type=float, default=1.0, help="share of the surveys that is drawn")
    parser.add_argument("--write", action="store_true", help="write docs/coverage.md and docs/coverage.svg")
    asked = parser.parse_args(words)
    maps = [read_map(path) for path in sorted(asked.maps.glob("*.csv"))] if asked.maps else [made_map()]
    surveys = max(round(SURVEYS * asked.scale), 2)
    rows: list[Row] = []
    for i, one in enumerate(maps):
        rng = np.random.default_rng(i)
        for stems_a_plot in STEMS_A_PLOT:
            for number in PLOTS:
                rows += surveyed(one, stems_a_plot, number, surveys, rng)
        print(f"{one.name}: {len(one.stems)} stems, {surveys} surveys of each kind", file=sys.stderr, flush=True)
    text = page(rows, surveys)
    print(text)
    if asked.write:
        (DOCS / "coverage.md").write_text(text, encoding="utf-8")
        (DOCS / "coverage.svg").write_text(figure(rows), encoding="utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main())
