"""Every weight and acid share of the facts follows from its molecule."""

from __future__ import annotations

import pytest

from rootcollar.hazard import acid_share, molar_mass
from rootcollar.kernel.errors import BadInput
from rootcollar.reference import Form, load

WEIGHTS = {row.name: float(str(row.figure.value)) for row in load().hazard["atomic_weight"]}
FORMS = load().forms


@pytest.mark.parametrize("form", FORMS.values(), ids=[" ".join(pair) for pair in FORMS])
def test_the_weight_of_every_form_is_that_of_its_atoms(form: Form) -> None:
    assert molar_mass(form.formula.value, WEIGHTS) == pytest.approx(form.molecular_weight.value, abs=0.01)


@pytest.mark.parametrize("form", FORMS.values(), ids=[" ".join(pair) for pair in FORMS])
def test_the_acid_share_of_every_form_is_that_of_its_weights(form: Form) -> None:
    acid = FORMS.get((form.ingredient, "acid"), form)
    share = acid_share(*(molar_mass(one.formula.value, WEIGHTS) for one in (acid, form)))
    assert share == pytest.approx(form.ae_factor.value, abs=6e-5)


def test_printed_weights_are_met() -> None:
    assert molar_mass("C3H8NO5P", WEIGHTS) == pytest.approx(169.08, abs=0.02)  # glyphosate [CDPR-GLY]
    assert molar_mass("C8H6Cl2O3", WEIGHTS) == pytest.approx(221.0, abs=0.05)  # 2,4-D [BCPC-24D, HC-24D]


def test_a_salt_is_acid_and_base_and_an_ester_acid_and_alcohol_less_water() -> None:
    def weigh(molecule: str) -> float:
        return molar_mass(molecule, WEIGHTS)

    forms = {" ".join(pair): form.molecular_weight.value for pair, form in FORMS.items()}
    assert forms["glyphosate IPA salt"] == pytest.approx(weigh("C3H8NO5P") + weigh("C3H9N"), abs=0.01)
    assert forms["triclopyr TEA salt"] == pytest.approx(weigh("C7H4Cl3NO3") + weigh("C6H15N"), abs=0.01)
    assert forms["triclopyr BEE"] == pytest.approx(weigh("C7H4Cl3NO3") + weigh("C6H14O2") - weigh("H2O"), abs=0.01)
    assert forms["2-4-d 2-EHE"] == pytest.approx(weigh("C8H6Cl2O3") + weigh("C8H18O") - weigh("H2O"), abs=0.01)


@pytest.mark.parametrize(
    ("molecule", "says"), [("", "formula"), ("glyphosate", "formula"), ("C3(H8)", "formula"), ("C3Xx2", "Xx in C3Xx2")]
)
def test_what_is_no_formula_is_refused(molecule: str, says: str) -> None:
    with pytest.raises(BadInput, match=says):
        molar_mass(molecule, WEIGHTS)
