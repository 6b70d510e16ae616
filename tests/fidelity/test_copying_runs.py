"""What of a passage is like its sources, and what of it is left out."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.fidelity.copying import Likeness, find_likenesses, own_words
from fairhand.fidelity.prepared import prepare, words_of
from fairhand.fidelity.shelf import Shelf, shelve
from fairhand.language.sentences import split_sentences
from fairhand.language.shingles import containment, winnow
from fairhand.model.source import Page, SourceText
from fairhand.model.span import Span

PAGE = (
    "The lamplighters of Velden were hired by the winter. They carried their own ladders through the snow and mended"
    " whatever glass the wind had broken during the night. A lamp that was dark at six cost the man who kept it half a"
    " day’s pay, and nobody asked whether the oil had frozen."
)
COPIED = (
    "They carried their own ladders through the snow and mended whatever glass the wind had broken during the night."
)
CLOSE = "A lantern left dark at six cost whoever kept it half a day’s pay, and nobody asked if the oil had frozen."
OWN = "The city paid for the oil, and took it out of the men’s wages whenever a street complained to the council."


def shelf_of(*texts: str) -> Shelf:
    """Sources of one page each."""
    return shelve(
        tuple(prepare(SourceText(f"s{n}", (Page("1", text),), paged=True)) for n, text in enumerate(texts)),
    )


def likenesses(text: str, quoted: tuple[Span, ...] = (), skipped: tuple[Span, ...] = ()) -> tuple[Likeness, ...]:
    """What is told of a paragraph, beside the page on lamplighters."""
    own = own_words(text, tuple(split_sentences(text)), quoted, skipped)
    return find_likenesses(own, shelf_of("Nothing of the kind is said here.", PAGE))


def test_a_sentence_word_for_word_is_copied() -> None:
    """It is told whole, with its place in the source; the sentences around it are not."""
    text = f"{OWN} {COPIED} {OWN}"
    (one,) = likenesses(text)
    assert (one.how, one.shared, one.source) == ("copied", 1.0, 1)
    assert one.span.of(text) == COPIED.rstrip(".")
    assert not one.draft_differs
    assert not one.source_differs


def test_a_word_changed_here_and_there_hides_nothing() -> None:
    """The run is still copied, and the words changed are told."""
    text = COPIED.replace("mended", "repaired")
    (one,) = likenesses(text)
    assert one.how == "copied"
    assert [span.of(text) for span in one.draft_differs] == ["repaired"]


def test_a_sentence_with_some_words_changed_is_close() -> None:
    """Its order is the source's."""
    (one,) = likenesses(f"{CLOSE} {OWN}")
    assert one.how == "close"


@pytest.mark.parametrize("text", [OWN, "", "of the and the of the and the of the and", "The lamplighters of Velden."])
def test_ones_own_words_and_common_phrases_are_left_alone(text: str) -> None:
    """Nothing is told of what merely has the same subject."""
    assert not likenesses(text)


def test_quoted_words_are_left_out() -> None:
    """A quotation is the source's by right."""
    text = f"“{COPIED}” {OWN}"
    assert not likenesses(text, quoted=(Span(0, len(COPIED) + 2),))


def test_a_citation_within_does_not_break_a_run() -> None:
    """The words before it and after it belong together."""
    text = COPIED.replace("snow and", "snow (Aas 12) and")
    at = text.index("(")
    (one,) = likenesses(text, skipped=(Span(at, at + len("(Aas 12)")),))
    assert one.how == "copied"
    assert one.shared == 1


@given(st.text(max_size=300), st.lists(st.sampled_from([*PAGE.split(), "(", "”", "\n"]), max_size=60))
def test_any_text_is_read(strange: str, shuffled: list[str]) -> None:
    """Every span stands in its paragraph, in order, and every place in its source."""
    shelf = shelf_of(PAGE, strange)
    for text in (strange, " ".join(shuffled)):
        own = own_words(text, tuple(split_sentences(text)), (), ())
        end = 0
        for one in find_likenesses(own, shelf):
            assert end <= one.span.start < one.span.end <= len(text)
            assert 0 <= one.start < one.end <= len(shelf.sources[one.source].words)
            end = one.span.end


@given(st.lists(st.sampled_from("abc"), max_size=20), st.lists(st.sampled_from("abc"), max_size=20))
def test_containment_is_a_share(draft: list[str], source: list[str]) -> None:
    """It lies between 0 and 1, and a text contains itself."""
    assert 0 <= containment(draft, source, 2) <= 1
    assert containment(draft, draft, 2) == (len(draft) > 1)


@given(st.lists(st.integers(0, 9), max_size=40), st.integers(1, 6))
def test_every_window_has_a_fingerprint(hashes: list[int], window: int) -> None:
    """No window is without one of those that were chosen."""
    places = {at for _, at in winnow(hashes, window)}
    for first in range(len(hashes) - window + 1):
        assert places & set(range(first, first + window))


def test_words_matched_far_off_do_not_hide_a_close_sentence() -> None:
    """A sentence before it in the source that opens with the same small words is no part of what is followed."""
    page = (
        "It is said that ice is dear. It is the careless mooring that costs money, for it spends every rope on two or"
        " three knots, and the price of these small ropes is higher than any anchor."
    )
    text = (
        "It is the sloppy mooring that wastes money, because it spends each rope on two or three knots, and the sum of"
        " these little ropes is greater than any anchor."
    )
    own = own_words(text, tuple(split_sentences(text)), (), ())
    (one,) = find_likenesses(own, shelf_of(page))
    assert one.how == "close"
    assert one.start == words_of(page).index("careless") - 3


def test_what_was_measured_may_be_told_in_the_only_way_there_is() -> None:
    """Figures do not make a run of words long."""
    page = "Doubling time fell from 5.1 days at 20 units to 2.0 days at 150 units in all."
    text = (
        "They found that doubling time fell from 5.1 days at the lowest to 2.0 days at a moderate one, and no further."
    )
    own = own_words(text, tuple(split_sentences(text)), (), ())
    assert find_likenesses(own, shelf_of(page)) == ()
