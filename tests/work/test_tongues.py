"""The day sheet in another language: the same work, amounts and stops; no prose but the language's; labels quoted."""

import re
from collections.abc import Iterator
from dataclasses import fields, is_dataclass, replace
from datetime import date
from functools import cache

import pytest

from rootcollar.choose import instruction, method_in_words, trigger, ways_for
from rootcollar.kernel.tongue import PlantWords, Tongue
from rootcollar.label import RULES
from rootcollar.reference import load
from rootcollar.shelf import FIELDS, SILENT, Sheet
from rootcollar.work import Packet, Person
from rootcollar.work.build import DayAsked
from rootcollar.work.crew import Crew
from rootcollar.work.day_crew import role_rows
from rootcollar.work.day_label import first_aid_words, weather_rows
from rootcollar.work.day_sheet import day_sheet, in_season
from rootcollar.work.in_tongue import label_words, month_words
from rootcollar.work.packet import DaySheet, Sketch
from tests.choose.hobbin import hobbin, only, plan, retyped, with_units
from tests.work.packets import hobbin_packet, hobbin_setting, made

UNITS = ["ridge", "bench", "hollow", "brook-edge", "orchard-side", "trail-loop"]
SPANISH, ENGLISH = load().tongues["es"], load().tongues["en"]
FURTHER = [one for one in load().tongues.values() if one.code != "en"]


def sheet_in(tongue: Tongue, unit: str, day: date | None = None) -> DaySheet:
    """Return the day sheet of one of the demo's units in a language."""
    setting = hobbin_setting()
    mine = [one for one in plan().choices if one.stand.unit == unit]
    work = tuple(one for one in mine if one.option and one.level.word in {"ok", "warn"} and in_season(one.way, day))
    held = tuple(one for one in mine if one not in work)
    asked = DayAsked(setting.ground.units[unit], work, held, plan(), setting, hobbin().crew, day)
    return day_sheet(asked, tongue)


def texts(value: object) -> Iterator[str]:
    """Yield every text of a sheet but the names of the layout's words, and the ground, which people have typed."""
    if isinstance(value, str):
        yield value
    elif isinstance(value, tuple):
        for one in value:
            yield from texts(one)
    elif is_dataclass(value) and not isinstance(value, Sketch):
        for one in (one for one in fields(value) if one.name != "level"):  # drawn as a mark and a word of the layout
            said = getattr(value, one.name)
            yield from texts(tuple(text for _, text in said) if one.name == "words" else said)


def words_in(text: str) -> set[str]:
    """Return the words of a text, lower case."""
    return set(re.findall(r"[^\W\d_]{2,}", text.lower()))


MARK = "\N{BULLET}"


@cache
def without_words() -> Tongue:
    """Return a language in which every text is a bullet, and only what is filled in can be read."""
    said = {key: MARK.join(["", *re.findall(r"\{\w+\}", one)]) for key, one in ENGLISH.texts.items()}
    plants = {
        key: PlantWords(MARK, MARK, MARK, MARK, ((MARK, MARK),) * len(one.look_alikes))
        for key, one in load().species.items()
    }
    rules = dict.fromkeys(RULES, MARK)
    return Tongue("xx", (), said, MARK, plants, rules, {}, dict.fromkeys(FIELDS, MARK))


@cache
def typed_words() -> set[str]:
    """Return the words that a sheet may bear in any language: names, labels' items, products, units of amounts."""
    setting = hobbin_setting()
    rows = ("entry.non_wps_entry", "hazard.first_aid", "ppe.", "weather.", "water.buffers_ft")
    labels = [
        str(one.says) for sheet in setting.shelf.values() for path, one in sheet.lines.items() if path.startswith(rows)
    ]
    labels += [str(way.get("season_exclude")) for sheet in setting.shelf.values() for way in sheet.methods.values()]
    names = [one.name for one in (*hobbin().crew.people, *setting.ground.units.values(), *setting.ground.features)]
    names += [f"{one.common_name} {one.scientific_name}" for one in load().species.values()]
    names += [*load().ingredients, *(one.words for one in load().formulations.values())]
    emergency = (setting.ground.emergency or {}).values()
    return words_in(" ".join((*labels, *names, *emergency, "gal qt pt cup tbsp tsp fl oz mL in ft mph min")))


@pytest.mark.parametrize("unit", UNITS)
@pytest.mark.parametrize("day", [None, date(2026, 6, 10), date(2026, 10, 9)])
def test_no_word_stands_in_the_code(unit: str, day: date | None) -> None:
    """In a language without words nothing can be read but what people typed, labels say and rules object."""
    sheet = sheet_in(without_words(), unit, day)
    for text in texts(sheet):
        assert words_in(text) <= typed_words(), text


