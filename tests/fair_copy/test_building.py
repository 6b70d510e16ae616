"""Citations go to their places; title, abstract and reference list to theirs."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.fair_copy.building import build_fair_copy, fill, levelled
from fairhand.fair_copy.document import FrontMatter
from fairhand.fair_copy.layout import layout_for
from fairhand.fair_copy.typesetting import to_typst
from fairhand.manuscript.parts import SetBlock
from fairhand.model.inline import Hole, Inline, Note, Styled, Text, plain
from fairhand.press.typst_press import typeset

NOTE = (Note((Text("Lind, 4."),)),)


def paragraph(*inlines: Inline | str) -> SetBlock:
    """A paragraph of these inlines."""
    return SetBlock("paragraph", inlines=tuple(Text(i) if isinstance(i, str) else i for i in inlines))


def heading(level: int, title: str) -> SetBlock:
    """A heading."""
    return SetBlock("heading", level, (Text(title),))


def shown(inlines: tuple[Inline, ...]) -> str:
    """The characters, a note as an asterisk."""
    return "".join("*" if isinstance(inline, Note) else plain((inline,)) for inline in inlines)


@pytest.mark.parametrize(
    ("before", "after", "language", "expected"),
    [
        ("the pond ", " and the mill", "en-US", "the pond* and the mill"),
        ("the pond ", ". Then", "en-US", "the pond.* Then"),
        ("“the pond” ", ". Then", "en-US", "“the pond.”* Then"),
        ("“the pond” ", ", and", "en-US", "“the pond,”* and"),
        ("“the pond?” ", ". Then", "en-US", "“the pond?”* Then"),
        ("“the pond” ", "; then", "en-US", "“the pond”;* then"),
        ("‘the pond’ ", ". Then", "en-GB", "‘the pond’.* Then"),
        ("It was so. ", "", "en-US", "It was so.*"),
        ("the pond ", " “and the mill”", "en-US", "the pond* “and the mill”"),
        ("the pond ", "—or not", "en-US", "the pond*—or not"),
        ("(the pond ", "), and", "en-US", "(the pond),* and"),
    ],
)
def test_note_follows_closing_marks(before: str, after: str, language: str, expected: str) -> None:
    """A note's number follows closing marks, but comes before a dash; American stops go inside quotation marks.

    **Source**: Chicago Manual of Style, 17th ed., 14.26 and 6.9.
    """
    block = paragraph(before, Hole(0), after) if after else paragraph(before, Hole(0))
    assert shown(fill([block], [NOTE], language)[0].inlines) == expected


def test_parenthesis_stays_where_it_stood() -> None:
    """A citation in parentheses changes nothing around it."""
    assert shown(fill([paragraph("“a pond” ", Hole(0), ".")], [(Text("(Lind 4)"),)])[0].inlines) == "“a pond” (Lind 4)."


def test_note_within_a_footnote_joins_it() -> None:
    """A citation in the writer's own footnote is not a note in a note, and its stop is not doubled."""
    block = paragraph("text", Note((Text("See "), Hole(0), Text("."))))
    (note,) = (inline for inline in fill([block], [NOTE])[0].inlines if isinstance(inline, Note))
    assert plain(note.children) == "See Lind, 4."


def test_holes_are_found_in_every_part() -> None:
    """Holes in emphasis, cells, captions and nested blocks are filled."""
    cited = (Text("(Lind 4)"),)
    block = SetBlock(
        "quote",
        children=(paragraph(Styled("italic", (Hole(0),))),),
        rows=(((Hole(0),),),),
        caption=(Hole(0),),
    )
    filled = fill([block], [cited])[0]
    assert plain(filled.caption) == plain(filled.rows[0][0]) == plain(filled.children[0].inlines) == "(Lind 4)"


def test_title_abstract_and_old_list_leave_the_body() -> None:
    """The title and the abstract go to the front; a typed reference list gives way to the rendered one."""
    blocks = [
        heading(1, "Tide Mills"),
        heading(2, "Abstract"),
        paragraph("In short."),
        heading(2, "Ponds"),
        paragraph("Water."),
        heading(2, "Works Cited"),
        paragraph("Lind. Typed by hand."),
        heading(2, "Appendix"),
    ]
    copy = build_fair_copy(blocks, [], [(Text("Lind."),)], FrontMatter(), layout_for("mla-9"))
    assert plain(copy.front.title) == "Tide Mills"
    assert [plain(block.inlines) for block in copy.front.abstract] == ["In short."]
    assert [(block.level, plain(block.inlines)) for block in copy.body] == [
        (1, "Ponds"),
        (0, "Water."),
        (1, "Appendix"),
    ]


def test_typed_list_stays_where_nothing_was_rendered() -> None:
    """Without a rendered list the writer's own is kept."""
    blocks = [heading(1, "Works Cited"), paragraph("Lind.")]
    copy = build_fair_copy(blocks, [], [], FrontMatter(title=(Text("T"),)), layout_for("mla-9"))
    assert any(plain(block.inlines) == "Lind." for block in copy.body)


def test_deep_nesting_keeps_its_words() -> None:
    """Quotations within quotations stop being indented at some depth, and lose nothing."""
    block = paragraph("deep")
    for _ in range(20):
        block = SetBlock("quote", children=(block,))
    copy = build_fair_copy([block], [], [], FrontMatter(), layout_for("mla-9"))
    done = typeset(to_typst(copy))
    assert (done.pages, done.problems) == (1, ())


@given(st.lists(st.integers(1, 6), max_size=12))
def test_levels_never_skip_downwards(levels: list[int]) -> None:
    """Headings begin at level 1 and go down one step at a time."""
    before = 0
    for block in levelled([heading(level, "x") for level in levels]):
        assert 1 <= block.level <= before + 1
        before = block.level


PIECES = st.one_of(st.builds(Text, st.text(max_size=8)), st.builds(Hole, st.integers(0, 3)))


@given(st.lists(PIECES, max_size=8), st.booleans())
def test_no_word_is_lost(inlines: list[Inline], as_note: bool) -> None:
    """Filling keeps every letter of the draft, in order."""
    filling = NOTE if as_note else (Text("()"),)
    kept = plain(fill([SetBlock("paragraph", inlines=tuple(inlines))], [filling] * 4)[0].inlines)
    letters = [letter for letter in plain(tuple(inlines)) if letter.isalnum()]
    assert [letter for letter in kept if letter.isalnum()] == letters


def test_citations_in_cells_and_captions_are_rendered() -> None:
    """A hole in a table's cell or in a caption is filled like any other."""
    table = SetBlock("table", rows=(((Text("40 "), Hole(0)),),), caption=(Text("Weights "), Hole(1)))
    (filled,) = fill([table], [(Text("(Lind 4)"),), (Text("(Moss 9)"),)])
    assert plain(filled.rows[0][0]) == "40 (Lind 4)"
    assert plain(filled.caption) == "Weights (Moss 9)"
