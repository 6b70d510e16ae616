"""How percentages are written: with the sign, or with the word."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from fairhand.copyedit.own_prose import OwnParagraph
from fairhand.model.span import Span

_WORD = re.compile(r"(?<![\w.,])\d+(?:[.,]\d+)* (?:percent|per cent)\b")
_SIGN = re.compile(r"(?<![\w.,])\d+(?:[.,]\d+)* ?%")


@dataclass(frozen=True, slots=True)
class Percentages:
    """The places of each form in a paper."""

    by_word: tuple[Span, ...]
    by_sign: tuple[Span, ...]


def find_percentages(paragraphs: Sequence[OwnParagraph]) -> Percentages:
    """The percentages with a numeral, in the writer's own prose; one that opens a sentence needs words.

    >>> own = OwnParagraph("It fell by 12 percent, then by 9%.", 0, ())
    >>> len(find_percentages([own]).by_word), len(find_percentages([own]).by_sign)
    (1, 1)
    """

    def places(pattern: re.Pattern[str]) -> tuple[Span, ...]:
        return tuple(
            Span(*found.span()).shifted(own.start)
            for own in paragraphs
            for found in pattern.finditer(own.text)
            if all(found.start() != sentence.start for sentence in own.sentences)
        )

    return Percentages(places(_WORD), places(_SIGN))
