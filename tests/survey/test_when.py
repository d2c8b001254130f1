"""When plants are easiest to find, as sheets say it of plants that keep their leaves longer than natives do."""

from __future__ import annotations

import pytest

from rootcollar.reference import find_species, load
from rootcollar.survey import easiest_to_find


@pytest.mark.parametrize("plant", ["common buckthorn", "Amur honeysuckle"])
def test_late_leaves_give_a_plant_away_in_fall(plant: str) -> None:
    """University of Wisconsin Extension: buckthorn is green after natives have dropped their leaves."""
    said = easiest_to_find(find_species(plant), load().seasons)
    assert said.startswith("October to November") and "bare" in said and "ours" in said


def test_a_plant_that_drops_its_leaves_with_the_natives_stands_out_in_no_month() -> None:
    assert easiest_to_find(find_species("white mulberry"), load().seasons) == ""
