"""The count as its page shows it: the tally as a table to type in, and beneath it the stems per acre."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import groupby

from rootcollar.exchange import TypedTally
from rootcollar.kernel.doubt import Worlds, band
from rootcollar.kernel.errors import NotFound
from rootcollar.kernel.formula import watch
from rootcollar.kernel.units import convert
from rootcollar.survey import Stand, easiest_to_find, stems_per_acre, total
from rootcollar.web.desk import Open, of_what_lies_open
from rootcollar.web.views.measured import area_run, measured_drawer
from rootcollar.web.views.working import Drawer, Run, before, counted, drawer_of, spread, stems_drawer
from rootcollar.work import text

__all__ = [
    "COLUMNS",
    "Dense",
    "DenseUnit",
    "Grid",
    "count_drawer",
    "density_drawer",
    "density_of",
    "easiest_of",
    "grid_of",
    "rows_typed",
    "theirs",
]


@dataclass(frozen=True, slots=True)
class Shown:
    """A column as the page shows it. name: in the file; choices: what may be picked, where it is not free text."""

    name: str
    word: str
    hint: str = ""
    choices: tuple[str, ...] = ()
    number: bool = False


COLUMNS = (
    Shown("unit", "Unit"),
    Shown("species", "Species", "common buckthorn"),
    Shown("diameter class", "Diameter class", "1-2 in"),
    Shown("count", "Count", "120", number=True),
    Shown("low", "Low", "80", number=True),
    Shown("high", "High", "150", number=True),
    Shown("measured at", "Measured at", choices=("breast height", "root collar")),
    Shown("crown", "Crown", "4 ft"),
    Shown("height", "Height", "6 ft"),
    Shown("fruiting", "Fruiting", choices=("yes", "no")),
    Shown("note", "Note"),
    Shown("thicket", "Thicket", "hedge"),
    Shown("keep inside", "Keep inside", "or none"),
)


_LONG = 40  # units from which a list of them in every row would make the page too heavy to type in (ours)
_FIELD = re.compile(r"r([0-9]{1,6})c[0-9]{1,2}")


@dataclass(frozen=True, slots=True)
class Cell:
    """A cell to type in: its field, the column it stands in, what was typed, what may be picked, what is wrong."""

    field: str
    column: Shown
    said: str
    choices: tuple[tuple[str, str], ...]
    fault: str


@dataclass(frozen=True, slots=True)
class Grid:
    """The table to type in: rows of (number as a spreadsheet has it, first of which unit, cells).

    plants: names to pick from. units: (key, name), where they are too many for a list in every row.
    """

    rows: tuple[tuple[int, str, tuple[Cell, ...]], ...]
    stamp: str
    plants: tuple[str, ...]
    faults: int
    units: tuple[tuple[str, str], ...]

    @property
    def first_fault(self) -> str:
        """The field of the first cell that needs mending; "" for none."""
        return next((cell.field for _, _, cells in self.rows for cell in cells if cell.fault), "")


@dataclass(frozen=True, slots=True)
class Dense:
    """Stems and stems per acre of a size, or of all sizes of a plant (sum); doubt: 10-90 %, or nothing."""

    sum: bool
    plant: str
    size: str
    stems: Run
    stems_doubt: str
    per_acre: Run
    per_acre_doubt: str


@dataclass(frozen=True, slots=True)
class DenseUnit:
    """A unit's densities. area: in words; known: whether it is known at all."""

    key: str
    name: str
    area: Run
    known: bool
    rows: tuple[Dense, ...]


def rows_typed(said: Mapping[str, str]) -> tuple[dict[str, str], ...]:
    """Return the rows of a form, in order: the cells of row 3 are named "r3c0", "r3c1", and so on."""
    numbers = sorted({int(found[1]) for name in said if (found := _FIELD.fullmatch(name))})
    return tuple(
        {column.name: said.get(f"r{number}c{at}", "") for at, column in enumerate(COLUMNS)} for number in numbers
    )


def grid_of(typed: TypedTally, plants: Iterable[str], empty: int) -> Grid:
    """Return the table with what was typed and some empty rows behind. plants: names to pick from."""
    rows: Sequence[Mapping[str, str]] = (*typed.rows, *({} for _ in range(empty)))
    faults = {at: "; ".join(one.allowed for one in found) for at, found in typed.faults.items()}
    first: dict[str, int] = {}
    for at, row in enumerate(typed.rows):
        first.setdefault(row["unit"], at)
    starts = {at: unit for unit, at in first.items() if unit in typed.units}
    return Grid(
        tuple((at + 2, starts.get(at, ""), tuple(_cells(at, row, typed.units, faults))) for at, row in enumerate(rows)),
        typed.stamp, tuple(sorted(plants, key=str.casefold)), len(typed.faults),
        tuple(typed.units.items()) if len(typed.units) > _LONG else (),
    )  # fmt: skip


