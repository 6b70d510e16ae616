"""Paragraphs keep their identity from one draft to the next."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from fairhand.manuscript.draft import read_manuscript
from fairhand.manuscript.matching import ParagraphMatch, match_paragraphs

RAIN = (
    "Rain fell on the upper valley for nine days, and the mill stopped when the race overflowed its banks in the dark."
)
MILL = (
    "The mill had ground for two hundred years before that week, and its owner kept a book of every sack that left it."
)
BOOK = "That book is the only witness we have. It was found under a stair in the vicarage and has never been printed."
END = "What the book shows is a village that measured itself by flour, not by pounds, and counted its losses in loaves."


def match(old: list[str], new: list[str]) -> list[tuple[str, tuple[int, ...], tuple[int, ...]]]:
    """What became of the paragraphs, without the likeness."""
    matches = match_paragraphs(read_manuscript("\n\n".join(old)), read_manuscript("\n\n".join(new)))
    return [(each.fate, each.old, each.new) for each in matches]


def test_unchanged_paragraphs_are_kept() -> None:
    """Blanks and line ends may change without a paragraph being another one."""
    assert match([RAIN, MILL], [RAIN.replace("nine days", "nine\ndays"), MILL]) == [
        ("kept", (0,), (0,)),
        ("kept", (1,), (1,)),
    ]


def test_an_edited_paragraph_is_the_same_one() -> None:
    """A paragraph with some words changed keeps its identity, and its likeness says how much."""
    (first, second) = match_paragraphs(
        read_manuscript(f"{RAIN}\n\n{MILL}"), read_manuscript(f"{RAIN}\n\n{MILL.replace('two hundred', 'some')}")
    )
    assert (first.fate, second.fate) == ("kept", "edited")
    assert first.likeness == 1.0
    assert 0.9 < second.likeness < 1.0


def test_paragraphs_come_go_and_move() -> None:
    """A new one, one that is gone, and the one that left the others' order."""
    assert match([RAIN, MILL, BOOK], [BOOK, RAIN, MILL]) == [
        ("moved", (2,), (0,)),
        ("kept", (0,), (1,)),
        ("kept", (1,), (2,)),
    ]
    assert match([RAIN, MILL], [RAIN, END]) == [("kept", (0,), (0,)), ("new", (), (1,)), ("gone", (1,), ())]


def test_a_moved_paragraph_may_be_edited_too() -> None:
    """It is still that paragraph; its likeness is below one."""
    old, new = read_manuscript(f"{RAIN}\n\n{MILL}\n\n{BOOK}"), f"{BOOK.replace('only', 'sole')}\n\n{RAIN}\n\n{MILL}"
    moved = match_paragraphs(old, read_manuscript(new))[0]
    assert (moved.fate, moved.old) == ("moved", (2,))
    assert moved.likeness < 1


def test_a_paragraph_is_split_or_joined() -> None:
    """Both halves lead back to the whole, and the whole to both halves."""
    one, two = BOOK.split(". ", 1)
    assert match([RAIN, f"{one}. {two} {END}", MILL], [RAIN, BOOK, END, MILL]) == [
        ("kept", (0,), (0,)),
        ("split", (1,), (1, 2)),
        ("kept", (2,), (3,)),
    ]
    assert match([RAIN, BOOK, END, MILL], [RAIN, f"{BOOK} {END}", MILL]) == [
        ("kept", (0,), (0,)),
        ("joined", (1, 2), (1,)),
        ("kept", (3,), (2,)),
    ]


def test_repeated_paragraphs_keep_their_places() -> None:
    """Where the same words stand twice, those that kept their place are matched with each other."""
    assert match([RAIN, MILL, RAIN], [RAIN, MILL, END, RAIN]) == [
        ("kept", (0,), (0,)),
        ("kept", (1,), (1,)),
        ("new", (), (2,)),
        ("kept", (2,), (3,)),
    ]


PARAGRAPHS = st.lists(
    st.lists(st.sampled_from("tide mill rain book loaf — 1846".split()), min_size=1).map(" ".join), max_size=7
)


@given(PARAGRAPHS)
def test_a_draft_matched_with_itself_is_kept_whole(paragraphs: list[str]) -> None:
    """Matching a manuscript with itself is identity."""
    draft = read_manuscript("\n\n".join(paragraphs))
    assert match_paragraphs(draft, draft) == tuple(
        ParagraphMatch("kept", (paragraph.index,), (paragraph.index,), 1.0) for paragraph in draft.paragraphs
    )


@given(PARAGRAPHS, PARAGRAPHS)
def test_every_paragraph_stands_once(old: list[str], new: list[str]) -> None:
    """No paragraph of either draft is lost or told twice, and each likeness is a share."""
    first, second = read_manuscript("\n\n".join(old)), read_manuscript("\n\n".join(new))
    matches = match_paragraphs(first, second)
    assert sorted(index for each in matches for index in each.old) == list(range(len(first.paragraphs)))
    assert sorted(index for each in matches for index in each.new) == list(range(len(second.paragraphs)))
    assert all(0 <= each.likeness <= 1 for each in matches)


def test_a_whole_book_is_matched_too() -> None:
    """With more paragraphs than can all be compared, those that share rare words still find each other."""
    old = [
        f"Entry {number} of the ledger of {number * 7} names the sack numbered {number * 13}." for number in range(230)
    ]
    new = [paragraph.replace("names the sack", "lists the old sack") for paragraph in old]
    assert match(old, new) == [("edited", (number,), (number,)) for number in range(230)]
