"""The typeset page, measured, against what the handbooks ask of a student paper.

Each check names its source. "page" is a public page of the body named, "memory" the handbook from memory, "computed"
by hand. Lengths are points from the left and the top edge of the paper.
"""

from __future__ import annotations

import ctypes
from collections.abc import Callable
from dataclasses import dataclass, replace
from itertools import pairwise

import pypdfium2
import pypdfium2.raw as pdfium
import pytest

from fairhand.fair_copy.building import build_fair_copy
from fairhand.fair_copy.document import FairCopy, FrontMatter
from fairhand.fair_copy.layout import layout_for, proof_layout
from fairhand.fair_copy.typesetting import to_typst
from fairhand.manuscript.parts import SetBlock
from fairhand.model.inline import Hole, Inline, Note, Styled, Text
from fairhand.model.requirement import Requirement
from fairhand.model.span import Span
from fairhand.press.typst_press import typeset

WORDS = "The ferry kept to its hours in fog and in frost, and the clerk wrote each crossing in a narrow book. "
FRONT = FrontMatter(
    author="Nadia Osei",
    institution="Department of History, Eastholm College",
    course="History 210",
    instructor="Professor Lind",
    date="3 March 2026",
)


@dataclass(frozen=True)
class Line:
    """One line of print."""

    text: str
    left: float
    right: float
    baseline: float
    """From the top edge."""
    face: str
    size: float


def paragraph(*inlines: Inline | str) -> SetBlock:
    """A paragraph of these inlines."""
    return SetBlock("paragraph", inlines=tuple(Text(i) if isinstance(i, str) else i for i in inlines))


def paper(style: str, *requirements: Requirement, size: str = "us-letter", notes: bool = False) -> FairCopy:
    """A paper of every part in the style."""
    cited = (Note((Text("Ada Marsh, "), Styled("italic", (Text("Fog"),)), Text(" (Eastholm: Weir, 2019), 12."))),)
    blocks = [
        SetBlock("heading", 1, (Text("The Clerk of the Crossing"),)),
        paragraph(WORDS * 4, "She called it “the narrow book” ", Hole(0), "."),
        SetBlock("heading", 2, (Text("Fog"),)),
        SetBlock("quote", children=(paragraph(WORDS * 2),)),
        paragraph(WORDS * 3),
        paragraph(WORDS * 12),
    ]
    references = [
        (
            Text("Marsh, Ada. "),
            Styled(
                "italic",
                (Text("Fog and the Reckoning of Wages along the Lower Ferry, with Tables of Tolls and Tides"),),
            ),
        ),
        (Text("Reyes, Owen. "), Styled("italic", (Text("Frost. " * 12),))),
    ]
    layout = layout_for(style, requirements, size)  # type: ignore[arg-type]
    return build_fair_copy(blocks, [cited if notes else (Text("(Marsh 12)"),)], references, FRONT, layout)


def asks(what: str, value: str) -> Requirement:
    """A format requirement."""
    return Requirement("format", {"what": what, "value": value}, "", Span(0, 0))


def lines_of(pdf: bytes) -> list[list[Line]]:
    """The lines of each page, from the top; characters on one baseline within half a point are one line."""
    pages = []
    with pypdfium2.PdfDocument(pdf) as document:
        for page in document:
            text, height = page.get_textpage(), page.get_height()
            rows: dict[int, list[tuple[float, float, str, str, float]]] = {}
            for at in range(text.count_chars()):
                letter = text.get_text_range(at, 1)
                x, y = ctypes.c_double(), ctypes.c_double()
                pdfium.FPDFText_GetCharOrigin(text, at, x, y)
                if letter.isspace() or not letter:
                    continue
                name = ctypes.create_string_buffer(80)
                pdfium.FPDFText_GetFontInfo(text, at, name, 80, ctypes.c_int())
                size = pdfium.FPDFText_GetFontSize(text, at)
                right = text.get_charbox(at)[2]
                rows.setdefault(round((height - y.value) * 2), []).append(
                    (x.value, right, letter, name.value.decode(), size)
                )
            page_lines = []
            for row in sorted(rows):
                row_chars = sorted(rows[row])
                page_lines.append(
                    Line(
                        "".join(each[2] for each in row_chars),
                        min(each[0] for each in row_chars),
                        max(each[1] for each in row_chars),
                        row / 2,
                        row_chars[0][3],
                        row_chars[0][4],
                    )
                )
            pages.append(page_lines)
    return pages


