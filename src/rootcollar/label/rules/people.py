"""Does the crew have what the label tells them to wear, and somebody who treats what is cut?"""

from __future__ import annotations

from rootcollar.kernel.verdict import Verdict
from rootcollar.label.rule import Basis, Seen, ask, rule, stop
from rootcollar.label.words import flat, listing

__all__ = ["treater_beside_the_cut", "wear_at_hand"]

_TASKS = ("mixing", "applying", "cleaning")
_CLEANING = "sheet.ppe.cleaning"
_GLOVES = "sheet.ppe.glove_types"
_RESPIRATOR = "sheet.ppe.respirator"


@rule(
    "L22",
    "The crew has everything the label says to wear.",
    Basis("the label; FIFRA 12(a)(2)(G)"),
    silence={_CLEANING: (), _GLOVES: None, _RESPIRATOR: "none"},
    tasks=("sheet.ppe.mixing", "sheet.ppe.applying", _CLEANING),
    glove_types=_GLOVES,
    respirator=_RESPIRATOR,
    wear="people.wear",
)
def wear_at_hand(
    tasks: tuple[tuple[str, ...], ...], glove_types: tuple[str, ...] | None, respirator: str, wear: frozenset[str]
) -> Verdict | None:
    """Stop where an item for mixing, applying or cleaning is missing, or no gloves of a named material are there."""
    have = {flat(one) for one in wear}
    missing = [
        f"{item} (for {task})"
        for task, items in zip(_TASKS, tasks, strict=True)
        for item in items
        if flat(item) not in have
    ]
    if flat(respirator) != "none" and flat(respirator) not in have:
        missing.append(f"respirator: {respirator}")
    if missing:
        return stop(
            f"the label says to wear {listing(missing)}, and the crew's wear does not list it",
            "bring it, then write it in crew.toml in the label's words",
        )
    gloved = any("glove" in item for items in tasks for item in items)
    if gloved and glove_types is not None and not _named(glove_types, have):
        return _which_gloves(glove_types, wear)
    return None


def _named(glove_types: tuple[str, ...], have: set[str]) -> bool:
    return any(flat(one) in have or flat(f"{one} gloves") in have for one in glove_types)


def _which_gloves(glove_types: tuple[str, ...], wear: frozenset[str]) -> Verdict:
    """Gloves are there, but of what? A material that was named and is not the label's stops; an unnamed one asks."""
    types = listing(glove_types)
    others = sorted(one for one in wear if "glove" in one.lower() and flat(one) != "chemical resistant glove")
    if others:
        return stop(f"the label names gloves of {types}; the crew has {listing(others)}", "gloves of a named material")
    return ask(
        f"the label names gloves of {types}; nobody has said what the crew's gloves are made of",
        "write the material in the wear of crew.toml in the label's words; or yes, if it is one of these",
    )


@rule(
    "P06",
    "No cut without somebody who may treat.",
    Basis("rootcollar; what is cut but not treated sprouts, many plants thicker than before", Seen.OWN),
    beside="people.beside",
)
def treater_beside_the_cut(beside: tuple[bool, int | None]) -> Verdict | None:
    """Stop a cut that is to be treated where the crew has nobody who may treat; ask where no crew is written down.

    beside: whether the line is cut and treated, and how many people may treat.
    """
    treated, treaters = beside
    if not treated or treaters:
        return None
    if treaters is None:
        return ask(
            "nobody has said who treats what is cut; untreated it sprouts, many plants thicker than before",
            "write who may treat or lead in crew.toml",
            answerable=False,
        )
    return stop(
        "nobody of the crew may treat, and what is cut but not treated sprouts, many plants thicker than before",
        'bring somebody who may (may = ["treat"] in crew.toml, 18 or older), or plan a way without a cut',
    )
