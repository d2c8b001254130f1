"""Plants to be kept that are taken for a target, on days on which nothing tells the two apart."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date

from rootcollar.choose import Choice
from rootcollar.kernel.days import holds
from rootcollar.kernel.tongue import Tongue
from rootcollar.reference import LookAlike, Reference, Species
from rootcollar.work.in_tongue import plant_name, plant_words

__all__ = ["look_boxes", "shows"]


def shows(look: LookAlike, day: date) -> bool | None:
    """Return whether what tells a look-alike apart shows on a day; None where that is not known."""
    return any(holds(window, day) for window in look.shows) if look.shows else None


def look_boxes(lines: Sequence[Choice], day: date | None, reference: Reference, tongue: Tongue) -> tuple[str, ...]:
    """Return what is to be minded of look-alikes on the day, a sentence a plant; nothing while no day is set.

    lines: work of the day. Where the tell does not show only stems tagged in leaf are treated, doubtful ones left.
    """
    if day is None:
        return ()
    plants = dict.fromkeys(one.stand.species for one in lines)
    return tuple(words for key in plants for words in _of(reference.species[key], day, tongue))


def _of(species: Species, day: date, tongue: Tongue) -> Iterator[str]:
    told = [name for name, _ in plant_words(species, tongue).look_alikes]
    if len(told) != len(species.look_alikes):  # a name not put into the language yet is better read than lost
        told = [one.name for one in species.look_alikes]
    paired = tuple(zip(species.look_alikes, told, strict=True))
    plant = plant_name(species, tongue)
    for key, state in (("target.hidden", False), ("target.unknown", None)):
        names = [name for look, name in paired if shows(look, day) is state]
        if names:
            yield tongue.say(key, plant=plant[:1].upper() + plant[1:], looks="; ".join(names))