def _cells(
    at: int, row: Mapping[str, str], units: Mapping[str, str], faults: Mapping[tuple[int, str], str]
) -> Iterator[Cell]:
    for place, column in enumerate(COLUMNS):
        said, fault = row.get(column.name, ""), faults.get((at, column.name), "")
        choices = _picked_from(column, units)
        if choices:
            known = said in dict(choices)
            choices = (("", ""), *choices, *(() if known or not said else ((said, said),)))
        wanted = "which unit" if column.name == "unit" and not said else fault
        yield Cell(f"r{at}c{place}", column, said, choices, f"Wanted: {wanted}." if fault else "")


def _picked_from(column: Shown, units: Mapping[str, str]) -> tuple[tuple[str, str], ...]:
    if column.name == "unit":
        return tuple(units.items()) if len(units) <= _LONG else ()
    return tuple((one, one) for one in column.choices)


def theirs(now: TypedTally, typed: TypedTally) -> tuple[tuple[tuple[str, ...], bool], ...]:
    """Return the rows of the file as they stand now, each with whether it stands in what was typed too."""
    mine = {tuple(row.values()) for row in typed.rows}
    return tuple((tuple(row.values()), tuple(row.values()) in mine) for row in now.rows)


@of_what_lies_open
def density_of(here: Open) -> tuple[DenseUnit, ...]:
    """Return the stems per acre of every counted unit, by plant and size; those of a unit without area as not known."""
    found = groupby(here.project.stands, key=lambda stand: stand.unit)
    return tuple(_unit(here, key, tuple(stands)) for key, stands in found)


@of_what_lies_open
def easiest_of(here: Open) -> tuple[tuple[str, str], ...]:
    """Return the plants counted here that their leaves give away in some months, each with when and who says so."""
    reference = here.setting.reference
    counted_here = sorted({one.species for one in here.project.stands})
    told = (
        (reference.species[key], easiest_to_find(reference.species[key], reference.seasons)) for key in counted_here
    )
    return tuple((species.common_name, words) for species, words in told if words)


def _unit(here: Open, key: str, stands: Sequence[Stand]) -> DenseUnit:
    unit = here.project.ground.units[key]
    rows: list[Dense] = []
    for species, group in groupby(sorted(stands, key=lambda one: (one.species, one.band_cm)), lambda one: one.species):
        some = tuple(group)
        plant = here.setting.reference.species[species].common_name
        rows += [_dense(one.key, plant, [one], unit.area_m2) for one in some]
        if len(some) > 1:
            rows.append(_dense(f"{key}/{species}", plant, some, unit.area_m2))
    return DenseUnit(key, unit.name, area_run(unit), unit.area_m2 is not None, tuple(rows))


def _dense(key: str, plant: str, some: Sequence[Stand], area_m2: float | None) -> Dense:
    size = text.size(some[0].band_cm) if len(some) == 1 else "all sizes"
    of, stems = f"{plant}, {size}", total(some)
    count, doubt = counted(stems)
    row = Dense(len(some) > 1, plant, size, Run(count, f"/count/stems/{key}", f"stems of {of}"), doubt, Run(""), "")
    if area_m2 is None:
        return row
    per_acre, per_acre_doubt = _told(stems_per_acre(stems, convert(area_m2, "m2", "ac")))
    where = Run(per_acre, f"/count/working/{key}", f"stems per acre of {of}")
    return replace(row, per_acre=where, per_acre_doubt=per_acre_doubt)


def _told(worlds: Worlds) -> tuple[str, str]:
    """Return a number and its doubt; whole from ten on, two figures below."""
    here = band(worlds)
    best, low, high = (
        f"{one:,.0f}" if one >= 10 or one == 0 else f"{one:.2g}" for one in (here.best, here.low, here.high)
    )
    return best, spread(low, high, worlds)


def density_drawer(here: Open, key: str) -> Drawer:
    """Return how the stems per acre of a size, or of all sizes of a plant, were worked out. key: as `count_drawer`.

    Raises NotFound for what was not counted, or a unit without area.
    """
    some = _counted_at(here, key)
    area_m2 = here.project.ground.units[some[0].unit].area_m2
    if area_m2 is None:
        raise NotFound("counted size on a unit of known area", key, [])
    with watch() as steps:
        found = stems_per_acre(total(some), convert(area_m2, "m2", "ac"))
    best, doubt = _told(found)
    drawer = drawer_of(f"{best} stems per acre", doubt, steps, here.setting.reference.sources)
    return before(drawer, stems_drawer(here, some), measured_drawer(here, some[0].unit, "area"))


def count_drawer(here: Open, key: str) -> Drawer:
    """Return where a count comes from. key: of a stand, or unit/species for all sizes. Raises NotFound for another."""
    return stems_drawer(here, _counted_at(here, key))


def _counted_at(here: Open, key: str) -> Sequence[Stand]:
    stands = here.project.stands
    some = [one for one in stands if key in (one.key, f"{one.unit}/{one.species}")]
    if not some:
        raise NotFound("counted size", key, [one.key for one in stands[:3]])
    return sorted(some, key=lambda one: one.band_cm)
