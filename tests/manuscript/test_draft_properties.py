"""What holds of the reading of any text at all."""

from __future__ import annotations

from collections.abc import Iterator

from hypothesis import example, given
from hypothesis import strategies as st

from fairhand.manuscript.draft import quotation_offsets, read_manuscript
from fairhand.manuscript.parts import Block
from fairhand.model.span import Span

PIECES = st.sampled_from(
    [
        *"\"'“”‘’«»„()[]*_`\\<>!#|-/.:;, \n\t\r\0\u2028é𝒜",
        *(
            "\n\n",
            "\r\n",
            "\r\n\r\n",
            "\n> ",
            "> > ",
            "\n\n- ",
            "\n\n1. ",
            "  \n",
            "\\\n",
            "\n    ",
            "# ",
            "## ",
            "---\n",
        ),
        *(
            "[^1]",
            "\n\n[^1]: ",
            "[NB: ",
            "TK",
            "[TK: ",
            "](http://a.org)",
            "![x](y.png)",
            "```\n",
            "&amp;",
            "<b>",
            "<!--",
        ),
        *("-->", "word", "workers’ ", "don’t ", "5'10\" ", "(Okafor 102)", "2019", "Table 1. ", "Figure 2: "),
        "\n\n| a | b |\n|---|---|\n| c \\| d | e |\n",
    ]
)
TEXTS = st.one_of(st.lists(PIECES, max_size=40).map("".join), st.text(max_size=80))


def every_block(blocks: tuple[Block, ...]) -> Iterator[Block]:
    """The blocks and all within them."""
    for block in blocks:
        yield block
        yield from every_block(block.children)


def nested(spans: list[Span]) -> bool:
    """Whether any two of the spans are apart or one within the other."""
    waiting: list[Span] = []
    for span in sorted(spans, key=lambda each: (each.start, -each.end)):
        while waiting and waiting[-1].end <= span.start:
            waiting.pop()
        if waiting and not waiting[-1].contains(span):
            return False
        waiting.append(span)
    return True


@given(TEXTS)
@example("> “a\n\n“b”")
@example("[NB: a\n> [")
def test_any_text_is_some_manuscript(text: str) -> None:
    """Every span of every part lies within the text, and blocks, quotations and brackets nest properly."""
    draft = read_manuscript(text)
    blocks = list(every_block(draft.blocks))
    spans = [block.span for block in blocks] + [block.content for block in blocks]
    spans += [cell for block in blocks for row in block.rows for cell in row]
    spans += [section.span for section in draft.sections]
    spans += [span for paragraph in draft.paragraphs for span in (paragraph.span, *paragraph.sentences)]
    marked = [quotation.span for quotation in draft.quotations] + [bracket.span for bracket in draft.brackets]
    inner = [quotation.inner for quotation in draft.quotations] + [bracket.inner for bracket in draft.brackets]
    spans += marked + inner + [aside.span for aside in draft.asides] + [matter.span for matter in draft.placeholders]
    assert all(0 <= span.start <= span.end <= len(text) for span in spans)
    assert all(block.span.contains(block.content) for block in blocks)
    assert nested([block.span for block in blocks])
    assert nested(marked)
    assert all(outer.contains(within) for outer, within in zip(marked, inner, strict=True))
    assert all(paragraph.span.contains(sentence) for paragraph in draft.paragraphs for sentence in paragraph.sentences)


@given(TEXTS)
def test_blocks_cover_the_text(text: str) -> None:
    """Between the blocks of the draft stand blanks alone, and they come in order."""
    at = 0
    for block in read_manuscript(text).blocks:
        assert block.span.start >= at
        assert not text[at : block.span.start].strip()
        at = block.span.end
    assert not text[at:].strip()


@given(TEXTS)
def test_words_quoted_lead_back_to_the_draft(text: str) -> None:
    """Each character of a quotation's text has its place within the quotation's span."""
    draft = read_manuscript(text)
    for quotation in draft.quotations:
        places = quotation_offsets(draft, quotation)
        assert len(places) == len(quotation.text)
        assert list(places) == sorted(places)
        assert all(quotation.span.start <= place < quotation.span.end for place in places)


@given(TEXTS)
def test_sentences_come_in_order(text: str) -> None:
    """The sentences of a paragraph come one after another, none empty."""
    for paragraph in read_manuscript(text).paragraphs:
        at = paragraph.span.start
        for sentence in paragraph.sentences:
            assert at <= sentence.start < sentence.end
            at = sentence.end