def find(pages: list[list[Line]], start: str) -> Line:
    """The first line that starts so, spaces left out."""
    return next(line for page in pages for line in page if line.text.startswith(start.replace(" ", "")))


def set_pages(copy: FairCopy) -> list[list[Line]]:
    """The lines of the typeset paper."""
    return lines_of(typeset(to_typst(copy)).pdf)


@pytest.fixture(scope="module")
def mla() -> list[list[Line]]:
    """The paper in MLA."""
    return set_pages(paper("mla-9"))


@pytest.fixture(scope="module")
def apa() -> list[list[Line]]:
    """The paper in APA."""
    return set_pages(paper("apa-7"))


@pytest.fixture(scope="module")
def chicago() -> list[list[Line]]:
    """The paper in Chicago notes."""
    return set_pages(paper("chicago-notes-17", notes=True))


def pitches(lines: list[Line]) -> list[float]:
    """The distances between the baselines of lines that follow each other."""
    return [after.baseline - before.baseline for before, after in pairwise(lines)]


def centre(line: Line) -> float:
    """The middle of a line."""
    return (line.left + line.right) / 2


def test_double_spacing_is_that_of_a_word_processor(mla: list[list[Line]]) -> None:
    """Twelve points double are 27.6 points from baseline to baseline. Source: computed."""
    assert pitches(mla[0][1:]) == pytest.approx([27.6] * (len(mla[0]) - 2), abs=0.51)


@pytest.mark.parametrize(
    ("font", "size", "spacing", "pitch"),
    [
        ("Times New Roman", "12 pt", "double", 27.6),
        ("Arial", "11 pt", "1.5", 18.97),
        ("Calibri", "11 pt", "double", 26.86),
    ],
)
def test_spacing_follows_face_and_size(font: str, size: str, spacing: str, pitch: float) -> None:
    """A line's height is that of the face's own table, times the spacing. Source: computed from the faces' tables."""
    copy = paper("mla-9", asks("font", font), asks("font-size", size), asks("spacing", spacing))
    measured = pitches(set_pages(copy)[0][1:])
    assert sum(measured) / len(measured) == pytest.approx(pitch, abs=0.05)


@pytest.mark.parametrize("font", ["Times New Roman", "Arial", "Courier New"])
def test_a_page_has_twenty_three_lines(font: str) -> None:
    """A double-spaced page with margins of an inch has 23 lines. Source: computed, 648 / 27.6."""
    layout = replace(layout_for("mla-9", [asks("font", font)]), first_page="none")
    copy = FairCopy(FrontMatter(author="Nadia Osei"), (paragraph(WORDS * 60),), (), layout)
    assert [len(page) - 1 for page in set_pages(copy)[:2]] == [23, 23]


@pytest.mark.parametrize("style", ["mla-9", "apa-7", "chicago-notes-17"])
def test_margins_are_an_inch(style: str) -> None:
    """Nothing but the running head stands within an inch of the edge. Source: page (MLA, Turabian), memory (APA)."""
    pages = set_pages(paper(style, notes="notes" in style))
    body = [line for page in pages for line in page if line.baseline > 60]
    assert min(line.left for line in body) == pytest.approx(72, abs=0.6)
    assert max(line.right for line in body) <= 612 - 72 + 0.6
    assert max(line.baseline for line in body) <= 792 - 72


def test_mla_head_is_surname_and_number(mla: list[list[Line]]) -> None:
    """Surname and page number stand half an inch from the top, flush right, on every page. Source: MLA 9, memory."""
    for number, page in enumerate(mla, start=1):
        assert page[0].text == f"Osei{number}"
        assert page[0].right == pytest.approx(540, abs=1)
        assert page[0].baseline == pytest.approx(36 + 0.891 * 12, abs=0.6)


def test_mla_heading_and_title(mla: list[list[Line]]) -> None:
    """Name, instructor, course and date stand flush left; the title is centred and plain. Source: MLA 9, memory."""
    texts = [line.text for line in mla[0][1:6]]
    assert texts == ["NadiaOsei", "ProfessorLind", "History210", "3March2026", "TheClerkoftheCrossing"]
    assert [line.left for line in mla[0][1:5]] == pytest.approx([72] * 4, abs=0.6)
    assert centre(mla[0][5]) == pytest.approx(306, abs=1)
    assert "Bold" not in mla[0][5].face


