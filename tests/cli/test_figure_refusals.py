"""Nonsense at the bench is refused in one sentence that says what would be sensible."""

import shlex

import pytest
from click.testing import CliRunner

from rootcollar.cli.main import cli

REFUSED = [
    ("dose basal-bark --diameter '7 in' --bark thick", "Next: hack-and-squirt or cut stump"),
    ("dose basal-bark --diameter '7 in'", "at most"),
    ("dose basal-bark --diameter '3 in' --bark thick", "thin or smooth bark"),
    ("dose foliar --crown '4 ft' --bark rough", "Leave --bark out"),
    ("dose drill --diameter '6 in' --hole '3/8 in x 2 in' --each '5 mL'", "it holds 3.62 mL full to the brim"),
    ("dose drill --diameter '1/2 in' --hole '3/8 x 1 in' --each '1 mL'", "thicker than 0.63 in"),
    ("dose drill --diameter '6 in' --hole '3/8 in' --each '1 mL'", "two sides and their unit"),
    ("dose drill --diameter '6 in' --hole '3/8 x 2 in'", "the label's mix in one hole"),
    ("dose basal-bark --diameter '2 in' --hole '3/8 x 2 in'", "--hole with drill only"),
    ("mix --percent 2 --total '-1 gal'", "0 or more"),
    ("mix --percent 2 --total '4 gal' --tank '-1 gal'", "0 or more"),
    ("mix --percent 2 --total '4 gal' --tank '0 gal'", "more than 0"),
    ("mix --percent 150 --total '4 gal'", "at most 100"),
    ("mix --percent 0 --total '4 gal'", "more than 0"),
    ("mix --percent 2 --total '2 oz'", "fl oz, a volume, or oz wt, a weight?"),
    ("mix --rate '2 oz/ac' --output '25 gal/ac' --total '4 gal'", "fl oz, a volume, or oz wt, a weight?"),
    ("mix --rate '2 qt/ac' --total '4 gal'", "what the sprayer puts out"),
    ("mix --percent 2 --output '25 gal/ac' --total '4 gal'", "both: a rate of product"),
    ("mix --rate '200 gal/ac' --output '25 gal/ac' --total '4 gal'", "more than the product as sold"),
    ("mix --rate '1 lb ae/ac' --output '25 gal/ac' --total '4 gal'", "the acid in the product as sold"),
    ("mix --active-percent 1 --total '1 gal'", "the acid in the product as sold"),
    ("mix --weight-percent 1 --total '4 gal' --tank '4 gal'", "give its volume as --total"),
    ("mix --percent 2 --ratio 1:4 --total '1 gal'", "one of them"),
    ("mix --total '1 gal'", "one of them"),
]


@pytest.mark.parametrize(("words", "sensible"), REFUSED, ids=[words for words, _ in REFUSED])
def test_nonsense_is_refused_in_a_sentence(words: str, sensible: str) -> None:
    said = CliRunner().invoke(cli, ["figure", *shlex.split(words)])
    assert said.exit_code == 2, said.output
    assert said.stdout == ""
    assert sensible in said.stderr
    assert said.stderr.count("\n") <= 2
