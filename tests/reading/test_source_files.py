"""Every kind of source file gives its text."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.errors import FairhandError
from fairhand.model.entry import Entry
from fairhand.model.source import SourceText
from fairhand.reading.sheet import read_sheet_text
from fairhand.reading.source import read_source

Make = Callable[..., bytes]


def read(data: bytes, file: str, entry: Entry | None = None) -> SourceText:
    """The source, where nothing is wrong with it."""
    source, problems = read_source(data, file, entry)
    assert not problems
    return source


def refusal(reader: Callable[..., object], data: bytes, file: str) -> str:
    """The one line with which a file is refused, or nothing where it is read."""
    try:
        reader(data, file, None) if reader is read_source else reader(data, file)
    except FairhandError as error:
        line = str(error)
    else:
        return ""
    assert line.startswith(file)
    assert "\n" not in line
    return line


def test_form_feeds_part_the_pages_of_a_text() -> None:
    """A text's pages end at its form feeds; one at the end begins no page."""
    source = read(b"The quay was sold.\fNobody bought it.\f\n", "sources/quay.txt")
    assert [page.text for page in source.pages] == ["The quay was sold.", "Nobody bought it."]
    assert source.id == "quay"


def test_a_text_without_form_feeds_has_no_pages() -> None:
    """One unparted text has no page labels, unless its entry says that it is one page."""
    assert not read(b"The quay was sold.", "quay.txt").paged
    article = read(b"The quay was sold.", "quay.txt", Entry("q", "article-newspaper", page="B2"))
    assert [page.label for page in article.pages] == ["B2"]


def test_words_broken_at_line_ends_are_whole() -> None:
    """A word broken by a line's end is joined; one hyphenated elsewhere keeps its hyphen."""
    source = read(b"The mid-stream moor-\nings were known as the mid-\nstream moorings.", "quay.txt")
    assert source.pages[0].text == "The mid-stream moorings were known as the mid-stream moorings."


def test_only_the_visible_text_of_a_web_page_is_read() -> None:
    """Scripts, styles and hidden parts are left out; headings part the text; entities are characters."""
    page = (
        "<!DOCTYPE html><html><head><title>T</title><style>p {}</style></head><body><nav>Home</nav><!-- no --> "
        "<h1>Quays</h1><p>The <em>old</em> quay&rsquo;s\n   wall.</p><script>x()</script><h2>Piers</h2><p hidden>no</p>"
        "<p>Two<br>piers.</p><table><tr><th>Year</th><td>1911</td></tr></table></body></html>"
    )
    source = read(page.encode(), "quay.html")
    assert [part.text for part in source.pages] == [
        "Quays\n\nThe old quay’s wall.",
        "Piers\n\nTwo\npiers.\n\nYear | 1911",
    ]
    assert not source.paged


@pytest.mark.parametrize("encoding", ["utf-8", "utf-16", "cp1252"])
def test_web_pages_are_read_in_their_encoding(encoding: str) -> None:
    """A page's own word on its encoding is believed, else the bytes are looked at."""
    page = f'<html><head><meta charset="{encoding}"></head><body><p>Café “Quay”</p></body></html>'
    assert read(page.encode(encoding), "quay.html").pages[0].text == "Café “Quay”"


def test_docx_text_leaves_out_what_was_deleted(docx: Make) -> None:
    """Tracked deletions, field codes and doubled text boxes are left out; tabs, rows and notes are kept."""
    body = (
        "<w:p><w:r><w:t>The quay</w:t><w:tab/><w:t>was sold</w:t></w:r>"
        "<w:del><w:r><w:delText>cheap</w:delText></w:r></w:del>"
        "<w:r><w:instrText>PAGE</w:instrText></w:r></w:p><w:tbl><w:tr><w:tc><w:p><w:r><w:t>Year</w:t></w:r></w:p></w:tc>"
        "<w:tc><w:p><w:r><w:t>1911</w:t></w:r></w:p></w:tc></w:tr></w:tbl>"
    )
    note = "<w:footnote><w:p><w:r><w:t>See the ledger.</w:t></w:r></w:p></w:footnote>"
    text = read(docx(body, footnotes=note), "quay.docx").pages[0].text
    assert text == "The quay\twas sold\nYear | 1911\nSee the ledger."


