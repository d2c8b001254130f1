"""Ways that a person does against a source's advice: said on page one with who, when and why."""

from __future__ import annotations

from collections.abc import Sequence

from rootcollar.choose import Choice, Setting
from rootcollar.kernel.tongue import Tongue
from rootcollar.work import text
from rootcollar.work.in_tongue import plant_name

__all__ = ["own_boxes"]


def own_boxes(lines: Sequence[Choice], setting: Setting, tongue: Tongue) -> tuple[str, ...]:
    """Return a sentence for each reason for which lines are worked against a source, with name and date.

    The person's reason and the source's words stay in the language they were written in.
    """
    found: dict[tuple[str, str], list[str]] = {}
    for line in lines:
        pick = setting.picked.get(line.stand.key)
        if pick is None or line.option is None or not line.way.despite:
            continue
        plant = plant_name(setting.reference.species[line.stand.species], tongue)
        whose = tongue.say("own.whose", by=pick.by, on=pick.on.isoformat(), reason=pick.reason.rstrip("."))
        found.setdefault((whose, line.way.despite), []).append(f"{plant} {text.size(line.stand.band_cm)}")
    return tuple(
        tongue.say("own.despite", who="; ".join(who), whose=whose, because=because)
        for (whose, because), who in found.items()
    )
