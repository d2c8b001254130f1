"""Checked against the outside: what published sheets advise is open, what they warn against is refused and said why."""

import tomllib
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from rootcollar.choose import Choice, Setting, Way, way_words
from rootcollar.choose.gates import at_home, weaknesses
from rootcollar.kernel.days import name_months
from rootcollar.reference import find_species, load
from rootcollar.work.dangers import minded
from tests.choose.hobbin import FT_M, chosen, hobbin, plain_setting, stand

_FILE = Path(__file__).parents[1] / "published" / "advice.toml"
_KEYS = {"id", "plant", "stem_in", "says", "source", "year", "where", "url"}
_MORE = {"tall_ft", "place", "shelf", "offers", "refuses", "warns", "first", "never", "minds"}
_SHUT = ""  # the reason of a way that is not shut

Row = dict[str, Any]
ROWS: list[Row] = tomllib.loads(_FILE.read_text(encoding="utf-8"))["advice"]


def setting_for(row: Row) -> Setting:
    """Return the plain unit with what the row says of the place."""
    place = row.get("place", {})
    facts = {f"{name}_m": place[f"{name}_ft"] * FT_M for name in ("water", "keep") if f"{name}_ft" in place}
    facts |= {"wanted_beneath": place["wanted_beneath"]} if "wanted_beneath" in place else {}
    setting = plain_setting(hobbin().shelf.values() if row.get("shelf") else (), **facts)
    return replace(setting, ground=replace(setting.ground, state=place.get("state", "WI")))


def choice_for(row: Row, setting: Setting) -> Choice:
    """Return what is chosen for the row's stems."""
    return chosen(stand(row["plant"], *row["stem_in"], tall_ft=row.get("tall_ft", 5)), setting)


def told(choice: Choice) -> Iterator[tuple[Way, str]]:
    """Yield every way weighed with the reason why it is shut, or nothing."""
    yield from ((one.way, _SHUT) for one in choice.options)
    yield from ((one.way, _SHUT if one.open else one.because) for one in choice.set_aside)


def meant(want: Row, way: Way) -> bool:
    """Return whether a way is one that a row speaks of."""
    recipe = way.visit.recipe
    return (
        way.visit.method == want["method"]
        and (way.step.first if way.step else "") == want.get("after", "")
        and ("ingredient" not in want or (recipe is not None and recipe.ingredient == want["ingredient"]))
        and ("product" not in want or (recipe is not None and recipe.product == want["product"]))
    )


def name(want: Row) -> str:
    return " ".join(str(want[key]) for key in ("method", "ingredient", "product") if key in want)


def faults(row: Row) -> list[str]:
    """Return in plain words what is otherwise than the row says; empty where nothing is."""
    setting = setting_for(row)
    choice = choice_for(row, setting)
    ways = list(told(choice))
    found = [fault for want in row.get("offers", ()) for fault in not_offered(want, ways)]
    found += [fault for want in row.get("refuses", ()) for fault in not_refused(want, ways)]
    found += [fault for want in row.get("warns", ()) for fault in not_warned(want, row, ways, setting)]
    never = [dict(zip(("method", "ingredient"), words.split(), strict=False)) for words in row.get("never", ())]
    found += [f"{name(want)} is a way" for want in never if any(meant(want, way) for way, _ in ways)]
    if "first" in row:
        found += not_first(row["first"], choice)
    danger = " ".join(minded([choice], None, setting.reference))
    return found + [f"nothing is said of {words!r}: {danger}" for words in row.get("minds", ()) if words not in danger]


def not_offered(want: Row, ways: list[tuple[Way, str]]) -> Iterator[str]:
    here = [(way, why) for way, why in ways if meant(want, way)]
    if not here:
        yield f"{name(want)} is no way here"
        return
    found = [way for way, why in here if why == _SHUT]
    if not found:
        yield f"{name(want)} is shut: {'; '.join(why for _, why in here)}"
    elif not any(
        set(want.get("months", ())) <= way.visit.months
        and not set(want.get("not_months", ())) & way.visit.months
        and in_strength(want, way)
        for way in found
    ):
        seasons = "; ".join(f"{way_words(way)} in {name_months(way.visit.months)}" for way in found)
        yield f"{name(want)} is open otherwise than in {want}: {seasons}"


