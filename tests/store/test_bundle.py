"""Bundles carry entries: twice changes nothing, any order ends the same, what was altered stays out."""

import json
from dataclasses import replace
from pathlib import Path
from shutil import copyfile

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from rootcollar.kernel.errors import BadInput
from rootcollar.store import Bundle, Entry, amendment, bundle_of, doctor, open_file, read_bundle, standing, write_bundle
from tests import draws
from tests.store.making import LATER, NOW, altered, chain, draft, made

DEVICES = {name: chain(name, [draft(n) for n in range(1, 6)]) for name in ("phone", "desk", "tablet")}
ALL = tuple(entry for said in DEVICES.values() for entry in said)
FORK = chain("phone", [draft(1), draft(2), draft(9)])[2]  # an older copy of the phone's file, worked on
RIVALS = chain("clipboard", [amendment(ALL[0], [ALL[0]], f"wording {n}", "Ann", LATER) for n in range(2)])


@pytest.fixture(scope="module")
def empty(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A file with ground and nothing said."""
    return made(tmp_path_factory.mktemp("empty"))


@settings(max_examples=draws.of(25))
@given(
    st.lists(st.lists(st.sampled_from([*ALL, FORK, *RIVALS]), max_size=8), max_size=6).flatmap(
        lambda parts: st.tuples(st.just(parts), st.permutations(parts))
    )
)
def test_bundles_in_any_order_and_twice_end_the_same(
    empty: Path, orders: tuple[list[list[Entry]], list[list[Entry]]]
) -> None:
    first, second = empty.with_name("first.gpkg"), empty.with_name("second.gpkg")
    for path, parts, times in ((first, orders[0], 1), (second, orders[1], 2)):
        copyfile(empty, path)
        with open_file(path) as file:
            for part in parts * times:
                file.append(read_bundle(write_bundle(Bundle("P", "Wood", tuple(part))), "b.json").entries)
    with open_file(first) as one, open_file(second) as two:
        kept, other = one.snapshot(), two.snapshot()
    assert kept == other
    assert set(kept.entries) == {entry for part in orders[0] for entry in part}
    assert standing(kept.entries) == standing(reversed(other.entries))
    assert write_bundle(bundle_of(kept)) == write_bundle(bundle_of(other))
    assert doctor(first) == doctor(second)


def test_a_bundle_out_of_one_file_goes_into_another(tmp_path: Path) -> None:
    one = made(tmp_path)
    two = tmp_path / "two.gpkg"
    copyfile(one, two)
    with open_file(one) as here, open_file(two) as there:
        said = here.say("phone", [draft(1), draft(2)])
        heard = there.say("desk", [draft(3)])
        told = read_bundle(write_bundle(bundle_of(here.snapshot())), "b.json", there.snapshot().property_id)
        assert there.append(told.entries) == said
        assert there.append(told.entries) == ()
        back = bundle_of(there.snapshot(), without=[entry.hash for entry in said])
        assert back.entries == heard
        assert here.append(back.entries) == heard
        assert here.snapshot().entries == there.snapshot().entries


def test_a_gap_is_shown_until_it_is_filled(tmp_path: Path) -> None:
    phone = DEVICES["phone"]
    path = made(tmp_path)
    with open_file(path) as file:
        file.append([phone[0], phone[3], phone[4]])
        (gap,) = file.snapshot().gaps
        assert str(gap) == "numbers 2 to 3 of phone not here: not come yet, or lost"
        assert [one.says for one in doctor(path)] == [str(gap)]
        file.append([phone[2]])
        assert [str(gap) for gap in file.snapshot().gaps] == ["number 2 of phone not here: not come yet, or lost"]
        file.append([phone[1]])
        assert file.snapshot().gaps == ()
    assert doctor(path) == ()


def test_a_number_given_twice_is_told(tmp_path: Path) -> None:
    path = made(tmp_path)
    with open_file(path) as file:
        file.append([*DEVICES["phone"][:3], FORK])
        assert len(file.snapshot().entries) == 4
    (told,) = doctor(path)
    assert told.says == "2 entries are numbered 3 of phone: an older copy of the file was worked on"


def test_rivals_both_stand_until_a_third_names_both(tmp_path: Path) -> None:
    with open_file(made(tmp_path)) as file:
        (first,) = file.say("phone", [draft(1)])
        (mine,) = file.say("phone", [amendment(first, [first], "two cuts", "Ann", NOW)])
        (theirs,) = file.say("desk", [amendment(first, [first], "three cuts", "Ben", NOW)])
        both = standing(file.snapshot().entries)[first.id]
        assert {one.body for one in both} == {"two cuts", "three cuts"}
        settled = amendment(first, [mine, theirs], "three cuts, I looked", "Cy", LATER)
        file.say("phone", [settled])
        (one,) = standing(file.snapshot().entries)[first.id]
        assert one.body == "three cuts, I looked"
        assert len(file.snapshot().entries) == 4  # nothing that was said is gone


def test_an_amendment_names_wordings_of_the_same_entry() -> None:
    first, other = ALL[0], ALL[1]
    for named in ([other], [], [first, other]):
        with pytest.raises(BadInput):
            amendment(first, named, "no", "Ann", NOW)


@pytest.mark.parametrize(
    "body", ["", "[]", "{}", '{"instead_of": 3, "body": ""}', '{"instead_of": [4], "body": ""}', "[" * 9999]
)
def test_an_amendment_that_cannot_be_read_replaces_nothing(body: str) -> None:
    first = ALL[0]
    (odd,) = chain("odd", [replace(draft(7, "amend/1", first.id), body=body)])
    stand = standing([first, odd])
    assert {one.entry for one in stand[first.id]} == {first, odd}


def good() -> dict[str, object]:
    """A bundle as JSON holds it."""
    told: dict[str, object] = json.loads(write_bundle(Bundle("P", "Wood", ALL[:2])))
    return told


def with_entry(**words: object) -> dict[str, object]:
    """A bundle whose first entry has words written over."""
    told = good()
    told["entries"][0] |= words  # type: ignore[index]
    return told


@pytest.mark.parametrize(
    ("told", "says"),
    [
        ([], "JSON of another kind"),
        (good() | {"rootcollar_bundle": 2}, "a bundle of form 2"),
        (good() | {"entries": {}}, "without property, name or entries"),
        (good() | {"entries": [3]}, "entry 1: found an entry with words missing"),
        (with_entry(body="altered"), "entry 1, body: found a body that is not the one sealed"),
        (with_entry(by="Ben"), "entry 1, hash: found words that are not the ones hashed"),
        (with_entry(seq=True), "entry 1, seq: found True"),
        (with_entry(seq="1"), "entry 1, seq: found '1'"),
        (with_entry(seq=10**30), "entry 1, seq: found number 1000"),
        (with_entry(body=None, salt=None), "entry 1, body: found None"),
        (with_entry(said_at="2026-07-01"), "entry 1: found '2026-07-01'"),
        (with_entry(said_at="2026-07-01T09:01:00Z"), "entry 1, said_at"),
        (with_entry(more=1), "words missing or too many"),
    ],
)  # fmt: skip
def test_what_is_wrong_with_a_bundle_is_told(told: object, says: str) -> None:
    with pytest.raises(BadInput) as fault:
        read_bundle(json.dumps(told).encode(), "b.json")
    assert says in str(fault.value)
    assert str(fault.value).startswith("b.json")


def test_a_bundle_cut_short_or_of_another_property_is_refused() -> None:
    whole = write_bundle(Bundle("P", "Wood", ALL[:2]))
    for part in (whole[:-20], b"", b"\xff\xfe", b"[" * 99_999):
        with pytest.raises(BadInput, match="no JSON, or only part of it"):
            read_bundle(part, "b.json")
    assert read_bundle(whole, "b.json", "P").entries == ALL[:2]
    with pytest.raises(BadInput, match="another property"):
        read_bundle(whole, "b.json", "Q")


def test_an_altered_entry_keeps_all_of_its_bundle_out(tmp_path: Path) -> None:
    with open_file(made(tmp_path)) as file:
        for wrong in (altered(ALL[1], body="altered"), altered(ALL[1], body=None, salt=None)):
            with pytest.raises(BadInput, match=f"entry {ALL[1].id} of phone"):
                file.append([ALL[0], wrong])
        assert file.snapshot().entries == ()
