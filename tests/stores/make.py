"""Make the saved file of the newest form, and what it holds as JSON. Run it once for a form: it writes over nothing."""

import json
import sys
from pathlib import Path
from typing import Any

from rootcollar.store import SCHEMA, Draft, Kept, amendment, bundle_of, new_file, open_file, standing, write_bundle
from rootcollar.store.entry import CHANCE_BYTES

if __name__ == "__main__":
    sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from tests.store.making import LATER, NOW, ROWS, chain, draft

__all__ = ["STORES", "made_sample", "told"]

STORES = Path(__file__).resolve().parent
CHANCE = b"the sample of all forms, 1".ljust(CHANCE_BYTES)[:CHANCE_BYTES]


def made_sample(path: Path) -> Path:
    """Make a small file with something of everything in it; the same content each time."""
    new_file(path, "Hobbin Wood, a sample", NOW, CHANCE)
    phone = chain(
        "phone", [draft(1), draft(2, about="unit/bench"), Draft("licence/1", NOW, "Ann", "an invented number")]
    )
    rivals = [amendment(phone[0], [phone[0]], body, "Ben", LATER) for body in ("two cuts", "three cuts, näher")]
    desk = chain("desk", [*rivals, draft(4), draft(5)])
    with open_file(path) as file:
        rows = file.put(ROWS, "Ann", NOW)
        file.append([*phone, *desk[:2], desk[3]])  # a gap, and rivals that stand
        file.put([rows[0]], "Ben", LATER)
    return path


def told(kept: Kept) -> dict[str, Any]:
    """Return what a file holds as plain words, to be compared with what an older version said of it."""
    rows = [
        {
            "layer": row.layer, "key": row.key, "version": row.version, "by": row.changed_by,
            "at": str(row.changed_at), "shape": row.shape.wkt if row.shape is not None else None,
            "values": {name: str(value) for name, value in row.values.items()},
        }
        for layer in kept.ground.values()
        for row in layer
    ]  # fmt: skip
    stand = {first: [one.body for one in found] for first, found in standing(kept.entries).items()}
    bundle = json.loads(write_bundle(bundle_of(kept)))
    return {"rows": rows, "bundle": bundle, "gaps": [str(gap) for gap in kept.gaps], "standing": stand}


def main() -> int:
    """Make what is not there."""
    path = STORES / f"form-{SCHEMA}.gpkg"
    if path.exists():
        sys.stderr.write(f"{path.name} is there already\n")
        return 1
    with open_file(made_sample(path)) as file:
        text = json.dumps(told(file.snapshot()), indent=1, ensure_ascii=False, sort_keys=True)
    path.with_suffix(".json").write_text(f"{text}\n", encoding="utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main())
