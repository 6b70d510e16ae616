"""The sentence around a place."""

from __future__ import annotations

from fairhand.language.sentences import split_sentences
from fairhand.model.span import Span

REACH = 700
"""Characters on either side within which its ends are looked for."""


def sentence_around(text: str, place: int) -> Span:
    """The sentence of a text that holds a place; one longer than can be looked over is cut.

    >>> text = "It ebbs. It flows twice a day."
    >>> sentence_around(text, 12).of(text)
    'It flows twice a day.'
    """
    first, last = max(0, place - REACH), min(len(text), place + REACH)
    for span in split_sentences(text[first:last]):
        if span.start <= place - first < span.end:
            return span.shifted(first)
    return Span(place, place)
