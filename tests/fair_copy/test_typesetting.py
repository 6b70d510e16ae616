"""Whatever a writer wrote comes out on the page, and nothing of it runs."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable, Sequence
from dataclasses import replace

import pypdfium2
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fairhand.fair_copy.document import FairCopy, FrontMatter
from fairhand.fair_copy.layout import layout_for
from fairhand.fair_copy.typesetting import string, to_typst
from fairhand.manuscript.parts import SetBlock
from fairhand.model.inline import Break, Code, Image, Inline, Link, Note, Styled, Text
from fairhand.press.typst_press import typeset

Maker = Callable[..., FairCopy]

HOSTILE = (
    '#read("/etc/passwd")',
    '"] #panic("out") #[',
    "\\u{41} \\n \\",
    "$ x^2 $ @ref <label> *bold* _it_ `raw` ~ // gone /* gone */ = head",
    "#set page(width: 1pt)",
    "]]]}}})))",
    "- a\n+ b\n/ c: d",
    "a\x00b\x07c\x7fd\ufeffe\u202ef\ud800g",
)


def bare_copy(*inlines: Inline) -> FairCopy:
    """A paper of one paragraph, without heading lines."""
    layout = replace(layout_for("mla-9"), first_page="none", running_head="none", page_number="none")
    return FairCopy(FrontMatter(), (SetBlock("paragraph", inlines=inlines),), (), layout)


def read_back(pdf: bytes) -> str:
    """The text of a PDF."""
    with pypdfium2.PdfDocument(pdf) as document:
        return "\n".join(page.get_textpage().get_text_range() for page in document)


def squeezed(text: str) -> str:
    """The text without white space and in one form of each character."""
    return re.sub(r"\s", "", unicodedata.normalize("NFKC", text)).replace("\ufffe", "")


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_words_are_only_words(text: str) -> None:
    """Text in the engine's own language, or with characters that print nothing, is set as it stands."""
    shown = re.sub("[\x00-\x1f\x7f\ufeff\u202e\ud800]", "", text)
    assert squeezed(shown) in squeezed(read_back(typeset(to_typst(bare_copy(Text(text)))).pdf))


def test_hostile_words_in_every_place() -> None:
    """The same holds of titles, names, captions, cells, code, links and pictures' descriptions."""
    for text in HOSTILE:
        words = (Text(text),)
        body = (
            SetBlock("heading", 1, words),
            SetBlock("table", rows=((words, words), (words,)), caption=words),
            SetBlock("figure", inlines=(Image(text, text),), caption=words),
            SetBlock("code", code=text),
            SetBlock("list", 0, children=(SetBlock("item", inlines=words),)),
            SetBlock("quote", children=(SetBlock("paragraph", inlines=(Text(text), Break(hard=True), Text(text))),)),
            SetBlock("paragraph", inlines=(Link(words, f"https://example.org/{text}"), Code(text), Note(words))),
        )
        front = FrontMatter(words, text, text, text, text, text, (SetBlock("paragraph", inlines=words),), text)
        for style in ("mla-9", "apa-7"):
            layout = replace(layout_for(style), running_head="title")
            assert typeset(to_typst(FairCopy(front, body, (words,), layout))).pages > 1


LETTERS = st.text(st.characters(codec="latin-1", categories=("L", "N", "P", "S", "Zs")), max_size=20)
INLINES = st.recursive(
    st.one_of(st.builds(Text, LETTERS), st.builds(Code, LETTERS), st.builds(Break, st.booleans())),
    lambda inner: st.one_of(
        st.builds(Styled, st.sampled_from(["italic", "bold", "upright"]), st.tuples(inner, inner)),
        st.builds(Link, st.tuples(inner), st.text(max_size=10)),
    ),
    max_leaves=6,
)


def letters_of(inlines: Sequence[Inline]) -> str:
    """The characters of set text."""
    return "".join(
        inline.text if isinstance(inline, Text | Code) else letters_of(getattr(inline, "children", ()))
        for inline in inlines
    )


@settings(max_examples=60)
@given(st.lists(INLINES, max_size=5))
def test_printed_text_reads_back(inlines: list[Inline]) -> None:
    """What is set is read back from the PDF, character for character but for spaces."""
    done = typeset(to_typst(bare_copy(*inlines)))
    assert squeezed(read_back(done.pdf)) == squeezed(letters_of(inlines).replace("\xad", ""))


@given(st.text())
def test_any_text_is_one_literal(text: str) -> None:
    """No text ends its own literal."""
    assert re.fullmatch(r'"(?:[^"\\\n]|\\["\\])*"', string(text))


@pytest.mark.parametrize("style", ["mla-9", "apa-7", "chicago-notes-17", "harvard", "ieee", "any.csl"])
def test_whole_paper_reads_back(make_paper: Maker, style: str) -> None:
    """Every word of a whole paper is on its pages, in order within each paragraph."""
    copy = make_paper(style, notes="notes" in style)
    text = squeezed(read_back(typeset(to_typst(copy)).pdf))
    for block in copy.body:
        if block.kind == "paragraph" and not any(isinstance(inline, Note) for inline in block.inlines):
            assert squeezed(letters_of(block.inlines)) in text
    for entry in copy.references:
        assert squeezed(letters_of(entry)) in text
    assert "598" in text
    assert "grind(tide)" in text


def test_parts_are_marked(make_paper: Maker) -> None:
    """Start and end of the body, and of each part that may be left uncounted, have their places."""
    places = typeset(to_typst(make_paper("apa-7"))).places
    for part in ("body", "references", "heading 1", "quote 1", "figure 1", "note 0"):
        start, end = places[f"{part} start"], places[f"{part} end"]
        assert start <= end
    assert "figure 2 start" not in places


def test_one_work_is_a_work_cited(make_paper: Maker) -> None:
    """MLA's list of a single work has a singular title."""
    copy = make_paper("mla-9")
    text = read_back(typeset(to_typst(replace(copy, references=copy.references[:1]))).pdf)
    assert "Work Cited" in text
    assert "Works Cited" not in text
