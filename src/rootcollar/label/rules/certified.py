"""Who is certified: for products of restricted use, for work on another's land, and for volunteers who treat."""

from __future__ import annotations

from datetime import date

from rootcollar.kernel.verdict import Verdict
from rootcollar.label.people import Handling, Person, overdue
from rootcollar.label.rule import Basis, Seen, ask, rule, stop
from rootcollar.label.words import listing, mentions

__all__ = ["certified_there", "for_whom", "trained_under_them", "volunteers_who_treat"]

_RESTRICTED = "sheet.identity.restricted_use"
_CLASS = "sheet.identity.classification"
_SILENT = {_RESTRICTED: False, _CLASS: "unclassified"}

# Words of a category that fit a class of place, as 40 CFR 171.101(a)(1), (b), (c), (e), (f) name them. A class that
# is not here has no category of its own there: the state's own categories differ, and are asked for.
_FITS = {
    "forest": ("forest",),
    "right_of_way": ("right of way",),
    "residential": ("ornamental", "turf"),
    "pasture": ("crop", "agricultural"),
    "cropland": ("crop", "agricultural"),
    "aquatic": ("aquatic",),
}
# Categories of 40 CFR 171.101 that never cover hand work on woody plants outdoors.
_NEVER = ("livestock", "seed treatment", "structural", "public health", "predator", "fumigation", "aerial")
_WRITE = "write licence and licence_until of the person in crew.toml"


def _restricted(restricted: bool, use_class: str) -> bool:
    return restricted or use_class == "restricted"


def _unknown(handling: Handling) -> Verdict | None:
    """Return the question for what a certificate is weighed against, where it is not known."""
    if not handling.people:
        return ask("nobody has said who works, so no certificate is known", _WRITE, answerable=False)
    if handling.on is None:
        return ask(
            "no day of work is given, so no certificate can be weighed", "give the day of work", answerable=False
        )
    if handling.state is None:
        return ask("nobody has said in which state the ground lies", "write state in ground.toml", answerable=False)
    return None


@rule(
    "L18",
    "A restricted-use product is used only by, or under, somebody whose certificate holds there and then.",
    Basis(
        "FIFRA 12(a)(2)(F); 40 CFR 171.1(b), a certificate currently valid where the work is; 171.101, 171.201(b)(1)"
    ),
    silence=_SILENT,
    restricted=_RESTRICTED,
    use_class=_CLASS,
    handling="place.handling",
)
def certified_there(restricted: bool, use_class: str, handling: Handling) -> Verdict | None:
    """Stop without a certificate of the ground's state that holds on the day and fits the work; ask where unclear."""
    if not _restricted(restricted, use_class):
        return None
    if unknown := _unknown(handling):
        return unknown
    held = [one for one in handling.people if one.answers and one.licence is not None]
    if not held:
        return stop(
            "this is a restricted-use product, and nobody who treats, leads or supervises has a certificate",
            f"bring a certified applicator ({_WRITE}), or another product",
        )
    found = [_wrong(one, handling) for one in held]
    return min((one for one in found if one), key=lambda one: one.level) if all(found) else None


def _wrong(one: Person, handling: Handling) -> Verdict | None:
    """Return what is wrong with one person's certificate for this work."""
    on, state, card = handling.on, handling.state, one.licence
    assert on and state and card  # weighed before
    if one.licence_until is None or not card.state:
        return ask(f"nobody has written the state or the last day of the certificate of {one.name}", _WRITE,
                   answerable=False)  # fmt: skip
    if one.licence_until < on:
        return _ran_out(one.name, one.licence_until, on)
    if card.state.upper() != state:
        return stop(
            f"the certificate of {one.name} is of {card.state.upper()}; the ground lies in {state}",
            f"a certificate of {state}: ask its agency whether it takes that of {card.state.upper()} for its own",
        )
    return _not_for_this(one, handling)


def _ran_out(name: str, until: date, on: date) -> Verdict:
    return stop(
        f"the certificate of {name} runs out on {until.isoformat()}, before the work on {on.isoformat()}",
        "work before that day, or have it renewed and write the new licence_until in crew.toml, or bring another",
    )


def _not_for_this(one: Person, handling: Handling) -> Verdict | None:
    """Return what speaks against a certificate's kind and category; FIFRA 2(e)(2) on the private kind."""
    card = one.licence
    assert card  # weighed before
    if card.kind == "private":
        if handling.produces is None or handling.for_whom is None:
            clear = "write purpose and for_whom in ground.toml"
            return ask(f"{one.name} is certified as a private applicator, and nobody has said what the work is for",
                       clear, answerable=False)  # fmt: skip
        if not handling.produces or handling.for_whom not in ("own", "employer"):
            return stop(
                f"{one.name} is certified as a private applicator, which covers only producing plants on one's own or "
                "one's employer's ground",
                "a commercial certificate, or another product",
            )
        return None
    if mentions(card.category, _FITS.get(handling.site_class or "", ())):
        return None
    place = (handling.site_class or "a place not classed yet").replace("_", " ")
    if mentions(card.category, _NEVER):
        return stop(f"the certificate of {one.name} is for {card.category}; the work is in {place}",
                    "a certificate of a fitting category, or another product")  # fmt: skip
    what = f"is for {card.category}" if card.category else "names no category here"
    return ask(
        f"the certificate of {one.name} {what}; does that cover stem-by-stem work in {place}?",
        "ask the state's agency; yes if it does",
    )


