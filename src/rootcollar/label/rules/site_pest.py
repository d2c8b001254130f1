"""May it be used in this kind of place, on this plant?"""

from __future__ import annotations

from rootcollar.kernel.verdict import Level, Verdict
from rootcollar.label.rule import Basis, ask, rule, stop, warn
from rootcollar.label.words import flat, listing, mentions
from rootcollar.shelf import SiteLine

__all__ = ["plant_listed", "site_listed"]

_LISTED = "sheet.pests.listed"
_ONLY = "sheet.pests.only_listed"


@rule(
    "L05",
    "The label names this kind of place.",
    Basis("FIFRA 2(ee)(2); 40 CFR 156.10(i)(2)(iii)"),
    when_silent=Level.STOP,
    sites="sheet.site",
    site_class="place.site_class",
)
def site_listed(sites: tuple[SiteLine, ...], site_class: str) -> Verdict | None:
    """Stop on a place that the label does not name: the one departure that no law allows."""
    place = site_class.replace("_", " ")
    here = [one for one in sites if one.class_ == site_class]
    if any(one.allowed is False for one in here):
        said = listing(f'"{one.words or place}"' for one in here if one.allowed is False)
        return stop(f"the label forbids use in {place}: {said}", "another product, or another way")
    if any(one.allowed is None for one in here):
        return ask(
            f"the label speaks of {place}, but nobody has typed whether it allows use there",
            "write allowed = true or false in that [[site]] block",
            answerable=False,
        )
    if here:
        return None
    loose = [one for one in sites if one.class_ is None]
    unsorted = [one for one in loose if "class" in one.unread]
    if unsorted:
        said = listing(f'"{one.words or "no words"}"' for one in unsorted)
        clear = "write class in the [[site]] blocks"
        return ask(f"the class of these places was not typed: {said}", clear, answerable=False)
    near = [one for one in loose if one.words and one.allowed is not False and mentions(one.words, [place])]
    if near:
        said = listing(f'"{one.words}"' for one in near)
        return ask(f"does the label's {said} mean this {place}? Only its words are near", "read them; yes if it does")
    named = listing(sorted({(one.class_ or one.words or "").replace("_", " ") for one in sites if one.allowed}))
    return stop(f"the label does not name {place}; it names: {named}", "another product, or another way")


@rule(
    "L06",
    "The label covers this plant.",
    Basis("FIFRA 2(ee)(2)"),
    silence={_LISTED: (), _ONLY: False},
    listed=_LISTED,
    only=_ONLY,
    names="plan.species",
)
def plant_listed(listed: tuple[str, ...], only: bool, names: tuple[str, ...]) -> Verdict | None:
    """Stop on an unlisted plant where only listed ones are allowed; else the law lets it, at one's own risk."""
    if {flat(one) for one in listed} & {flat(one) for one in names}:
        return None
    plant = names[0]
    wider = [one for one in listed if any(mentions(name, [one]) for name in names)]
    if wider and only:
        return ask(
            f"the label allows listed plants only and lists {listing(wider)}: does that cover {plant}?",
            "read the list and its notes; yes if it does",
        )
    if wider:
        return None
    if only:
        return stop(f"the label allows only the plants it lists, and {plant} is not among them", "another product")
    return warn(
        f"{plant} is not on the label's list; the law lets a listed place carry an unlisted plant [FIFRA 2(ee)(2)], "
        "but nobody stands for the result",
        "write this departure into the record, or take a product that lists the plant",
    )
