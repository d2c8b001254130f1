"""Write docs/rules.md from the rules themselves: what each asks, on what it rests, what it reads, and an example."""

import sys
from collections.abc import Iterator
from pathlib import Path

from rootcollar.kernel.verdict import Stage
from rootcollar.label import NOT_CHECKED, PATHS, RULES, Rule
from rootcollar.label.examples import EXAMPLES

__all__ = ["PAGE", "main", "page"]

PAGE = Path(__file__).resolve().parent.parent / "docs" / "rules.md"
_HEAD = """# The rules

Made from the rules themselves by `tools/rules.py`. A rule can object; it cannot permit. What nobody has read is asked,
never assumed. A rule whose basis is only remembered asks at most, until its clause is read. The label in your hand,
your state and licensed practice decide; nothing here says that a plan is safe or legal.
"""
_UNWEIGHED = """## Not checked by this version

See to these yourself.

| rule | asks | comes up |
| --- | --- | --- |
"""
_STAGES = {
    Stage.PLAN: "when the plan is made",
    Stage.HOURS: "in the hour of work",
    Stage.CLOSE: "when the work is recorded",
}


def page() -> str:
    """Return the page."""
    weighed = "\n".join(line for known in RULES.values() for line in _rule(known))
    unweighed = "\n".join(f"| {one.number} | {one.sentence} | {_STAGES[one.stage]} |" for one in NOT_CHECKED)
    return f"{_HEAD}\n{len(RULES)} rules are weighed.\n\n{weighed}\n{_UNWEIGHED}{unweighed}\n"


def _rule(known: Rule) -> Iterator[str]:
    shown = EXAMPLES[known.number]
    objection = shown.fails.weighed_by(known)
    if objection is None:
        raise ValueError(f"the failing example of {known.number} passes")
    yield f"## {known.number}\n"
    yield f"**{known.sentence}**\n"
    yield f"- Rests on: {known.basis.words} ({known.basis.seen}). At worst it says {known.cap.word}."
    yield f"- Weighed {_STAGES[known.stage]}; silence of the label: {known.when_silent.word}."
    yield f"- Reads: {'; '.join(PATHS[path].words for path in known.paths)}."
    yield f"- Passes: {shown.passes.words}."
    yield f"- Fails: {shown.fails.words}. It says **{objection.level.word}**: {objection.because}."
    yield f"  Way out: {objection.clear.removesuffix('.')}.\n"


def main() -> int:
    """Write the page."""
    PAGE.write_text(page(), encoding="utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main())
