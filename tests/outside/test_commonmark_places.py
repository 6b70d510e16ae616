"""Where the blocks and marks of CommonMark stand, to the character.

Source: CommonMark 0.31.2, the examples of the sections named beside each check, and GitHub's tables; written from
memory, since the specification's own list of examples does not come with the library. What is checked is the place and
the words of each block, not its rendering.
"""

from __future__ import annotations

import pytest

from fairhand.manuscript.draft import read_manuscript
from fairhand.manuscript.parts import Block

Told = tuple[str, str]
CASES: list[tuple[str, str, list[Told]]] = [
    # Section 4.2, ATX headings.
    ("# foo", "heading", [("heading", "foo")]),
    ("####### foo", "seven marks", [("paragraph", "####### foo")]),
    ("#5 bolt", "no blank", [("paragraph", "#5 bolt")]),
    ("## foo ##  ", "closing marks", [("heading", "foo")]),
    ("  ## foo", "indented", [("heading", "foo")]),
    ("#", "empty", [("heading", "")]),
    ("# foo\n\nbar\n# baz", "between paragraphs", [("heading", "foo"), ("paragraph", "bar"), ("heading", "baz")]),
    # Section 4.3, setext headings.
    ("Foo *bar*\n=========", "underlined", [("heading", "Foo *bar*")]),
    ("Foo\nbar\n---", "two lines", [("heading", "Foo\nbar")]),
    # Section 4.1, thematic breaks.
    ("Foo\n***\nbar", "rule between", [("paragraph", "Foo"), ("rule", "***"), ("paragraph", "bar")]),
    # Section 4.5, fenced code.
    ("```\n<\n >\n```", "fence", [("code", "<\n >")]),
    ("~~~ ruby\ndef f\n~~~", "language", [("code", "def f")]),
    ("```\naaa", "not closed", [("code", "aaa")]),
    # Section 4.7, link definitions.
    ("[foo]: /url 'title'\n\n[foo]", "definition", [("definition", "[foo]: /url 'title'"), ("paragraph", "[foo]")]),
    # Section 4.8, paragraphs.
    ("  aaa\n bbb", "indented lines", [("paragraph", "aaa\n bbb")]),
    ("aaa\n\n\nbbb", "blank lines", [("paragraph", "aaa"), ("paragraph", "bbb")]),
    ("aaa     \nbbb     ", "blanks at line ends", [("paragraph", "aaa     \nbbb")]),
    # Section 5.1, block quotations.
    (
        "> # Foo\n> bar\n> baz",
        "quote",
        [("quote", "# Foo\n> bar\n> baz"), ("heading", "Foo"), ("paragraph", "bar\n> baz")],
    ),
    (">bar\nbaz\n> foo", "lazy", [("quote", "bar\nbaz\n> foo"), ("paragraph", "bar\nbaz\n> foo")]),
    ("> bar\n\nbaz", "ended", [("quote", "bar"), ("paragraph", "bar"), ("paragraph", "baz")]),
    (
        ">>> foo\n> bar",
        "nested lazy",
        [("quote", ">> foo\n> bar"), ("quote", "> foo\n> bar"), ("quote", "foo\n> bar"), ("paragraph", "foo\n> bar")],
    ),
    (">", "empty", [("quote", "")]),
    # Sections 5.2 and 5.3, lists.
    (
        "- foo\n- bar",
        "list",
        [("list", "- foo\n- bar"), ("item", "foo"), ("paragraph", "foo"), ("item", "bar"), ("paragraph", "bar")],
    ),
    (
        "1.  A\n\n    B",
        "item of two",
        [("list", "1.  A\n\n    B"), ("item", "A\n\n    B"), ("paragraph", "A"), ("paragraph", "B")],
    ),
    (
        "   > > 1.  one\n>>\n>>     two",
        "list in quotes",
        [
            ("quote", "> 1.  one\n>>\n>>     two"),
            ("quote", "1.  one\n>>\n>>     two"),
            ("list", "1.  one\n>>\n>>     two"),
            ("item", "one\n>>\n>>     two"),
            ("paragraph", "one"),
            ("paragraph", "two"),
        ],
    ),
    ("The number is\n14.  windows", "no list", [("paragraph", "The number is\n14.  windows")]),
    # GitHub's tables.
    (
        "| foo | bar |\n| --- | --- |\n| baz | bim |",
        "table",
        [("table", "| foo | bar |\n| --- | --- |\n| baz | bim |")],
    ),
    (
        "| f\\|oo |\n| --- |\n> bar",
        "table then quote",
        [("table", "| f\\|oo |\n| --- |"), ("quote", "bar"), ("paragraph", "bar")],
    ),
    # Our own deviation: an indented line is a paragraph.
    ("    indented", "no indented code", [("paragraph", "indented")]),
]


def told(blocks: tuple[Block, ...], text: str) -> list[Told]:
    """Each block's kind and words, what is within it after it."""
    out: list[Told] = []
    for block in blocks:
        out.append((block.kind, block.content.of(text)))
        out += told(block.children, text)
    return out


@pytest.mark.parametrize(
    ("text", "named", "expected"), CASES, ids=lambda value: value if isinstance(value, str) else ""
)
def test_blocks_stand_where_the_specification_has_them(text: str, named: str, expected: list[Told]) -> None:
    """Each block is of the specification's kind and holds exactly its characters, whatever ends the lines."""
    del named
    assert told(read_manuscript(text).blocks, text) == expected
    windows = text.replace("\n", "\r\n")
    assert told(read_manuscript(windows).blocks, windows) == [
        (kind, words.replace("\n", "\r\n")) for kind, words in expected
    ]


@pytest.mark.parametrize(
    ("text", "quoted"),
    [
        # Section 2.4, backslash escapes; 6.1, code spans; 6.2, emphasis; 6.3, links; 6.6, raw HTML; 2.5, entities.
        ('\\*a\\* "b\\"', "b"),
        ('`"not` "quoted`"', "quoted`"),
        ('"*foo bar*"', "foo bar"),
        ('"a * foo bar*"', "a * foo bar*"),
        ('"**foo**bar"', "foobar"),
        ('"foo_bar_baz"', "foo_bar_baz"),
        ('"foo-_(bar)_"', "foo-(bar)"),
        ('"***strong emph***"', "strong emph"),
        ('"[link](/uri "title")"', "link"),
        ('"<https://foo.bar/baz>"', "https://foo.bar/baz"),
        ('"a <em>b</em> c"', "a b c"),
        ('"foo&copy;bar"', "foo©bar"),
        ('"foo  \nbaz"', "foo / baz"),
        ('"foo\nbaz"', "foo baz"),
    ],
)
def test_quoted_words_read_as_the_specification_renders_them(text: str, quoted: str) -> None:
    """Inline markup goes, its words stay, and marks within code, links and tags quote nothing."""
    assert [quotation.text for quotation in read_manuscript(text).quotations] == [quoted]
