"""How long every kind of page takes: a property of the demo's size and one of 200 units.

Prints how long the plan takes with the first page, and then, for each page once it has been shown, the 95th percentile
of its time in milliseconds, and how many times a static file's that is.
"""

from __future__ import annotations

import argparse
import re
import time
from datetime import date
from pathlib import Path
from tempfile import TemporaryDirectory

from starlette.testclient import TestClient

from rootcollar.cli.bench import ClickBench
from rootcollar.exchange import write_demo
from rootcollar.web import Desk, make_app
from rootcollar.web.guard import COOKIE

HOST, KEY, DAY = "127.0.0.1:8000", "key", date(2026, 3, 2)
PAGES = (
    "/choose",
    "/choose/bench",
    "/choose/bench/working/hours",
    "/choose/questions",
    "/shelf",
    "/shelf/triclopyr-ester-4-ec",
    "/ground",
    "/ground/bench",
    "/ground/map.json",
    "/count",
    "/prepare",
    "/prepare?unit=bench",
    "/facts",
    "/facts?q=buckthorn",
    "/facts/rhca3",
    "/facts/rules",
    "/figure",
    "/style",
)


_UNIT = """
[[unit]]
key = "u{at}"
name = "Unit {at}"
area = "12 ac"
site_class = "natural_area"
wanted_beneath = false
permission = {{ by = "the trustees (invented)", until = 2030-12-31 }}
water = "none"
well = "none"
trail = "none"
keep = "none"
"""


def many_units(folder: Path, units: int) -> None:
    """Make the bench's stems stand on so many units more, invented like everything there."""
    ground, tally = folder / "ground.toml", folder / "tally.csv"
    rows = [line for line in tally.read_text(encoding="utf-8").splitlines() if line.startswith("bench,")]
    more = [_UNIT.format(at=at) for at in range(units)]
    ground.write_text(ground.read_text(encoding="utf-8") + "".join(more), encoding="utf-8")
    copies = [re.sub("^bench", f"u{at}", row) for at in range(units) for row in rows]
    tally.write_text(tally.read_text(encoding="utf-8") + "\n".join(copies) + "\n", encoding="utf-8")


def times(client: TestClient, path: str, repeats: int) -> list[float]:
    """Return how long each of so many requests for a page took [s], sorted."""
    found = []
    for _ in range(repeats):
        begun = time.perf_counter()
        said = client.get(path)
        found.append(time.perf_counter() - begun)
        assert said.status_code == 200, path
    return sorted(found)


def main() -> None:
    """Serve both properties in this process and time their pages, after the first look."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--scale", type=float, default=1.0, help="share of the full size")
    scale = parser.parse_args().scale
    for units in (0, max(1, round(194 * scale))):
        with TemporaryDirectory() as scratch:
            folder = Path(scratch) / "woods"
            write_demo(folder, DAY)
            many_units(folder, units)
            app = make_app(Desk(folder, lambda: DAY), ClickBench(), KEY, frozenset({HOST}))
            client = TestClient(app, base_url=f"http://{HOST}", cookies={COOKIE: KEY})
            begun = time.perf_counter()
            client.get("/choose")
            print(f"{6 + units} units: planned and first shown in {time.perf_counter() - begun:.1f} s")
            floor = times(client, "/static/look.css", max(5, round(100 * scale)))
            for path in PAGES:
                client.get(path)
                found = times(client, path, max(5, round(100 * scale)))
                worst = found[int(0.95 * (len(found) - 1))]
                print(f"  {path}: p95 {1000 * worst:.1f} ms, {worst / floor[len(floor) // 2]:.1f} x a file")


if __name__ == "__main__":
    main()
