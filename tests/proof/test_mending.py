"""What each sign makes of the draft."""

from __future__ import annotations

from typing import get_args

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.model.proof_mark import ProofMark, ProofSign
from fairhand.model.span import Span
from fairhand.proof.mending import mend_text


def mend(draft: str, exact: str, sign: ProofSign, words: str = "") -> str | None:
    """The draft with one mark carried out at the first place of some words."""
    at = draft.index(exact)
    return mend_text(draft, Span(at, at + len(exact)), ProofMark("m", "p", sign, exact, words=words))


@pytest.mark.parametrize(
    ("draft", "exact", "sign", "words", "now"),
    [
        ("They recieve it.", "recieve", "substitute", "receive", "They receive it."),
        ("It was very cold.", "very", "delete", "", "It was cold."),
        ("It was cold, very.", " very", "delete", "", "It was cold,."),
        ("Indeed it was.", "Indeed", "delete", "", "it was."),
        ("It ebbs here.", "here", "delete", "", "It ebbs."),
        ("Part the ways.", "Part", "insert", "of", "Part of the ways."),
        ("It ebbs then flows.", "ebbs", "insert", ",", "It ebbs, then flows."),
        ("We only is it.", "only is", "transpose", "", "We is only it."),
        ("Beleif.", "ei", "transpose", "", "Belief."),
        ("a b c", "a b c", "transpose", "c a b", "c a b"),
        ("a wel l known", "wel l", "close up", "", "a well known"),
        ("It is alot.", "al", "space", "", "It is a lot."),
        ("One. Two.", "Two", "new paragraph", "", "One.\n\nTwo."),
        ("One.\n\nTwo.", "Two", "run on", "", "One. Two."),
        ("In the Courier.", "Courier", "italic", "", "In the *Courier*."),
        ("In the *Courier*.", "*Courier*", "upright", "", "In the Courier."),
        ("in velden we", "velden", "capitals", "", "in Velden we"),
        ("The Quay.", "Quay", "lower case", "", "The quay."),
    ],
)
def test_a_sign_does_what_it_says(draft: str, exact: str, sign: ProofSign, words: str, now: str) -> None:
    """And nothing else. **Source**: BS 5261-2, ISO 5776 (forms from memory)."""
    assert mend(draft, exact, sign, words) == now


@pytest.mark.parametrize(
    ("exact", "sign"), [("the whole", "query"), ("the whole", "stet"), ("a b c", "transpose"), ("alot", "space")]
)
def test_what_is_the_writers_to_word_is_left(exact: str, sign: ProofSign) -> None:
    """A query, a stet, more than two words to be set in order: the program words nothing."""
    assert mend(f"So {exact} it is.", exact, sign) is None


@given(st.text(min_size=1, max_size=40), st.sampled_from(get_args(ProofSign)), st.data())
def test_what_is_not_marked_stays(draft: str, sign: ProofSign, data: st.DataObject) -> None:
    """Whatever a mark does, the other words stand as they were."""
    start = data.draw(st.integers(0, len(draft) - 1))
    end = data.draw(st.integers(start + 1, len(draft)))
    now = mend_text(draft, Span(start, end), ProofMark("m", "p", sign, draft[start:end], words="new"))
    if now is not None:
        before = draft[:start].split()[:-1]  # the last word before the place may run on into it
        assert now.split()[: len(before)] == before
