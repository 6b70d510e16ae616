"""How much of a draft is quotation: paragraphs that are mostly others' words, and the whole.

**Source**: handbooks want quotations few and short, and each led in and taken up (Purdue OWL, *Quoting, Paraphrasing,
and Summarizing*; common practice). The bounds are our own: they only ask.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from fairhand.revision.body import BodyParagraph

MOSTLY = 0.6
"""Share of a paragraph's words from which it is asked about; a block quotation stands apart and does not count."""
MUCH = 0.25
"""Share of all the words of the body, from which it is asked about."""
FEWEST_QUOTED = 30
"""Words of a paragraph that must be quoted for it to be asked about."""


@dataclass(frozen=True, slots=True)
class Quoted:
    """A paragraph that is mostly quotation."""

    paragraph: int
    """Its place in the body."""
    quoted: int
    """Words that are quoted."""
    words: int
    """All its words."""


def count_quoted(paragraph: BodyParagraph, text: str) -> tuple[int, int]:
    """The quoted words of a paragraph, and all its words; its block quotations left out.

    Args:
        paragraph: The paragraph.
        text: The draft.
    """
    run_in = 0
    for sentence in paragraph.sentences:
        whole = len(sentence.span)
        share = sentence.quoted / whole if whole else 0.0
        run_in += round(share * len(sentence.span.of(text).split()))
    return run_in, paragraph.words


def find_quoted(body: Sequence[BodyParagraph], text: str) -> Iterator[Quoted]:
    """Each paragraph that is mostly others' words."""
    for at, paragraph in enumerate(body):
        quoted, words = count_quoted(paragraph, text)
        if quoted >= FEWEST_QUOTED and quoted >= MOSTLY * words:
            yield Quoted(at, quoted, words)


def share_quoted(body: Sequence[BodyParagraph], text: str) -> float:
    """The share of the body's words that are quoted, block quotations included."""
    counts = [count_quoted(paragraph, text) for paragraph in body]
    blocks = sum(paragraph.blocks for paragraph in body)
    words = sum(all_ for _, all_ in counts) + blocks
    return (sum(quoted for quoted, _ in counts) + blocks) / words if words else 0.0
