"""The command `figure signal-word`: what toxicity categories lead to, and whether the label's word fits."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

import click

from rootcollar.cli.ask import amount, naming
from rootcollar.cli.figure_shared import answer, bad
from rootcollar.cli.show import json_option

if TYPE_CHECKING:
    from rootcollar.hazard import Category, Route, SignalWord
    from rootcollar.jobs.figure_signal_word import Toxicity

__all__ = ["signal_word"]

_MORE = re.compile(r"\s*(?:(>=|≥|at least)|(>|more than|greater than|over|above))\s*", re.I)
_LESS = re.compile(r"\s*(?:<|≤|less than|under|below|up to)", re.I)
_BODY = re.compile(r"\s*(?:of\s+)?(?:b\.?\s?w\.?|body\s?weight)\s*$", re.I)
_LEAD = re.compile(r"^(?:(?:tox(?:icity)?|cat(?:egory)?)\b\.?\s*)*", re.I)
_DIGITS = {"1": "I", "2": "II", "3": "III", "4": "IV"}


@click.command("signal-word")
@click.option("--oral", metavar="CATEGORY", help="Category if swallowed: I, II, III or IV.")
@click.option("--dermal", metavar="CATEGORY", help="Category on the skin, as a poison.")
@click.option("--inhalation", metavar="CATEGORY", help="Category if breathed in.")
@click.option("--eye", metavar="CATEGORY", help="Category of eye irritation.")
@click.option("--skin", metavar="CATEGORY", help="Category of skin irritation.")
@click.option("--oral-ld50", metavar="FIGURE", help="Instead of --oral: '500 mg/kg', or '>5000 mg/kg'.")
@click.option("--dermal-ld50", metavar="FIGURE", help="Instead of --dermal: '2000 mg/kg'.")
@click.option("--inhalation-lc50", metavar="FIGURE", help="Instead of --inhalation: '2 mg/L' of air.")
@click.option(
    "--label-word", metavar="WORD", help="The word on the label: DANGER, DANGER-POISON, WARNING, CAUTION, none."
)
@json_option
def signal_word(as_json: bool, **told: str | None) -> None:
    """Work out the signal word of toxicity categories.

    It questions what was typed; the word on the label in hand always counts. With --label-word it says whether that
    word fits, and leaves with 1 where it does not.

    \b
    Example: rootcollar figure signal-word --oral III --dermal III --inhalation IV --eye I --skin IV
    """
    from rootcollar.hazard import ROUTES
    from rootcollar.jobs.figure_signal_word import SignalWordAsk, signal_word_of

    given = {name.replace("_", "-"): said.strip() for name, said in told.items() if said is not None}
    routes = {route: found for route in ROUTES if (found := _route(route, told)) is not None}
    if not routes:
        raise bad("no category", "at least one route, such as --eye I, or --oral-ld50 '500 mg/kg'")
    word = None if told["label_word"] is None else _word(told["label_word"])
    answer("figure-signal-word", signal_word_of, SignalWordAsk(given, routes, word), as_json)


def _route(route: Route, told: dict[str, str | None]) -> Toxicity | None:
    from rootcollar.jobs.figure_signal_word import Toxicity

    measure = next((f"{route}_{name}" for name in ("ld50", "lc50") if f"{route}_{name}" in told), "")
    by_word, by_figure = told[route], told.get(measure)
    if by_word is not None and by_figure is not None:
        raise bad(
            f"--{route} with --{measure.replace('_', '-')}", "one of them: the category, or the figure it comes from"
        )
    if by_figure is not None:
        return _figure(f"--{measure.replace('_', '-')}", by_figure)
    return None if by_word is None else Toxicity(_category(route, by_word))


def _category(route: Route, said: str) -> Category:
    from rootcollar.hazard import MEASURED, Category
    from rootcollar.kernel.errors import BadInput, Fault

    word = _LEAD.sub("", said.strip(), count=1).upper()
    name = _DIGITS.get(word, word)
    if name not in Category.__members__:
        figure = f"; a figure goes behind --{route}-{'lc50' if route == 'inhalation' else 'ld50'}"
        more = figure if route in MEASURED and any(letter.isdigit() for letter in said) else ""
        raise BadInput(Fault(repr(said), f"a category: I, II, III or IV, I the most toxic{more}", field=f"--{route}"))
    return Category[name]


def _figure(option: str, said: str) -> Toxicity:
    """Return an LD50 [mg/kg] or LC50 [mg/L]; ">" before it leaves the less toxic categories open."""
    from rootcollar.jobs.figure_signal_word import Toxicity
    from rootcollar.kernel.errors import UnitError
    from rootcollar.kernel.units import Kind

    air = option.endswith("lc50")
    example = "2 mg/L of air" if air else "500 mg/kg"
    if _LESS.match(said):
        with naming(option):
            raise UnitError(
                said, f"a figure or more than a figure, such as {example}: less than it leaves the worst open"
            )
    sign = _MORE.match(said)
    bare = _BODY.sub("", said[sign.end() :] if sign else said)
    bare = re.sub(r"\s+(?:of\s+)?air$", "", bare.strip(), flags=re.I)
    try:
        found = amount(option, bare, Kind.STRENGTH if air else Kind.DOSE)
    except UnitError as error:
        if "more than 0" in str(error) or "0 or more" in str(error):
            raise
        with naming(option):
            raise UnitError(said, f"a figure with its unit, such as {example}") from None
    if found.unit == "ppm":
        with naming(option):
            raise UnitError(said, "mg/L, because ppm of a vapour in air is another measure")
    return Toxicity(
        None, found.to("mg/L" if air else "mg/kg"), sign is not None, sign is not None and sign[2] is not None
    )


def _word(said: str) -> SignalWord:
    from rootcollar.hazard import SignalWord
    from rootcollar.kernel.errors import BadInput, Fault

    words = {
        **{word.name: word for word in SignalWord}, "DANGERPOISON": SignalWord.DANGER_POISON,
        "POISON": SignalWord.DANGER_POISON, "NOWORD": SignalWord.NONE, "PELIGRO": SignalWord.DANGER,
        "AVISO": SignalWord.WARNING,
    }  # fmt: skip
    folded = "".join(letter for letter in said.upper() if letter.isalpha())
    if folded not in words:
        allowed = "DANGER, DANGER-POISON, WARNING, CAUTION, or none where the label has no word"
        raise BadInput(Fault(repr(said), allowed, field="--label-word"))
    return words[folded]
