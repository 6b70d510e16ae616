"""``fairhand readers``: one reader after another, and nothing that they wrote is lost."""

from __future__ import annotations

import ctypes
import tomllib
from collections.abc import Callable
from copy import deepcopy
from functools import partial
from pathlib import Path

import docx
import pypdfium2.raw as pdfium
import pytest
from docx.oxml import parse_xml
from docx.oxml.ns import nsdecls, nsmap
from pypdfium2 import PdfDocument

from fairhand.readers.remarks_file import read_remarks


@pytest.fixture
def run(run: Callable[..., tuple[int, str]]) -> Callable[..., tuple[int, str]]:
    """Runs the command."""
    return partial(run, "readers")


@pytest.fixture
def paper(demo_paper: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The demo's paper, with a line on help in its sheet."""
    sheet = next(demo_paper.glob("brief*"))
    file = sheet if sheet.is_file() else next(sheet.iterdir())
    file.write_text(f"{file.read_text('utf-8')}\n\nYou may ask a friend to read your draft.\n", "utf-8")
    return demo_paper


def commented(copy: Path, words: str, said: str, by: str) -> Path:
    """The copy with a comment on the paragraph that holds some words."""
    document = docx.Document(str(copy))
    paragraph = next(one for one in document.paragraphs if words in one.text)
    document.add_comment(paragraph.runs, said, author=by)
    back = copy.with_name(f"back from {by}.docx")
    document.save(str(back))
    return back


def test_a_reader_gets_a_copy_with_the_questions_on_top(run: Callable[..., tuple[int, str]], paper: Path) -> None:
    """Numbered lines, what is asked, what not to mind, and the day; the register has it all."""
    code, told = run(str(paper), "--ask", "Ines Mora", "--due", "2027-02-08")
    assert code == 0
    assert "nothing leaves this machine by itself" in told
    assert "left out of it: tell the reader what is missing." in told
    (made,) = (paper / "fair").glob("*.docx")
    document = docx.Document(str(made))
    text = "\n".join(one.text for one in document.paragraphs)
    assert "For Ines Mora, wanted back by 8\xa0February." in text
    assert text.index("Where did you read a sentence twice?") < text.index("Introduction")
    assert "You need not mind spelling and commas or the form of the references." in text
    assert b"lnNumType" in document.sections[0]._sectPr.xml.encode()
    (kept,) = tomllib.loads((paper / "readers.toml").read_text("utf-8"))["readers"]
    assert kept["name"] == "Ines Mora"
    assert kept["file"] == f"fair/{made.name}"
    assert len(kept["draft"]) == 64


def test_a_pdf_has_its_lines_numbered(run: Callable[..., tuple[int, str]], paper: Path) -> None:
    """For a reader with a pencil; the writer's own questions take the place of those offered."""
    words = ("--ask", "Tom Reed", "--as", "pdf", "--question", "Is it fair?", "--not-mind", "the title")
    assert run(str(paper), *words)[0] == 0
    (made,) = (paper / "fair").glob("*.pdf")
    text = PdfDocument(made)[0].get_textpage().get_text_range()
    assert "Is it fair?" in text
    assert "twice?" not in text
    assert "You need not mind the title." in text
    assert "\n12" in text


def test_one_reader_after_another(run: Callable[..., tuple[int, str]], paper: Path) -> None:
    """A second at the same time only by the writer's decision; the same reader not twice for a version."""
    run(str(paper), "--ask", "Ines Mora", "--due", "2027-02-08")
    code, told = run(str(paper), "--ask", "Tom Reed")
    assert code == 1
    assert "Ines Mora is reading now, until 8 February" in told
    assert "Nothing was made" in told
    assert run(str(paper), "--ask", "Tom Reed", "--anyway")[0] == 0
    code, told = run(str(paper), "--ask", "ines mora", "--anyway")
    assert code == 2
    assert "has this version already" in told
    assert "taken out" in run(str(paper), "--forget", "Tom Reed")[1]


def test_what_comes_back_is_placed_after_edits_and_ruled_on(run: Callable[..., tuple[int, str]], paper: Path) -> None:
    """Each remark once; two readers at one place are named; left needs a reason; what has no place is listed."""
    run(str(paper), "--ask", "Ines Mora")
    (copy,) = (paper / "fair").glob("*.docx")
    ines = commented(copy, "What made the boxes work", "I would not accept this.", "Ines Mora")
    tom = commented(copy, "What made the boxes work", "How do you know?", "Tom Reed")
    draft = (paper / "draft.md").read_text("utf-8")
    (paper / "draft.md").write_text(draft.replace("Its readers wanted", "Most of its readers wanted"), "utf-8")
    code, told = run(str(paper), "--back", str(ines))
    assert code == 0
    assert "1 remark of Ines Mora." in told
    assert "1 remark of Tom Reed." in run(str(paper), "--back", str(tom), "--from", "Tom Reed")[1]
    told = run(str(paper), "--back", str(tom), "--from", "Tom Reed")[1]
    assert "0 remarks of Tom Reed, 1 that had come before." in told
    assert "both wrote here" in told
    assert "Two remarks wait for your word" in told
    one, two = read_remarks((paper / "marks.jsonl").read_text("utf-8"))
    code, told = run(str(paper), "--leave", two.id[:6])
    assert code == 2
    assert "Say why it is left" in told
    assert run(str(paper), "--leave", two.id[:6], "--why", "The slips say it.")[0] == 0
    assert run(str(paper), "--take", one.id)[0] == 0
    assert "I would not accept" not in run(str(paper))[1]
    assert "[left: The slips say it.]" in run(str(paper), "--all")[1]
    (paper / "draft.md").write_text("# Snow\n\nEntirely other matter, of snow.\n", "utf-8")
    run(str(paper), "--open", one.id)
    told = run(str(paper))[1]
    assert "Without a place in the draft as it now is" in told
    assert "I would not accept this." in told


def test_a_change_is_carried_out_in_the_draft(run: Callable[..., tuple[int, str]], paper: Path) -> None:
    """One step, where its words stand; then it is taken, and the draft as it was is in the record."""
    run(str(paper), "--ask", "Ines Mora")
    (copy,) = (paper / "fair").glob("*.docx")
    document = docx.Document(str(copy))
    first = next(one for one in document.paragraphs if "Between 1926" in one.text).runs[0]
    head, words, tail = first.text.partition("never locked")
    rest = deepcopy(first._r)
    gone = parse_xml(
        f'<w:del {nsdecls("w")} w:id="8" w:author="Ines Mora"><w:r><w:delText>{words}</w:delText></w:r></w:del>'
    )
    came = parse_xml(f'<w:ins {nsdecls("w")} w:id="9" w:author="Ines Mora"><w:r><w:t>always open</w:t></w:r></w:ins>')
    first.text = head
    first._r.addnext(gone)
    gone.addnext(came)
    came.addnext(rest)
    next(rest.iter(f"{{{nsmap['w']}}}t")).text = tail
    back = paper.parent / "back.docx"
    document.save(str(back))
    told = run(str(paper), "--back", str(back))[1]
    assert "for “never locked” put “always open”" in told
    (remark,) = read_remarks((paper / "marks.jsonl").read_text("utf-8"))
    assert run(str(paper), "--carry-out", remark.id[:6])[0] == 0
    assert "The boxes were always open, and for some years" in (paper / "draft.md").read_text("utf-8")
    code, told = run(str(paper), "--carry-out", remark.id[:6])
    assert code == 2
    assert "mend the draft by hand" in told


def test_a_pdf_that_comes_back_is_placed(run: Callable[..., tuple[int, str]], paper: Path) -> None:
    """A note on words of a copy with numbered lines, across the end of a line, stands at those words in the draft."""
    run(str(paper), "--ask", "Tom Reed", "--as", "pdf")
    (made,) = (paper / "fair").glob("*.pdf")
    document = PdfDocument(made)
    page = document[0]
    textpage = page.get_textpage()
    text = textpage.get_text_range().replace("\r\n", "  ")
    start = text.index("were taken down. The men")
    words = range(start, start + len("were taken down. The men"))
    annotation = pdfium.FPDFPage_CreateAnnot(page.raw, pdfium.FPDF_ANNOT_HIGHLIGHT)
    for n in words:
        left, bottom, right, top = textpage.get_charbox(n)
        quad = pdfium.FS_QUADPOINTSF(left, top, right, top, left, bottom, right, bottom)
        pdfium.FPDFAnnot_AppendAttachmentPoints(annotation, quad)
    note = ctypes.create_string_buffer("Which men?".encode("utf-16-le") + b"\0\0")
    pdfium.FPDFAnnot_SetStringValue(annotation, b"Contents", ctypes.cast(note, ctypes.POINTER(pdfium.FPDF_WCHAR)))
    pdfium.FPDFPage_CloseAnnot(annotation)
    back = paper.parent / "back.pdf"
    document.save(str(back))
    told = run(str(paper), "--back", str(back))[1]
    assert "1 remark of Tom Reed." in told
    assert "Then they were taken down." in told
    assert "“were taken down. The men”: Which men?" in told
    assert "uncertain" not in told


def test_bad_input_is_refused_in_one_line(run: Callable[..., tuple[int, str]], paper: Path) -> None:
    """What, where, and what to do."""
    other = paper.parent / "x.txt"
    other.write_text("no", "utf-8")
    broken = paper.parent / "x.docx"
    broken.write_bytes(b"PK no")
    for words, told in (
        (("--back", str(other), "--from", "A"), "save it as one of them"),
        (("--back", str(broken), "--from", "A"), "x.docx: it is broken"),
        (("--take", "zz"), "no remark has that number"),
        (("--ask", "  "), "Name the reader"),
        (("--forget", "Nobody"), "no such reader"),
    ):
        code, said = run(str(paper), *words)
        assert code == 2, words
        assert told in said
    (paper / "readers.toml").write_text("readers = 3\n", "utf-8")
    assert "nothing was written" in run(str(paper), "--ask", "A")[1]
    assert (paper / "readers.toml").read_text("utf-8") == "readers = 3\n"


def test_who_is_asked_by_several_papers_is_told(run: Callable[..., tuple[int, str]], paper: Path) -> None:
    """A reader who has another paper of the desk now."""
    other = paper.parent / "seals"
    other.mkdir()
    (other / "paper.toml").write_text('title = "Seals"\n', "utf-8")
    (other / "readers.toml").write_text('[[readers]]\nname = "Ines Mora"\nsent = 2027-02-01\n', "utf-8")
    code, told = run(str(paper), "--ask", "Ines Mora")
    assert code == 1
    assert "Ines Mora has “Seals” of yours to read as well." in told
