"""Do signal word and wear, as typed, fit the toxicity categories typed beside them? The label's own words hold."""

from __future__ import annotations

from rootcollar.hazard import TASKS, SignalWord, signal_word, wear_floor
from rootcollar.kernel.verdict import Verdict
from rootcollar.label.floor import CATEGORIES, categories_of, lacking
from rootcollar.label.rule import Basis, Seen, ask, rule, warn
from rootcollar.label.words import flat, listing
from rootcollar.reference import NamedFigure

__all__ = ["wear_above_floor", "word_fits"]

_WORD = "sheet.hazard.signal_word"
_SYMBOL = "sheet.hazard.poison_symbol"
_TYPED = tuple(f"sheet.{one}" for one in CATEGORIES)
_READY = "sheet.formulation.ready_to_use"
_LISTS = tuple(f"sheet.ppe.{task}" for task in TASKS)
_RESPIRATOR = "sheet.ppe.respirator"


@rule(
    "L20",
    "The signal word typed fits the toxicity categories typed.",
    Basis("40 CFR 156.62 and 156.64", Seen.EDITION),
    silence={_WORD: "none", _SYMBOL: False, **dict.fromkeys(_TYPED)},
    word=_WORD,
    symbol=_SYMBOL,
    said=_TYPED,
)
def word_fits(word: str, symbol: bool, said: tuple[str | None, ...]) -> Verdict | None:
    """Ask where the word is weaker than the worst category leads to; DANGER with the symbol is the strongest."""
    categories = categories_of(said)
    if not categories:
        return None
    typed, least = SignalWord[word.upper()], signal_word(categories)
    if symbol and typed is SignalWord.DANGER:
        typed = SignalWord.DANGER_POISON
    if typed >= least:
        return None
    rows = listing(f"{route} {found.name}" for route, found in categories.items())
    return ask(
        f"the sheet has {typed.label}, and its categories ({rows}) lead to {least.label}",
        "read the signal word, the symbol and the categories again and retype what is wrong; yes if the label prints "
        "them so: its own word holds",
    )


@rule(
    "L21",
    "The wear typed is no less than the federal floor for the typed categories.",
    Basis("40 CFR 156.212(e) and (i); the label wins, 156.200(a)(2)", Seen.EDITION),
    silence={
        _WORD: None, _READY: False, _RESPIRATOR: "none", **dict.fromkeys(_TYPED), **dict.fromkeys(_LISTS, ())
    },
    lists=_LISTS,
    respirator=_RESPIRATOR,
    word=_WORD,
    ready=_READY,
    said=_TYPED,
    rows="law.wear_floor",
)  # fmt: skip
def wear_above_floor(
    lists: tuple[tuple[str, ...], ...], respirator: str, word: str | None, ready: bool,
    said: tuple[str | None, ...], rows: tuple[NamedFigure, ...],
) -> Verdict | None:  # fmt: skip
    """Warn where the list of a task lacks something that the federal floor has for the categories."""
    typed = SignalWord[word.upper()] if word else None
    also = () if flat(respirator) == "none" else (respirator, "respirator")
    missing = []
    for task, items in zip(TASKS, lists, strict=True):
        floor = wear_floor(task, categories_of(said), typed, rows, ready_to_use=ready)
        missing += [f"{one} (for {task})" for one in lacking(floor.items, (*items, *also))]
    if not missing:
        return None
    return warn(
        f"what to wear was typed without {listing(missing)}, which the federal floor has for the categories typed",
        "read its list and the categories again and retype what is wrong; where the label says less, the label wins",
    )
