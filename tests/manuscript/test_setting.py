"""The draft as set text."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.manuscript.draft import read_manuscript
from fairhand.manuscript.parts import SetBlock
from fairhand.manuscript.setting import set_blocks
from fairhand.model.inline import Break, Code, Hole, Image, Inline, Link, Note, Styled, Text, plain
from fairhand.model.span import Span


def inlines(text: str, *holes: str, gone: tuple[str, ...] = (), curl: bool = False) -> tuple[Inline, ...]:
    """The inlines of the first block, with holes and gone pieces named by their words."""
    return blocks(text, *holes, gone=gone, curl=curl)[0].inlines


def blocks(text: str, *holes: str, gone: tuple[str, ...] = (), curl: bool = False) -> tuple[SetBlock, ...]:
    """The blocks of ``text``, with holes and gone pieces named by their words."""
    spans = [[Span(text.index(words), text.index(words) + len(words)) for words in named] for named in (holes, gone)]
    return set_blocks(read_manuscript(text), *spans, curl=curl)


def every_inline(pieces: Iterable[Inline]) -> Iterator[Inline]:
    """The inlines and all within them."""
    for piece in pieces:
        yield piece
        if isinstance(piece, Styled | Link | Note):
            yield from every_inline(piece.children)


def every_set(each: Iterable[SetBlock]) -> Iterator[Inline]:
    """All the inlines of the blocks."""
    for block in each:
        yield from every_inline(
            (*block.inlines, *block.caption, *(piece for row in block.rows for cell in row for piece in cell))
        )
        yield from every_set(block.children)


def test_emphasis_code_links_and_pictures_are_read() -> None:
    """Each kind of inline markup becomes its value."""
    assert inlines("a *b **c*** `d` [e](http://f.org) ![g](h.png 'i')") == (
        Text("a "),
        Styled("italic", (Text("b "), Styled("bold", (Text("c"),)))),
        Text(" "),
        Code("d"),
        Text(" "),
        Link((Text("e"),), "http://f.org"),
        Text(" "),
        Image("g", "h.png", "i"),
    )


def test_tags_of_a_converted_draft_are_read() -> None:
    """Sub- and superscripts, as a converter writes them, are kept, and other tags go."""
    assert inlines("H<sub>2</sub>O <u>x</u><br>y <i>z") == (
        Text("H"),
        Styled("subscript", (Text("2"),)),
        Text("O x"),
        Break(hard=True),
        Text("y "),
        Styled("italic", (Text("z"),)),
    )


def test_a_hole_stands_where_its_span_stood() -> None:
    """Also within emphasis, in a cell, in a caption and in a note; the markup around it is read as before."""
    assert inlines("*so (Orr 3).* And *title.*(Orr 4)", "(Orr 3)", "(Orr 4)") == (
        Styled("italic", (Text("so "), Hole(0), Text("."))),
        Text(" And "),
        Styled("italic", (Text("title."),)),
        Hole(1),
    )
    table = blocks("Table 1. From (Orr 1)\n\n| a (Orr 2) |\n|---|\n", "(Orr 1)", "(Orr 2)")[0]
    assert table.caption == (Text("Table 1. From "), Hole(0))
    assert table.rows[0][0] == (Text("a "), Hole(1))
    assert inlines("a[^1]\n\n[^1]: See (Orr 3).", "(Orr 3)") == (Text("a"), Note((Text("See "), Hole(0), Text("."))))


def test_a_citation_after_a_bracket_is_no_link() -> None:
    """Neither as a hole nor as it stands."""
    assert inlines("[his](102) b", "(102)") == (Text("[his]"), Hole(0), Text(" b"))
    assert plain(inlines("[his](102) b")) == "[his](102) b"


@pytest.mark.parametrize(
    ("text", "gone", "left"),
    [
        ("One [NB: x] two.", "[NB: x]", "One two."),
        ("One [NB: x].", "[NB: x]", "One."),
        ("[NB: x] One.", "[NB: x]", "One."),
        ("One **[NB: x]** two.", "[NB: x]", "One two."),
        ("One\n[NB: x]\ntwo.", "[NB: x]", "One two."),
        ("[NB: x](http://a.org) two.", "[NB: x]", "(http://a.org) two."),
        ("“a [NB: x] b”", "[NB: x]", "“a b”"),
    ],
)
def test_what_is_gone_takes_a_blank_with_it(text: str, gone: str, left: str) -> None:
    """No doubled blank, no blank before a stop and no empty emphasis is left behind."""
    assert plain(inlines(text, gone=(gone,))) == left


def test_a_paragraph_that_is_all_aside_is_not_set() -> None:
    """Nothing of it is left, not even an empty line; comments and definitions are never set either."""
    assert [
        plain(block.inlines) for block in blocks("A\n\n[NB: x]\n\n<!-- c -->\n\n[d]: http://e.org", gone=("[NB: x]",))
    ] == ["A"]


def test_notes_stand_at_their_numbers() -> None:
    """A note's paragraphs are parted by line ends; a note that names itself, or none, does no harm."""
    assert inlines("a[^n] b[^none]\n\n[^n]: One[^n].\n\n    *Two*.") == (
        Text("a"),
        Note((Text("One."), Break(hard=True), Styled("italic", (Text("Two"),)), Text("."))),
        Text(" b[^none]"),
    )


