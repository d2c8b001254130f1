"""Look-alikes: on a day on which nothing tells two plants apart, the sheet says so, and what then."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from rootcollar.reference import load
from rootcollar.work.look_alikes import look_boxes, shows
from tests.choose.hobbin import plan

LEAF, BARE = date(2026, 7, 1), date(2026, 12, 1)
MULBERRY = [one for one in plan().choices if one.stand.species == "moal"]
BUCKTHORN = [one for one in plan().choices if one.stand.species == "rhca3"]


def test_a_tell_of_the_leaf_does_not_show_when_there_are_no_leaves() -> None:
    (red,) = load().species["moal"].look_alikes
    assert shows(red, LEAF) is True
    assert shows(red, BARE) is False


def test_on_a_bare_day_only_tagged_stems_are_treated_and_doubtful_ones_left() -> None:
    english, spanish = (look_boxes(MULBERRY, BARE, load(), load().tongues[code]) for code in ("en", "es"))
    assert len(english) == len(spanish) == 1
    assert all(words in english[0] for words in ("red mulberry", "tagged in leaf", "leave it"))
    assert all(words in spanish[0] for words in ("marcados", "déjelo"))
    assert "red mulberry" not in spanish[0]


def test_nothing_is_said_where_the_tell_shows_or_no_day_is_set() -> None:
    tongue = load().tongues["en"]
    assert look_boxes(MULBERRY, LEAF, load(), tongue) == ()
    assert look_boxes(MULBERRY, None, load(), tongue) == ()
    assert look_boxes(BUCKTHORN, BARE, load(), tongue) == ()  # the inner bark tells all year


def test_a_tell_whose_time_is_not_known_is_to_be_seen_for_oneself() -> None:
    mustard = [one for one in plan().choices if one.stand.species == "alpe4"]
    (said,) = look_boxes(mustard, LEAF, load(), load().tongues["en"])
    assert "toothworts" in said
    assert "see that it can be told" in said


def test_a_look_alike_not_put_into_a_language_yet_is_named_as_the_reference_names_it() -> None:
    spanish = load().tongues["es"]
    plants = {**spanish.plants, "moal": replace(spanish.plants["moal"], look_alikes=())}
    (said,) = look_boxes(MULBERRY, BARE, load(), replace(spanish, plants=plants))
    assert "red mulberry" in said
