"""Figure a signal word: what the toxicity categories of a product lead to, and whether that fits its label."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from rootcollar.hazard import (
    MEASURED,
    ROUTES,
    Category,
    Route,
    SignalWord,
    entry_default_h,
    signal_word,
    toxicity_category,
)
from rootcollar.jobs.figure import Answer
from rootcollar.jobs.outcome import Outcome
from rootcollar.kernel.formula import use
from rootcollar.kernel.units import show
from rootcollar.kernel.verdict import Level, Verdict
from rootcollar.reference import Reference, named, numbers

__all__ = ["SignalWordAsk", "Toxicity", "signal_word_of"]

_REGULATION, _PRACTICE = "toxicity_regulation", "toxicity_practice"
_HAIR = 1e-5  # ours: "more than 500" is taken that much above it, so that an edge is on the milder side
_UNITS: Mapping[Route, str] = {"oral": "mg/kg", "dermal": "mg/kg", "inhalation": "mg/L"}
_CAUTIONS = (
    "The word on the label in your hand counts: this only questions what was typed, and never replaces it.",
    "A safety data sheet has words and categories of its own, 1 to 5: another scheme, not to be typed here.",
    "The word is for the product as sold, however thin the mix.",
)


@dataclass(frozen=True, slots=True)
class Toxicity:
    """What is known of a route: its category, or its LD50 [mg/kg] or LC50 [mg/L].

    more: the figure is a least one (">2000 mg/kg"): the product may be less toxic. beyond: and it is not the figure
    itself.
    """

    category: Category | None = None
    figure: float = 0.0
    more: bool = False
    beyond: bool = False


@dataclass(frozen=True, slots=True)
class SignalWordAsk:
    """What is known, route by route, and the word that the label bears, where it was typed."""

    given: Mapping[str, str]
    routes: Mapping[Route, Toxicity]
    label_word: SignalWord | None = None


@dataclass(frozen=True, slots=True)
class _Readings:
    """The categories by the regulation, and the mildest and the most severe that either table or a ">" leaves open."""

    regulation: Mapping[Route, Category]
    practice: Mapping[Route, Category]
    mild: Mapping[Route, Category]
    severe: Mapping[Route, Category]


def signal_word_of(ask: SignalWordAsk, reference: Reference) -> Outcome[Answer]:
    """Return the word that the categories lead to; a verdict asks where the label's own word does not fit them."""
    found = _read(ask, reference)
    word = signal_word(found.regulation)
    worst = min(found.regulation.values())
    doubt = _doubt(ask, found)
    missing = [route for route in ROUTES if route not in ask.routes]
    return Outcome(
        Answer(
            question="Which signal word do these toxicity categories lead to?",
            given=ask.given,
            says=_says(word, found.regulation, missing) + (f"; {doubt.because}" if doubt else ""),
            value=float(worst), unit="category",
            figures={f"{route}_category": float(one) for route, one in found.regulation.items()},
            details=tuple(_details(ask, found, reference, doubt)),
            assumed=_assumed(ask, missing),
            cautions=_CAUTIONS,
        ),
        (doubt,) if doubt else (),
    )  # fmt: skip


def _read(ask: SignalWordAsk, reference: Reference) -> _Readings:
    regulation, practice, mild = {}, {}, {}
    for route, told in ask.routes.items():
        regulation[route] = _category(route, told, reference, _REGULATION)
        practice[route] = _category(route, told, reference, _PRACTICE)
        mild[route] = Category.IV if told.more else max(regulation[route], practice[route])
    severe = {route: min(regulation[route], practice[route]) for route in ask.routes}
    return _Readings(regulation, practice, mild, severe)


def _category(route: Route, told: Toxicity, reference: Reference, table: str) -> Category:
    if told.category is not None:
        return told.category
    rows = reference.hazard[table]
    edges = [use(numbers(named(rows, f"{route}_{one.name.lower()}"))[0]) for one in list(Category)[:-1]]
    figure = told.figure * (1 + _HAIR) if told.beyond else told.figure
    return Category(toxicity_category(figure, *edges))


