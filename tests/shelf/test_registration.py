"""Registration numbers: form, placeholder, and the product behind a distributor's number."""

import pytest

from rootcollar.shelf import base_product, is_epa_reg_no, is_placeholder, sln_state


@pytest.mark.parametrize("text", ["00000-00000", "00000-12", "00000-12-00034", "12345-678"])
def test_company_and_product_with_or_without_a_distributor_is_a_number(text: str) -> None:
    assert is_epa_reg_no(text)


@pytest.mark.parametrize("text", ["00000-ZZ-0", "00000", "", "a-b", "1-2-3-4", "12345 678", "12345-"])
def test_an_establishment_number_or_half_a_number_is_none(text: str) -> None:
    assert not is_epa_reg_no(text) and base_product(text) is None and not is_placeholder(text)


def test_a_company_of_zeros_is_a_placeholder() -> None:
    assert is_placeholder("00000-00000") and is_placeholder("00000-12-00034")
    assert not is_placeholder("10000-00000")


def test_a_distributors_product_is_the_same_product() -> None:
    assert base_product("00000-12") == base_product("00000-12-00034") == "00000-12"


@pytest.mark.parametrize(
    ("text", "state"), [("OR-000000", "OR"), ("EPA SLN No. WV-000001", "WV"), ("silent", None), ("OR", None)]
)
def test_a_local_need_number_names_its_state(text: str, state: str | None) -> None:
    assert sln_state(text) == state
