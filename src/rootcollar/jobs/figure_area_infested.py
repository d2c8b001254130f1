"""Figure a patch: its gross, infested and canopy area, kept apart."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from rootcollar.jobs.figure import Answer, System
from rootcollar.jobs.figure_words import ground
from rootcollar.jobs.outcome import Outcome
from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.units import convert
from rootcollar.reference import Reference
from rootcollar.survey.areas import Patch, PatchAreas, areas, patch_faults

__all__ = ["AreaInfestedAsk", "area_infested"]

_NEVER_ADDED = "Never add up the infested ground of several species: they stand on each other's."
_SMALL = "Below a tenth of an acre tape the patch: a receiver under trees errs by as much as the patch is wide."


@dataclass(frozen=True, slots=True)
class AreaInfestedAsk:
    """Which patch: gross area [m2], infested share [%], cover [%] or None, and whether a known patch is gone."""

    given: Mapping[str, str]
    patch: Patch
    system: System = "us"


def area_infested(ask: AreaInfestedAsk, reference: Reference) -> Outcome[Answer]:
    """Return the three areas of a patch. Raises Refusal for a patch that the record does not allow."""
    if faults := patch_faults(ask.patch):
        raise Refusal(
            f"a patch of {', '.join(f'{name} {said}' for name, said in ask.given.items())}",
            limit="; ".join(faults),
            do="Draw the outline tighter, or give the share again; --gone for a patch that is gone.",
        )
    found = areas(ask.patch)
    unit = "ac" if ask.system == "us" else "m2"
    return Outcome(Answer(
        question="How large is this patch?",
        given=ask.given,
        says=_says(found, ask.system),
        value=convert(found.infested_m2, "m2", unit), unit=unit,
        figures={"gross_m2": found.gross_m2, "infested_m2": found.infested_m2}
        | ({} if found.canopy_m2 is None else {"canopy_m2": found.canopy_m2}),
        details=(
            "Gross: within the outline, clean ground among it. Infested: within the edge of the canopies (USFS-R3-26).",
            "What is put on ground goes by the infested area; what wets leaves goes by the canopy (practice).",
        ),
        assumed=tuple(_assumed(ask)),
        cautions=(_NEVER_ADDED, _SMALL),
        note="as recorded",
    ))  # fmt: skip


def _says(found: PatchAreas, system: System) -> str:
    canopy = "not told, cover not judged" if found.canopy_m2 is None else ground(found.canopy_m2, system)
    return f"Infested {ground(found.infested_m2, system)}; gross {ground(found.gross_m2, system)}; canopy {canopy}"


def _assumed(ask: AreaInfestedAsk) -> Iterator[str]:
    if "infested" not in ask.given and not ask.patch.gone:
        yield "infested whole, 100 %, as the record has it where nothing is said (USFS-R3-26)"
    yield "one species"