def test_odt_text_is_read_with_its_notes_last(odt: Make) -> None:
    """Spaces, tabs, items and rows of an ODT are kept; a note stands after the text and not within it."""
    body = (
        '<text:p>The<text:s text:c="2"/>quay<text:note><text:note-citation>1</text:note-citation><text:note-body>'
        "<text:p>See the ledger.</text:p></text:note-body></text:note> was <text:span>sold</text:span>.</text:p>"
        "<text:list><text:list-item><text:p>one</text:p></text:list-item></text:list>"
        "<table:table><table:table-row><table:table-cell><text:p>Year</text:p></table:table-cell><table:table-cell>"
        "<text:p>1911</text:p></table:table-cell></table:table-row></table:table>"
    )
    text = read(odt(body), "quay.odt").pages[0].text
    assert text == "The  quay was sold.\n- one\nYear | 1911\nSee the ledger."


def test_an_epub_is_read_in_the_order_of_its_spine(epub: Make) -> None:
    """Chapters follow the spine; where the book tells its printed pages, these are its pages."""
    source = read(epub("<h1>One</h1><p>Quays.</p>", "<p>Piers.</p>"), "book.epub")
    assert [part.text for part in source.pages] == ["One\n\nQuays.", "Piers."]
    assert not source.paged
    broken = epub('<p>Before. <span epub:type="pagebreak" title="7"/>After.</p>', "<p>Later.</p>")
    pages = read(broken, "book.epub").pages
    assert [(page.label, page.text) for page in pages] == [(None, "Before."), ("7", "After."), ("7", "Later.")]


def test_a_pdf_is_read_page_by_page(pdf: Make) -> None:
    """Each page of a PDF is a page, ligatures and quotation marks as characters."""
    source = read(pdf("The officers’ affair.", "Nobody bought it."), "quay.pdf")
    assert [page.text for page in source.pages] == ["The officers’ affair.", "Nobody bought it."]


def test_a_pdf_without_text_says_so(pdf: Make) -> None:
    """A PDF of bare pictures is no error: its pages have no text, and a problem says what to do."""
    source, problems = read_source(pdf("#rect()", "#circle()"), "scan.pdf", None)
    assert len(source.pages) == 2
    assert "pictures" in str(problems[0])


def test_a_picture_says_that_no_text_is_at_hand() -> None:
    """A picture of a page has no text, and a problem says so."""
    source, problems = read_source(b"\x89PNG\r\n\x1a\n", "p12.png", None)
    assert source.pages == ()
    assert "a picture: no text of it is at hand" in str(problems[0])


def test_sheets_keep_their_lines(docx: Make) -> None:
    """A sheet's lines, items and rows stay lines; its parts are not taken apart."""
    page = (
        b"<html><h2>Essay 2</h2><ul><li>1,500 words</li><li>MLA</li></ul>"
        b"<table><tr><td>Due</td><td>May 3</td></tr></table>"
    )
    assert read_sheet_text(page, "brief.html")[0].split("\n") == [
        "Essay 2", "", "- 1,500 words", "- MLA", "", "Due | May 3",
    ]  # fmt: skip
    item = "<w:p><w:pPr><w:numPr/></w:pPr><w:r><w:t>MLA</w:t></w:r></w:p>"
    assert read_sheet_text(docx(item), "brief.docx")[0] == "- MLA"
    assert read_sheet_text("Due:  3 May\r\n  • MLA".encode(), "brief.txt")[0] == "Due:  3 May\n  • MLA"


def test_every_docx_of_the_test_sets_is_read(outside_data: Callable[[str], Path]) -> None:
    """Of some hundreds of odd DOCX files, each is read or refused in one line."""
    files = sorted(outside_data("data/docx").rglob("*.docx"))
    refused = [line for file in files if (line := refusal(read_source, file.read_bytes(), file.name))]
    print(f"\nDOCX: {len(files) - len(refused)} of {len(files)} read, {len(refused)} refused")
    assert len(refused) <= 0.04 * len(files), refused


@given(st.binary(max_size=400), st.sampled_from(["txt", "md", "html", "pdf", "docx", "odt", "epub", "png", "rtf", ""]))
def test_any_bytes_are_read_or_refused_in_one_line(data: bytes, ending: str) -> None:
    """No file stops the reader: it is read, or refused with a line that names it."""
    refusal(read_source, data, f"a.{ending}")
    refusal(read_sheet_text, data, f"a.{ending}")


@given(st.text(max_size=300))
def test_any_text_is_read_back(text: str) -> None:
    """A text in UTF-8 keeps its words, whatever they are."""
    if "\0" in text or not text.strip():
        return
    source, _ = read_source(text.encode("utf-8", "replace"), "a.txt", None)
    assert source.pages
