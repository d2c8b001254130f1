"""Is it the label of the jug in hand, is the jug still good, and does the label go along?"""

from __future__ import annotations

from datetime import date

from rootcollar.kernel.verdict import Level, Verdict
from rootcollar.label.aboard import Aboard, Jugs
from rootcollar.label.rule import Basis, Seen, ask, rule, stop
from rootcollar.label.words import flat, listing

__all__ = ["label_aboard", "not_past_its_day", "which_jug"]

_PHOTOS = "sheet.proof.photos"
_VERSION = "sheet.identity.label_version"


@rule(
    "L50",
    "No product is used after the last day printed on it.",
    Basis("40 CFR 156.10(g)(6)(i)", Seen.EDITION),
    when_silent=Level.OK,
    last="sheet.identity.not_for_use_after",
    on="plan.on",
)
def not_past_its_day(last: date, on: date) -> Verdict | None:
    """Stop on work after the day that the label prints."""
    if on <= last:
        return None
    return stop(
        f"the label says not to use it after {last.isoformat()}; the work is planned for {on.isoformat()}",
        "work before that day, or take a jug whose last day is later and type its label",
    )


@rule(
    "L53",
    "The label itself is carried on the job.",
    Basis("40 CFR 170.503(a)(2); FIFRA 2(p)"),
    silence={_PHOTOS: ()},
    photos=_PHOTOS,
    along="people.aboard",
)
def label_aboard(photos: tuple[str, ...], along: tuple[Aboard, int | None]) -> Verdict | None:
    """Stop where neither a file of the label nor the booklet goes along; ask while nobody has said.

    photos: names of the label's files on the sheet; one that is in the folder goes along with the packet.
    """
    aboard = along[0]
    if aboard.labels or any(one in aboard.files for one in photos):
        return None
    gone = f"the label's files {listing(photos)} are not in the folder" if photos else "no file of the label is named"
    bring = "put the file into the folder shelf and name it in photos of the sheet, or write labels = true under aboard"
    if aboard.labels is None:
        return ask(
            f"{gone}, and nobody has said that the booklet itself rides along; whoever handles it must be able to "
            "read it at all times",
            f"{bring} in crew.toml; or yes, the booklet itself rides along",
        )
    return stop(f"{gone}, and crew.toml says that no booklet rides along", f"bring the booklet; {bring} in crew.toml")


@rule(
    "L60",
    "The label on the jug is the version that was typed.",
    Basis("FIFRA 2(p)"),
    silence={_VERSION: ""},
    version=_VERSION,
    jugs="shed.jugs",
)
def which_jug(version: str, jugs: Jugs) -> Verdict | None:
    """Ask which jug is meant where its label is another version, or two sheets have one registration number."""
    other = [one for one in jugs.versions if flat(one) != flat(version)]
    if other:
        return ask(
            f"the sheet was typed from the label {version or 'without a version'}; the shed has a jug with the label "
            f"{listing(other)}: which jug will be used? The label on it governs",
            "type the sheet from the label of that jug, or correct label version in stock.csv; yes if the jug with the "
            "typed label is used",
        )
    if jugs.twins:
        return ask(
            f"another sheet has the same registration number ({listing(jugs.twins)}): of which jug is this the label?",
            "leave one sheet of the number in the folder shelf, that of the jug in hand; yes if this is the one",
        )
    return None
