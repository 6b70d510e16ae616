"""A capital that seasons and fields of study do not have: *in the Spring of 1920*, *a degree in Psychology*.

**Source**: MLA 9, 2.95–2.99; APA 7, 6.13–6.21; Chicago 17, 8.28–8.29, 8.88 (from memory). Other common nouns are let
be: whether *State* or *Court* is a name in a paper cannot be told.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from fairhand.copyedit.own_prose import OwnParagraph
from fairhand.model.span import Span

_SEASON = re.compile(
    r"(?<=[a-z,] )(?:in|during|by|until|since|last|next|every|each|early|late|this|that) (?:the )?"
    r"(?:early |late )?(Spring|Summer|Autumn|Winter)(?=[,.;)]|\s+(?:of\s+\d|and\b|when\b|months?\b|they\b|he\b|she\b))"
)
_FIELD = re.compile(
    r"(?<=[a-z] )(?:in|of|studies|studied|study|teaches|taught) (Biology|Chemistry|Physics|Psychology|Sociology"
    r"|Philosophy|Mathematics|Economics|Anthropology|Linguistics|Geology|Archaeology|Theology)(?=[,.;)]|\s+(?:and|to|is|was"
    r"|as|that|which|at|for|has|can)\b)(?!\s+and\s+[A-Z])"
)
_TITLED = re.compile(
    r"(?<=[a-z,] )[A-Z][\w’'-]*(?:\s+[a-z]+)?\s\Z|(?:Professor|Department|School|Faculty|Institute)\s\Z"
)
"""A name that the word may belong to: *Department of Physics*."""


def find_needless_capitals(own: OwnParagraph) -> Iterator[tuple[Span, str]]:
    """The seasons and fields of study that have a capital within a sentence: the place, and the word without it.

    >>> own = OwnParagraph("They sailed in the Spring of 1920. She is Professor of Physics.", 0, ())
    >>> [word for _, word in find_needless_capitals(own)]
    ['spring']
    """
    for pattern in (_SEASON, _FIELD):
        for found in pattern.finditer(own.text):
            if not _TITLED.search(own.text[max(0, found.start() - 24) : found.start()]):
                yield Span(*found.span(1)).shifted(own.start), found[1].lower()
