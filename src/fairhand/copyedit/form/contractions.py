"""Contractions: *don't*, *it's*, *we'll*."""

from __future__ import annotations

import re
from collections.abc import Iterator

from fairhand.copyedit.own_prose import OwnParagraph
from fairhand.model.span import Span

_CONTRACTED = re.compile(
    r"(?<![\w’'])(?:[A-Za-z]+n[’']t|(?:I|you|we|they|he|she|it|who|there|that|what)[’'](?:ll|ve|re|d|m)"
    r"|(?:it|he|she|that|there|here|who|what|where|how|let)[’']s|(?:should|could|would|might|must)[’']ve|cannot[’']ve"
    r"|y[’']all|[’']t(?:is|was))(?![\w’'])",
    re.IGNORECASE,
)


def find_contractions(own: OwnParagraph) -> Iterator[Span]:
    """The contractions in the writer's own words; possessives (*the town's*) are none.

    **Source**: common practice.

    >>> text = "It's the town's own: they don't share it."
    >>> [span.of(text) for span in find_contractions(OwnParagraph(text, 0, ()))]
    ["It's", "don't"]
    """
    for found in _CONTRACTED.finditer(own.text):
        yield Span(*found.span()).shifted(own.start)
