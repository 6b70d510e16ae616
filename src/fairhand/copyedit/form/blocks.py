"""Quotations that are long enough for a block, and blocks that are not."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from fairhand.language.words import words
from fairhand.manuscript.parts import Manuscript, Quotation

LETTER_EM = 0.41
"""The mean width of a letter of English prose in a face like Times, blanks included, in ems.

Reckoned from the face's own widths, .398, and a little more, since a line ends before the word that does not fit.
"""


@dataclass(frozen=True, slots=True)
class Measure:
    """From what length on the style sets a quotation as a block."""

    from_words: int | None
    from_lines: int | None
    letters_a_line: float
    """Letters that a line of the printed page holds, about."""


@dataclass(frozen=True, slots=True)
class Length:
    """A quotation on the wrong side of the measure."""

    quotation: Quotation
    words: int
    lines: float
    """Printed lines, about."""


def find_long_run_in(manuscript: Manuscript, measure: Measure) -> Iterator[Length]:
    """The prose quotations in running text that reach the measure; where it is in lines, by half a line and more.

    **Source**: APA 7, 8.27; MLA 9, 6.35; Chicago 17, 13.10; Turabian 9, 25.2.2 (the last three from memory).

    >>> from fairhand.manuscript.draft import read_manuscript
    >>> draft = read_manuscript("It says “" + "so it is " * 14 + "now” there.")
    >>> [one.words for one in find_long_run_in(draft, Measure(40, None, 90))]
    [43]
    """
    for length in _lengths(manuscript, "run-in", measure):
        paragraph = manuscript.paragraphs[length.quotation.paragraph]
        if paragraph.in_note or paragraph.in_quote or paragraph.in_table or not length.quotation.closed:
            continue
        if measure.from_words is not None:
            if length.words >= measure.from_words:
                yield length
        elif measure.from_lines is not None and length.lines >= measure.from_lines - 1 + 0.5:
            yield length


def find_short_blocks(manuscript: Manuscript, measure: Measure) -> Iterator[Length]:
    r"""The prose block quotations of one paragraph that stay well under the measure, mottoes let be.

    >>> from fairhand.manuscript.draft import read_manuscript
    >>> draft = read_manuscript("It says:\n\n> so it is\n\nand more.")
    >>> [one.words for one in find_short_blocks(draft, Measure(40, None, 90))]
    [3]
    """
    first = next((p.index for p in manuscript.paragraphs if not p.in_quote), 0)
    for length in _lengths(manuscript, "block", measure):
        if length.quotation.paragraph < first or "\n\n" in length.quotation.inner.of(manuscript.text):
            continue
        if measure.from_words is not None:
            if length.words < measure.from_words:
                yield length
        elif measure.from_lines is not None and length.lines < measure.from_lines - 1 - 0.5:
            yield length


def _lengths(manuscript: Manuscript, kind: str, measure: Measure) -> Iterator[Length]:
    for quotation in manuscript.quotations:
        if quotation.kind == kind and quotation.within is None and not quotation.verse:
            yield Length(quotation, len(words(quotation.text)), len(quotation.text) / measure.letters_a_line)
