"""Is this the right label, wholly read, and registered here?"""

from __future__ import annotations

from rootcollar.kernel.verdict import Verdict
from rootcollar.label.rule import Basis, Seen, ask, rule, stop
from rootcollar.shelf import is_epa_reg_no, is_placeholder, sln_state

__all__ = ["booklet_read", "number_well_formed", "real_number", "registered_here"]

_REG_NO = "sheet.identity.epa_reg_no"
_SLN_NO = "sheet.identity.sln_no"


@rule(
    "L01",
    "The whole label has been read and typed in.",
    Basis("FIFRA 2(p) and 12(a)(2)(G)"),
    silence={"sheet.proof.complete_booklet_read": False},
    complete="sheet.proof.complete_booklet_read",
)
def booklet_read(complete: bool) -> Verdict | None:
    """Ask while only part of the label has been read: all that comes with the jug is the label."""
    if complete:
        return None
    return ask(
        "only part of the label has been read; all that comes with the jug is the label",
        "read the whole booklet, then write complete_booklet_read = true",
        answerable=False,
    )


@rule(
    "L02",
    "The registration number has the form of one.",
    Basis("40 CFR 156.10(e) and (f), 152.132(d)(3); the digits from memory", Seen.EDITION),
    silence={_REG_NO: "", _SLN_NO: ""},
    kind="sheet.identity.registration",
    reg_no=_REG_NO,
    sln_no=_SLN_NO,
)
def number_well_formed(kind: str, reg_no: str, sln_no: str) -> Verdict | None:
    """Stop on a number that is none, such as an establishment number typed in its place."""
    if kind == "epa" and not is_epa_reg_no(reg_no):
        found = f"{reg_no} is not" if reg_no else "there is no number that is"
        return stop(
            f"{found} an EPA registration number: company-product, digits only; with letters it is the "
            "establishment number",
            "copy the number behind the words EPA Reg. No.",
        )
    if kind == "sln" and sln_state(sln_no) is None:
        found = sln_no or "nothing"
        return stop(
            f"{found} is not the number of a special local need label: state, year and number",
            "copy the number behind the words EPA SLN No.",
        )
    return None


@rule(
    "L03",
    "The registration number is a real one, or this is the demo.",
    Basis("rootcollar", Seen.OWN),
    silence={_REG_NO: ""},
    reg_no=_REG_NO,
    demo="plan.demo",
)
def real_number(reg_no: str, demo: bool) -> Verdict | None:
    """Stop where an invented sheet stands behind work that is not the demo."""
    if demo or not is_placeholder(reg_no):
        return None
    return stop(
        f"{reg_no} is a placeholder: this sheet is invented and stands for no product",
        "type a sheet from the label of your own jug",
    )


@rule(
    "L04",
    "The product is registered in this state.",
    Basis("FIFRA 24(a) and (c)"),
    silence={_SLN_NO: ""},
    states="sheet.identity.states_ok",
    sln_no=_SLN_NO,
    state="plan.state",
)
def registered_here(states: tuple[str, ...], sln_no: str, state: str) -> Verdict | None:
    """Stop where nobody has found the product registered in the state, or a local label is another state's."""
    if state not in states:
        listed = ", ".join(states) or "no state"
        return stop(
            f"the sheet says it was checked to be registered in {listed}; the ground lies in {state}",
            f"ask the pesticide agency of {state}; if it is registered there, add {state} to states_ok",
        )
    local = sln_state(sln_no)
    if local and local != state:
        return stop(
            f"this is a special local need label of {local}; it holds nowhere else, and the ground lies in {state}",
            "another product",
        )
    return None
