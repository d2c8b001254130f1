"""Leaves over wanted plants are wetted only in months in which those have none; without such a month not at all."""

import tomllib
from dataclasses import replace
from datetime import date

import pytest

from rootcollar.choose import Choice, Setting, in_month, shut
from rootcollar.exchange.ground_file import read_ground
from rootcollar.kernel.errors import BadInput
from rootcollar.reference import find_species
from tests.choose.hobbin import aside, chosen, hobbin, open_methods, plain_setting, stand

BARE = frozenset({11, 12, 1, 2, 3})
HONEYSUCKLE = stand("Amur honeysuckle", 0.5, 1, tall_ft=4)


def setting(wanted: bool | None, bare: frozenset[int] | None) -> Setting:
    here = plain_setting(hobbin().shelf.values(), wanted_beneath=wanted, wanted_bare=bare)
    return replace(here, on=date(2026, 10, 25))


def foliar(choice: Choice) -> list[frozenset[int]]:
    """Return the months of each way of wetting leaves that is open."""
    options = [one.way for one in choice.options] + [one.way for one in choice.set_aside if one.open]
    return [one.visit.months for one in options if one.visit.method == "foliar"]


def test_where_nobody_says_when_wanted_plants_are_bare_spray_over_them_is_shut_and_says_what_to_write() -> None:
    choice = chosen(HONEYSUCKLE, setting(True, None))
    assert not foliar(choice)
    assert any("wanted plants stand beneath" in one for one in aside(choice, "foliar"))
    assert any("wanted_bare of plain" in one.would_win_if for one in choice.set_aside)


def test_it_opens_in_the_months_in_which_they_are_bare_and_in_no_other() -> None:
    over, clear_of = chosen(HONEYSUCKLE, setting(True, BARE)), chosen(HONEYSUCKLE, setting(False, None))
    assert foliar(clear_of) and all(one - BARE for one in foliar(clear_of))
    assert foliar(over) and all(one == frozenset({11}) for one in foliar(over))


def test_months_in_which_the_way_is_not_done_open_nothing() -> None:
    choice = chosen(HONEYSUCKLE, setting(True, frozenset({1, 2})))
    assert "foliar" not in open_methods(choice)
    assert any("in leaf when this way is done" in one for one in aside(choice, "foliar"))


def test_the_months_page_and_the_clearing_know_it() -> None:
    here = setting(True, BARE)
    choice = chosen(HONEYSUCKLE, here)
    spray = (
        next(one.way for one in (*choice.options,) if one.way.visit.method == "foliar")
        if "foliar" in {one.way.visit.method for one in choice.options}
        else next(one.way for one in choice.set_aside if one.open and one.way.visit.method == "foliar")
    )
    picked = replace(choice, option=replace(choice.option, way=spray))  # type: ignore[type-var]
    year = {month: in_month([picked], month, here)[0] for month in range(1, 13)}
    assert [month for month, one in year.items() if one.is_open] == [11]
    assert "in leaf" in year[10].said.because
    assert shut(spray, find_species("Amur honeysuckle"), HONEYSUCKLE, here) is None
    gate = shut(spray, find_species("Amur honeysuckle"), HONEYSUCKLE, setting(True, frozenset({1})))
    assert gate is not None and not gate.own_reason


UNIT = '[[unit]]\nkey = "a"\nname = "A"\narea = "3 ac"\n'


def test_the_months_are_read_from_the_ground_file_and_a_slip_names_the_field_and_what_is_allowed() -> None:
    text = f'name = "W"\n{UNIT}wanted_bare = ["November", "March"]\n'
    ground, *_ = read_ground(tomllib.loads(text), "ground.toml")
    assert ground.units["a"].wanted_bare == {3, 11}
    with pytest.raises(BadInput) as said:
        read_ground(tomllib.loads(text.replace("March", "Mrach")), "ground.toml")
    (fault,) = said.value.faults
    assert fault.file == "ground.toml" and "wanted_bare" in fault.field
    assert "Mrach" in fault.found and "November" in fault.allowed