@rule(
    "L18b",
    "Whoever uses a restricted-use product under another's certificate is 18, and trained within 12 months.",
    Basis("40 CFR 171.201(b)(2) and (c)"),
    silence=_SILENT,
    restricted=_RESTRICTED,
    use_class=_CLASS,
    handling="place.handling",
)
def trained_under_them(restricted: bool, use_class: str, handling: Handling) -> Verdict | None:
    """Stop where somebody treats without a certificate and is under 18 or trained too long ago; ask if not written.

    A certificate of another state or category that holds will do in place of training, (c)(4).
    """
    if not _restricted(restricted, use_class):
        return None
    if unknown := _unknown(handling):
        return unknown
    on = handling.on
    assert on  # weighed before
    plain = [one for one in handling.people if one.handles and not one.certified(on)]
    young = [one.name for one in plain if one.minor]
    if young:
        return stop(f"{listing(young)}: under 18, and this is a restricted-use product",
                    "take lead and treat out of what they may do in crew.toml")  # fmt: skip
    return late(plain, on)


def late(people: list[Person], on: date) -> Verdict | None:
    """Return a stop on those whose handler training is over 12 calendar months old, else ask for days not written."""
    old = [f"{one.name} ({one.trained_on.isoformat()})" for one in people
           if one.trained_on and overdue(one.trained_on, on)]  # fmt: skip
    if old:
        return stop(
            f"the last handler training is more than 12 months before {on.isoformat()}: {listing(old)}",
            "train them again and write trained_on in crew.toml, or take lead and treat out of what they may do",
        )
    unsaid = [one.name for one in people if one.trained_on is None]
    if unsaid:
        return ask(f"nobody has written the day of the last handler training of {listing(unsaid)}",
                   "write trained_on in crew.toml", answerable=False)  # fmt: skip
    return None


@rule(
    "L19",
    "For hire, or on another's land: the state may ask for a commercial licence.",
    Basis("the state's pesticide law; states differ, and rootcollar has read none of them for this", Seen.MEMORY),
    silence=_SILENT,
    restricted=_RESTRICTED,
    use_class=_CLASS,
    handling="place.handling",
)
def for_whom(restricted: bool, use_class: str, handling: Handling) -> Verdict | None:
    """Ask for the state's rule on another's land, unless a commercial licence of the state holds on the day."""
    if _restricted(restricted, use_class) or handling.for_whom == "own":
        return None
    if handling.for_whom is None:
        return ask(
            "nobody has said for whom the crew works: on its own land, for its employer, for hire, as volunteers, or "
            "for a public agency",
            'write for_whom in ground.toml, such as for_whom = "own"',
            answerable=False,
        )
    if handling.for_whom == "volunteers" and any(one.volunteer for one in handling.treating):
        return None  # asked by L19b, of those very people
    if _commercial(handling):
        return None
    whose = {
        "employer": "for an employer",
        "hire": "for hire",
        "volunteers": "as volunteers",
        "agency": "for an agency",
    }
    return ask(
        f"the crew works {whose[handling.for_whom]} on land that is not its own, and no commercial licence of the "
        "state that holds on the day is written down",
        'ask the state\'s agency; yes if it asks for none here, else write licence, kind = "commercial" and '
        "licence_until in crew.toml",
    )


def _commercial(handling: Handling) -> bool:
    on, state = handling.on, handling.state
    return on is not None and state is not None and any(
        one.answers and one.certified(on, state) and one.licence is not None and one.licence.kind == "commercial"
        for one in handling.people
    )  # fmt: skip


@rule(
    "L19b",
    "The state lets a volunteer who treats do so.",
    Basis("the state's pesticide law on people without a certificate; states differ", Seen.MEMORY),
    silence=_SILENT,
    restricted=_RESTRICTED,
    use_class=_CLASS,
    handling="place.handling",
)
def volunteers_who_treat(restricted: bool, use_class: str, handling: Handling) -> Verdict | None:
    """Ask for the state's rule where a volunteer without a licence of the state treats; the label binds them too."""
    on, state = handling.on, handling.state
    free = [
        one.name for one in handling.treating
        if one.volunteer and not (on is not None and state is not None and one.certified(on, state))
    ]  # fmt: skip
    if not free:
        return None
    return ask(
        f"volunteers treat ({listing(free)}): may they, in this state, without a certificate of their own, put on "
        f"{'a restricted-use product' if _restricted(restricted, use_class) else 'this product'}?",
        "ask the state's agency, and who insures them; yes if they may as you plan it",
    )