def _says(word: SignalWord, categories: Mapping[Route, Category], missing: list[Route]) -> str:
    worst = min(categories.values())
    routes = " and ".join(route for route, one in categories.items() if one is worst)
    because = f"the worst route is category {worst.name} ({routes})"
    if missing:
        least = f"At least {word.label}" if word else "No word so far"
        return f"{least}: {because}; not told: {', '.join(missing)}"
    if word is SignalWord.NONE:
        return "No signal word is needed, and if one is used it is CAUTION: all five routes are category IV"
    poison = (
        ", without Poison: that is for category I by oral, dermal or inhalation" if word is SignalWord.DANGER else ""
    )
    return f"{word.label}: {because}{poison}"


def _doubt(ask: SignalWordAsk, found: _Readings) -> Verdict | None:
    """Ask where neither table, nor a route that was not told, can explain the label's word."""
    typed = ask.label_word
    if typed is None:
        return None
    mild, severe = signal_word(found.mild), max(signal_word(found.severe), SignalWord.CAUTION)
    if typed is SignalWord.DANGER and mild is SignalWord.DANGER_POISON:
        because = f"the label word typed, {typed.label}, has no Poison beside it and so is milder"
    elif typed < mild:
        because = f"the label word typed, {typed.label}, is milder"
    elif typed > severe and len(ask.routes) == len(ROUTES):
        because = f"the label word typed, {typed.label}, is more severe"
    else:
        return None
    return Verdict(Level.ASK, because, "read the word and the categories again; the label's word is kept as it stands")


def _details(ask: SignalWordAsk, found: _Readings, reference: Reference, doubt: Verdict | None) -> Iterator[str]:
    rows = reference.hazard[_REGULATION]
    for route, told in ask.routes.items():
        by_rule, by_habit = found.regulation[route], found.practice[route]
        if told.category is None:
            figure = ("more than " if told.more else "") + show(told.figure, _UNITS[route])
            more = " or less toxic" if told.more and by_rule < Category.IV else ""
            other = (
                f"; {by_habit.name} by the agency's practice (memory), so both are kept" if by_habit != by_rule else ""
            )
            yield f"{route.capitalize()}: {figure} is category {by_rule.name}{more} by the regulation{other}."
        elif route not in MEASURED:
            means = named(rows, f"{route}_{by_rule.name.lower()}")[0]
            yield f"{route.capitalize()} {by_rule.name}: {means.value} [{means.source}]."
    entry = entry_default_h(found.regulation, reference.hazard["entry_default"])
    if entry is not None:
        yield (
            f"Were these the figures of its active ingredient, its label would start from {show(entry, 'h')} of closed "
            "entry under worker protection [40 CFR 156.208(c)]; the label's own hours hold."
        )
    by_practice = signal_word(found.practice)
    if by_practice is not signal_word(found.regulation):
        yield f"By the agency's practice (memory): {by_practice.label}."
    if doubt:
        yield f"Ask: {doubt.because} than these categories lead to; {doubt.clear}."
        if (ask.label_word or 0) > signal_word(found.regulation):
            methanol = numbers(named(reference.hazard["signal_word"], "methanol_pct"))[0]
            yield f"Methanol of {show(methanol.value, '%')} and more also makes a word more severe ({methanol.mark})."
    elif ask.label_word is not None:
        yield f"The label word typed, {ask.label_word.label}, can stand with what was told."


def _assumed(ask: SignalWordAsk, missing: list[Route]) -> tuple[str, ...]:
    edge = (
        ("a figure on an edge belongs to the more toxic side",)
        if any(told.category is None for told in ask.routes.values())
        else ()
    )
    return (
        "categories of the product as sold, from its label file or registration, not from a safety data sheet",
        *edge,
        *((f"nothing of {', '.join(missing)}: they can only make the word more severe",) if missing else ()),
    )
