"""A row of applied.csv may say that somebody came back, looked, and found nothing to treat."""

import pytest

from rootcollar.exchange.applied_file import read_applied
from rootcollar.kernel.errors import BadInput

HEAD = "date,unit,product,ingredient,amount of product,strength,area,species,method,diameter,stems,down\n"


def _read(row: str):
    return read_applied(HEAD + row + "\n", "applied.csv", {"bench": "The bench"})[0]


@pytest.mark.parametrize("said", ["look", "looked", "Look-back"])
def test_a_look_puts_nothing_on(said):
    (one,) = _read(f"2026-05-20,bench,,none,none,,0.4 ac,white mulberry,{said},,,")
    assert (one.method, one.ingredient, one.ae_g, one.species) == ("look", "", 0.0, "moal")


def test_a_look_with_an_amount_is_refused():
    with pytest.raises(BadInput) as caught:
        _read("2026-05-20,bench,,none,1 qt,,0.4 ac,white mulberry,look,,,")
    assert {one.field for one in caught.value.faults} == {"ingredient"}
