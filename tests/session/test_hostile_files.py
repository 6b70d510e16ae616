"""Hostile files are refused or bounded in time and memory, each with one clear line, and the rest goes on."""

from __future__ import annotations

import datetime as dt
import io
import json
import zipfile
import zlib
from collections.abc import Mapping
from pathlib import Path

import pytest

from fairhand.errors import FileUnreadable
from fairhand.press.apart import Limits
from fairhand.session.correction.remarks import take_returned
from fairhand.session.job import Job
from fairhand.session.opened import OpenPaper
from fairhand.session.record.printed_record import check_printed
from fairhand.session.sources import reading_bounded
from fairhand.session.sources.intake import Taken, take_files

TIGHT = Limits(seconds=6, most_bytes=900 * 2**20)
BILLION = '<?xml version="1.0"?><!DOCTYPE l [<!ENTITY a "ha">' + "".join(
    f'<!ENTITY {name} "{f"&{before};" * 10}">' for before, name in zip("abcdefghi", "bcdefghij", strict=True)
)


def take(paper: Path, name: str, data: bytes, limits: Limits = TIGHT) -> Taken:
    """What becomes of a file, beside one that nothing is wrong with."""
    given, good = paper.parent / name, paper.parent / "good.txt"
    given.write_bytes(data)
    good.write_bytes(b"The quay was sold.\n")
    job: Job[object] = Job(lambda _: None)
    taken = {one.name: one for one in take_files(paper, (given, good), job, limits=limits)}
    assert taken["good.txt"].outcome == "new"
    assert all("\n" not in one and len(one) < 300 for one in taken[name].problems)
    return taken[name]


def text_of(paper: Path, taken: Taken) -> str:
    """The text that a source was found to have."""
    text = OpenPaper(paper).look().paper.texts.get(taken.id)
    return "\f".join(page.text for page in text.pages) if text else ""


def make_pdf(*objects: bytes) -> bytes:
    """A PDF of these objects, the first its catalogue; without a table, which readers make for themselves."""
    body = b"".join(b"%d 0 obj%s endobj\n" % (number, one) for number, one in enumerate(objects, 1))
    return b"%PDF-1.4\n" + body + b"trailer<</Root 1 0 R/Size %d>>\n%%%%EOF" % (len(objects) + 1)


def one_page(stream: bytes, *more: bytes, resources: bytes = b"") -> bytes:
    """A PDF of one page with that content stream, dictionary and all."""
    page = b"<</Type/Page/Parent 2 0 R/MediaBox[0 0 99 99]/Contents 4 0 R/Resources<<%s>>>>" % resources
    return make_pdf(b"<</Type/Catalog/Pages 2 0 R>>", b"<</Type/Pages/Kids[3 0 R]/Count 1>>", page, stream, *more)


def zipped(members: Mapping[str, str]) -> bytes:
    """A zip of these members."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as file:
        for name, content in members.items():
            file.writestr(name, content)
    return out.getvalue()


def endless_pdf() -> bytes:
    """A PDF of a few kilobytes, packed twice, that holds gigabytes of drawing."""
    packer = zlib.compressobj(9)
    inner = [packer.compress(b"q Q " * 2**20) for _ in range(400)]
    packed = zlib.compress(b"".join(inner) + packer.flush(), 9)
    stream = b"<</Filter[/FlateDecode/FlateDecode]/Length %d>>stream\n" % len(packed) + packed + b"\nendstream"
    return one_page(stream)


@pytest.mark.parametrize("place", ["sources/osei-2014.pdf", "brief/later.pdf"])
def test_what_was_put_there_by_hand_is_bounded_too(
    demo_paper: Path, place: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A source or a sheet that never was taken in: one line tells of it, and the rest of the paper is read."""
    monkeypatch.setattr(reading_bounded, "LIMITS", TIGHT)
    (demo_paper / place).parent.mkdir(exist_ok=True)
    (demo_paper / place).write_bytes(endless_pdf())
    paper = OpenPaper(demo_paper)
    texts = paper.look().paper.texts
    assert texts.get("haldane-2008") is not None
    assert place.startswith("brief") or texts.get("osei-2014") is None
    (told,) = [one for one in (*paper.look().paper.problems, *paper.text_problems) if place in str(one)]
    assert "too much time or memory" in str(told)
    monkeypatch.setattr("fairhand.press.apart.do_apart", None)  # it is not tried again
    again = OpenPaper(demo_paper)
    assert "osei-2014" in again.look().paper.texts or place.startswith("sources")
    assert any(place in str(one) for one in (*again.look().paper.problems, *again.text_problems))


