"""Reading a folder: every file, every fault, one project."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from functools import partial
from pathlib import Path
from typing import Any, TypeVar

from rootcollar.choose import NO_OWN, Own
from rootcollar.exchange.applied_file import read_applied
from rootcollar.exchange.choices_file import read_choices
from rootcollar.exchange.ground_file import read_ground
from rootcollar.exchange.own_file import read_own
from rootcollar.exchange.people_file import read_answers, read_crew
from rootcollar.exchange.second_file import SECOND_MARK, with_second
from rootcollar.exchange.stock_file import read_stock
from rootcollar.exchange.tally_file import read_tally
from rootcollar.exchange.text import HINT, opened, toml
from rootcollar.kernel.doubt import Doubt
from rootcollar.kernel.errors import BadInput, Fault
from rootcollar.label.applied import Applied, History
from rootcollar.shelf import Lot, Sheet, Stock, parse_sheet
from rootcollar.site import Ground
from rootcollar.survey import stands
from rootcollar.work import text
from rootcollar.work.crew import Crew
from rootcollar.work.project import Project

__all__ = ["TEMPLATE_MARK", "read_folder"]

TEMPLATE_MARK = "-template.toml"  # the end of a sheet's name that is there to be copied, not read

_HAIR = 1 + 1 / 100  # ours: areas are not measured finer
_NEEDED = ("ground.toml", "tally.csv")
_OPTIONAL = ("crew.toml", "answers.toml", "choices.toml", "applied.csv", "stock.csv", "own.toml")

T = TypeVar("T")
_ReadTable = Callable[[str, str, Mapping[str, str] | None], tuple[tuple[T, ...], tuple[str, ...]]]


@dataclass(slots=True)
class _Reading:
    """One pass over a folder: the faults found so far, and notes to print."""

    path: Path
    faults: list[Fault] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)

    def toml(self, name: str, read: Callable[[dict[str, Any], str], T]) -> T | None:
        """Return what a TOML file says; None when it cannot be read, its faults kept."""
        return self.kept(lambda: read(toml(self.path / name, name), name))

    def table(self, name: str, read: _ReadTable[T], units: Mapping[str, str] | None) -> tuple[T, ...]:
        """Return the rows of a table, its notes kept; none when it cannot be read, its faults kept."""
        rows, notes = self.kept(lambda: read(opened(self.path / name, name), name, units)) or ((), ())
        self.notes += notes
        return rows

    def kept(self, make: Callable[[], T]) -> T | None:
        """Return what is made; None when it cannot be, its faults kept."""
        try:
            return make()
        except BadInput as wrong:
            self.faults += wrong.faults
            return None


def read_folder(path: Path) -> Project:
    """Return the project kept in a folder of plain files.

    Raises BadInput with every fault of every file at once; what is missing and may be missing is None.
    """
    try:
        return _project(path)
    except OSError as fault:
        found = f"{path}, which cannot be opened ({fault.strerror or fault})"
        raise BadInput(Fault(found, f"the folder of a property; {HINT}")) from None


def _project(path: Path) -> Project:
    _there(path)
    there = {name for name in _OPTIONAL if (path / name).exists()}
    reading = _Reading(path)
    ground, complete = reading.toml("ground.toml", read_ground) or (None, None)
    units = {key: unit.name for key, unit in ground.units.items()} if ground else None
    rows = reading.table("tally.csv", read_tally, units)
    crew = reading.toml("crew.toml", read_crew) if "crew.toml" in there else None
    answers = reading.toml("answers.toml", read_answers) if "answers.toml" in there else None
    picked = reading.toml("choices.toml", read_choices) if "choices.toml" in there else None
    shelf, keys = _shelf(reading), [file.stem for file in _sheets(path)]
    applied = reading.table("applied.csv", partial(read_applied, shelf=shelf), units) if "applied.csv" in there else ()
    lots = reading.table("stock.csv", partial(_stock, keys), None) if "stock.csv" in there else ()
    own = reading.toml("own.toml", partial(_own, keys, units)) if "own.toml" in there else None
    if reading.faults or ground is None:
        raise BadInput(*reading.faults)
    ground = replace(ground, notes=(*ground.notes, *reading.notes, *_wide(applied, ground), *_unread(path)))
    history = History(applied, complete)
    return Project(
        ground, stands(rows, Doubt(ground.seed)), shelf, crew or Crew(), answers or (), history,
        Stock(lots) if lots else None, own or NO_OWN, picked or {}, _label_files(path),
    )  # fmt: skip


def _there(path: Path) -> None:
    if not path.exists():
        raise BadInput(Fault(f"no folder {path}", HINT))
    if not path.is_dir():
        raise BadInput(Fault(f"{path}, which is a file", f"the folder of a property; {HINT}"))
    missing = [name for name in _NEEDED if not (path / name).exists()]
    if len(missing) == len(_NEEDED):
        raise BadInput(Fault(f"neither {' nor '.join(missing)} in {path}", f"the folder of a property; {HINT}"))


def _shelf(reading: _Reading) -> dict[str, Sheet]:
    """Return the label sheets by key; templates are passed over, because nobody has typed in them."""
    files = _sheets(reading.path)
    sheets = [reading.toml(f"shelf/{file.name}", partial(parse_sheet, file.stem)) for file in files]
    read = [reading.kept(partial(with_second, one, reading.path / "shelf")) for one in sheets if one is not None]
    return {sheet.key: sheet for sheet in read if sheet is not None}


def _sheets(path: Path) -> list[Path]:
    files = sorted((path / "shelf").glob("*.toml"))
    return [file for file in files if not file.name.endswith((TEMPLATE_MARK, SECOND_MARK))]


def _label_files(path: Path) -> frozenset[str]:
    """Return the names of the files beside the sheets, as photos of a sheet name them."""
    shelf = path / "shelf"
    files = (one for one in shelf.rglob("*") if one.is_file() and one.suffix != ".toml")
    return frozenset(one.relative_to(shelf).as_posix() for one in files)


def _stock(
    keys: list[str], text: str, file: str, units: Mapping[str, str] | None
) -> tuple[tuple[Lot, ...], tuple[str, ...]]:
    """Read the stock, which lies on no unit."""
    return read_stock(text, file, keys)


def _own(keys: list[str], units: Mapping[str, str] | None, table: dict[str, Any], file: str) -> Own:
    return read_own(table, file, keys, units)


def _wide(applied: tuple[Applied, ...], ground: Ground) -> list[str]:
    """Return a note for each application said to lie on more ground than its unit has."""
    return [
        f"applied.csv: {text.acres(row.area_m2)} on {one.name} on {row.on.isoformat()}, which has "
        f"{text.acres(one.area_m2)}; counted on no more than that"
        for row in applied
        if (one := ground.units[row.unit]).area_m2 is not None and row.area_m2 > one.area_m2 * _HAIR
    ]


def _unread(path: Path) -> list[str]:
    """Return a note for each file that looks like input and is not read: a name slightly wrong must show."""
    named = sorted(one.name for one in path.iterdir() if one.suffix.lower() in {".toml", ".csv"})
    known = {*_NEEDED, *_OPTIONAL}
    return [f"{name} is not read; the files read are {', '.join(sorted(known))} and shelf/*.toml"
            for name in named if name not in known]  # fmt: skip
