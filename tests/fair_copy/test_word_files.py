"""The files for word processors and browsers have real styles, notes, headers and headings."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Callable
from dataclasses import replace
from typing import Any

import docx
import pytest
from lxml import etree, html

from fairhand.fair_copy.document import FairCopy
from fairhand.fair_copy.opendocument import finish_odt
from fairhand.fair_copy.requests import ODT_BASE, docx_request, html_request, md_request, odt_request
from fairhand.fair_copy.web_page import finish_html
from fairhand.fair_copy.word import finish_docx
from fairhand.manuscript.parts import SetBlock
from fairhand.model.inline import Text
from fairhand.press.pandoc import run_pandoc

Maker = Callable[..., FairCopy]
W = "{http://schemas.openxmlformats.org/wordprocessingml/2006/main}"


@pytest.fixture(scope="module")
def chicago_docx(make_paper: Maker) -> bytes:
    """A paper with notes, as DOCX."""
    return finish_docx(run_pandoc(docx_request(make_paper("chicago-notes-17", notes=True))))


@pytest.fixture(scope="module")
def mla_docx(make_paper: Maker) -> bytes:
    """A paper with parenthetical citations, as DOCX."""
    return finish_docx(run_pandoc(docx_request(make_paper("mla-9"))))


def test_header_has_surname_and_page_field(mla_docx: bytes) -> None:
    """MLA's header is the surname and a field that shows the page."""
    header = docx.Document(io.BytesIO(mla_docx)).sections[0].header.paragraphs[0]
    assert header.text.startswith("van der Zee ")
    assert "PAGE" in header._p.xml


def test_paragraphs_have_named_styles(mla_docx: bytes) -> None:
    """Each kind of paragraph has its own style, with its measures in the style."""
    document: Any = docx.Document(io.BytesIO(mla_docx))
    styles = {paragraph.style.name for paragraph in document.paragraphs if paragraph.style}
    assert {"Title", "Heading Line", "Heading 1", "Heading 2", "Block Text", "Bibliography", "Continued"} <= styles
    hanging = document.styles["Bibliography"].paragraph_format
    assert (hanging.left_indent.pt, hanging.first_line_indent.pt, hanging.line_spacing) == (36, -36, 2)
    assert document.styles["List Title"].paragraph_format.page_break_before


def test_page_is_the_layouts(mla_docx: bytes) -> None:
    """Paper and margins are those of the layout."""
    section: Any = docx.Document(io.BytesIO(mla_docx)).sections[0]
    assert (section.page_width.pt, section.page_height.pt) == (612, 792)
    assert {side.pt for side in (section.left_margin, section.right_margin, section.top_margin)} == {72}


def test_notes_are_footnotes(chicago_docx: bytes) -> None:
    """Citations in notes are a word processor's own footnotes, in their own style."""
    with zipfile.ZipFile(io.BytesIO(chicago_docx)) as archive:
        tree: Any = etree.fromstring(archive.read("word/footnotes.xml"))
    notes = ["".join(note.itertext()).strip() for note in tree.iter(f"{W}footnote") if not note.get(f"{W}type")]
    assert notes == ["Ada Lind, Water and Time, 12.", "A note of the writer’s own.", "Lind, 14."]
    assert {style.get(f"{W}val") for style in tree.iter(f"{W}pStyle")} == {"FootnoteText"}


def test_title_page_is_not_numbered(chicago_docx: bytes) -> None:
    """Turabian's title page has no number, and the text after it begins with 1."""
    section = docx.Document(io.BytesIO(chicago_docx)).sections[0]
    assert section.different_first_page_header_footer
    assert 'w:start="0"' in section._sectPr.xml


def test_pictures_are_embedded_and_described(mla_docx: bytes) -> None:
    """A picture stands in the file once, with the words for who cannot see it."""
    with zipfile.ZipFile(io.BytesIO(mla_docx)) as archive:
        assert any(name.startswith("word/media/") for name in archive.namelist())
        assert b"data:image" not in archive.read("word/document.xml")
        assert b'descr="A plan"' in archive.read("word/document.xml")


