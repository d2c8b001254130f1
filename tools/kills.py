"""Kill a program while it writes in a project file, many times, and look each time whether anything told was lost.

    python tools/kills.py [--kills 2000] [--seed 1]

The child says what it was promised on a pipe, not in the file, after each change. It is killed at a moment drawn from
the seed, half way through a change more often than not. A kill is no power cut: what the system holds in memory
survives it. Exits 1 if anything was lost.
"""

import argparse
import json
import subprocess
import sys
import time
from collections import Counter
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path
from random import Random
from tempfile import TemporaryDirectory

from rootcollar.store import Draft, Row, Store, doctor, new_file, open_file, sound

__all__ = ["Seen", "child", "kill_often", "lost", "main"]

START = datetime(2026, 7, 1, 9, tzinfo=UTC)
LONGEST_S = 0.04  # from the first promise to the kill: a few changes
MOST_DRAFTS = 5  # said in one change
FRESH_AFTER = 25  # kills on one file, then a new one


@dataclass(frozen=True, slots=True)
class Seen:
    """What came of the kills. cut_off: how many left a change half way through; faults: what was lost, in sentences."""

    kills: int
    promised: int
    cut_off: int
    faults: tuple[str, ...]


def child(store: Store, seed: int) -> None:
    """Write changes without end, and tell each promise on the standard output when its call has returned."""
    chance = Random(seed)  # noqa: S311 (no secret)
    for number in range(sys.maxsize):
        count = chance.randint(1, MOST_DRAFTS)
        body = json.dumps({"batch": f"{seed}-{number}", "of": count, "more": "x" * chance.randint(0, 9000)})
        said_at = START + timedelta(seconds=number)
        told = [entry.hash for entry in store.say("phone", [Draft("note/1", said_at, "Ann", body)] * count)]
        if chance.random() < 1 / 4:
            (row,) = store.put([Row("stem", f"s-{seed}-{number}", None, {"note": "x" * 5000})], "Ann", said_at)
            told.append(row.key)
        sys.stdout.write("".join(f"{one}\n" for one in told))
        sys.stdout.flush()


def kill_often(folder: Path, kills: int, seed: int) -> Seen:
    """Start a child as often as asked, kill it, and look at the file it leaves."""
    chance = Random(seed)  # noqa: S311 (no secret)
    promised: set[str] = set()
    faults: list[str] = []
    path, cut_off, total = folder / "none", 0, 0
    for number in range(kills):
        if number % FRESH_AFTER == 0:
            total += len(promised)
            path, promised = new_file(folder / f"{number}.gpkg", "Wood", START), set()
        promised |= _killed(path, number, chance.uniform(0, LONGEST_S))
        hot = path.with_name(f"{path.name}-journal").exists()
        cut_off += hot
        faults += [f"kill {number}: {one}" for one in lost(path, promised)]
    return Seen(kills, total + len(promised), cut_off, tuple(faults))


def lost(path: Path, promised: set[str]) -> list[str]:
    """Return in sentences what is not there of what was promised, or is half there, or damaged."""
    with open_file(path) as file:
        kept = file.snapshot()
    there = {entry.hash for entry in kept.entries} | {row.key for row in kept.ground["stem"]}
    found = [f"{one} was promised and is gone" for one in sorted(promised - there)]
    found += [str(gap) for gap in kept.gaps]
    bodies = [json.loads(entry.body or "{}") for entry in kept.entries]
    parts = Counter(body["batch"] for body in bodies)
    found += [f"half of change {body['batch']}" for body in bodies if parts[body["batch"]] != body["of"]]
    findings = doctor(path)
    return found + ([] if sound(findings) else [one.says for one in findings])


def _killed(path: Path, seed: int, after_s: float) -> set[str]:
    """Start a child, kill it some time after its first promise, and return what it was promised."""
    words = [sys.executable, __file__, "--child", str(path), "--seed", str(seed)]
    with subprocess.Popen(words, stdout=subprocess.PIPE, text=True) as one:
        out = one.stdout or sys.stdin
        first = out.readline()
        time.sleep(after_s)
        one.kill()
        told = first + out.read()
    if not first:
        raise RuntimeError(f"the child did not begin: exit code {one.returncode}")
    return set(told[: told.rfind("\n")].split("\n"))  # a line cut off is no promise


def main(words: list[str] | None = None) -> int:
    """Kill as often as asked, print what came of it, and return 1 if anything was lost."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--kills", type=int, default=2000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--child", type=Path, help=argparse.SUPPRESS)
    asked = parser.parse_args(words)
    if asked.child:
        child(open_file(asked.child), asked.seed)
    with TemporaryDirectory() as folder:
        seen = kill_often(Path(folder), asked.kills, asked.seed)
    print(*seen.faults, sep="\n", end="\n" if seen.faults else "")
    print(f"{seen.kills} kills, {seen.cut_off} half way through a change")
    print(f"{seen.promised} promises, {len(seen.faults)} faults")
    return 1 if seen.faults else 0


if __name__ == "__main__":
    sys.exit(main())