def test_apa_title_page(apa: list[list[Line]]) -> None:
    """A bold title some lines down, a blank line, then the author and the rest, centred. Source: APA 7, 2.3."""
    number, title, *rest = apa[0]
    assert (number.text, "Bold" in title.face) == ("1", True)
    assert 72 + 3 * 27.6 < title.baseline < 72 + 4 * 27.6
    assert rest[0].baseline - title.baseline == pytest.approx(2 * 27.6, abs=1)
    assert [line.text for line in rest] == [
        "NadiaOsei", "DepartmentofHistory,EastholmCollege", "History210", "ProfessorLind", "3March2026",
    ]  # fmt: skip
    assert [centre(line) for line in (title, *rest)] == pytest.approx([306] * 6, abs=1)
    assert (apa[1][1].text, "Bold" in apa[1][1].face) == ("TheClerkoftheCrossing", True)


def test_turabian_title_page(chicago: list[list[Line]]) -> None:
    """The title stands a third down, centred, the rest below; the page bears no number, the next is 1. Source: page."""
    title, *rest = chicago[0]
    assert title.text == "TheClerkoftheCrossing"
    assert 792 / 4 < title.baseline < 792 / 2.2
    assert rest[0].baseline > 792 / 2
    assert chicago[1][0].text == "1"


@pytest.mark.parametrize(("style", "indent"), [("mla-9", 36), ("apa-7", 36), ("chicago-notes-17", 36)])
def test_first_lines_and_block_quotations_are_indented(style: str, indent: float) -> None:
    """Half an inch for a paragraph's first line and the whole of a block quotation. Source: page."""
    pages = set_pages(paper(style, notes="notes" in style))
    lines = [line for page in pages for line in page if line.left > 100 and line.text.startswith("Theferry")]
    assert lines
    assert {round(line.left) for line in lines} == {72 + indent}


def test_block_quotation_spacing(mla: list[list[Line]], chicago: list[list[Line]]) -> None:
    """MLA sets block quotations double, Turabian single with a blank line before and after. Source: page."""
    for pages, pitch in ((mla, 27.6), (chicago, 13.8)):
        page = next(page for page in pages if any(line.text == "Fog" for line in page))
        at = next(at for at, line in enumerate(page) if line.text == "Fog")
        assert page[at + 2].baseline - page[at + 1].baseline == pytest.approx(pitch, abs=0.6)
        assert page[at + 1].baseline - page[at].baseline == pytest.approx(27.6, abs=0.6)


@pytest.mark.parametrize(
    ("style", "title", "bold", "pitch", "gap"),
    [
        ("mla-9", "WorksCited", False, 27.6, 27.6),
        ("apa-7", "References", True, 27.6, 27.6),
        ("chicago-notes-17", "Bibliography", False, 13.8, 27.6),
        ("chicago-author-date-17", "References", False, 13.8, 27.6),
    ],
)
def test_reference_list(style: str, title: str, bold: bool, pitch: float, gap: float) -> None:
    """The list has a page of its own, its title centred, its entries hanging half an inch. Source: page, memory."""
    last = set_pages(paper(style, notes="notes" in style))[-1]
    head, first, second, third = last[1:5]
    assert (head.text, "Bold" in head.face) == (title, bold)
    assert centre(head) == pytest.approx(306, abs=1)
    assert (first.left, second.left, third.left) == pytest.approx((72, 108, 72), abs=0.6)
    assert second.baseline - first.baseline == pytest.approx(pitch, abs=0.6)
    assert third.baseline - second.baseline == pytest.approx(gap, abs=0.6)


def test_notes_are_single_and_indented(chicago: list[list[Line]]) -> None:
    """A note stands at the foot of its page, its first line indented half an inch. Source: Turabian 9, page."""
    number, note = chicago[1][-2:]
    assert (number.text, "Eastholm:Weir,2019" in note.text) == ("1", True)
    assert number.left == pytest.approx(108, abs=0.6)
    assert note.size == pytest.approx(10, abs=0.01)


