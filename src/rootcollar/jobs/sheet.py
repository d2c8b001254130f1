"""What does not fit together on a label sheet, told at the line it stands in, so that a slip is caught as it is typed.

The label may print it just so: then it is typed so, and whoever types it says that it is.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from rootcollar.hazard import ROUTES, Category, Route, SignalWord, signal_word
from rootcollar.label import figure_doubts
from rootcollar.shelf import Sheet, actives, is_epa_reg_no

__all__ = ["sheet_doubts"]

_WORDS = {"none": SignalWord.NONE, "CAUTION": SignalWord.CAUTION, "WARNING": SignalWord.WARNING,
          "DANGER": SignalWord.DANGER}  # fmt: skip


def sheet_doubts(sheet: Sheet) -> Mapping[str, str]:
    """Return, by address, what contradicts another line of the sheet, or has the form of another line.

    Weighed are a number typed where the registration number belongs; toxicity categories against the signal word
    [CFR15, 156.64]; percents against pounds in a gallon and density.
    """
    figures = figure_doubts(
        actives(sheet),
        sheet.says("formulation.other_ingredients_percent"),
        sheet.says("formulation.density_lb_per_gal"),
    )
    found: dict[str, str] = {}
    for address, words in (*_number(sheet), *_signal(sheet), *figures):
        found[address] = f"{found[address]}; {words}" if address in found else words
    return {address: words[:1].upper() + words[1:] for address, words in found.items()}


def _number(sheet: Sheet) -> Iterator[tuple[str, str]]:
    number, kind = sheet.says("identity.epa_reg_no"), sheet.says("identity.registration")
    if number is None or kind not in ("epa", None) or is_epa_reg_no(number):
        return
    what = "the establishment number, behind EPA Est. No." if any(map(str.isalpha, number)) else "another number"
    yield "identity.epa_reg_no", f"{number} looks like {what}; wanted is company-product, figures only: 12345-67"


def _signal(sheet: Sheet) -> Iterator[tuple[str, str]]:
    typed = _WORDS.get(str(sheet.says("hazard.signal_word")))
    read = {route: sheet.says(f"hazard.category.{route}") for route in ROUTES}
    known: dict[Route, Category] = {route: Category[said] for route, said in read.items() if said}
    if typed is None or not known:
        return
    wanted = min(signal_word(known), SignalWord.DANGER)
    worst = min(known, key=lambda route: known[route])
    words = f"category {known[worst].name} leads to the signal word {wanted.label}; {typed.label} was typed"
    if typed < wanted:
        yield f"hazard.category.{worst}", words
    elif typed > max(wanted, SignalWord.CAUTION) and len(known) == len(ROUTES):
        yield "hazard.signal_word", f"the worst {words}"
