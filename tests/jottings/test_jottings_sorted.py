from __future__ import annotations

import tomllib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.errors import FileUnreadable
from fairhand.jottings.arrangement import KeptGroups, list_all, move_jottings, place_jottings, sort_jottings
from fairhand.jottings.grouping import MOST, group_texts, part_by_likeness
from fairhand.jottings.groups_file import read_groups, write_groups
from fairhand.jottings.jotting import Jotting, read_jottings
from fairhand.jottings.naming import name_groups

TEXT = "bells rang in fog\nthe keeper's pay\nfog bells\nwho paid the keepers?\na red door"
LINES = st.lists(st.text(max_size=30).filter(lambda line: len(line.splitlines()) < 2), max_size=12)


def arranged(text: str = TEXT) -> list[list[str]]:
    """The words of each group, and of those apart."""
    found = sort_jottings(read_jottings(text), None)
    return [*([one.text for one in group.jottings] for group in found.groups), [one.text for one in found.apart]]


def test_without_an_encoder_shared_words_group() -> None:
    """What shares no word with another stands apart."""
    assert arranged() == [
        ["bells rang in fog", "fog bells"],
        ["the keeper's pay", "who paid the keepers?"],
        ["a red door"],
    ]


@given(LINES)
def test_no_jotting_is_lost_or_changed(lines: list[str]) -> None:
    """Sorted, kept and read again, each stands once, and the order of the groups holds."""
    jottings = read_jottings("\n".join(lines))
    found = sort_jottings(jottings, None)
    assert sorted(list_all(found), key=id) == sorted(jottings, key=id)
    kept, problems = read_groups(tomllib.loads(write_groups("", found)))
    assert problems == ()
    again = place_jottings(jottings, kept, None)
    assert [sorted(one.words for one in g.jottings) for g in again.groups] == [
        sorted(one.words for one in g.jottings) for g in found.groups
    ]


def test_a_phrase_stands_in_the_jottings() -> None:
    """It is the writer's own, and no two groups have the same."""
    groups = [["the bell in the fog", "bell-ropes"], ["the bell in the fog", "fog again"]]
    names = name_groups(groups)
    assert len(set(names)) == 2
    assert all(any(name in text for text in group) for name, group in zip(names, groups, strict=True))


def test_a_jotting_moves_to_another_group_to_its_own_or_apart() -> None:
    """The others stay where they are; a group that is left empty goes."""
    found = sort_jottings(read_jottings(TEXT), None)
    to_other = move_jottings(found, {0}, 1)
    assert [len(group.jottings) for group in to_other.groups] == [1, 3]
    own = move_jottings(found, {0, 4}, 2)
    assert own.groups[2].jottings == (Jotting("bells rang in fog", 1), Jotting("a red door", 5))
    assert own.groups[2].phrase in "bells rang in fog a red door"
    apart = move_jottings(found, {0, 1}, None)
    assert [one.line for one in apart.apart] == [5, 1, 3]
    assert len(apart.groups) == 1


def test_what_was_changed_stays_and_what_is_new_finds_its_place() -> None:
    """A corrected jotting keeps its group; a new one joins those it is likest to, or stands apart."""
    kept = KeptGroups(
        (("fog", ("bells rang in fog", "fog bells")), ("pay", ("who paid the keepers?",))), ("a red door",)
    )
    text = "bells rang in the fog!\nfog bells\nwho paid the keepers?\nthe keepers were paid in coal\na goat"
    found = place_jottings(read_jottings(text), kept, None)
    assert [[one.line for one in group.jottings] for group in found.groups] == [[1, 2], [3, 4]]
    assert [one.line for one in found.apart] == [5]


def test_jottings_of_the_same_words_are_told_apart() -> None:
    """Each of two that read alike keeps a place of its own."""
    kept = KeptGroups((("fog", ("fog",)), ("bells", ("fog", "bells"))), ())
    found = place_jottings(read_jottings("fog\nfog\nbells"), kept, None)
    assert [len(group.jottings) for group in found.groups] == [1, 2]


def test_more_jottings_than_are_grouped_stand_apart() -> None:
    """The time that grouping takes has a bound."""
    groups = group_texts(["fog bells"] * 3 + [f"w{n}" for n in range(MOST)], None)
    assert groups[-3:] == ((MOST,), (MOST + 1,), (MOST + 2,))
    assert part_by_likeness([]) == ()


def test_the_file_keeps_what_else_it_holds() -> None:
    """Remarks and unknown keys stay; a file that is no TOML is not written over; a faulty group is named."""
    text = write_groups("# mine\nkey = 1\n[[groups]]\njottings = ['x']\n", sort_jottings(read_jottings(TEXT), None))
    assert text.startswith("# mine\nkey = 1\n")
    assert len(tomllib.loads(text)["groups"]) == 2
    with pytest.raises(FileUnreadable, match="mend it first"):
        write_groups("[[", sort_jottings((), None))
    kept, problems = read_groups({"groups": ["x", {"phrase": "fog", "jottings": ["bells"]}], "apart": 3})
    assert kept.groups == (("fog", ("bells",)),)
    assert str(problems[0]).startswith("groups.toml, group 1: it lists no jottings")