@pytest.mark.parametrize("unit", UNITS)
def test_each_language_bears_the_same_work_amounts_and_stops(unit: str) -> None:
    english = sheet_in(ENGLISH, unit, date(2026, 10, 9))
    for tongue in FURTHER:
        other = sheet_in(tongue, unit, date(2026, 10, 9))
        assert [(one.size, one.mix, one.stems) for one in other.sizes] == [
            (one.size, one.mix, one.stems) for one in english.sizes
        ]
        assert [bool(one.fallback) for one in other.sizes] == [bool(one.fallback) for one in english.sizes]
        assert [(one.letter, one.total, one.band) for one in other.mixes] == [
            (one.letter, one.total, one.band) for one in english.mixes
        ]
        for here, there in zip(english.mixes, other.mixes, strict=True):
            assert re.findall(r"\d[\d./]*", here.steps) == re.findall(r"\d[\d./]*", there.steps)
        assert other.loads == english.loads
        assert sorted(one.level for one in other.struck) == sorted(one.level for one in english.struck)
        assert [row[0] for row in other.weather] == [row[0] for row in english.weather]
        for here, there in zip(english.weather, other.weather, strict=True):
            assert re.findall(r"\d+", here[1]) == re.findall(r"\d+", there[1])
        assert len(other.boxes) == len(english.boxes) and len(other.wear) == len(english.wear)
        assert re.findall(r"\d+", other.entry) == re.findall(r"\d+", english.entry)


@pytest.mark.parametrize("tongue", FURTHER, ids=lambda one: one.code)
def test_every_rule_and_every_line_on_weather_has_a_sentence(tongue: Tongue) -> None:
    assert set(tongue.rules) == set(RULES)
    assert set(tongue.fields) == {path for path in FIELDS if path.startswith("weather.")}


def test_what_is_struck_names_plant_size_way_and_the_rule_in_spanish() -> None:
    told = sheet_in(SPANISH, "brook-edge").struck
    near_water = next(one for one in told if "L37a" in one.because)
    assert near_water.what == "aquí, mojar la base, triclopyr, 20 % en aceite"
    assert SPANISH.rules["L37a"] in near_water.because
    assert any("vid de porcelana" in one.what and one.level == "ask" for one in told)
    assert {one.level for one in told} == {"stop", "ask"}


def test_a_rule_without_its_sentence_is_told_in_full() -> None:
    bare = replace(SPANISH, rules={})
    full = {one.because for one in sheet_in(ENGLISH, "brook-edge").struck}
    told = [one.because for one in sheet_in(bare, "brook-edge").struck]
    assert all(one.partition(" (etiqueta")[0] in {each.partition(" (label")[0] for each in full} for one in told)


def test_a_labels_sentence_is_quoted_and_never_passed_off_as_its_own_in_another_language() -> None:
    said = "keep people out until sprays have dried"
    assert f"«{said}»" in sheet_in(SPANISH, "ridge").entry
    assert f"Elsewhere: {said}." in sheet_in(ENGLISH, "ridge").entry
    assert label_words("nitrile", SPANISH) == "nitrilo"
    assert label_words("Chemical resistant glove", SPANISH) == "guantes resistentes a químicos"
    assert label_words("nitrile over cotton", SPANISH) == "«nitrile over cotton»"
    assert label_words("nitrile over cotton", ENGLISH) == "nitrile over cotton"


def test_a_plants_scientific_and_english_names_stand_beside_the_spanish_one() -> None:
    names = [one.name for one in sheet_in(SPANISH, "ridge").targets]
    assert "espino cerval (Rhamnus cathartica, common buckthorn)" in names
    assert "common buckthorn" in [one.name for one in sheet_in(ENGLISH, "ridge").targets]


def test_tells_come_without_their_sources() -> None:
    for unit in UNITS:
        for one in sheet_in(ENGLISH, unit).targets:
            said = one.tells + "".join(tell for _, tell in one.not_these)
            assert not re.search(r"memory|, read|p\. \d", said), said


@pytest.mark.parametrize("tongue", load().tongues.values(), ids=lambda one: one.code)
def test_every_way_that_a_source_names_can_be_told(tongue: Tongue) -> None:
    for species in load().species.values():
        for way in ways_for(species, (), load()):
            assert all((*instruction(way, tongue), trigger(way, tongue), method_in_words(way, tongue)))


def test_months_are_told_in_runs() -> None:
    assert month_words({9, 10, 11}, SPANISH) == "septiembre a noviembre"
    assert month_words({12, 1, 2, 6}, SPANISH) == "diciembre a febrero y junio"
    assert month_words({1, 3, 5}, ENGLISH) == "January, March and May"
    assert month_words(range(1, 13), SPANISH) == SPANISH.say("season.any")


def test_the_day_is_written_as_spanish_writes_it() -> None:
    assert sheet_in(SPANISH, "bench", date(2026, 10, 9)).when == "viernes 9 de octubre de 2026"


def with_people(*people: Person) -> Packet:
    """Return the ridge's packet with a crew."""
    project = only(hobbin(), "ridge")
    return made(replace(project, crew=replace(project.crew, people=people)))