@pytest.mark.parametrize(
    ("style", "look"),
    [("apa-7", ("centre", True)), ("chicago-notes-17", ("centre", True)), ("mla-9", ("left", True))],
)
def test_first_level_headings(style: str, look: tuple[str, bool]) -> None:
    """APA's and Turabian's first level is centred and bold, at the text's size. Source: APA 7, 2.27; Turabian 9."""
    heading = find(set_pages(paper(style, notes="notes" in style)), "Fog")
    assert heading.size == pytest.approx(12, abs=0.01)
    assert ("centre" if abs(centre(heading) - 306) < 1 else "left", "Bold" in heading.face) == look


def test_a_sheets_own_page() -> None:
    """A4, Arial 11, one and a half, 2.5 cm, number at the foot: each as the sheet has it. Source: common practice."""
    rules = [
        asks("font", "Arial"), asks("font-size", "11 pt"), asks("spacing", "1.5"),
        asks("margins", "2.5 cm"), asks("page-numbers", "bottom centre"),
    ]  # fmt: skip
    pages = set_pages(paper("harvard", *rules, size="a4"))
    assert pages[0][0].left == pytest.approx(70.87, abs=0.6)
    assert "Arimo" in pages[0][0].face
    foot = pages[0][-1]
    assert foot.text == "1"
    assert centre(foot) == pytest.approx(595.28 / 2, abs=1)
    assert foot.baseline > 841.89 - 70.87


def test_proof_numbers_its_lines() -> None:
    """A proof's lines are numbered on each page from 1, with an inch and a half on both sides. Source: practice."""
    copy = paper("mla-9")
    pages = set_pages(replace(copy, layout=proof_layout(copy.layout)))
    first = next(line for line in pages[0] if "NadiaOsei" in line.text)
    assert first.text.startswith("1")
    assert max(line.right for line in pages[0]) <= 612 - 108 + 0.6
    assert any(line.text.startswith("1") for line in pages[1][1:3])


def test_file_is_tagged_and_carries_its_faces() -> None:
    """The PDF says that it is tagged and keeps to PDF/UA-1, has a language and a title, and embeds every face.

    Source: ISO 14289-1, 7.1, 7.2 and 7.21.4 (memory).
    """
    pdf = typeset(to_typst(paper("apa-7"))).pdf
    with pypdfium2.PdfDocument(pdf) as document:
        assert document.is_tagged()
        assert document.get_metadata_dict()["Title"] == "The Clerk of the Crossing"
    assert b"<pdfuaid:part>1</pdfuaid:part>" in pdf
    assert b"/StructTreeRoot" in pdf
    assert pdf.count(b"/FontFile2") + pdf.count(b"/FontFile3") >= 2
    assert b"/Lang(en-US)" in pdf


def test_docx_pages_agree(outside_office: Callable[[bytes], bytes] | None) -> None:
    """Where an office suite is installed, the DOCX falls on as many pages as the PDF. Source: common practice."""
    if outside_office is None:
        pytest.skip("no soffice on this machine: install an office suite to compare its pages with ours")
    from fairhand.fair_copy.requests import docx_request
    from fairhand.fair_copy.word import finish_docx
    from fairhand.press.pandoc import run_pandoc

    for style in ("mla-9", "apa-7"):
        copy = paper(style)
        printed = outside_office(finish_docx(run_pandoc(docx_request(copy))))
        with pypdfium2.PdfDocument(printed) as document:
            assert len(document) == typeset(to_typst(copy)).pages


@pytest.fixture
def outside_office(tmp_path_factory: pytest.TempPathFactory) -> Callable[[bytes], bytes] | None:
    """Prints a DOCX with an office suite, where one is installed."""
    import shutil
    import subprocess

    program = shutil.which("soffice")
    if program is None:
        return None
    folder = tmp_path_factory.mktemp("office")

    def print_docx(data: bytes) -> bytes:
        (folder / "paper.docx").write_bytes(data)
        home = f"-env:UserInstallation={(folder / 'home').as_uri()}"
        args = [program, home, "--headless", "--convert-to", "pdf", "--outdir", str(folder), str(folder / "paper.docx")]
        subprocess.run(args, check=True, capture_output=True, timeout=120)
        return (folder / "paper.pdf").read_bytes()

    return print_docx
