"""Every fact a rule can read: its path, what it is in words, and where a person writes it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from rootcollar.shelf import FIELDS

__all__ = ["PATHS", "Fact"]


@dataclass(frozen=True, slots=True)
class Fact:
    """A fact in words. where: how to give it, with places for {sheet}, {block} and, written {{}}, the key's name.

    by_hand: a person may look for themselves and answer, because there is nowhere to write it.
    """

    words: str
    where: str
    by_hand: bool = False


_SHEET = "read it on the label and type {{}} in shelf/{sheet}.toml"
_BLOCK = "read it on the label and type {{}}{block} in shelf/{sheet}.toml"
_UNIT = "write {{}} of the unit in ground.toml"

_OTHERS: dict[str, Fact] = {
    "sheet.key": Fact("the label sheet", "put a label sheet on the shelf"),
    "sheet.second": Fact("the second reading of the label", "rootcollar shelf second, with shelf/{sheet}.toml"),
    "sheet.methods": Fact("the label's methods", "type a [[method]] block in shelf/{sheet}.toml"),
    "plan.method": Fact("the planned method", "choose a method"),
    "plan.species": Fact("the plant to treat", "name the plant in tally.csv"),
    "plan.strength_pct": Fact("the planned strength", "choose a strength"),
    "plan.carrier": Fact("what the product is mixed with in the plan", "choose a carrier"),
    "plan.band_cm": Fact("the stem sizes planned", "write the size class in tally.csv"),
    "plan.dose": Fact("the planned mix in one place", "yes if the crew keeps to the label's dose", by_hand=True),
    "plan.height_m": Fact("the height of the plants", "write the height of the plants in tally.csv"),
    "plan.state": Fact("the state the ground lies in", "write state in ground.toml"),
    "plan.demo": Fact("whether this is the invented demo ground", "nothing: only the demo says so"),
    "plan.on": Fact("the day or season of work", "give the day of work"),
    "plan.stature": Fact("how tall the plants are", "write the height of the plants in tally.csv"),
    "plan.leaks": Fact("whether the ingredient is known to hurt others through their roots", "choose an ingredient"),
    "people.crew": Fact("the crew", "write each person in crew.toml"),
    "people.wear": Fact("the wear the crew has at hand", "write {{}}, item by item in the label's words, in crew.toml"),
    "people.beside": Fact("who treats what is cut", "write who may treat or lead in crew.toml"),
    "place.site_class": Fact("the class of place the unit is", _UNIT),
    "place.area_m2": Fact("the area of the unit", "draw the unit in ground.toml or write its area"),
    "place.water_m": Fact("the distance from the unit to the nearest water", "write water of the unit in ground.toml"),
    "place.distances": Fact("the distances to water and wells", "write water and well of the unit in ground.toml"),
    "place.permission": Fact("who allows the work on the unit", "write permission of the unit in ground.toml"),
    "place.permission_until": Fact("until when the work is allowed", "write permission of the unit in ground.toml"),
    "place.handling": Fact(
        "who works, when, for whom and for what", "write crew.toml; for_whom and purpose in ground.toml"
    ),
    "place.power_m": Fact(
        "the distance to the nearest power line",
        'write power of the unit in ground.toml, or "power" in looked_for once all of it was walked for one',
    ),
    "place.beneath": Fact(
        "how near a trail, a road, a building, parking, another's ground or a power line lies",
        "write trail, road, building, parking, boundary and power of the unit in ground.toml",
    ),
    "place.mixing": Fact("where mixes are made", "write mixing in ground.toml"),
    "place.taken": Fact("what is grazed, cut or gathered there", "write taken in ground.toml"),
    "place.trees": Fact(
        "the distance to trees and shrubs that are wanted", "write keep and wanted_roots of the unit in ground.toml"
    ),
    "place.soil": Fact(
        "the soil and the depth of ground water", "write soil and ground_water of the unit in ground.toml"
    ),
    "plan.partner": Fact("other product planned in the mix", "write [[partner]] in own.toml"),
    "people.aboard": Fact("what the crew has along", "write aboard in crew.toml"),
    "shed.jugs": Fact("the jugs of the product", "write stock.csv"),
    "law.wear_floor": Fact("the least to wear by category", "nothing: it is kept with the facts"),
    "law.wash": Fact("the least water to carry", "nothing: it is kept with the facts"),
    "law.transport": Fact("the most that a vehicle carries", "nothing: it is kept with the facts"),
    "day.load": Fact("a load of the day and how long it is worked with", "prepare a day"),
    "day.jugs": Fact("the jugs that go along", "prepare a day"),
    "total.work": Fact("the sum of the product's work on the unit", "count the stems in tally.csv"),
    "history.past": Fact("what was applied on the unit before", "write applied.csv"),
}

PATHS: Mapping[str, Fact] = MappingProxyType(
    {
        f"sheet.{path}": Fact(row.words, _BLOCK if row.in_method else _SHEET)
        for path, row in FIELDS.items()
        if not path.startswith(("ingredient.", "site."))
    }
    | _OTHERS
)