def test_a_sheet_is_printed_in_every_language_that_somebody_of_the_crew_reads() -> None:
    ann, juan = Person("Ann Alder"), Person("Juan Inventado", language="es")
    assert [code for code, _ in with_people(ann, juan, replace(juan, name="Another")).days] == ["es"]
    assert with_people(ann).days == ()
    assert with_people(ann).day.title == "The ridge, day sheet"


def test_only_a_translation_bears_its_note() -> None:
    packet = hobbin_packet("ridge")  # Juniper Marrowby reads Spanish
    assert packet.day.note == ""
    assert [day.note for _, day in packet.days] == [SPANISH.note]


CREW = Crew(
    (
        Person("Ann Alder", frozenset({"lead", "supervise"})),
        Person("Bo Birch", frozenset({"treat", "saw"})),
        Person("Cy Cedar", frozenset({"cut", "treat", "lead"}), minor=True),
    )
)


@pytest.mark.parametrize("tongue", load().tongues.values(), ids=lambda one: one.code)
def test_nobody_under_18_is_named_to_mix_or_treat(tongue: Tongue) -> None:
    rows = dict(role_rows(CREW, True, tongue))
    named = {
        role for role in ("lead", "treat", "saw", "cut", "minor") if "Cy Cedar" in rows[tongue.say(f"role.{role}")]
    }
    assert named == {"cut", "minor"}


def test_who_supervises_under_a_licence_is_named_once() -> None:
    rows = dict(role_rows(CREW, True, ENGLISH))
    assert rows["Lead"].startswith("Ann Alder (licence):")
    assert "Licence" not in rows
    other = Crew((*CREW.people, Person("Di Dogwood", frozenset({"supervise"}))))
    assert dict(role_rows(other, True, ENGLISH))["Licence"].startswith("Di Dogwood:")


def test_nobody_works_alone_and_nobody_cuts_with_a_sprayer_or_without_a_treater() -> None:
    rows = dict(role_rows(CREW, True, ENGLISH))
    assert "only with a treater beside" in rows["Saw"] and "only with a treater beside" in rows["Cut"]
    assert "nobody works alone" in rows["All"] and "no sprayer" in rows["All"]
    calm = dict(role_rows(CREW, False, ENGLISH))
    assert "Saw" not in calm and "Cut" not in calm and calm["All"] == "nobody works alone"


def test_a_cut_leaves_a_line_for_a_sawyer_unless_somebody_cuts_by_hand() -> None:
    only_treats = Crew((Person("Bo Birch", frozenset({"treat"})),))
    assert dict(role_rows(only_treats, True, ENGLISH))["Saw"].startswith("____")
    by_hand = Crew((Person("Bo Birch", frozenset({"treat", "cut"})),))
    assert "Saw" not in dict(role_rows(by_hand, True, ENGLISH))


def weather_of(sheet: Sheet, tongue: Tongue) -> str:
    """Return what the day sheet says of a label's weather."""
    (row,) = weather_rows([sheet], {}, tongue)
    return row[1]


def test_a_labels_weather_is_told_in_its_figures_and_what_it_is_silent_of_left_out() -> None:
    ester = hobbin().shelf["triclopyr-ester-4-ec"]
    assert weather_of(ester, ENGLISH).startswith(
        "wind 3 to 10 mph; air at most 85 °F; no rain for 6 h afterwards; in an"
    )
    assert weather_of(ester, SPANISH).startswith("viento de 3 a 10 mph; aire a 85 °F o menos; sin lluvia 6 h después;")
    lowest = retyped(
        ester, weather__wind_mph__high=SILENT, weather__air_temp_f__low=40, weather__inversion_forbidden=False
    )
    assert weather_of(lowest, ENGLISH).startswith("wind at least 3 mph; air 40 to 85 °F;")
    assert "not forbidden" in weather_of(lowest, ENGLISH)
    quiet = {path.replace(".", "__"): SILENT for path in FIELDS if path.startswith("weather.")}
    assert weather_of(retyped(ester, **quiet), ENGLISH) == "the label sets none"


def test_weather_that_nobody_has_read_is_named_in_the_sheets_language() -> None:
    told = weather_of(Sheet("jug", {}), SPANISH)
    assert told.startswith("AÚN NO LEÍDO:") and all(words in told for words in SPANISH.fields.values())
    assert "NOT READ YET: least wind to spray in" in weather_of(Sheet("jug", {}), ENGLISH)


def test_first_aid_tells_silent_from_not_read() -> None:
    ester = hobbin().shelf["triclopyr-ester-4-ec"]
    changed = retyped(ester, hazard__first_aid__skin=SILENT, hazard__first_aid__eyes=None)
    told, always = first_aid_words([changed], {}, ENGLISH)
    assert told.endswith("Skin: label silent Eyes: not read on the label yet")
    assert "Spill" in always


def test_a_unit_without_a_map_has_a_sheet_in_every_language() -> None:
    bare = made(with_units(only(hobbin(), "ridge"), "ridge", polygon=None))
    assert all(day.sketch.outline == () for _, day in bare.days)
