"""What hurts of the plants stands on page one, the unit's page and with the choice; in each language of the sheet."""

from datetime import date

import pytest

from rootcollar.choose import Choice
from rootcollar.reference import load
from rootcollar.work.dangers import danger_words, minded
from tests.choose.hobbin import chosen, hobbin, plain_setting, plan, stand
from tests.work.packets import hobbin_packet

EN, ES = (load().tongues[code] for code in ("en", "es"))


def work(plant: str, *inches: float, tall_ft: float = 3) -> list[Choice]:
    """Return the choice for a plant on the plain unit, as lines of work."""
    return [chosen(stand(plant, *inches, tall_ft=tall_ft), plain_setting(hobbin().shelf.values()))]


@pytest.mark.parametrize(
    ("plant", "inches", "english", "spanish"),
    [
        ("wild parsnip", (0.2, 0.5), ("blister", "no bare skin", "trimmer", "late in the day"), "ampolla"),
        ("Japanese barberry", (0.5, 1), ("Ticks", "trousers into socks"), "Garrapatas"),
        ("Japanese barberry", (0.5, 1), ("Thorns",), "Espinas"),
        ("multiflora rose", (0.5, 1), ("Thorns", "eyes covered"), "Espinas"),
        ("tree-of-heaven", (4, 6), ("Breaks without warning", "dead ones"), "Se rompe"),
        ("tree-of-heaven", (4, 6), ("Sap hurts skin and eyes",), "savia"),
        ("Chinese wisteria", (2, 4), ("Cut vines hang", "never pull them down"), "cuelgan"),
    ],
)
def test_what_a_source_says_hurts_is_said_with_what_to_do(
    plant: str, inches: tuple[float, float], english: tuple[str, ...], spanish: str
) -> None:
    lines = work(plant, *inches, tall_ft=40 if plant in {"tree-of-heaven", "Chinese wisteria"} else 3)
    told, dicho = danger_words(lines, load(), EN), danger_words(lines, load(), ES)
    assert any(plant in one and all(words in one for words in english) for one in told)
    assert any(spanish in one for one in dicho)
    assert len(told) == len(dicho)


def test_what_hurts_only_who_eats_it_and_what_does_not_hang_is_not_said() -> None:
    told = " ".join(danger_words(work("autumn olive", 2, 4, tall_ft=12), load(), EN))
    assert "Cut vines" not in told
    assert not any("eat" in one for one in danger_words(work("Amur honeysuckle", 1, 2), load(), EN))


@pytest.mark.parametrize("kind", sorted({one.kind for plant in load().species.values() for one in plant.hazards}))
def test_every_danger_of_a_plant_has_its_sentence_in_each_language(kind: str) -> None:
    if kind == "toxic_ingestion":
        return
    for tongue in (EN, ES):
        assert "{plants}" in dict(tongue.group("danger"))[kind]
        assert len(dict(tongue.group("danger_short"))[kind]) <= 30


def test_page_one_and_the_units_page_say_it_of_the_plants_worked() -> None:
    packet = hobbin_packet("trail-loop")
    (thorns,) = [one for one in packet.units[0].dangers if one.startswith("Thorns")]
    worked = [
        load().species[one.stand.species] for one in plan().choices if one.stand.unit == "trail-loop" and one.is_work
    ]
    thorny = {one.common_name for one in worked if "thorns" in {hazard.kind for hazard in one.hazards}}
    assert thorny
    for plant in {one.common_name for one in worked}:
        assert (plant in thorns) == (plant in thorny)
    assert "Thorns: gloves, eyes covered" in packet.day.boxes
    assert len([one for one in packet.day.boxes if one in set(dict(EN.group("danger_short")).values())]) == len(
        packet.units[0].dangers
    )


def test_beside_what_hurts_stands_what_cannot_be_told_apart_on_the_day() -> None:
    mulberry = [one for one in plan().choices if one.stand.species == "moal"]
    bare, leaf = (minded(mulberry, date(2026, month, 1), load()) for month in (12, 7))
    assert any("tagged in leaf" in one and "leave it" in one for one in bare)
    assert not any("tagged in leaf" in one for one in leaf)
