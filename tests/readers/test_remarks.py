"""What readers wrote is gathered, kept, and found again in the draft as it now is."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from fairhand.model.remark import Remark, Returned
from fairhand.model.span import Span
from fairhand.readers.carrying_out import carry_out
from fairhand.readers.gathering import AROUND, ReaderRemark, count_forms, gather_remarks
from fairhand.readers.placing import place_remarks
from fairhand.readers.remarks_file import put_remarks, read_remarks, rule_remark

SENT = (
    "The mill stood by the river for two hundred years before it burned.\n"
    "Its owner kept a book of every sack that left it, and the book is lost.\n"
    "What is left is a village that counts its losses in loaves."
)


def mark(words: str, said: str = "Why?", text: str = SENT) -> ReaderRemark:
    """A comment on some words."""
    start = text.index(words)
    end = start + len(words)
    return ReaderRemark("comment", said, words, text[max(0, start - AROUND) : start], text[end : end + AROUND])


def found(words: str, present: str, sent: str = SENT) -> tuple[str, bool] | None:
    """The words now at the place of some words, and whether that is sure."""
    (place,) = place_remarks([mark(words)], present, sent)
    return (place.span.of(present), place.sure) if place else None


def test_pieces_of_one_change_are_one() -> None:
    """A change cut by its type, and a word replaced, are each one; forms are only counted."""
    text = "It ran off."
    remarks = (
        Remark("insertion", Span(2, 2), " soon", "Ines"),
        Remark("insertion", Span(2, 2), "er", "Ines"),
        Remark("deletion", Span(3, 5), "ra", "Ines"),
        Remark("deletion", Span(5, 6), "n", "Ines"),
        Remark("insertion", Span(6, 6), "fell", "Ines"),
        Remark("form", Span(3, 6), "", "Ines"),
    )
    told = [(one.kind, one.exact, one.said) for one in gather_remarks(Returned(text, remarks))]
    assert told == [("insertion", "It ran off.", " sooner"), ("substitution", "ran", "fell")]
    assert count_forms(Returned(text, remarks)) == 1


def test_a_word_changed_within_is_replaced_whole() -> None:
    """A letter taken out or put in says what the word becomes; a word beside another stays its own."""
    text = "The librry of the town."
    for kind, at, words, told in (
        ("insertion", Span(8, 8), "a", ("substitution", "librry", "library")),
        ("deletion", Span(8, 9), "r", ("substitution", "librry", "libry")),
        ("insertion", Span(10, 10), " then", ("insertion", "The librry of the town.", " then")),
        ("comment", Span(5, 7), "Spelt so?", ("comment", "librry", "Spelt so?")),
    ):
        (one,) = gather_remarks(Returned(text, (Remark(kind, at, words, "Ines"),)))  # type: ignore[arg-type]
        assert (one.kind, one.exact, one.said) == told


def test_two_people_at_one_place_stay_two() -> None:
    """What one put in is not the other's."""
    remarks = (Remark("deletion", Span(3, 6), "ran", "Ines"), Remark("insertion", Span(6, 6), "fell", "Tom"))
    assert [one.kind for one in gather_remarks(Returned("It ran off.", remarks))] == ["deletion", "insertion"]


def test_an_answer_names_what_it_answers() -> None:
    """The comment that it answers goes with it."""
    remarks = (
        Remark("comment", Span(0, 2), "Which?", "Ines", id="1"),
        Remark("comment", Span(0, 2), "The mill.", "Tom", id="2", answers="1"),
    )
    assert [one.answers for one in gather_remarks(Returned("It ran.", remarks))] == ["", "Which?"]


def test_remarks_are_kept_once_among_other_lines() -> None:
    """The same file taken twice adds nothing; the writer's word stays; what is no remark stands as it was."""
    other = '{"type": "Annotation", "body": [{"purpose": "tagging", "value": "stet"}]}\nnonsense "remark"\n'
    remarks = (mark("river"), mark("book of every sack", "Where is it?"))
    text = put_remarks(other, remarks)
    ruled = rule_remark(text, remarks[0].id, "left", "It has only one.")
    again = put_remarks(ruled, remarks)
    assert again == ruled
    assert again.startswith(other)
    assert [(one.ruling, one.why) for one in read_remarks(again)] == [("left", "It has only one."), ("", "")]


def test_words_that_stand_are_found_wherever_they_went() -> None:
    """In their paragraph, though it was edited and moved."""
    one, two, three = SENT.split("\n")
    present = f"{three}\n{two.replace('kept', 'had kept')}\n{one}"
    assert found("book of every sack", present) == ("book of every sack", True)
    assert found("two hundred years", present) == ("two hundred years", True)


def test_words_that_were_changed_are_placed_and_called_uncertain() -> None:
    """What is left of them; and where nothing is, what follows."""
    assert found("two hundred years", SENT.replace("hundred", "thousand")) == ("two thousand years", False)
    assert found("by the river ", SENT.replace(" by the river", "")) == ("for", False)


