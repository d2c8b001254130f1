"""Read the checks of tests/published and write docs/checks.md from them.

A check is one worked number: what was asked, which function, with what, and what another source says comes out.
Only published | statute | dataset | library count as outside; reckoned and memory are kept, and count for nothing.
"""

import importlib
import pkgutil
import sys
import tomllib
from collections import Counter
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from rootcollar.kernel.formula import FORMULAS
from rootcollar.kernel.units import read
from rootcollar.reference import load

__all__ = ["KINDS", "OUTSIDE", "PAGE", "Check", "cites", "every_formula", "main", "page", "read_checks"]

ROOT = Path(__file__).resolve().parent.parent
PUBLISHED = ROOT / "tests" / "published"
PAGE = ROOT / "docs" / "checks.md"
SOURCES = "sources.toml"  # those that only the checks cite
ADVICE = "advice.toml"  # what sheets advise: no figures, read by the tests of choosing
ROOMS = ("hazard", "site", "timing", "dose", "mix", "choose", "label", "survey", "work")

KINDS = {
    "published": "printed in a source",
    "statute": "in a law",
    "dataset": "kept in an open data set",
    "library": "reckoned by a library that knows nothing of this project",
    "reckoned": "by our own hand from figures of the source named",
    "memory": "from memory, nobody has looked it up",
}
OUTSIDE = ("published", "statute", "dataset", "library")
_KEYS = {"id", "asks", "formula", "inputs", "expected", "unit", "kind", "source"}
_MORE = {"tolerance", "exact", "locator", "by", "note"}


@dataclass(frozen=True, slots=True)
class Check:
    """One check. typed: inputs as written; values: the same in the function's own units; expected, tolerance: in unit.

    by: the second opinion of a library, a function of tests/published/second_opinions.py.
    """

    id: str
    asks: str
    formula: str
    typed: Mapping[str, float | str]
    values: Mapping[str, Any]
    said: str
    expected: float
    unit: str
    tolerance: float
    kind: str
    source: str
    locator: str = ""
    by: str = ""
    note: str = ""

    @property
    def outside(self) -> bool:
        """Whether it counts: somebody else says so."""
        return self.kind in OUTSIDE

    @property
    def function(self) -> Callable[..., Any]:
        """The function that is checked."""
        module, _, name = self.formula.rpartition(".")
        found: Callable[..., Any] = getattr(importlib.import_module(f"rootcollar.{module}"), name)
        return found

    def result(self) -> float:
        """Return what the function gives."""
        return float(self.function(**self.values))

    def holds(self, result: float) -> bool:
        """Return whether a result is what the source says."""
        return abs(result - self.expected) <= self.tolerance


def read_checks(folder: Path = PUBLISHED) -> list[Check]:
    """Return every check of the folder, in file order. Raises ValueError for a wrong row or an id used twice."""
    found = []
    for path in sorted(folder.glob("*.toml")):
        if path.name not in {SOURCES, ADVICE}:
            raw = tomllib.loads(path.read_text(encoding="utf-8"))
            found += [_check(row, raw.get("units", {}), path.name) for row in raw["check"]]
    twice = [name for name, count in Counter(check.id for check in found).items() if count > 1]
    if twice:
        raise ValueError(f"checks of one id: {', '.join(twice)}")
    return found


def _check(row: dict[str, Any], units: Mapping[str, str], file: str) -> Check:
    where = f"{file} {row.get('id')}"
    if not _KEYS <= set(row) <= _KEYS | _MORE or row["kind"] not in KINDS:
        raise ValueError(f"{where}: want {', '.join(sorted(_KEYS))}, and a known kind")
    if ("tolerance" in row) == row.get("exact", False) or (row["kind"] == "library") != ("by" in row):
        raise ValueError(f"{where}: want a tolerance or exact = true, and by for a library")
    typed, expected = row["inputs"], row["expected"]
    return Check(
        row["id"],
        row["asks"],
        row["formula"],
        typed,
        {name: _plain(value, units.get(name)) for name, value in typed.items()},
        expected if isinstance(expected, str) else f"{expected:g} {row['unit']}",
        float(_plain(expected, row["unit"])),
        row["unit"],
        float(row.get("tolerance", 0)),
        row["kind"],
        row["source"],
        row.get("locator", ""),
        row.get("by", ""),
        row.get("note", ""),
    )


def _plain(value: float | str, unit: str | None) -> float | str:
    """Return a quantity in the unit of its argument; a text whose argument has no unit stays a text."""
    return read(value).to(unit) if isinstance(value, str) and unit else value


def cites() -> dict[str, str]:
    """Return what each source key stands for: those of the reference, and those that only the checks cite."""
    known = {key: f"{one.cite}. {one.url}".strip() for key, one in load().sources.items()}
    more = tomllib.loads((PUBLISHED / SOURCES).read_text(encoding="utf-8"))
    return known | {key: f"{one['cite']}. {one.get('url', '')}".strip() for key, one in more.items()}


def every_formula() -> dict[str, str]:
    """Return the source of every formula of the rooms, by its name; all their modules are imported first."""
    for room in ROOMS:
        package = importlib.import_module(f"rootcollar.{room}")
        for module in pkgutil.walk_packages(package.__path__, f"{package.__name__}."):
            importlib.import_module(module.name)
    return {name: formula.source for name, formula in sorted(FORMULAS.items()) if name.split(".")[0] in ROOMS}


def page(checks: Iterable[Check]) -> str:
    """Return docs/checks.md."""
    rows = list(checks)
    kinds = Counter(check.kind for check in rows)
    formulas = {check.formula for check in rows if check.outside}
    known = cites()
    lines = [
        "# Checks from outside",
        "",
        "Every printed number comes from a small function. Each is compared here with what somebody else says comes",
        "out, and each comparison from outside is tight enough to notice an error of a tenth, either way.",
        "This page is written by `python tools/checks.py` from `tests/published`; a test fails when it lags.",
        "",
        f"{len(rows)} checks; {sum(check.outside for check in rows)} from outside, of {len(formulas)} functions.",
        "",
        *(
            f"- {kind}: {kinds[kind]}, {words}" + ("" if kind in OUTSIDE else "; counts for nothing")
            for kind, words in KINDS.items()
            if kinds[kind]
        ),
        "",
        "| no. | asked | function | with | expected | within | kind | source |",
        "| --- | --- | --- | --- | --- | --- | --- | --- |",
        *(_row(check) for check in rows),
        "",
        "## Sources",
        "",
        *(f"- **{key}**: {known[key]}" for key in sorted({check.source for check in rows}, key=str.lower)),
    ]
    return "\n".join(lines) + "\n"


def _row(check: Check) -> str:
    given = ", ".join(f"{name} {value}" for name, value in check.typed.items())
    asked = f"{check.asks} ({check.note})" if check.note else check.asks
    within = f"{check.tolerance:g} {check.unit}" if check.tolerance else "exact"
    source = f"{check.source}, {check.locator}" if check.locator else check.source
    cells = (check.id, asked, f"`{check.formula}`", given, check.said, within, check.kind, source)
    return f"| {' | '.join(cell.replace('|', '/') for cell in cells)} |"


def main() -> int:
    """Write the page."""
    PAGE.write_text(page(read_checks()), encoding="utf-8")
    print(PAGE.relative_to(ROOT))
    return 0


if __name__ == "__main__":
    sys.exit(main())
