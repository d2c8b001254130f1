"""A whole property chosen: 200 units, eight species in three bands of stems each, 1,000 draws of doubt.

    python benchmarks/choosing.py [--scale 0.01]

Every way of every stand is weighed, one chosen, the sums of each mix on each unit weighed, fallbacks too, and the units
put in order; reasons of ways set aside are put into words only where they are read, as in every plan. No two units lie
equally far from water, and no two units have equal counts. The first of three runs, with nothing kept, is told too.
One by one: each stand chosen by itself, on a sample, with nothing kept from the stand before; its time taken up to the
whole, sums and order left out. Wanted: at most five seconds of processor time; the choices must be the same.
"""

from __future__ import annotations

import argparse
import sys
import time
from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from pathlib import Path
from tempfile import TemporaryDirectory

import numpy as np

from rootcollar.choose import Choice, Setting, decide, prescribe
from rootcollar.exchange import read_folder, write_demo
from rootcollar.jobs.plan import setting_of
from rootcollar.reference import find_species
from rootcollar.survey import Stand, TallyRow, stands

__all__ = ["main"]

UNITS, SAMPLE = 200, 60
MOST_S = 5.0
DAY = date(2026, 9, 15)
PLANTS = (
    "common buckthorn", "white mulberry", "multiflora rose", "Amur honeysuckle", "porcelainberry", "tree-of-heaven",
    "autumn olive", "Oriental bittersweet",
)  # fmt: skip
BANDS_CM = ((1.3, 2.5), (2.5, 5.1), (5.1, 10.2))


def wood(units: int) -> tuple[tuple[Stand, ...], Setting]:
    """Return the stands of a property of so many units, and what choosing knows: the demo's labels, crew, answers."""
    with TemporaryDirectory() as scratch:
        write_demo(Path(scratch) / "woods", DAY)
        project = read_folder(Path(scratch) / "woods")
    bench = project.ground.units["bench"]
    many = {
        f"u{at}": replace(bench, key=f"u{at}", water_m=10.0 + at / 2, area_m2=20_000.0 + at, worked_m2=9_000.0 + at)
        for at in range(units)
    }
    project = replace(project, ground=replace(project.ground, units=many), picked={})
    setting = setting_of(project, DAY)
    rows = [
        TallyRow(key, find_species(plant).key, band, 50.0 + at, 40.0 + at, 65.0 + at, "root collar", 1.0, 1.5, False)
        for at, key in enumerate(many)
        for plant in PLANTS
        for band in BANDS_CM
    ]
    return stands(rows, setting.doubt), setting


def one_by_one(some: Sequence[Stand], setting: Setting) -> list[Choice]:
    """Return the choice for each of some stands, each made by itself."""
    return [decide(one, setting) for one in some]


def main(words: list[str] | None = None) -> int:
    """Choose both ways, print times and ratio; return 1 if a choice differs or, at full size, the time is passed."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--scale", type=float, default=1.0, help="share of 200 units; judged at 1 only")
    scale = parser.parse_args(words).scale
    some, setting = wood(max(round(UNITS * scale), 2))
    times = []
    for _ in range(3 if scale == 1.0 else 1):
        begun = time.process_time()
        plan = prescribe(some, setting)
        times.append(time.process_time() - begun)
    ours_s = min(times)
    of_line = {one.stand.key: one for one in plan.decided}
    sample = [some[int(at)] for at in np.random.default_rng(1).integers(0, len(some), SAMPLE)]
    begun = time.process_time()
    plain = one_by_one(sample, setting)
    plain_s = (time.process_time() - begun) / SAMPLE * len(some)
    agree = all(_told(one) == _told(of_line[one.stand.key]) for one in plain)
    work = sum(one.is_work for one in plan.choices)
    print(f"{len(some):,} stands on {len(plan.order)} units chosen, {work:,} of them work")
    print(f"{ours_s:.2f} s of processor time, the first run {times[0]:.2f} s; wanted {MOST_S:g} s")
    print(f"one by one {plain_s:.1f} s without sums and order: {plain_s / ours_s:.0f} times as long; same: {agree}")
    return 0 if agree and (scale != 1.0 or ours_s <= MOST_S) else 1


def _told(one: Choice) -> tuple[object, ...]:
    """Return what a choice says: its way and why, its fallback, and all that was set aside."""
    aside = tuple((each.way.key, each.because, each.would_win_if) for each in one.set_aside)
    return one.option and one.option.way.key, one.because, one.fallback and one.fallback.option.way.key, aside


if __name__ == "__main__":
    sys.exit(main())
