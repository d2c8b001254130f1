"""What the ground carries further: to the roots of wanted plants, and down to ground water."""

from __future__ import annotations

from rootcollar.kernel.units import convert, show
from rootcollar.kernel.verdict import Verdict
from rootcollar.label.rule import Basis, Seen, ask, exceeds, rule, stop, warn

__all__ = ["away_from_wanted_roots", "sand_and_ground_water"]

_UPTAKE = "sheet.soil.root_uptake"
_KEEP_FT = "sheet.soil.keep_from_desirable_roots_ft"
_SAND = "sheet.soil.sandy_or_shallow_groundwater_caution"
_ADVISORY = "sheet.water.groundwater_advisory"

_ROOTS_FT = 50.0  # ours: roots of a grown tree run well past its crown; beyond this hardly any are met
_SHALLOW_FT = 10.0  # ours: labels print no depth; ground water within this is reached in a wet spring
_SANDY = frozenset({"sand", "loamy sand", "sandy loam"})


@rule(
    "L44",
    "What roots can take up or leak stays as far from wanted trees and shrubs as the label says.",
    Basis("the label; a published root reach shuts it nearer still; the question for unmapped trees is ours", Seen.OWN),
    silence={_UPTAKE: False, _KEEP_FT: None},
    uptake=_UPTAKE,
    keep_ft=_KEEP_FT,
    leaks="plan.leaks",
    trees="place.trees",
)
def away_from_wanted_roots(
    uptake: bool, keep_ft: float | None, leaks: tuple[str, bool], trees: tuple[float | None, float | None]
) -> Verdict | None:
    """Stop within the label's distance of a wanted tree, mapped or not; ask once a unit; warn where one is near.

    leaks: the ingredient, and whether a source finds its risk through roots high. trees: distance to what is mapped to
    keep, and to the nearest wanted tree or shrub that somebody has looked for, mapped or not [m].
    """
    if not (uptake or leaks[1] or keep_ft):
        return None
    known = [convert(one, "m", "ft") for one in trees if one is not None]
    nearest_ft = min(known, default=None)
    if keep_ft and nearest_ft is not None and exceeds(keep_ft, nearest_ft):
        return stop(
            f"the label keeps it {show(keep_ft, 'ft')} from the roots of wanted plants; one stands at "
            f"{show(nearest_ft, 'ft', 2)}",
            "make the ground round it a unit of its own and work it with another product or without any",
        )
    why = f"{leaks[0]} can leave roots and reach others" if leaks[1] else "the label says that roots can take it up"
    within_ft = keep_ft or _ROOTS_FT
    if trees[1] is None:
        within = show(within_ft, "ft")
        return ask(
            f"{why}, and nobody has said that no tree or shrub you want, mapped or not, stands within {within} of a "
            "stem to treat",
            'look, and write wanted_roots of the unit in ground.toml, such as "60 ft" or "none"; or yes if none stands '
            f"within {within}",
        )
    if not keep_ft and nearest_ft is not None and exceeds(_ROOTS_FT, nearest_ft):
        return warn(
            f"{why}, and a wanted tree or shrub stands {_where(nearest_ft)}; the label gives no distance",
            "keep it off the soil; another product next to that one",
        )
    return None


def _where(nearest_ft: float) -> str:
    return f"{show(nearest_ft, 'ft', 2)} off" if nearest_ft else "in the unit"


@rule(
    "L45",
    "Sandy ground and shallow ground water are minded where the label warns of them.",
    Basis("the label's advisory", Seen.LABEL),
    silence={_SAND: False, _ADVISORY: False},
    cautions=(_SAND, _ADVISORY),
    soil="place.soil",
)
def sand_and_ground_water(cautions: tuple[bool, bool], soil: tuple[str | None, float | None]) -> Verdict | None:
    """Warn on sandy ground, or where ground water stands high, if the label warns of it; ask where nobody has looked.

    soil: the texture; how deep ground water stands at its highest [m].
    """
    if not any(cautions):
        return None
    texture, water_m = soil
    shallow = water_m is not None and exceeds(_SHALLOW_FT, convert(water_m, "m", "ft"))
    if texture in _SANDY or shallow:
        what = [f"the soil is {texture}"] if texture in _SANDY else []
        what += [f"ground water stands at {show(convert(water_m or 0.0, 'm', 'ft'), 'ft', 2)}"] if shallow else []
        return warn(
            f"the label warns of sandy ground and shallow ground water; {' and '.join(what)}",
            "the least that does it, none spilt, none before heavy rain; another product if a well draws from there",
        )
    if texture is None or water_m is None:
        missing = [word for word, said in (("soil", texture), ("ground_water", water_m)) if said is None]
        return ask(
            f"the label warns of sandy ground and shallow ground water; nobody has written {' and '.join(missing)}",
            f"look it up in the county's soil survey and write {' and '.join(missing)} of the unit in ground.toml",
            answerable=False,
        )
    return None