def in_strength(want: Row, way: Way) -> bool:
    if "pct" not in want:
        return True
    low, high = want["pct"]
    return way.visit.recipe is not None and low <= way.visit.recipe.strength_pct <= high


def not_refused(want: Row, ways: list[tuple[Way, str]]) -> Iterator[str]:
    here = [(way, why) for way, why in ways if meant(want, way)]
    if not here:
        yield f"{name(want)} is not even spoken of"
    for way, why in here:
        if why == _SHUT:
            yield f"{way_words(way)} is open"
        elif want["word"].casefold() not in why.casefold():
            yield f"{way_words(way)} is refused without saying {want['word']!r}: {why}"


def not_warned(want: Row, row: Row, ways: list[tuple[Way, str]], setting: Setting) -> Iterator[str]:
    species = find_species(row["plant"])
    said = [
        words
        for way, why in ways
        if meant(want, way) and why == _SHUT
        for words in (*weaknesses(way, species), *at_home(species, setting.ground.state))
    ]
    if not any(want["word"].casefold() in words.casefold() for words in said):
        yield f"{name(want)} is open without a warning of {want['word']!r}: {said}"


def not_first(want: Row, choice: Choice) -> Iterator[str]:
    """The way must be cheaper per stem killed than the same method with another ingredient."""
    per_kill = {
        one.way.visit.recipe.ingredient: one.per_stem.mean_cost_per_kill
        for one in choice.options
        if one.way.visit.recipe and one.way.visit.method == want["method"]
    }
    per_kill |= {
        one.way.visit.recipe.ingredient: one.per_kill
        for one in choice.set_aside
        if one.way.visit.recipe and one.way.visit.method == want["method"] and one.per_kill is not None
    }
    better, worse = per_kill.get(want["ingredient"]), per_kill.get(want["over"])
    if better is None or worse is None or better >= worse:
        yield f"{want['ingredient']} does not come before {want['over']}: {per_kill}"


@pytest.mark.parametrize("row", ROWS, ids=[f"{row['id']} {row['plant']}".replace(" ", "-") for row in ROWS])
def test_choosing_does_what_the_sheet_advises(row: Row) -> None:
    found = faults(row)
    assert not found, f"{row['source']} ({row['year']}, {row['where']}): {row['says']} But: {'; '.join(found)}"


def turned(row: Row) -> Iterator[Row]:
    """Yield the row with each of its claims turned round, one at a time."""
    rest = {key: row[key] for key in row if key not in {"offers", "refuses", "warns", "first", "never", "minds"}}
    for want in row.get("offers", ()):
        yield rest | {"refuses": [want | {"word": ""}]}
        if want.get("months"):
            yield rest | {"offers": [want | {"months": (), "not_months": want["months"]}]}
    for want in (*row.get("refuses", ()), *row.get("warns", ())):
        yield rest | {"refuses": [want | {"word": "gibberish"}]}
    for words in row.get("minds", ()):
        yield rest | {"minds": [f"{words} gibberish"]}
    if "first" in row:
        one = row["first"]
        yield rest | {"first": one | {"ingredient": one["over"], "over": one["ingredient"]}}


@pytest.mark.parametrize("row", ROWS, ids=[row["id"] for row in ROWS])
def test_advice_turned_round_would_be_noticed(row: Row) -> None:
    assert [one for one in turned(row) if not faults(one)] == []


def test_every_row_says_whose_advice_it_is_and_of_when_and_where() -> None:
    known = load().sources
    for row in ROWS:
        assert _KEYS <= set(row) <= _KEYS | _MORE, row["id"]
        assert all(row[key] for key in _KEYS), row["id"]
        assert row["url"].startswith("http") or row["url"] in known, row["id"]
        assert any(row.get(key) for key in ("offers", "refuses", "warns", "first", "never", "minds")), row["id"]
    assert len({row["id"] for row in ROWS}) == len(ROWS)


def test_forty_rows_and_more_come_from_sheets_looked_up_for_it() -> None:
    assert len([row for row in ROWS if row["url"].startswith("http")]) >= 40
    assert len({row["plant"] for row in ROWS}) >= 25
