"""What is the same for all stems of a kind, on whichever unit they stand: worked out once, not once a stand."""

from __future__ import annotations

from dataclasses import dataclass, replace

from rootcollar.choose.figures import per_stem
from rootcollar.choose.gates import at_home, plant_gate, weaknesses
from rootcollar.choose.judge import way_facts, weighed_of
from rootcollar.choose.months import in_season
from rootcollar.choose.option import Gate, PerStem, Way
from rootcollar.choose.partner import with_partner
from rootcollar.choose.setting import Setting
from rootcollar.choose.ways import ways_for
from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.verdict import Level, Verdict
from rootcollar.label import Template, Weigher
from rootcollar.survey.stand import Stand

__all__ = ["Kind", "OfKind", "kind_of", "of_way", "ways_of_kind"]

Kind = tuple[object, ...]  # all that a stand is, but where it stands and how many there are


@dataclass(frozen=True, slots=True, eq=False)
class OfKind:
    """A way for stems of one kind. figures: None where the plant shuts it, or where they cannot be reckoned.

    refused, do: why they cannot, and what would help. templates: what the rules read and say of it, place aside, for
    each label of its mix. weak: the sources' warnings. Whom any of it is said of is put in with the stand.
    """

    way: Way
    plant_gate: Gate | None = None
    figures: PerStem | None = None
    refused: str = ""
    do: str = ""
    templates: tuple[Template, ...] = ()
    weak: tuple[Verdict, ...] = ()


def kind_of(stand: Stand) -> Kind:
    """Return what makes two stands alike wherever they are and however many stems they have."""
    return stand.species, stand.band_cm, stand.measured_at, stand.crown_m, stand.height_m, stand.fruiting


def ways_of_kind(stand: Stand, setting: Setting, weigher: Weigher) -> tuple[OfKind, ...]:
    """Return every way for stems like a stand's, with all that can be known of it before the unit is looked at."""
    species = setting.reference.species[stand.species]
    ways = ways_for(species, setting.products, setting.reference)
    return tuple(_of_kind(in_season(way, species, setting.reference), stand, setting, weigher) for way in ways)


def _of_kind(way: Way, stand: Stand, setting: Setting, weigher: Weigher) -> OfKind:
    species = setting.reference.species[stand.species]
    try:
        way = with_partner(way, setting)
    except Refusal as refusal:
        return OfKind(way, refused=refusal.limit, do=refusal.do)
    gate = plant_gate(way, species, stand, setting.reference)
    if gate is not None:
        if not (gate.own_reason and any(one.way == way.key for one in setting.picked.values())):
            return OfKind(way, gate)
        way = replace(way, despite=gate.because)
    return of_way(way, gate, stand, setting, weigher)


def of_way(way: Way, gate: Gate | None, stand: Stand, setting: Setting, weigher: Weigher) -> OfKind:
    """Return a way with its figures for stems like a stand's, and with what the rules say of it but for the place."""
    species = setting.reference.species[stand.species]
    try:
        figures = per_stem(way, species, stand, setting)
    except Refusal as refusal:
        return OfKind(way, gate, refused=refusal.limit, do=refusal.do)
    sides = (way_facts(one, species, stand, figures, setting) for one in weighed_of(way))
    templates = tuple(weigher.template(one) for one in sides)
    minded = (*weaknesses(way, species), *at_home(species, setting.ground.state))
    weak = tuple(Verdict(Level.WARN, words) for words in minded)
    return OfKind(way, gate, figures=figures, templates=templates, weak=weak)
