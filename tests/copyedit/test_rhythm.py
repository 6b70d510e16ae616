"""How sentences run: drawn by paragraph, with places to look at that are asked and never told."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.copyedit.own_prose import own_prose
from fairhand.copyedit.rhythm import CHAIN, LONG, Ease, measure_ease, quote_look
from fairhand.manuscript.draft import read_manuscript


def ease_of(text: str) -> Ease:
    """How a draft reads."""
    return measure_ease(own_prose(read_manuscript(text), ()))


def test_lengths_stand_by_paragraph() -> None:
    """A heading, a quotation and a paragraph without prose have none."""
    ease = ease_of("# Salt\n\nSalt was dear. It came by sea.\n\n> He said so.\n\nNobody ate it.\n")
    assert ease.paragraphs == ((8, (3, 4)), (55, (3,)))
    assert ease.lengths == (3, 4, 3)


@pytest.mark.parametrize(
    "sentence",
    [
        "The tax was raised in the spring.",
        "The letters were quickly burned.",
        "Mistakes were made in the counting.",
        "The clerk has not been told.",
        "The quay must be sold before winter.",
    ],
)
def test_a_passive_that_hides_who_acts_is_asked_about(sentence: str) -> None:
    """Its words in half brackets, within their sentence."""
    (look,) = ease_of(sentence).looks
    assert look.kind == "passive"
    assert "⸢" in quote_look(sentence, look)


@pytest.mark.parametrize(
    "sentence",
    [
        "The tax was raised by the council.",
        "The quay is located beside the mill.",
        "The wall can be seen from the sea.",
        "She was tired of the noise.",
        "The book is called a ledger.",
        "They have raised the tax.",
    ],
)
def test_a_state_or_a_named_actor_is_let_be(sentence: str) -> None:
    """Nobody is hidden there."""
    assert ease_of(sentence).looks == ()


def test_each_kind_of_look_is_found() -> None:
    """Long sentences, nouns in a row, one opening three times; by kind, in one order."""
    long = "The boats " + "went out and came in again " * 7 + "all day."
    chain = "We saw the implementation of the administration of the taxation of the population here."
    same = "They rowed. They sang. They slept."
    ease = ease_of(f"{same}\n\n{chain}\n\n{long}\n")
    assert list(ease.by_kind) == ["long sentence", "nouns in a row", "same opening"]
    assert ease.by_kind["long sentence"][0].asks.startswith(f"{max(ease.lengths)} words")
    assert max(ease.lengths) >= LONG
    assert int(ease.by_kind["nouns in a row"][0].asks.split()[0]) >= CHAIN


def test_this_alone_is_asked_about_after_a_sentence_that_names_much() -> None:
    """Not after a short one, nor with a noun beside it."""
    before = "The owners of the mill raised the rent of the houses beside the river in the spring of that year."
    (look,) = ease_of(f"{before} This angered nobody. This shows their patience.\n\n{before} This shows it.\n").looks
    assert look.kind == "this alone"
    assert "“This” what?" in look.asks
    assert ease_of(f"{before} This rise shows it.\n").looks == ()


def test_figures_have_their_formula_and_range() -> None:
    """SMOG only from thirty sentences on, as it is meant."""
    assert [one.name for one in ease_of("The tide ran. " * 12).figures] == [
        "Flesch reading ease",
        "Flesch–Kincaid grade",
    ]
    figures = ease_of("The tide ran. " * 30).figures
    assert [one.name for one in figures][-1] == "SMOG grade"
    assert all("words" in one.formula and "academic prose" in one.tells for one in figures)


@given(st.text(max_size=300))
def test_no_text_stops_it(text: str) -> None:
    """Every look lies within the draft, and can be quoted."""
    found = read_manuscript(text)
    for look in measure_ease(own_prose(found, ())).looks:
        assert 0 <= look.span.start < look.span.end <= len(found.text)
        assert quote_look(found.text, look)