def test_blocks_keep_their_shape() -> None:
    """Headings with levels, numbered lists, block quotations with their lines, code as it stands, and rules."""
    heading, numbered, quote, code, rule = (
        blocks("## H\n\n1. a\n   - b\n\n> v  \n> w\n\n> ```\n> x\n> ```\n\n***")[:5] + blocks("***")[:0]
    )
    assert (heading.kind, heading.level) == ("heading", 2)
    assert (numbered.level, numbered.children[0].children[1].level) == (1, 0)
    assert quote.children[0].inlines == (Text("v"), Break(hard=True), Text("w"))
    assert code.children[0].code == "x\n"
    assert rule.kind == "rule"


def test_a_table_takes_its_caption_of_two_paragraphs() -> None:
    """The number on one line and the title on the next are one caption, and no paragraphs of their own."""
    (table,) = blocks("**Table 2**\n\n*Hours by season*\n\n| a |\n|---|\n| b |")
    assert table.caption == (
        Styled("bold", (Text("Table 2"),)),
        Break(hard=True),
        Styled("italic", (Text("Hours by season"),)),
    )


def test_a_paragraph_about_a_table_is_no_caption() -> None:
    """A sentence that begins with the table's number stays in the text."""
    assert [block.kind for block in blocks("Table 2 shows the hours.\n\n| a |\n|---|\n")] == ["paragraph", "table"]


@pytest.mark.parametrize(
    ("typed", "set_as"),
    [
        ('"It\'s," he said, "\'so\'."', "“It’s,” he said, “‘so’.”"),
        ("'Tis the '90s--or 1990--99.", "’Tis the ’90s—or 1990–99."),
        ("5'10\" and 12\" long", "5'10\" and 12\" long"),
        ('*"a"* `"b"` --- c', '“a” "b" — c'),
        ("“done” already’s", "“done” already’s"),
    ],
)  # fmt: skip
def test_typewriter_marks_are_curled_when_asked(typed: str, set_as: str) -> None:
    """Pairs, apostrophes and dashes are set as printers do; measures and code stay; unasked, nothing changes."""
    assert plain(inlines(typed, curl=True)) == set_as
    assert plain(inlines(typed)) == typed.replace("*", "").replace("`", "")


WORDS = st.sampled_from(
    [
        "a",
        " ",
        "*",
        "_",
        "[",
        "]",
        "(Orr 3)",
        "`",
        "\n",
        "\n\n",
        "> ",
        "- ",
        "[NB: x]",
        '"',
        "[^1]",
        "\n\n[^1]: ",
        "|",
        "<i>",
    ]
)


@given(st.lists(WORDS, max_size=30).map("".join), st.booleans())
def test_any_draft_can_be_set(text: str, curl: bool) -> None:
    """No text is too odd to be set; no remark is left in it, and no mark of our own."""
    draft = read_manuscript(text)
    holes = [Span(at, at + 7) for at in range(len(text)) if text.startswith("(Orr 3)", at)]
    gone = [aside.span for aside in draft.asides]
    pieces = list(every_set(set_blocks(draft, holes, gone, curl=curl)))
    assert all(0 <= piece.index < len(holes) for piece in pieces if isinstance(piece, Hole))
    words = "".join(piece.text for piece in pieces if isinstance(piece, Text | Code))
    assert "⸨" not in words
    assert "[NB: x]" not in words or "`" in text