def test_words_that_are_gone_with_their_paragraph_have_no_place() -> None:
    """Nothing is pinned to a text that has nothing of them."""
    assert found("book of every sack", "Entirely other matter, of lamps and of snow.") is None
    assert place_remarks([mark("river")], "", "") == (None,)


def test_a_word_that_stands_often_is_sure_only_in_its_surroundings() -> None:
    """With nothing else to go by, a short word is uncertain."""
    (place,) = place_remarks([ReaderRemark("comment", "?", "the", "", "")], SENT)
    assert place is not None
    assert not place.sure


@given(st.text("ab \n", max_size=60), st.text("ab \n", max_size=60), st.integers(0, 59), st.integers(0, 9))
def test_every_place_lies_in_the_text(sent: str, present: str, start: int, length: int) -> None:
    """Whatever was sent and whatever stands there now."""
    start = min(start, len(sent))
    exact = sent[start : start + length]
    remark = ReaderRemark("comment", "?", exact, sent[:start], sent[start + length :])
    for before in ("", sent):
        (place,) = place_remarks([remark], present, before)
        assert place is None or 0 <= place.span.start < place.span.end <= len(present)


@given(
    st.lists(st.tuples(st.sampled_from(["comment", "insertion", "deletion"]), st.integers(0, 20), st.integers(0, 5)))
)
def test_no_remark_is_lost_in_gathering(told: list[tuple[str, int, int]]) -> None:
    """Every comment is there, and every character put in."""
    text = "abcd efgh ijkl mnop qrst"
    remarks = tuple(
        Remark(kind, Span(at, at if kind == "insertion" else at + length), f"{kind[0]}{n}", "Ines")  # type: ignore[arg-type]
        for n, (kind, at, length) in enumerate(sorted(told, key=lambda one: one[1]))
    )
    gathered = gather_remarks(Returned(text, remarks))
    assert all(any(one.said == each.said for each in gathered) for one in remarks if one.kind == "comment")
    assert all(any(one.said in each.said for each in gathered) for one in remarks if one.kind == "insertion")


def carried(draft: str, remark: Remark, sent: str = "") -> str | None:
    """The draft once a change is carried out at its place."""
    (one,) = gather_remarks(Returned(sent or draft, (remark,)))
    (place,) = place_remarks([one], draft, sent or draft)
    return carry_out(draft, place.span, one) if place else None


def test_changes_are_carried_out_where_their_words_stand() -> None:
    """Put in, taken out, replaced; blanks are not doubled, and a word changed within is the whole word."""
    draft = "The mill stood by the river, and it\nground for two hundred years."
    stood = draft.index("stood")
    assert carried(draft, Remark("insertion", Span(stood, stood), "still ")) == draft.replace("stood", "still stood")
    assert carried(draft, Remark("insertion", Span(stood + 5, stood + 5), " long")) == draft.replace(
        "stood", "stood long"
    )
    assert carried(draft, Remark("deletion", Span(stood + 5, stood + 18), " by the river")) == draft.replace(
        " by the river", ""
    )
    assert carried(draft, Remark("deletion", Span(stood, stood + 5), "stood")) == draft.replace("stood ", "")
    assert carried(draft, Remark("insertion", Span(stood + 1, stood + 1), "h")) == draft.replace("stood", "shtood")


def test_what_cannot_be_carried_out_unseen_is_left_alone() -> None:
    """A comment, a change across paragraphs, and words that stand otherwise now, or with markup in them."""
    draft = "The mill *stood* by the river.\n\nIt ground."
    at = SENT.index("stood by")
    assert carried(draft, Remark("comment", Span(4, 8), "?")) is None
    assert carry_out(draft, Span(0, 20), ReaderRemark("deletion", "", "mill\nstood")) is None
    assert carry_out(draft, Span(9, 19), ReaderRemark("deletion", "", "stood by")) is None
    assert carried(SENT.replace("stood by", "lay by"), Remark("deletion", Span(at, at + 8), "stood by"), SENT) is None


@given(st.text("ab .", max_size=30), st.integers(0, 30), st.integers(0, 6), st.text("xy ", max_size=4))
def test_carrying_out_touches_nothing_else(draft: str, start: int, length: int, said: str) -> None:
    """What stands before and after the words is as it was, but for blanks."""
    span = Span(min(start, len(draft)), min(start + length, len(draft)))
    for kind in ("deletion", "substitution"):
        done = carry_out(draft, span, ReaderRemark(kind, said if kind != "deletion" else "", span.of(draft)))
        assert done is not None
        told = draft[: span.start] + (said if kind != "deletion" else "") + draft[span.end :]
        assert "".join(done.split()) == "".join(told.split())
