"""The lines of a sheet in the order in which a label prints them, from the front panel to storage: how to type one.

A line has an address: its path, in the blocks that repeat with a number or the method behind their name, as
`ingredient.1.ai_percent` or `method.foliar.carrier`. `page` of a block is an address too.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from rootcollar.shelf.fields import FIELDS, Field, fields_of

__all__ = [
    "PAGED",
    "REPEATED",
    "SECTIONS",
    "Section",
    "Shape",
    "block_of",
    "field_at",
    "in_order",
    "page_words",
    "walk",
]

REPEATED = ("ingredient", "site", "method")
# Blocks whose page is asked for; what stands inside them has the same page.
PAGED = tuple(dict.fromkeys(
    ".".join(parts[:2] if parts[:2] in (["hazard", "category"], ["hazard", "first_aid"]) else parts[:1])
    for parts in (path.split(".") for path in FIELDS)
    if parts[0] != "proof"
))  # fmt: skip

_PAGES = {
    "identity": "name and numbers", "ingredient": "this active ingredient", "formulation": "kind and other ingredients",
    "hazard": "the signal word", "hazard.category": "the hazards to people", "hazard.first_aid": "first aid",
    "entry": "the boxes", "ppe": "what to wear", "site": "this place", "pests": "the plants",
    "methods": "the ways allowed", "method": "these directions", "limits": "rates and limits", "weather": "the weather",
    "water": "water", "soil": "soil", "food_and_stock": "grazing and harvest", "nontarget": "other living things",
    "mixing": "mixing", "storage": "storage", "transport": "transport",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Section:
    """A part of a label. lines: paths; a block that repeats stands there by its name. place: where to look."""

    key: str
    title: str
    place: str
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Shape:
    """How often the blocks that repeat are there: active ingredients, places, and the kinds of method."""

    ingredients: int = 1
    sites: int = 1
    methods: tuple[str, ...] = ()


def _all(*starts: str, but: tuple[str, ...] = ()) -> tuple[str, ...]:
    return tuple(path for path in FIELDS if path.startswith(starts) and path not in but)


_FRONT = (
    "identity.product_name", "identity.restricted_use", "identity.classification", "formulation.code", "ingredient",
    "formulation.other_ingredients_percent", "hazard.child_warning", "hazard.signal_word", "hazard.poison_symbol",
    "identity.registration", "identity.epa_reg_no", "identity.epa_est_no", "identity.sln_no",
    "identity.net_contents.amount", "identity.net_contents.unit", "identity.lot", "identity.not_for_use_after",
    "identity.label_version",
)  # fmt: skip
_SURROUNDINGS = (
    "formulation.flash_point_f", "water.direct_to_water", "water.groundwater_advisory",
    "water.surface_runoff_advisory", "soil.sandy_or_shallow_groundwater_caution",
    *_all("nontarget."),
)  # fmt: skip
_MIXED = ("formulation.oil_carrier_needed", "formulation.has_own_surfactant", "formulation.ready_to_use")
_GLOVES = ("mixing.metered_gloves_note",)
_BESIDE = (
    "identity.states_ok", "identity.supplemental_labels_held", "formulation.density_lb_per_gal",
    "hazard.sds_signal_word", *_all("transport."),
)  # fmt: skip

SECTIONS: tuple[Section, ...] = (
    Section("front", "Front panel", "the side that faces the buyer, and the panel beside it", _FRONT),
    Section(
        "precautions",
        "Precautionary statements",
        "under Hazards to humans and domestic animals",
        (*_all("hazard.category."), "hazard.domestic_animal_note"),
    ),
    Section("first-aid", "First aid", "its own box, often near the signal word", _all("hazard.first_aid.")),
    Section("wear", "Personal protective equipment", "what handlers must wear, task by task", _all("ppe.")),
    Section("safety", "User safety", "user safety requirements and recommendations", _GLOVES),
    Section("surroundings", "Environmental and physical hazards", "before the directions for use", _SURROUNDINGS),
    Section("boxes", "Directions for use: the boxes", "agricultural and non-agricultural use", _all("entry.")),
    Section(
        "places",
        "Directions for use: where and on what",
        "use sites, plants, ways of using it",
        ("site", *_all("pests.", "methods.")),
    ),
    Section("ways", "Directions for use: each way of using it", "one block for each way", ("method",)),
    Section("limits", "Directions for use: rates and limits", "often at the head of a use site", _all("limits.")),
    Section("weather", "Directions for use: weather", "drift, wind, temperature, rain", _all("weather.")),
    Section(
        "water",
        "Directions for use: water, soil and what is eaten",
        "distances to keep, days to wait",
        _all("water.", "soil.", "food_and_stock.", but=_SURROUNDINGS),
    ),
    Section("mixing", "Directions for use: mixing", "before the rates", (*_MIXED, *_all("mixing.", but=_GLOVES))),
    Section("storage", "Storage and disposal", "at the end of the label", _all("storage.")),
    Section("beside", "Beside the label", "safety data sheet, state agency, further labeling", _BESIDE),
    Section("proof", "Who read it", "you", _all("proof.")),
)


def field_at(address: str) -> Field | None:
    """Return the field of an address; None for the page of a block. Raises KeyError for no address of a sheet."""
    if address.removesuffix(".page") != address:
        return None
    block, _, rest = address.partition(".")
    return FIELDS[f"{block}.{rest.partition('.')[2]}" if block in REPEATED else address]


def block_of(address: str) -> str:
    """Return the block whose page holds for an address: `hazard.first_aid`, `ingredient.1`, `method.foliar`."""
    parts = address.split(".")
    if parts[0] in REPEATED:
        return ".".join(parts[:2])
    inner = ".".join(parts[:2])
    return inner if inner in PAGED else parts[0]


def page_words(block: str) -> str:
    """Return what is asked for the page of a block, in words."""
    return f"page with {_PAGES[block if block in _PAGES else block.split('.')[0]]}"


def walk(section: Section, shape: Shape) -> Iterator[str]:
    """Yield the addresses of a section as they are asked: a block's page before the first of its lines here.

    A page is asked in the first section in which its block stands.
    """
    begun = {block_of(path) for one in SECTIONS[: SECTIONS.index(section)] for path in one.lines}
    for line in section.lines:
        for address in _addresses(line, shape):
            block = block_of(address)
            if block not in begun and block != "proof":
                begun.add(block)
                yield f"{block}.page"
            yield address


def in_order(shape: Shape) -> Iterator[str]:
    """Yield every address of a sheet of that shape, in the label's order."""
    for section in SECTIONS:
        yield from walk(section, shape)


def _addresses(line: str, shape: Shape) -> Sequence[str]:
    if line == "method":
        return [f"method.{kind}.{path}" for kind in shape.methods for path in fields_of(kind)]
    if line in REPEATED:
        count = shape.ingredients if line == "ingredient" else shape.sites
        rest = [path.removeprefix(f"{line}.") for path in FIELDS if path.startswith(f"{line}.")]
        return [f"{line}.{number}.{one}" for number in range(1, count + 1) for one in rest]
    return [line]
