"""The annotated bibliography: the writer's notes under each entry, and nothing else."""

from __future__ import annotations

import io
from typing import Any

import docx
import pypdfium2 as pdfium
import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.fair_copy.annotated import annotate, build_annotated
from fairhand.fair_copy.document import FairCopy, FrontMatter
from fairhand.fair_copy.layout import layout_for
from fairhand.fair_copy.requests import docx_request, html_request
from fairhand.fair_copy.typesetting import to_typst
from fairhand.fair_copy.word import finish_docx
from fairhand.model.inline import Text, plain
from fairhand.model.note import Note
from fairhand.press.pandoc import run_pandoc
from fairhand.press.typst_press import typeset

ENTRIES = (
    ("lind", (Text("Lind, Ada. A Treatise on the Tides of the Estuary, and on All That They Carry. Dock, 2019."),)),
    ("marsh", (Text("Marsh, Omar. Moorings. Dock, 2021."),)),
)
NOTES = (
    Note("t", "lind", "9", remark="Is that so?", kind="thought"),
    Note("q", "lind", "12", quotation='the "ebb" scours.', remark="Her best line.", kind="quotation"),
    Note("s", "lind", "7-8", remark="Ebbs scour; [NB: ask] floods silt.\n\nMore on that.", kind="summary"),
)


def set_in(style: str) -> FairCopy:
    """The bibliography in a style."""
    front = FrontMatter(title=(Text("Tides"),), author="Ruth Voss", keywords="tide")
    return build_annotated(ENTRIES, NOTES, front, layout_for(style), bare_pages=style == "mla-9")


def lines_of(style: str) -> list[str]:
    """The paragraphs under the first entry."""
    return [plain(block.inlines) for block in set_in(style).annotations[0]]


def test_what_it_says_then_its_words_then_the_thought() -> None:
    """Each with its page as the style cites it; what the writer left for themselves is not printed."""
    assert lines_of("apa-7") == [
        "Ebbs scour; floods silt.",
        "More on that (pp. 7–8).",
        "“the ‘ebb’ scours” (p. 12). Her best line.",
        "Is that so (p. 9)?",
    ]
    assert lines_of("mla-9")[1:3] == ["More on that (7-8).", "“the ‘ebb’ scours” (12). Her best line."]


@pytest.mark.parametrize(("style", "indent"), [("mla-9", 72), ("apa-7", 36)])
def test_a_word_processor_gets_styles_for_it(style: str, indent: int) -> None:
    """The entry hangs; the annotation stands under it, its second paragraph indented once more."""
    document: Any = docx.Document(io.BytesIO(finish_docx(run_pandoc(docx_request(set_in(style))))))
    named = [(one.style.name, one.text) for one in document.paragraphs]
    assert [name for name, _ in named][-6:-1] == ["Bibliography", "Annotation", *["Annotation Continued"] * 3]
    assert named[-1][0] == "Bibliography"
    assert named[-1][1].startswith("Marsh, Omar")
    assert document.styles["Annotation"].paragraph_format.left_indent.pt == indent
    assert document.styles["Annotation Continued"].paragraph_format.first_line_indent.pt == 36
    assert "Tides" not in [text for _, text in named]


def test_the_page_has_it_where_the_style_wants_it() -> None:
    """In the PDF the annotation begins further in than its entry, and the entry's second line between them."""
    page = pdfium.PdfDocument(typeset(to_typst(set_in("mla-9"))).pdf)[0].get_textpage()
    found = {words: page.search(words).get_next() for words in ("Lind, Ada", "Carry", "Ebbs scour", "More on")}
    left = {words: round(page.get_charbox(place[0])[0]) for words, place in found.items() if place}
    entry, hung = left["Lind, Ada"], round(page.get_charbox(page.search("Dock, 2019").get_next()[0])[0])
    assert hung >= entry + 36
    assert (left["Ebbs scour"] - entry, left["More on"] - entry) == (72, 108)
    shown = page.get_text_range()
    assert shown.count("Annotated Bibliography") == 1
    assert "Keywords" not in shown


def test_a_browser_gets_it_too() -> None:
    """Each part a paragraph of its own class, after its entry."""
    page = run_pandoc(html_request(set_in("apa-7"))).decode()
    assert page.index("Lind, Ada") < page.index('<div class="annotation">') < page.index("Marsh, Omar")
    assert page.count('<div class="annotation-continued">') == 3


def test_no_notes_leave_the_list_as_it_is() -> None:
    """Whoever has none stands alone."""
    copy = build_annotated(ENTRIES, (), FrontMatter(), layout_for("apa-7"))
    assert copy.annotations == ((), ())
    assert typeset(to_typst(copy)).pages == 2


@given(st.lists(st.builds(Note, st.just("n"), st.just("lind"), st.text(), st.text(), remark=st.text())))
def test_no_note_breaks_it(notes: list[Note]) -> None:
    """Whatever was written, each paragraph has words."""
    assert all(plain(block.inlines).strip() for block in annotate(notes))
