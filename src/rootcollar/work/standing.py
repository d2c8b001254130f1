"""Trees killed standing that still stand, or will: who works beneath them must know, year after year."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import date

from rootcollar.choose import Choice
from rootcollar.kernel.doubt import best
from rootcollar.kernel.tongue import Tongue
from rootcollar.label import Applied, History
from rootcollar.label.planned import LEFT_STANDING
from rootcollar.label.standing import thick_enough, too_low
from rootcollar.reference import Reference
from rootcollar.work import text
from rootcollar.work.in_tongue import plant_name

__all__ = ["leaves_words", "not_said", "standing_on", "standing_words", "dead_standing"]


def dead_standing(unit: str, history: History, on: date | None) -> tuple[Applied, ...]:
    """Return what was treated on a unit, left on its feet, and is not said to be down by a day, oldest first.

    What nobody wrote of it counts against it: a stem of unknown size is not taken for brush, one without a day on
    which it was down still stands. on: the day somebody goes there; None where no day is known.
    """
    found = (
        row
        for row in history.rows
        if row.unit == unit
        and row.method in LEFT_STANDING
        and (row.diameter_cm is None or thick_enough(row.diameter_cm[1]))
        and (row.down is None or (on is not None and row.down > on))
    )
    return tuple(sorted(found, key=lambda row: row.on))


def not_said(unit: str, history: History, on: date | None) -> tuple[date, ...]:
    """Return the days of what was applied to a unit in a way nobody wrote: whether trees stand from it is not known.

    on: as `dead_standing`. The second ingredient of a product is not another treatment.
    """
    said = {_treatment(row) for row in history.rows if row.method}
    rows = (row for row in history.rows if row.unit == unit and not row.method and _treatment(row) not in said)
    return tuple(sorted({row.on for row in rows if row.down is None or (on is not None and row.down > on)}))


def _treatment(row: Applied) -> tuple[date, str, str, float]:
    return row.on, row.unit, row.product, row.area_m2


def standing_on(
    unit: str, history: History, on: date | None, reference: Reference, tongue: Tongue, care: str = "standing.care"
) -> str:
    """Return what is told of a unit before anybody works there: the trees that stand dead, and what is not known.

    care: which words say what to do about it: "standing.care", or "standing.brief" where there is little room.
    """
    found = standing_words(dead_standing(unit, history, on), not_said(unit, history, on), reference, tongue)
    return f"{found} {tongue.say(care)}" if found else ""


def standing_words(dead: Iterable[Applied], unsaid: Iterable[date], reference: Reference, tongue: Tongue) -> str:
    """Return the warning of dead trees, plant by plant; nothing where none stand and all is said.

    dead: as `dead_standing`. unsaid: as `not_said`.
    """
    plants: dict[str, list[Applied]] = {}
    for row in dead:
        plants.setdefault(row.species, []).append(row)
    words = []
    if plants:
        words.append(
            tongue.say("standing.all", trees="; ".join(_plant(rows, reference, tongue) for rows in plants.values()))
        )
    if days := ", ".join(day.isoformat() for day in unsaid):
        words.append(tongue.say("standing.unsaid", days=days))
    return " ".join(words)


def leaves_words(lines: Iterable[Choice], reference: Reference, tongue: Tongue) -> str:
    """Return what a unit's lines of work leave dead on its feet for next year's crew; nothing where they do not."""
    trees = [
        f"{_counted(best(one.stand.stems), one.stand.species, reference, tongue)} {text.size(one.stand.band_cm)}"
        for one in lines
        if one.is_work
        and one.way.visit.method in LEFT_STANDING
        and thick_enough(one.stand.band_cm[1])
        and not too_low(one.stand.height_m)
    ]
    return tongue.say("standing.leaves", trees="; ".join(trees)) if trees else ""


def _counted(stems: float, species: str, reference: Reference, tongue: Tongue) -> str:
    plant = plant_name(reference.species[species], tongue)
    return tongue.say("standing.counted", stems=f"{stems:,.0f}", plant=plant)


def _plant(rows: Sequence[Applied], reference: Reference, tongue: Tongue) -> str:
    """Return how many of a plant stand, their size, and when they were treated."""
    key = rows[0].species
    plant = plant_name(reference.species[key], tongue) if key else tongue.say("standing.no_plant")
    counted = sum(row.stems or 0.0 for row in rows)
    whole = all(row.stems is not None for row in rows)
    number = tongue.say("standing.counted" if whole else "standing.more" if counted else "standing.uncounted",
                        stems=f"{counted:,.0f}", plant=plant)  # fmt: skip
    sizes = [row.diameter_cm for row in rows if row.diameter_cm is not None]
    size = text.size(text.joined(sizes)) if len(sizes) == len(rows) else tongue.say("standing.no_size")
    days = (rows[0].on.isoformat(), rows[-1].on.isoformat())
    when = tongue.say("standing.on" if days[0] == days[1] else "standing.from_to", first=days[0], last=days[1])
    return tongue.say("standing.one", number=number, size=size, when=when)
