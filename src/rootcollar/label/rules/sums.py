"""Do the figures of the sheet agree with each other? Two that contradict mean one was typed wrongly."""

from __future__ import annotations

from collections.abc import Iterator

from rootcollar.kernel.formula import formula
from rootcollar.kernel.units import show
from rootcollar.kernel.verdict import Verdict
from rootcollar.label.rule import Basis, Seen, ask, exceeds, rule
from rootcollar.shelf import Active

__all__ = ["figure_doubts", "figures_agree", "lb_per_gal"]

# How far two figures of one label may differ by rounding before they contradict (ours).
_SHARE = 0.03  # of the larger (ours)
_PERCENT = 0.1  # of 100 percent (ours)

_OTHER = "sheet.formulation.other_ingredients_percent"
_DENSITY = "sheet.formulation.density_lb_per_gal"


@formula(
    "density_lb_per_gal * percent / 100",
    gives="lb/gal",
    source="arithmetic",
    density_lb_per_gal=(6, 12),
    percent=(0.1, 100),
)
def lb_per_gal(density_lb_per_gal: float, percent: float) -> float:
    """Return the weight of an ingredient in a gallon [lb/gal], of its percent by weight and the product's density."""
    return density_lb_per_gal * percent / 100


@rule(
    "L17",
    "The figures of the sheet agree with each other.",
    Basis("40 CFR 156.10(g)(1), (4) and (5); how far they may differ is ours", Seen.EDITION),
    silence={_OTHER: None, _DENSITY: None},
    actives="sheet.ingredient",
    other=_OTHER,
    density=_DENSITY,
)
def figures_agree(actives: tuple[Active, ...], other: float | None, density: float | None) -> Verdict | None:
    """Ask to read again where percents do not make 100, or percent and density contradict the pounds in a gallon."""
    unread = sorted({one for active in actives for one in active.unread if one not in {"form", "mode_group"}})
    if unread:
        return ask(
            f"not read yet of an active ingredient: {', '.join(unread)}",
            'type them in its block; "silent" where the label gives none',
            answerable=False,
        )
    doubts = [words for _, words in figure_doubts(actives, other, density)]
    if not doubts:
        return None
    return ask("; ".join(doubts), "read these figures on the label again and retype them", answerable=False)


def figure_doubts(actives: tuple[Active, ...], other: float | None, density: float | None) -> Iterator[tuple[str, str]]:
    """Yield the contradictions between figures of a sheet: (address of one of the lines, the contradiction in words).

    other: other ingredients [% by weight]. density: of the product [lb/gal]. None: silent, or not read.
    """
    yield from ((f"formulation.{_OTHER.rpartition('.')[2]}", words) for words in _hundred(actives, other))
    for number, active in enumerate(actives, start=1):
        yield from ((f"ingredient.{number}.{name}", words) for name, words in _one(active, density))


def _hundred(actives: tuple[Active, ...], other: float | None) -> Iterator[str]:
    shares = [active.ai_percent for active in actives if active.ai_percent is not None]
    if other is None or len(shares) < len(actives):
        return
    total = sum(shares) + other
    if exceeds(abs(total - 100), _PERCENT):
        yield f"active and other ingredients come to {total:g} %, not 100 %"


def _one(active: Active, density: float | None) -> Iterator[tuple[str, str]]:
    name = active.common_name or "the ingredient"
    for kind, percent, pounds in (
        ("active", active.ai_percent, active.ai_lb_per_gal),
        ("acid", active.ae_percent, active.ae_lb_per_gal),
    ):
        if density is not None and percent is not None and pounds is not None:
            reckoned = lb_per_gal(density, percent)
            if _differ(reckoned, pounds):
                yield (
                    "ai_lb_per_gal" if kind == "active" else "ae_lb_per_gal",
                    f"{name}: {percent:g} % {kind} of {show(density, 'lb/gal')} is {show(reckoned, 'lb/gal')}, "
                    f"but {show(pounds, 'lb/gal')} was typed",
                )
    for unit, active_has, acid_has in (
        ("%", active.ai_percent, active.ae_percent),
        ("lb/gal", active.ai_lb_per_gal, active.ae_lb_per_gal),
    ):
        if active_has is not None and acid_has is not None and exceeds(acid_has, active_has):
            yield (
                "ae_percent" if unit == "%" else "ae_lb_per_gal",
                f"{name}: the acid ({show(acid_has, unit)}) is more than its salt or ester ({show(active_has, unit)})",
            )
    yield from _ratio(active, name)


def _ratio(active: Active, name: str) -> Iterator[tuple[str, str]]:
    """The share of acid in the active must come out the same by percent and by pounds."""
    percents, pounds = (active.ae_percent, active.ai_percent), (active.ae_lb_per_gal, active.ai_lb_per_gal)
    if None in percents or None in pounds or not active.ai_percent or not active.ai_lb_per_gal:
        return
    by_percent = (active.ae_percent or 0) / active.ai_percent
    by_pounds = (active.ae_lb_per_gal or 0) / active.ai_lb_per_gal
    if _differ(by_percent, by_pounds):
        words = f"{name}: acid is {by_percent:.3g} of the active by percent, but {by_pounds:.3g} by pounds in a gallon"
        yield "ae_lb_per_gal", words


def _differ(one: float, other: float) -> bool:
    return exceeds(abs(one - other), _SHARE * max(one, other))
