"""The prescription for a property: every stand chosen, sums weighed, mixes lettered, units put in order."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from itertools import count
from types import MappingProxyType

from rootcollar.choose.behind import Behind
from rootcollar.choose.decide import decide
from rootcollar.choose.first import order_units
from rootcollar.choose.judge import fallback_verdicts, total_verdicts
from rootcollar.choose.kinds import Kind, OfKind, kind_of, ways_of_kind
from rootcollar.choose.option import Choice, Prescription, SetAside, plain
from rootcollar.choose.setting import Setting
from rootcollar.choose.sums import poured_ml
from rootcollar.kernel.doubt import best
from rootcollar.kernel.verdict import Level, Verdict, worst, worst_first
from rootcollar.label import Weigher
from rootcollar.mix.recipe import Recipe
from rootcollar.survey.stand import Stand

__all__ = ["prescribe", "with_sums"]

_LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"  # no I, no O: read as 1 and 0 on a wet bottle


def prescribe(
    stands: Sequence[Stand], setting: Setting, decided: Mapping[str, Choice] = MappingProxyType({})
) -> Prescription:
    """Return one choice a stand, in stand-key order, with the sums of the whole plan weighed.

    A total that passes a limit strikes every line that adds to it. Same inputs, same prescription. decided: choices by
    stand key that still hold, as `Prescription.decided` has them, so that one changed line does not cost a whole plan.
    """
    ordered = sorted(stands, key=lambda one: one.key)
    known: dict[Kind, tuple[OfKind, ...]] = {}
    weigher = Weigher(setting.answers, setting.on, setting.shelf)
    for one in ordered:
        if one.key not in decided and kind_of(one) not in known:
            known[kind_of(one)] = ways_of_kind(one, setting, weigher)
    return with_sums([decided.get(one.key) or decide(one, setting, known, weigher) for one in ordered], setting)


def with_sums(choices: Sequence[Choice], setting: Setting) -> Prescription:
    """Return the prescription that some choices make, in their order, with the sums of the whole plan weighed."""
    said = total_verdicts(choices, setting)
    weighed = tuple(replace(one, total_verdicts=said.get(one.stand.key, ())) for one in choices)
    checked = _fallbacks_checked(weighed, setting)
    places = order_units(checked, setting)
    order = tuple((one.key, one.because) for one in places)
    return Prescription(checked, order, _letters(checked), tuple(choices), places)


def _fallbacks_checked(choices: tuple[Choice, ...], setting: Setting) -> tuple[Choice, ...]:
    """Return the choices without the fallbacks whose sums a rule stops or asks about."""
    said = fallback_verdicts(choices, setting)
    worse = {key: worst_first(found)[0] for key, found in said.items() if worst(found) >= Level.ASK}
    return tuple(
        _without_fallback(one, worse[one.stand.key]) if one.stand.key in worse and one.is_work else one
        for one in choices
    )


def _without_fallback(choice: Choice, said: Verdict) -> Choice:
    """Return the choice with its fallback set aside, with what the rules say of its sums."""
    assert choice.fallback is not None
    why = plain(f"were it needed everywhere on the unit, {said.because}")
    aside = SetAside(choice.fallback.option.way, why, plain(said.clear))
    return replace(choice, fallback=None, set_aside=_after(aside, choice.set_aside))


def _letters(choices: Sequence[Choice]) -> dict[str, Recipe]:
    """Return a letter for each recipe in the plan, first the one of which most is poured."""
    poured: dict[Recipe, float] = {}
    for choice in choices:
        if choice.option is not None and choice.recipe is not None:
            amount = best(poured_ml([choice]))
            poured[choice.recipe] = poured.get(choice.recipe, 0.0) + amount
        back = choice.fallback.option.way.visit.recipe if choice.fallback else None
        if back is not None:
            poured.setdefault(back, 0.0)
    ordered = sorted(poured, key=lambda one: (-poured[one], one.product or one.formulation, one.strength_pct))
    names = (f"{letter}{again or ''}" for again in count() for letter in _LETTERS)  # A to Z, then A1, B1 ...
    return dict(zip(names, ordered, strict=False))


def _after(one: SetAside, rest: Sequence[SetAside]) -> Sequence[SetAside]:
    """Return one way before those already set aside, which need not be read for it."""
    return rest.after(one) if isinstance(rest, Behind) else (one, *rest)
