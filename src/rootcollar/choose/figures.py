"""The figures of a way for one stem: what dies, what is poured, how long it takes, what it costs."""

from __future__ import annotations

from dataclasses import dataclass, replace

from rootcollar.choose.beside import side_area, side_because
from rootcollar.choose.cost import cost_per_kill, cost_per_stem, expected
from rootcollar.choose.kill import kill_pool, kill_share, kill_words
from rootcollar.choose.option import Means, PerStem, Way
from rootcollar.choose.prices import prices_per_l, wage_per_h
from rootcollar.choose.setting import Setting
from rootcollar.choose.stem_minutes import (
    OnGround,
    minutes_on,
    minutes_per_stem,
    on_ground,
    own_time,
    steep_more,
    work_of_steps,
    work_per_stem,
)
from rootcollar.choose.steps import both_visits, regrown
from rootcollar.dose import Asked, Proving, own_figure, per_stem_ml, rule_for
from rootcollar.kernel.doubt import Worlds, band, sure
from rootcollar.kernel.formula import unwatched
from rootcollar.mix.recipe import Recipe
from rootcollar.reference import Species
from rootcollar.shelf import dose_each
from rootcollar.survey.stand import Stand

__all__ = [
    "Grounded", "StemMix", "cost_of_stem", "figures_of", "mix_per_stem", "on_its_ground", "per_kill_on", "per_stem",
    "proving_batch",
]  # fmt: skip

_NONE = sure(0.0)
_A_MINUTE = sure(1.0)


@dataclass(frozen=True, slots=True, eq=False)
class StemMix:
    """Finished mix on one stem [mL], worlds; the most that goes into one place, for the label; and on what it rests.

    dose_ml, dose_per: mix in one cut, or the upper end of the mix on a whole stem [mL].
    """

    ml: Worlds
    dose_ml: float | None = None
    dose_per: str = ""
    because: str = ""


def per_stem(way: Way, species: Species, stand: Stand, setting: Setting) -> PerStem:
    """Return the figures of a way for one stem of a stand, worlds shared by every stand like it, ground aside.

    Its minutes are those of level ground, once one stands at the stem; `on_its_ground` puts in the rest.
    Raises Refusal where the dose or the kill cannot be reckoned for it.
    """
    pool = kill_pool(way, species, setting.reference)
    kill = kill_share(pool, setting.doubt)
    each = work_of_steps(way, stand, setting)
    minutes = both_visits(*each) if each else work_per_stem(way, stand, setting)
    mix = mix_per_stem(way, stand, setting)
    cost = cost_of_stem(way, minutes, mix.ml, setting)
    side = side_area(way, setting)
    rates = (wage_per_h(setting), *prices_per_l(way.visit.recipe, setting))
    return PerStem(
        kill,
        mix.ml,
        minutes,
        cost,
        cost_per_kill(cost, kill),
        mix.dose_ml,
        mix.dose_per,
        kill_words(pool, kill),
        mix.because,
        side,
        side_because(side) if way.visit.recipe else (),
        rates,
        each=each,
        means=_means(way, kill, minutes, mix.ml, rates, setting),
    )


def _means(
    way: Way, kill: Worlds, minutes: Worlds, mix_ml: Worlds, rates: tuple[float, float, float], setting: Setting
) -> Means:
    wage, *prices = rates
    strength = way.visit.recipe.products_pct if way.visit.recipe else 0.0
    with unwatched():
        labour, steep = (
            expected(cost_per_kill(cost_per_stem(one, wage, _NONE, 0.0, *prices), kill))
            for one in (minutes, minutes * steep_more(setting))
        )
        mixed = expected(cost_per_kill(cost_per_stem(_NONE, wage, mix_ml / 1000, strength, *prices), kill))
        walk = cost_per_kill(cost_per_stem(_A_MINUTE, wage, _NONE, 0.0, *prices), kill)
    return Means(labour, steep, mixed, walk)


class Grounded:
    """Makes the figures of a way where a stand is when they are first asked for, and keeps them."""

    __slots__ = ("_made", "_of")

    def __init__(self, way: Way, before: PerStem, stand: Stand, ground: OnGround, setting: Setting) -> None:
        """Keep what it takes, as `on_its_ground` has it. before: the figures before the ground is looked at."""
        self._of = (way, before, stand, ground, setting)
        self._made: PerStem | None = None

    def __call__(self) -> PerStem:
        """Return the figures."""
        if self._made is None:
            self._made = on_its_ground(*self._of)
        return self._made

    def __repr__(self) -> str:
        """Return the figures as they are written."""
        return repr(self())


