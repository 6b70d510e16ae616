"""The writer's lapses: read, learnt, looked for, and told when they have died out."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.copyedit.lapses import drop_lapse, has_died_out, note_lapse, read_lapses, read_learnt
from fairhand.copyedit.remarked import read_comment
from fairhand.errors import FileUnreadable
from fairhand.model.lapse import Lapse


def test_a_lapse_is_counted_and_the_rest_of_the_file_stays() -> None:
    """The same words again are one more, with the newer day; remarks and other keys are as they were."""
    text = '# mine\n[[lapses]]\nname = "salt"\nwrong = "sault"\nmood = "rueful"\ncount = 2\nlast = "2027-01-01"\n'
    noted = note_lapse(text, Lapse("other name", wrong="Sault", right="salt", last="2027-02-02", example="a sault pan"))
    assert noted.startswith("# mine")
    assert 'mood = "rueful"' in noted
    (lapse,) = read_lapses(noted)[0]
    assert (lapse.name, lapse.count, lapse.last, lapse.example) == ("salt", 3, "2027-02-02", "a sault pan")
    assert read_lapses(drop_lapse(noted, "salt"))[0] == ()


def test_the_most_frequent_come_first() -> None:
    """By how often each was seen."""
    text = note_lapse(note_lapse("", Lapse("a", wrong="a b", count=1)), Lapse("b", check="doubled-word", count=4))
    assert [one.name for one in read_lapses(text)[0]] == ["b", "a"]


@pytest.mark.parametrize(
    ("text", "where"),
    [
        ("lapses = 3", "lapses.toml, lapses"),
        ("[[lapses]]\nname = 1\n", "lapses.toml, lapse 1"),
        ("[[lap", "lapses.toml"),
    ],
)
def test_a_faulty_file_is_told(text: str, where: str) -> None:
    """What and where; nothing is written over it where it is no TOML."""
    lapses, (problem,) = read_lapses(text)
    assert (lapses, problem.where) == ((), where)
    if text == "[[lap":
        with pytest.raises(FileUnreadable, match="mend it first"):
            note_lapse(text, Lapse("a", wrong="a"))


@pytest.mark.parametrize(
    ("comment", "wrong", "right"),
    [
        ("“then” should be “than”", "then", "than"),
        ("loose -> lose", "loose", "lose"),
        ("'alot' should read 'a lot'.", "alot", "a lot"),
        ("sp. (on “seperate”)", "seperate", ""),
    ],
)
def test_a_remark_that_names_both_is_learnt(comment: str, wrong: str, right: str) -> None:
    """What is wrong, and what is right where it is said."""
    lapse = read_comment(comment)
    assert lapse is not None
    assert (lapse.wrong, lapse.right) == (wrong, right)


@pytest.mark.parametrize(
    "comment", ["A strong opening.", "Why? (on “the quay was sold”)", "", "sp. (on “two words here”)"]
)
def test_other_remarks_are_passed_over(comment: str) -> None:
    """They name no error of words."""
    assert read_comment(comment) is None


@pytest.mark.parametrize(
    ("comment", "check"),
    [
        ("Comma splice.", "comma-splice"),
        ("CS", "comma-splice"),
        ("Another comma splice here! (on “it ran, it fell”)", "comma-splice"),
        ("This is a sentence fragment", "fragment"),
        ("frag.", "fragment"),
        ("Subject–verb agreement", "agreement"),
        ("agr (on “were”)", "agreement"),
        ("wrong article", "article"),
        ("Watch your articles", "article"),
        ("Verb form?", "verb-form"),
        ("repeated word (on “the the”)", "doubled-word"),
        ("ww", "confused-words"),
    ],
)
def test_an_error_is_known_by_its_handbook_name(comment: str, check: str) -> None:
    """Or by the short form that teachers write in margins."""
    lapse = read_comment(comment)
    assert lapse is not None
    assert lapse.check == check


@pytest.mark.parametrize(
    "comment",
    [
        "The fragments that survive are well used.",
        "I like this article. (on “Osei 118”)",
        "Do you agree?",
        "art history would help here",
        "Cite the article you mean.",
        "Is the fragment of the diary dated?",
        "as",
    ],
)
def test_a_word_of_the_trade_in_another_sense_is_no_error(comment: str) -> None:
    """A remark that says more than the name is passed over: nothing is guessed."""
    assert read_comment(comment) is None


@given(st.text())
def test_no_file_stops_the_list_of_what_was_learnt(text: str) -> None:
    """Whatever stands in it."""
    read_learnt(text)


def test_a_lapse_dies_out() -> None:
    """Seen more than once, and in none of the last three drafts since."""
    lapse = Lapse("a", wrong="a", count=2)
    assert has_died_out(lapse, [False, False, False])
    assert not has_died_out(lapse, [False, False])
    assert not has_died_out(lapse, [False, True, False])
    assert not has_died_out(Lapse("a", wrong="a", count=1), [False] * 5)


@given(st.text(), st.text(max_size=60))
def test_nothing_crashes_the_readers(text: str, comment: str) -> None:
    """Any file and any remark is read."""
    read_lapses(text)
    read_comment(comment)
