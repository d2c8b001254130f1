"""An invented property in a file, and people who say things about it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from pathlib import Path

import shapely

from rootcollar.store import Draft, Entry, Row, new_file, open_file
from rootcollar.store.entry import CHANCE_BYTES, sealed

NOW = datetime(2026, 7, 1, 9, tzinfo=UTC)
LATER = NOW + timedelta(hours=1)

ROWS = (
    Row("unit", "bench", shapely.box(-89.90, 43.30, -89.89, 43.31),
        {"name": "Bench", "area_m2": 9000.0, "water_m": float("inf"), "slope_pct": 12.0, "wanted_beneath": True,
         "permission_until": date(2027, 3, 31), "taken": "[]"}),
    Row("unit", "edge", None, {"name": "Brook edge, not drawn yet"}),
    Row("water", "brook", shapely.LineString([(-89.90, 43.301), (-89.89, 43.302)]), {"kind": "brook", "own": True}),
    Row("water", "pond", shapely.box(-89.8952, 43.3048, -89.8948, 43.3052), {"kind": "pond", "own": False}),
    Row("way", "loop", shapely.LineString([(-89.90, 43.30), (-89.895, 43.304)]), {"kind": "trail", "own": True}),
    Row("mark", "oak", shapely.Point(-89.896, 43.304), {"kind": "keep", "own": True}),
    Row("plot", "p1", shapely.Point(-89.894, 43.303), {"unit": "bench", "form": "circle", "area_m2": 40.5}),
    Row("stem", "s1", shapely.Point(-89.8941, 43.3031), {"species": "RHCA3", "dbh_cm": 7.5, "unit": "bench"}),
    Row("track", "t1", shapely.MultiLineString([[(-89.90, 43.30), (-89.8990001, 43.3)]]), {"began": NOW}),
)  # fmt: skip


def made(folder: Path, name: str = "hobbin.gpkg", rows: Sequence[Row] = ROWS) -> Path:
    """Return a new file with rows on it."""
    path = new_file(folder / name, "Hobbin Wood", NOW)
    with open_file(path) as file:
        file.put(rows, "Ann", NOW)
    return path


def draft(number: int = 1, kind: str = "answer/1", about: str | None = None, body: str = "") -> Draft:
    """Return what somebody says; each number says something else."""
    words = body or f'{{"line": {number}, "said": "yes, ünder 60 ft"}}'
    return Draft(kind, NOW + timedelta(minutes=number), "Ann", words, about)


def chain(device: str, drafts: Sequence[Draft]) -> tuple[Entry, ...]:
    """Return what a device says one after another, with chance that is always the same."""
    found: list[Entry] = []
    for number, one in enumerate(drafts, start=1):
        luck = f"{device} {number}".encode().ljust(CHANCE_BYTES, b".")[:CHANCE_BYTES]
        found.append(sealed(one, device, number, found[-1].hash if found else "", luck))
    return tuple(found)


def altered(entry: Entry, **words: object) -> Entry:
    """Return an entry with words written over."""
    return replace(entry, **words)  # type: ignore[arg-type]
