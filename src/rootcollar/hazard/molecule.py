"""From a molecular formula to its weight, and from two weights to the share of a salt or ester that is acid."""

from __future__ import annotations

import re
from collections.abc import Mapping

from rootcollar.kernel.errors import BadInput, Fault
from rootcollar.kernel.formula import formula

__all__ = ["acid_share", "molar_mass"]

_ATOM = re.compile(r"([A-Z][a-z]?)([0-9]*)")


def molar_mass(molecule: str, weights: Mapping[str, float]) -> float:
    """Return the weight of a molecule written without brackets, such as C3H8NO5P [g/mol].

    weights: of the atoms, by symbol [g/mol]. Raises BadInput for anything that is no such formula, or an atom whose
    weight is not known.
    """
    atoms = _ATOM.findall(molecule)
    if not atoms or "".join(symbol + many for symbol, many in atoms) != molecule:
        raise BadInput(Fault(found=repr(molecule), allowed="a molecular formula without brackets, such as C3H8NO5P"))
    strange = [symbol for symbol, _ in atoms if symbol not in weights]
    if strange:
        raise BadInput(Fault(found=f"{', '.join(strange)} in {molecule}", allowed=f"atoms {', '.join(weights)}"))
    return sum(weights[symbol] * int(many or 1) for symbol, many in atoms)


@formula(
    "acid_g_per_mol / form_g_per_mol",
    gives="share",
    source="IUPAC-AW",
    acid_g_per_mol=(100, 400),
    form_g_per_mol=(100, 500),
)
def acid_share(acid_g_per_mol: float, form_g_per_mol: float) -> float:
    """Return the share of a salt or ester that is acid, by molecular weight: the acid equivalent factor [0 to 1].

    acid_g_per_mol: of the free acid, for esters too (the US convention). form_g_per_mol: of the salt or ester.
    """
    return acid_g_per_mol / form_g_per_mol
