"""The list of sources changed, and listed, from within the program."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

import pytest

from fairhand.desk.record import list_states
from fairhand.errors import DeskError, FairhandError, FileUnreadable, UnknownFormat
from fairhand.model.entry import Entry
from fairhand.session.engines import Engines
from fairhand.session.opened import OpenPaper
from fairhand.session.sources.entries import add_lists, add_record, add_text, change_record, remove_record, state_of
from fairhand.session.sources.listing import list_sources

PEAT = b"@book{peat, title = {Peat}, author = {Dun, Eva}, year = 2004}"


@pytest.fixture
def paper(demo_desk: Path, tmp_path: Path) -> Path:
    """A copy of the demo's paper on a desk with a course that has a source of its own."""
    desk = Path(shutil.copytree(demo_desk, tmp_path / "desk"))
    course = next((desk / "courses").iterdir())
    shared = [{"id": "ordnance-1911", "type": "book", "title": "Ordnance", "publisher": "Quay"}]
    (course / "sources.json").write_text(json.dumps(shared), "utf-8")
    return desk / "tram-libraries"


def records(paper: Path) -> dict[str, dict[str, object]]:
    """The records of the paper's own list, by id."""
    return {one["id"]: one for one in json.loads((paper / "sources.json").read_text("utf-8"))}


def find(paper: Path, entry_id: str) -> Entry:
    """The paper's entry of that id."""
    return OpenPaper(paper).look().entries[entry_id]


def list_cited(opened: OpenPaper) -> set[str]:
    """The ids of the sources that are told as cited."""
    return {one.entry.id for one in list_sources(opened) if one.cited}


def test_lists_join_in_one_step(paper: Path) -> None:
    """What stood there before is among the earlier states; what cannot be read is told, and costs nothing else."""
    before = (paper / "sources.json").read_bytes()
    joined = add_lists(paper, [(PEAT, "a.bib"), (b"Dun, Eva. Peat. 2004.", "b.txt"), (PEAT, "c.bib")])
    assert (joined.new, joined.there) == (("peat",), ("peat",))
    assert [problem.where for problem in joined.problems] == ["b.txt"]
    assert "peat" in records(paper)
    states = list_states(paper, "sources.json")
    assert len(states) == 2
    assert (paper / "sources.json").read_bytes() != before


def test_nothing_is_written_where_nothing_joins(paper: Path) -> None:
    """The file keeps the form that its writer gave it."""
    (paper / "sources.json").write_text('[{"id":"peat","title":"Peat"}]', "utf-8")
    add_lists(paper, [(PEAT, "a.bib")])
    assert (paper / "sources.json").read_text("utf-8") == '[{"id":"peat","title":"Peat"}]'


def test_what_holds_no_source_is_refused(paper: Path) -> None:
    """Empty, or in no format that is read."""
    for data in (b"", b"Dun, Eva. Peat."):
        with pytest.raises(FileUnreadable):
            add_lists(paper, [(data, "a.txt")])


def test_a_record_written_twice_stands_once(paper: Path) -> None:
    """A form sent again is no second source; another work of the same author and year is one."""
    written = {"title": "Peat", "author": "Dun, Eva", "issued": "2004"}
    assert [add_record(paper, "book", written) for _ in range(2)] == ["dun-2004", "dun-2004"]
    assert add_record(paper, "book", {**written, "title": "Fen"}) == "dun-2004-2"
    with pytest.raises(FairhandError, match="nothing to cite it by"):
        add_record(paper, "book", {"publisher": "Quay"})


def test_a_source_of_the_course_is_corrected_in_the_paper_alone(paper: Path) -> None:
    """It becomes the paper's own; the course's list stays, and from there it is not taken out."""
    entry = find(paper, "ordnance-1911")
    with pytest.raises(DeskError, match="course"):
        remove_record(paper, entry)
    change_record(paper, entry, "book", {"title": "Ordnance Sheets"})
    assert records(paper)["ordnance-1911"] == {**entry.csl, "title": "Ordnance Sheets"}
    assert find(paper, "ordnance-1911").title == "Ordnance Sheets"
    assert state_of(find(paper, "ordnance-1911")) != state_of(entry)
    remove_record(paper, find(paper, "ordnance-1911"))
    assert find(paper, "ordnance-1911").title == "Ordnance"


def test_a_corrected_record_is_known_at_once(paper: Path) -> None:
    """What citations may name it by is read anew, its publisher too where it has no author."""
    opened = OpenPaper(paper)
    assert "ordnance-1911" in list_cited(opened)
    change_record(paper, opened.look().entries["ordnance-1911"], "book", {"publisher": "Oarsman Press"})
    assert "ordnance-1911" not in list_cited(opened)


def test_a_record_is_never_left_with_nothing_to_cite(paper: Path) -> None:
    """The change is refused, and the list stays as it was."""
    add_record(paper, "book", {"title": "Peat"})
    before = records(paper)
    with pytest.raises(FairhandError, match="peat-nd: it would have no title"):
        change_record(paper, find(paper, "peat-nd"), "book", {"title": " "})
    assert records(paper) == before


@pytest.mark.parametrize("entry_id", ["peat", "doi:10.5555/../peat", "..", "/", "堤" * 300, "con <x>"])
def test_a_text_stands_under_its_id(paper: Path, entry_id: str) -> None:
    """Whatever the id, the file is within the folder of sources, and is not written over."""
    entry = Entry(entry_id, "book")
    target = paper / add_text(paper, entry, "Peat.TXT", b"The bog keeps what it is given.")
    assert target.read_bytes() == b"The bog keeps what it is given."
    assert target.parent == paper / "sources"
    with pytest.raises(DeskError, match="there is one already"):
        add_text(paper, entry, "peat.txt", b"Another.")


@pytest.mark.parametrize(
    ("name", "data", "error"),
    [("a.exe", b"MZ", UnknownFormat), ("a.pdf", b"no PDF", FileUnreadable), ("a.txt", b" ", FileUnreadable)],
)
def test_a_file_that_is_no_text_is_refused(paper: Path, name: str, data: bytes, error: type[Exception]) -> None:
    """By its ending, and by what it holds."""
    with pytest.raises(error):
        add_text(paper, Entry("peat", "book"), name, data)
    assert not list((paper / "sources").glob("peat*"))


def test_the_list_is_told_where_the_engine_fails(paper: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """By each source's name and title."""
    from fairhand.errors import EngineFailed

    def fail(*_: object) -> bytes:
        raise EngineFailed("pandoc is not there")

    monkeypatch.setattr(Engines, "ask_pandoc", fail)
    listed = {one.entry.id: one for one in list_sources(OpenPaper(paper))}
    assert "Nine Minutes" in str(listed["lund-1999"].reference)
    assert listed["lund-1999"].cited
    assert not listed["quist-1988"].cited