def test_odt_has_the_same_styles(make_paper: Maker) -> None:
    """The OpenDocument file has the same styles, and every style that its text uses is defined."""
    copy = make_paper("chicago-notes-17", notes=True)
    data = finish_odt(run_pandoc(odt_request(copy, run_pandoc(ODT_BASE))))
    with zipfile.ZipFile(io.BytesIO(data)) as archive:
        assert archive.namelist()[0] == "mimetype"
        styles, content = (etree.fromstring(archive.read(name)) for name in ("styles.xml", "content.xml"))
    text, style = (f"{{urn:oasis:names:tc:opendocument:xmlns:{space}:1.0}}" for space in ("text", "style"))
    defined = {each.get(f"{style}name") for tree in (styles, content) for each in tree.iter(f"{style}style")}
    used = {each.get(f"{text}style-name") for kind in ("p", "h") for each in content.iter(f"{text}{kind}")}
    assert used - {None} <= defined
    assert "Bibliography" in used
    assert len(list(content.iter(f"{text}note"))) == 3


def test_page_in_a_browser_is_plain_and_whole(make_paper: Maker) -> None:
    """The web page has a language, a title, one first heading, no scripts and nothing from elsewhere."""
    page: Any = html.fromstring(run_pandoc(html_request(make_paper("mla-9"))))
    assert page.get("lang") == "en-US"
    assert page.findtext(".//title") == "Keeping the Moon’s Hours"
    assert [heading.text_content() for heading in page.iter("h1")] == ["Keeping the Moon’s Hours"]
    assert not list(page.iter("script", "link"))
    assert all(picture.get("src").startswith("data:") and picture.get("alt") for picture in page.iter("img"))
    entries = page.xpath("//div[contains(@class, 'references')]/p")
    assert [entry.text_content().split(",")[0] for entry in entries] == ["Lind", "Marsh"]


def test_markdown_carries_rendered_citations(make_paper: Maker) -> None:
    """The plain text has its citations rendered, its notes, table and list."""
    text = run_pandoc(md_request(make_paper("chicago-notes-17", notes=True))).decode()
    assert text.startswith("# Keeping the Moon’s Hours")
    assert "[^1]: Ada Lind" in text
    assert "| Year | Tides |" in text
    assert "## Bibliography" in text
    assert "<div" not in text


def _with_deep_headings(copy: FairCopy) -> FairCopy:
    words = ("Method", "Sample", "Place", "The quay")
    headings = [SetBlock("heading", level, (Text(word),)) for level, word in enumerate(words, 1)]
    return replace(copy, body=(*headings, SetBlock("paragraph", inlines=(Text("It lay below the town."),))))


def test_a_heading_that_runs_in_has_its_headings_style(make_paper: Maker) -> None:
    """APA's fourth level opens its paragraph in the character style that is linked with Heading 4, in both files."""
    copy = _with_deep_headings(make_paper("apa-7"))
    document: Any = docx.Document(io.BytesIO(finish_docx(run_pandoc(docx_request(copy)))))
    paragraph = next(each for each in document.paragraphs if each.text == "The quay. It lay below the town.")
    assert paragraph.runs[0].style.name == "Heading 4 Char"
    assert (paragraph.runs[0].style.font.bold, paragraph.runs[0].style.font.name) == (True, "Times New Roman")
    with zipfile.ZipFile(io.BytesIO(finish_odt(run_pandoc(odt_request(copy, run_pandoc(ODT_BASE)))))) as archive:
        assert b'text:style-name="Heading_20_4_20_Char"' in archive.read("content.xml")
        assert b'style:name="Heading_20_4_20_Char"' in archive.read("styles.xml")


def test_the_page_in_a_browser_names_its_parts(make_paper: Maker) -> None:
    """Tables and figures hold their captions, a heading that runs in is a heading, notes stand before the list."""
    page: Any = html.fromstring(finish_html(run_pandoc(html_request(make_paper("apa-7", notes=True)))))
    assert {figure.find(".//figcaption") is not None for figure in page.iter("figure")} == {True}
    assert [cell.get("scope") for cell in page.iter("th")] == ["col", "col"]
    heads = [heading.text_content() for heading in page.iter("h2")]
    assert heads[-2:] == ["Notes", "References"]
    deep: Any = html.fromstring(run_pandoc(html_request(_with_deep_headings(make_paper("apa-7")))))
    assert [heading.text_content() for heading in deep.iter("h5")] == ["The quay."]
