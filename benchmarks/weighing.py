"""All rules weighed for a property of 200 units, 24 bands of stems, 40 ways for each, beside weighing them one by one.

    python benchmarks/weighing.py [--scale 0.01]

Every pair of a way and a stand gets its word from every rule that reads no sums; then one way a stand is taken, and
the sums of each mix on each unit are weighed with 1,000 draws of doubt. No two units lie equally far from water.
One by one: the same rules called for each pair by itself, on a sample, its time taken up to the whole. Wanted: at most
half a second of processor time; the words must be the same.
"""

from __future__ import annotations

import argparse
import sys
import time
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from datetime import date
from itertools import pairwise, product
from pathlib import Path
from tempfile import TemporaryDirectory

import numpy as np

from rootcollar.exchange import read_folder, write_demo
from rootcollar.kernel.verdict import Verdict, worst
from rootcollar.label import (
    Facts,
    Heard,
    Planned,
    UnitTotal,
    Weigher,
    place_facts,
    settle,
    template_facts,
    total_facts,
    weigh_place,
    weigh_template,
    weigh_totals,
)
from rootcollar.mix import Recipe
from rootcollar.shelf import actives, ae_g_per_l
from rootcollar.site import Unit
from rootcollar.work import Project

__all__ = ["main"]

UNITS, BANDS, WAYS = 200, 24, 40
DRAWS, SAMPLE = 1000, 300
MOST_S = 0.5
DAY = date(2026, 9, 15)
PLANTS = (("common buckthorn",), ("white mulberry",), ("multiflora rose",), ("Amur honeysuckle",))
STRENGTHS = (1.0, 2.0, 10.0, 20.0, 30.0, 50.0, 100.0)


@dataclass(frozen=True, slots=True, eq=False)
class Wood:
    """A property to weigh: the demo with more units, and what is planned on each: a list of ways a band of stems.

    facts: of each way, wherever it is done; made while it is weighed.
    """

    project: Project
    units: tuple[Unit, ...]
    plans: tuple[tuple[Planned, ...], ...]
    facts: list[list[Facts]] = field(default_factory=list)