def per_kill_on(way: Way, before: PerStem, stand: Stand, ground: OnGround, setting: Setting) -> float:
    """Return what a stem killed is expected to cost where a stand is [money], as `on_its_ground` has it on the mean.

    Reckoned from means where the slope is sure and the minutes are guesses, because thousands of ways are put in order
    by it: the mean of a sum is the sum of the means.
    """
    means = before.means
    if means is None or ground.slope_pct.size > 1 or own_time(way, stand, setting) is not None:
        return on_its_ground(way, before, stand, ground, setting).mean_cost_per_kill
    walks = max(len(before.each), 1)
    slope = float(ground.slope_pct[0]) / 100
    return means.work + slope * means.steep + walks * expected(ground.walk * means.walk) + means.mix


def figures_of(way: Way, stand: Stand, setting: Setting) -> PerStem:
    """Return the figures of a way for one stem of a stand where it stands. Raises Refusal as `per_stem`."""
    figures = per_stem(way, setting.reference.species[stand.species], stand, setting)
    return on_its_ground(way, figures, stand, on_ground(stand, setting), setting)


def on_its_ground(way: Way, figures: PerStem, stand: Stand, ground: OnGround, setting: Setting) -> PerStem:
    """Return the figures of `per_stem` as they are where a stand is: slope and walk in, or the crew's own time whole.

    ground: of the stand, as `on_ground` has it.
    """
    own = own_time(way, stand, setting)
    if figures.each and setting.own.times:
        minutes, own = minutes_per_stem(way, stand, setting), None
    elif figures.each:
        minutes = both_visits(*(minutes_on(one, ground) for one in figures.each))
    else:
        minutes = minutes_on(figures.minutes, ground) if own is None else sure(own.minutes)
    recipe, mix_ml, kill = way.visit.recipe, figures.mix_ml, figures.kill
    wage, product_per_l, carrier_per_l = figures.rates
    cost = cost_per_stem(
        minutes, wage, mix_ml / 1000, recipe.products_pct if recipe else 0.0, product_per_l, carrier_per_l
    )
    return PerStem(
        kill, mix_ml, minutes, cost, cost_per_kill(cost, kill), figures.dose_ml, figures.dose_per,
        figures.kill_because, figures.dose_because, figures.side_m2, figures.side_because, figures.rates,
        own.words if own else "", figures.each,
    )  # fmt: skip


def mix_per_stem(way: Way, stand: Stand, setting: Setting) -> StemMix:
    """Return the mix on one stem. The label's own dose and cuts go before the sources'. Raises Refusal as `rule_for`.

    A proving batch of the same mix put on in the same way replaces what was published or guessed.
    Stem sizes are the gates' business: a species' own source may admit what the method's general limit does not.
    """
    recipe, stand = way.visit.recipe, regrown(stand, way)
    if recipe is None:
        return StemMix(sure(0.0))
    sheet, method = setting.sheet(recipe.product), way.visit.method
    label = dose_each(sheet, method) if sheet else None
    asked = Asked(
        method,
        recipe.ingredient,
        recipe.carrier,
        recipe.strength_pct,
        stand.species,
        label_ml=label[0] if label else None,
        label_per=label[1] if label else "",
        cuts_per_inch=sheet.says("dose.cuts_per_in_dbh", method) if sheet else None,
    )
    reference = setting.reference
    facts, coverages = reference.methods[method], reference.coverage.values()
    batch = proving_batch(method, recipe, setting)
    own = own_figure(batch, asked, facts) if batch else None
    whose = batch.words if batch else ""
    rule = rule_for(asked, facts=facts, coverages=coverages, doubt=setting.doubt, own=own, whose=whose)
    ml = per_stem_ml(replace(rule, limit=None), stand.band_cm, stand.crown_m)
    if rule.dose_ml is not None:
        return StemMix(ml, rule.dose_ml, rule.dose_per, rule.words)
    thicker = stand.measured_at == "breast height" and method in {"basal_bark", "cut_stump"}
    words = f"{rule.words}; measured at breast height, and bases are thicker: expect more" if thicker else rule.words
    return StemMix(ml, band(ml).high, "stem", words)


def cost_of_stem(way: Way, minutes: Worlds, mix_ml: Worlds, setting: Setting) -> Worlds:
    """Return what one visit to one stem costs [money]: of its minutes [min] and its mix [mL].

    Raises Refusal as `prices_per_l`.
    """
    recipe = way.visit.recipe
    strength = recipe.products_pct if recipe else 0.0
    product_per_l, carrier_per_l = prices_per_l(recipe, setting)
    return cost_per_stem(minutes, wage_per_h(setting), mix_ml / 1000, strength, product_per_l, carrier_per_l)


def proving_batch(method: str, recipe: Recipe, setting: Setting) -> Proving | None:
    """Return the crew's newest proving batch of a mix put on in this way; None where there is none."""
    if not setting.own.proving:
        return None
    ingredients = {key: one.ingredient for key, one in setting.reference.formulations.items()}
    ingredients |= {one.sheet.key: one.formulation.ingredient for one in setting.products if one.sheet}
    return setting.own.batch(method, recipe, ingredients)
