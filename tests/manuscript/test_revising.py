"""Between two drafts, what was revised in argument is told from what was revised in wording."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from fairhand.manuscript.draft import read_manuscript
from fairhand.manuscript.revising import list_revisions, match_sentences, sentences_of, tell_revision

RAIN = "Rain fell on the upper valley for nine days, and the race overflowed its banks in the dark."
MILL = "The mill had ground for two hundred years before that week."
BOOK = "Its owner kept a book of every sack that left it, and that book is the only witness we have."
LOSS = "What the book shows is a village that counted its losses in loaves."


def revised(old: str, new: str) -> list[tuple[str, str]]:
    """What became of each sentence that changed."""
    return [(one.fate, one.kind) for one in list_revisions(read_manuscript(old), read_manuscript(new))]


def test_what_stands_as_it_stood_is_no_revision() -> None:
    """Line ends, blanks and the curl of quotation marks do not revise a sentence."""
    assert revised("Lind’s mill “stood”.", 'Lind\'s mill "stood".') == []
    assert revised(f"{RAIN} {MILL}", f"{RAIN}\n{MILL}") == []


def test_a_sentence_that_moves_to_another_paragraph_is_followed() -> None:
    """It is neither gone nor new, wherever it stands."""
    assert revised(f"{RAIN} {BOOK}\n\n{MILL} {LOSS}", f"{RAIN}\n\n{MILL} {BOOK} {LOSS}") == [("moved", "order")]


def test_sentences_that_are_joined_or_split_are_followed() -> None:
    """Two that become one, and one that becomes two, lead to each other."""
    joined = "The mill had ground for two hundred years before that week, and its owner kept a book of every sack."
    two = "The mill had ground for two hundred years before that week. Its owner kept a book of every sack."
    assert [fate for fate, _ in revised(two, joined)] == ["joined"]
    assert [fate for fate, _ in revised(joined, two)] == ["split"]


def test_what_says_more_is_argument_and_what_says_it_otherwise_is_wording() -> None:
    """A figure, a denial or a clause more is argument; another word, a mend of spelling or of order is wording."""
    for then, now, kind in (
        ("Most readers came at night.", "Of the readers, 62 percent came at night.", "argument"),
        ("It rained for nine days.", "It rained for ten days.", "argument"),
        ("The survey was complete.", "The survey was not complete.", "argument"),
        ("The fares rose.", "The fares rose because the company had lost its grant.", "argument"),
        ("Readers came, it was found by the report, at night.", "Readers came at night.", "argument"),
        ("The survey was quite large.", "The survey was rather big.", "wording"),
        ("The gouvernment have build a road.", "The government has built a road.", "wording"),
        ("At night the readers came.", "The readers came at night.", "wording"),
        (RAIN, RAIN.replace(", and", " and"), "wording"),
    ):
        assert tell_revision(then, now)[0] == kind, (then, now)


def test_what_was_gone_by_is_said() -> None:
    """Each judgement has its reason in words."""
    assert tell_revision("", RAIN)[1] == "the sentence is new"
    assert tell_revision("About 12 came.", "About 14 came.")[1] == "a figure came or went: 12, 14"
    assert tell_revision("It did stand.", "It didn’t stand.")[1] == "a word that denies came in"


TEXTS = st.lists(st.sampled_from([RAIN, MILL, BOOK, LOSS, "No.", "It did not."]), max_size=6)


@given(TEXTS, TEXTS)
def test_every_sentence_stands_once(old: list[str], new: list[str]) -> None:
    """No sentence of either draft is lost or told twice."""
    first, second = read_manuscript("\n\n".join(old)), read_manuscript(" ".join(new))
    matches = match_sentences(first, second)
    assert sorted(index for one in matches for index in one.old) == list(range(len(sentences_of(first))))
    assert sorted(index for one in matches for index in one.new) == list(range(len(sentences_of(second))))


@given(TEXTS)
def test_a_draft_held_against_itself_has_no_revision(text: list[str]) -> None:
    """Nothing changed, nothing is told."""
    draft = read_manuscript(" ".join(text))
    assert list_revisions(draft, draft) == ()
