"""Where words in a row stand in the sources."""

from __future__ import annotations

from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from fairhand.fidelity.shelf import COMMON, index_texts

WORDS = st.lists(st.sampled_from("abcd"), max_size=30)


@given(st.lists(WORDS, min_size=1, max_size=3), WORDS)
def test_every_hit_has_the_same_words_in_both(texts: list[list[str]], words: list[str]) -> None:
    """A shingle is told where it stands, in the text that it stands in."""
    index = index_texts(texts, 3)
    for at, place in index.hits(words):
        number, start = index.text_at(place)
        assert words[at : at + 3] == texts[number][start : start + 3]


@given(st.lists(WORDS, min_size=1, max_size=3), WORDS)
def test_chains_go_forward_in_one_text(texts: list[list[str]], words: list[str]) -> None:
    """No chain goes back, in the passage or in the source, nor from one source into the next."""
    index = index_texts(texts, 3)
    for chain in index.chains(words):
        assert all(a < c and b < d for (a, b), (c, d) in pairwise(chain))
        assert len({index.text_at(place)[0] for _, place in chain}) == 1


def test_a_phrase_that_stands_everywhere_is_no_hit() -> None:
    """What every source says is nobody's."""
    phrase = ["on", "the", "quay"]
    assert list(index_texts([phrase] * COMMON, 3).hits(phrase))
    assert not list(index_texts([phrase] * (COMMON + 1), 3).hits(phrase))