def test_a_pdf_of_many_damaged_sheets_is_told_in_one_line(demo_paper: Path) -> None:
    """Two thousand lines would hide every other."""
    ring = make_pdf(b"<</Type/Catalog/Pages 2 0 R>>", b"<</Type/Pages/Count 2000/Kids[2 0 R 2 0 R]>>")
    told = take(demo_paper, "ring.pdf", ring).problems
    assert "2000 of its 2000 sheets are damaged" in told[0]
    assert len(told) <= 2


def test_a_pdf_that_expands_without_end_is_bounded(demo_paper: Path) -> None:
    """A few kilobytes that are packed twice and hold gigabytes of drawing: it is stopped, or read as empty."""
    data = endless_pdf()
    assert len(data) < 100_000
    taken = take(demo_paper, "endless.pdf", data)
    assert taken.problems
    assert taken.outcome == "refused" or "pictures" in taken.problems[0]


def test_a_copy_that_comes_back_is_bounded_too(demo_paper: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A reader's PDF and a printed record come from elsewhere; nothing is kept of what is refused."""
    monkeypatch.setattr(reading_bounded, "LIMITS", TIGHT)
    with pytest.raises(FileUnreadable, match="too much time or memory"):
        take_returned(demo_paper, endless_pdf(), "back.pdf", "Ines Mora", today=dt.date(2027, 2, 9))
    with pytest.raises(FileUnreadable, match="packed as no printed record is"):
        check_printed("record.pdf", endless_pdf())
    assert not (demo_paper / "marks.jsonl").exists()


def test_ten_thousand_empty_pages_are_refused(demo_paper: Path) -> None:
    """More pages than are read at once."""
    kids = b" ".join(b"%d 0 R" % number for number in range(3, 10_003))
    page = b"<</Type/Page/Parent 2 0 R/MediaBox[0 0 9 9]>>"
    pages = b"<</Type/Pages/Count 10000/Kids[%s]>>" % kids
    taken = take(demo_paper, "nothing.pdf", make_pdf(b"<</Type/Catalog/Pages 2 0 R>>", pages, *[page] * 10_000))
    assert (taken.outcome, "10000 pages" in taken.problems[0]) == ("refused", True)


def test_pages_that_contain_themselves_are_bounded(demo_paper: Path) -> None:
    """A tree of pages that is a ring."""
    ring = make_pdf(b"<</Type/Catalog/Pages 2 0 R>>", b"<</Type/Pages/Count 2000/Kids[2 0 R 2 0 R]>>")
    assert take(demo_paper, "ring.pdf", ring).problems


def test_a_font_that_draws_itself_does_not_hang(demo_paper: Path) -> None:
    """A font whose letter is drawn by showing that letter twice, for ever."""
    shown = b"BT /F 9 Tf (aaaa) Tj ET"
    glyph = b"9 0 d0 BT /F 9 Tf (aa) Tj ET"
    font = (
        b"<</Type/Font/Subtype/Type3/FontBBox[0 0 9 9]/FontMatrix[1 0 0 1 0 0]/CharProcs<</a 6 0 R>>/FirstChar 97"
        b"/LastChar 97/Widths[9]/Encoding<</Differences[97/a]>>/Resources<</Font<</F 5 0 R>>>>>>"
    )
    streams = [b"<</Length %d>>stream\n%s\nendstream" % (len(one), one) for one in (shown, glyph)]
    data = one_page(streams[0], font, streams[1], resources=b"/Font<</F 5 0 R>>")
    taken = take(demo_paper, "font.pdf", data)
    assert taken.outcome in {"new", "refused"}
    assert len(text_of(demo_paper, taken)) < 1000


def test_what_hangs_is_stopped_in_its_time(demo_paper: Path) -> None:
    """A reader that does not come back is ended, and that is said."""
    slow = demo_paper.parent / "slow.txt"
    slow.write_bytes(b"word and -\n" * 700_000)
    job: Job[object] = Job(lambda _: None)
    (taken,) = take_files(demo_paper, [slow], job, limits=Limits(seconds=0.02))
    assert (taken.outcome, "too much time" in taken.problems[0]) == ("refused", True)


@pytest.mark.parametrize("name", ["laughs.docx", "laughs.epub", "laughs.html"])
def test_entities_are_not_expanded(demo_paper: Path, name: str) -> None:
    """A billion laughs stay a kilobyte, and no file of this machine is read into a text."""
    secret = demo_paper.parent / "secret.txt"
    secret.write_text("the key of the strongroom", "utf-8")
    xml = f'{BILLION}<!ENTITY s SYSTEM "{secret.as_uri()}">]>'
    if name.endswith("docx"):
        w = 'xmlns:w="http://schemas.openxmlformats.org/wordprocessingml/2006/main"'
        body = f"<w:document {w}><w:body><w:p><w:r><w:t>x &j; &s;</w:t></w:r></w:p></w:body></w:document>"
        data = zipped({"word/document.xml": xml + body})
    elif name.endswith("epub"):
        container = '<container><rootfiles><rootfile full-path="p.opf"/></rootfiles></container>'
        package = (
            '<package><manifest><item id="a" href="a.xhtml"/></manifest><spine><itemref idref="a"/></spine></package>'
        )
        page = f'{xml}<html xmlns="http://www.w3.org/1999/xhtml"><body><p>x &j; &s;</p></body></html>'
        data = zipped({"mimetype": "application/epub+zip", "META-INF/container.xml": container, "p.opf": package, "a.xhtml": page})  # noqa: E501  # fmt: skip
    else:
        data = f"{xml}<html><body><p>x &j; &s;</p></body></html>".encode()
    taken = take(demo_paper, name, data)
    found = text_of(demo_paper, taken)
    assert len(found) < 10_000
    assert "strongroom" not in found
    assert "strongroom" not in json.dumps(taken.problems)


def test_a_path_that_climbs_out_of_an_epub_leads_nowhere(demo_paper: Path) -> None:
    """Only what is in the EPUB is read; the folder around it stands as it stood."""
    secret = demo_paper.parent / "secret.xhtml"
    secret.write_text("<html><body>the key of the strongroom</body></html>", "utf-8")
    container = '<container><rootfiles><rootfile full-path="p.opf"/></rootfiles></container>'
    hrefs = ["a.xhtml", "../secret.xhtml", f"..{secret}", str(secret), "..%2f..%2fsecret.xhtml"]
    items = "".join(f'<item id="i{n}" href="{href}"/>' for n, href in enumerate(hrefs))
    spine = "".join(f'<itemref idref="i{n}"/>' for n in range(len(hrefs)))
    members = {
        "mimetype": "application/epub+zip",
        "META-INF/container.xml": container,
        "p.opf": f"<package><manifest>{items}</manifest><spine>{spine}</spine></package>",
        "a.xhtml": "<html><body><p>The fen.</p></body></html>",
        "../climbed.txt": "out",
    }
    before = sorted(path.name for path in demo_paper.parent.iterdir())
    taken = take(demo_paper, "climb.epub", zipped(members))
    assert text_of(demo_paper, taken).strip() == "The fen."
    after = {path.name for path in demo_paper.parent.iterdir()}
    assert after - set(before) == {"climb.epub", "good.txt"}


def test_scripts_in_a_page_are_neither_run_nor_read(demo_paper: Path) -> None:
    """Its words are its words alone; nothing of them is markup again where it is shown."""
    page = (
        "<!DOCTYPE html><title>Ebb</title><script>document.title='x'</script><p onclick=alert(1)>The ebb."
        "<script>while(1){}</script><iframe src=javascript:alert(1)></iframe><style>p{}</style></p>"
    )
    taken = take(demo_paper, "page.html", page.encode())
    assert text_of(demo_paper, taken).strip() == "The ebb."
