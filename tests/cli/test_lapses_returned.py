"""Lapses learnt from a paper that came back: the comments in a word processor's file, the notes on a PDF."""

from __future__ import annotations

import ctypes
import io
import zipfile
from collections.abc import Callable, Sequence
from pathlib import Path

import pypdfium2
import pypdfium2.raw as pdfium
import pytest

Run = Callable[..., tuple[int, str]]
SAID = (("passenger", "“very” should be “rather”"), ("books", "Sentence fragment"), ("trams", "A fine opening."))
"""Words of the demo's paper, and what a teacher says of them."""
TYPE = "application/vnd.openxmlformats-officedocument.wordprocessingml.comments+xml"
RELATION = "http://schemas.openxmlformats.org/officeDocument/2006/relationships/comments"


def print_as(run: Run, paper: Path, form: str) -> bytes:
    """The demo's fair copy, as it is handed in."""
    assert run("print", str(paper), "--as", form, "--anyway")[0] == 0
    return next((paper / "fair").glob(f"*.{form}")).read_bytes()


def comment_docx(data: bytes, said: Sequence[str]) -> bytes:
    """A fair copy as a word processor saves it when comments were put on its paragraphs."""
    word = "http://schemas.openxmlformats.org/wordprocessingml/2006/main"
    told = "".join(
        f'<w:comment w:id="{n}" w:author="Dr. Marrow" w:date="2027-03-01T10:00:00Z">'
        f"<w:p><w:r><w:t>{one}</w:t></w:r></w:p></w:comment>"
        for n, one in enumerate(said)
    )
    out = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(data)) as before, zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as after:
        for name in before.namelist():
            text = before.read(name)
            if name == "word/document.xml":
                parts = text.decode().split("</w:p>")
                for n in range(len(said)):
                    start = f'<w:commentRangeStart w:id="{n}"/>'
                    end = f'<w:commentRangeEnd w:id="{n}"/><w:r><w:commentReference w:id="{n}"/></w:r>'
                    at = 3 + n
                    head, run_, tail = parts[at].partition("<w:r>")
                    parts[at] = head + start + run_ + tail + end
                text = "</w:p>".join(parts).encode()
            elif name == "[Content_Types].xml":
                kind = f'<Override PartName="/word/comments.xml" ContentType="{TYPE}"/></Types>'
                text = text.replace(b"</Types>", kind.encode())
            elif name == "word/_rels/document.xml.rels":
                kind = f'<Relationship Id="rIdC" Type="{RELATION}" Target="comments.xml"/></Relationships>'
                text = text.replace(b"</Relationships>", kind.encode())
            if name != "word/comments.xml":
                after.writestr(name, text)
        after.writestr("word/comments.xml", f'<w:comments xmlns:w="{word}">{told}</w:comments>')
    return out.getvalue()


def note_pdf(data: bytes, said: Sequence[tuple[str, str]]) -> bytes:
    """A fair copy with words marked on its first page and notes on them."""
    document = pypdfium2.PdfDocument(data)
    page = document[0]
    textpage = page.get_textpage()
    for words, note in said:
        found = textpage.search(words).get_next()
        assert found is not None
        boxes = [textpage.get_charbox(n) for n in range(found[0], found[0] + found[1])]
        left, bottom = min(one[0] for one in boxes), min(one[1] for one in boxes)
        right, top = max(one[2] for one in boxes), max(one[3] for one in boxes)
        annotation = pdfium.FPDFPage_CreateAnnot(page.raw, pdfium.FPDF_ANNOT_HIGHLIGHT)
        pdfium.FPDFAnnot_SetRect(annotation, pdfium.FS_RECTF(left, top, right, bottom))
        corners = pdfium.FS_QUADPOINTSF(left, top, right, top, left, bottom, right, bottom)
        pdfium.FPDFAnnot_AppendAttachmentPoints(annotation, corners)
        text = ctypes.create_string_buffer(note.encode("utf-16-le") + b"\0\0")
        pdfium.FPDFAnnot_SetStringValue(annotation, b"Contents", ctypes.cast(text, ctypes.POINTER(pdfium.FPDF_WCHAR)))
        pdfium.FPDFPage_CloseAnnot(annotation)
    kept = io.BytesIO()
    document.save(kept)
    return kept.getvalue()


@pytest.mark.parametrize("form", ["docx", "pdf"])
def test_a_marked_copy_teaches_lapses(run: Run, demo_paper: Path, tmp_path: Path, form: str) -> None:
    """Words that are wrong, and an error by its name; praise is passed over; learnt again, nothing is counted twice."""
    data = print_as(run, demo_paper, form)
    marked = comment_docx(data, [said for _, said in SAID]) if form == "docx" else note_pdf(data, SAID)
    (tmp_path / f"marked.{form}").write_bytes(marked)
    code, told = run("returned", str(demo_paper), "--file", str(tmp_path / f"marked.{form}"))
    assert code == 0
    assert "3 comments" in told
    lapses = demo_paper.parent / "lapses.toml"
    before = lapses.read_text("utf-8")
    told = run("lapses", str(demo_paper), "--returned")[1]
    assert told.startswith("Of 3 remarks 2 new name an error")
    assert "“very” before a plain fact: 6 times" in told
    assert "fragment: 1 time" in told
    after = lapses.read_text("utf-8")
    assert after != before
    assert after.startswith("# Robin Achterberg's own")
    assert run("lapses", str(demo_paper), "--returned")[1].startswith("Of 3 remarks 0 new name")
    assert lapses.read_text("utf-8") == after


@pytest.mark.parametrize(
    ("name", "data"),
    [
        ("marked.docx", b"PK\x03\x04 and then nothing"),
        ("marked.pdf", b"%PDF-1.7 and then nothing"),
        ("marked.odt", b"not a zip"),
        ("marked.docx", b""),
    ],
)
def test_a_broken_copy_is_told_in_a_line(run: Run, demo_paper: Path, tmp_path: Path, name: str, data: bytes) -> None:
    """What, where, what to do; the list of lapses stands as it was."""
    (tmp_path / name).write_bytes(data)
    code, told = run("returned", str(demo_paper), "--file", str(tmp_path / name))
    assert code == 2
    assert f"fairhand: {name}: " in told
    lapses = demo_paper.parent / "lapses.toml"
    before = lapses.read_bytes()
    code, told = run("lapses", str(demo_paper), "--returned")
    assert (code, "no comments of a returned paper are kept; fairhand returned --file reads them in" in told) == (
        2,
        True,
    )
    assert lapses.read_bytes() == before


def test_a_copy_without_comments_teaches_nothing(run: Run, demo_paper: Path, tmp_path: Path) -> None:
    """And says so."""
    (tmp_path / "clean.docx").write_bytes(print_as(run, demo_paper, "docx"))
    assert run("returned", str(demo_paper), "--file", str(tmp_path / "clean.docx"))[0] == 0
    code, told = run("lapses", str(demo_paper), "--returned")
    assert (code, "no comments of a returned paper are kept" in told) == (2, True)


def test_a_list_of_lapses_that_is_no_toml_is_not_written_over(run: Run, demo_paper: Path) -> None:
    """It must be mended first; until then no lapse is looked for."""
    lapses = demo_paper.parent / "lapses.toml"
    lapses.write_text("[[lapses]\nname = ", "utf-8")
    run("returned", str(demo_paper), "--comment", "“very” should be “rather”")
    code, told = run("lapses", str(demo_paper), "--returned")
    assert code == 2
    assert "lapses.toml" in told
    assert lapses.read_text("utf-8") == "[[lapses]\nname = "
