"""May the product be mixed with this other one?"""

from __future__ import annotations

from rootcollar.kernel.verdict import Verdict
from rootcollar.label.planned import Partnered
from rootcollar.label.rule import Basis, ask, rule, stop
from rootcollar.label.words import flat, listing, mentions

__all__ = ["partner_allowed"]

_FORBIDDEN = "sheet.mixing.tank_mix_forbidden"
_NAMED = "sheet.mixing.tank_mix_allowed_named"


@rule(
    "L46",
    "Partners in a tank mix are allowed, and the strictest label of all of them holds.",
    Basis("PR Notice 82-1; FIFRA 2(ee)(4) lets fertiliser alone, 12(a)(2)(G)"),
    silence={_FORBIDDEN: (), _NAMED: ()},
    forbidden=_FORBIDDEN,
    named=_NAMED,
    partner="plan.partner",
)
def partner_allowed(forbidden: tuple[str, ...], named: tuple[str, ...], partner: Partnered | None) -> Verdict | None:
    """Stop on a partner that the label forbids; ask where it does not name it, or the partner's label is not known.

    That every other line of both labels is kept, each label's rules see to: each is weighed for the whole mix.
    """
    if partner is None:
        return None
    who = partner.names[0]
    barred = [one for one in forbidden if _means(one, partner)]
    if barred:
        return stop(f"the label forbids mixing it with {listing(barred)}, and {who} is planned in the mix", "one visit "
                    "with each, or another partner")  # fmt: skip
    if partner.fertiliser:
        return None
    if not partner.label_known:
        return ask(
            f"the label of {who}, the other product in the mix, is not on the shelf",
            "type a sheet from the label of that jug, and name it in [[partner]] of own.toml",
            answerable=False,
        )
    if any(_means(one, partner) for one in named):
        return None
    if forbidden and not named:
        others = f"the label forbids mixing it with {listing(forbidden)} and does not name {who}"
    else:
        others = f"the label names {listing(named)}, not {who}" if named else f"the label does not speak of {who}"
    return ask(
        f"{others}; where labels are silent, mixing two products is at your own risk, and every limit of both holds "
        "[PR Notice 82-1]",
        "look for it in both booklets; yes if neither forbids it and you take the mix as yours",
    )


def _means(words: str, partner: Partnered) -> bool:
    """Whether the label's words mean the partner: one of its names, or any other product at all."""
    everything = flat(words) in {"any", "any other product", "other product", "all", "other pesticide", "any pesticide"}
    if partner.fertiliser:
        everything = flat(words) in {"any", "any other product", "other product", "all", "fertiliser", "fertilizer"}
    return everything or any(mentions(words, [name]) or mentions(name, [words]) for name in partner.names)