def wood(units: int) -> Wood:
    """Return a property of so many units, with the demo's labels, crew, answers and history."""
    with TemporaryDirectory() as scratch:
        write_demo(Path(scratch) / "woods", DAY)
        project = read_folder(Path(scratch) / "woods")
    bench = project.ground.units["bench"]
    many = tuple(
        replace(bench, key=f"u{at}", water_m=10.0 + at / 2, area_m2=20_000.0 + at, worked_m2=9_000.0 + at)
        for at in range(units)
    )
    edges = [0.5 + at for at in range(BANDS // len(PLANTS) + 1)]
    bands = [(plant, band) for plant in PLANTS for band in pairwise(edges)]
    recipes = [
        (
            method,
            Recipe(key, key, str(actives(sheet)[0].common_name), ae_g_per_l(actives(sheet)[0]) or 0.0, pct, "water"),
        )
        for (key, sheet), pct in product(project.shelf.items(), STRENGTHS)
        for method in sheet.methods
    ][:WAYS]
    assert len(bands) == BANDS and len(recipes) == WAYS
    plans = tuple(
        tuple(Planned(method, plant, recipe, band, 1.0, "cut", 2.0) for method, recipe in recipes)
        for plant, band in bands
    )
    return Wood(project, many, plans)


def template(planned: Planned, project: Project) -> Facts:
    """Return the facts of a way on stems of a band, wherever they stand."""
    assert planned.recipe is not None
    sheet = project.shelf[str(planned.recipe.product)]
    crew, ground = project.crew, project.ground
    return template_facts(planned, sheet, state=ground.state, demo=ground.demo, wear=crew.wear, people=crew.people)


def lines(place: Wood) -> list[list[list[Heard]]]:
    """Return what the rules that read no sums say, by unit, band and way."""
    weigher = Weigher(place.project.answers, DAY, place.project.shelf)
    place.facts[:] = [[template(one, place.project) for one in some] for some in place.plans]
    ways = [[weigher.template(one) for one in some] for some in place.facts]
    return [[weigher.lines(some, unit, f"{unit.key}/{at}") for at, some in enumerate(ways)] for unit in place.units]


def sums(place: Wood, chosen: list[list[int]]) -> list[Verdict]:
    """Return what the rules say of the sums of the ways that are taken, by unit and band."""
    mix_ml = 2_000.0 * np.linspace(0.5, 2.0, DRAWS + 1)
    found: list[Verdict] = []
    for unit, taken in zip(place.units, chosen, strict=True):
        by: dict[Recipe, list[tuple[int, int]]] = {}
        for band, at in enumerate(taken):
            plan = place.plans[band][at]
            assert plan.recipe is not None
            by.setdefault(plan.recipe, []).append((band, at))
        totals = [_total(unit, recipe, len(some) * mix_ml) for recipe, some in by.items()]
        for total, (_, some) in zip(totals, by.items(), strict=True):
            band, at = some[0]
            facts = place_facts(place.facts[band][at], unit, on=DAY)
            facts = total_facts(facts, total, place.project.history, on=DAY, also=totals)
            found += weigh_totals(facts, unit.key)
    return found


def _taken(band: int, ways: Sequence[Heard]) -> int:
    """Return one of the ways with the mildest word: the same for all bands of a plant, so that mixes are few."""
    mildest = min(one.level for one in ways)
    open_ = [at for at, one in enumerate(ways) if one.level is mildest]
    return open_[band * len(PLANTS) // BANDS % len(open_)]


def _total(unit: Unit, recipe: Recipe, mix_ml: np.ndarray) -> UnitTotal:  # type: ignore[type-arg]
    product_ml = mix_ml * (recipe.strength_pct / 100)
    return UnitTotal(
        unit.key, recipe.ingredient, recipe.ae_g_per_l, recipe.strength_pct, mix_ml, product_ml, unit.area_m2, 1,
        (unit.key,), unit.worked_m2, recipe.product or "",
    )  # fmt: skip


def one_by_one(place: Wood, pairs: Sequence[tuple[int, int, int]]) -> list[tuple[Verdict, ...]]:
    """Return what the rules say of some pairs, each weighed for itself."""
    found = []
    for at, band, way in pairs:
        unit = place.units[at]
        planned = place.plans[band][way]
        facts, key = template(planned, place.project), f"{unit.key}/{band}"
        sheet = place.project.shelf.get(planned.recipe.product or "") if planned.recipe else None
        said = (*weigh_template(facts, key), *weigh_place(place_facts(facts, unit, on=DAY), key))
        found.append(tuple(settle(one, place.project.answers, on=DAY, sheet=sheet) for one in said))
    return found


def main(words: list[str] | None = None) -> int:
    """Weigh both ways, print times and ratio; return 1 if a word differs or, at full size, the time is passed."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--scale", type=float, default=1.0, help="share of 200 units; judged at 1 only")
    scale = parser.parse_args(words).scale
    place = wood(max(round(UNITS * scale), 2))
    times = []
    for _ in range(3 if scale == 1.0 else 1):
        begun = time.process_time()
        said = lines(place)
        lines_s = time.process_time() - begun
        chosen = [[_taken(band, ways) for band, ways in enumerate(bands)] for bands in said]
        begun = time.process_time()
        of_sums = sums(place, chosen)
        times.append((lines_s + time.process_time() - begun, lines_s))
    ours_s, lines_s = min(times)
    count = len(place.units) * BANDS * WAYS
    draw = np.random.default_rng(1)
    pairs = [
        (int(a), int(b), int(c))
        for a, b, c in zip(*(draw.integers(0, top, SAMPLE) for top in (len(place.units), BANDS, WAYS)), strict=True)
    ]
    begun = time.process_time()
    plain = one_by_one(place, pairs)
    plain_s = (time.process_time() - begun) / SAMPLE * count
    told = [said[at][band][way].of(f"{place.units[at].key}/{band}") for at, band, way in pairs]
    agree = plain == told and all(worst(a) is said[at][b][w].level for a, (at, b, w) in zip(plain, pairs, strict=True))
    print(f"{count:,} pairs of a way and a stand, {len(of_sums):,} words on sums")
    print(f"{ours_s:.2f} s, of it {ours_s - lines_s:.2f} s for the sums; wanted {MOST_S:g} s")
    print(f"one by one {plain_s:.1f} s without the sums: {plain_s / lines_s:.0f} times as long; same words: {agree}")
    return 0 if agree and (scale != 1.0 or ours_s <= MOST_S) else 1


if __name__ == "__main__":
    sys.exit(main())
