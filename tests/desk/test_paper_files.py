"""A paper's folder, made by hand and read."""

import os
import sys
from pathlib import Path

import pytest

from fairhand.desk.paper_files import read_paper
from fairhand.desk.places import find_desk, find_paper, list_papers
from fairhand.errors import FileUnreadable, NoPaperHere


@pytest.fixture
def desk(tmp_path: Path) -> Path:
    """A desk with one course and one paper."""
    put(tmp_path / "desk.toml", 'name = "Ida Vance"\nspelling = "GB"\n')
    course = tmp_path / "courses" / "geo-1"
    put(course / "course.toml", 'title = "Geography 1"\nstyle = "APA 7"\n')
    put(course / "policy.txt", "No late papers.")
    put(course / "sources.json", "[]")
    put(course / "sources" / "shared-2001.txt", "course's")
    put(course / "sources" / "both-2002.txt", "course's")
    paper = tmp_path / "peat"
    put(paper / "paper.toml", 'course = "geo-1"\n')
    put(paper / "draft.md", "# Peat\n")
    put(paper / "brief.txt", "Write 1,000 words.")
    put(paper / "sources" / "both-2002.html", "paper's")
    put(paper / "figures" / "map.png", "picture")
    put(paper / "our.csl", "<style/>")
    return tmp_path


def put(path: Path, text: str | bytes) -> Path:
    """The text stands at the path."""
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(text.encode() if isinstance(text, str) else text)
    return path


def test_a_paper_on_a_desk_is_read_with_its_course(desk: Path) -> None:
    """Desk, course, sheets, sources and pictures are all there, the paper's own before the course's."""
    paper = read_paper(desk / "peat")
    assert (paper.desk.name, paper.course and paper.course.style, paper.desk_folder) == ("Ida Vance", "APA 7", desk)
    assert paper.files["draft.md"].text == "# Peat\n"
    assert [sheet.name for sheet in paper.sheets] == ["courses/geo-1/policy.txt", "brief.txt"]
    assert [seen.text for seen in paper.find_source("both-2002")] == ["paper's", "course's"]
    assert [seen.name for seen in paper.find_source("shared-2001")] == ["courses/geo-1/sources/shared-2001.txt"]
    assert {"courses/geo-1/sources.json", "figures/map.png", "our.csl"} <= set(paper.files)
    assert paper.problems == ()


def test_a_folder_made_by_hand_is_a_paper(tmp_path: Path) -> None:
    """A draft alone, without a desk or settings, is a paper whose other parts are not there yet."""
    put(tmp_path / "p" / "draft.md", "Words.")
    paper = read_paper(find_paper(tmp_path / "p"))
    assert (list(paper.files), paper.sheets, paper.course, paper.desk_folder) == (["draft.md"], (), None, None)
    assert paper.problems == ()


def test_reading_writes_nothing(desk: Path) -> None:
    """A folder is as it was after it has been read."""
    before = sorted(desk.rglob("*"))
    read_paper(desk / "peat")
    assert sorted(desk.rglob("*")) == before


def test_sheets_come_oldest_first(tmp_path: Path) -> None:
    """A date in the name counts, else the day of the last change."""
    for name, day in (("2026-03-01 message.txt", 1), ("sheet.pdf", 86_400 * 20_000), ("rubric.docx", 86_400 * 20_100)):
        os.utime(put(tmp_path / "brief" / name, "x"), (day, day))
    put(tmp_path / "brief" / "notes.pages", "x")
    paper = read_paper(tmp_path)
    names = [sheet.name for sheet in paper.sheets]
    assert names == ["brief/sheet.pdf", "brief/rubric.docx", "brief/2026-03-01 message.txt"]
    assert [problem.where for problem in paper.problems] == ["brief/notes.pages"]


@pytest.mark.parametrize(
    ("name", "data", "what"),
    [
        ("draft.md", "naïve".encode("cp1252"), "Windows-1252"),
        ("draft.md", "naïve".encode("utf-16"), "UTF-16"),
        ("draft.md", b"%PDF-1.4 ...", "not text"),
        ("draft.md", b"x" * (9 * 2**20), "9 MB"),
        ("sources/scan.txt", b"x" * (30 * 2**20), "30 MB"),
        ("draft.docx", b"PK\x03\x04", "looked for under the name draft.md"),
        ("paper.toml", b"style = APA", "not TOML"),
        ("paper.toml", b'course = "nowhere"', "no folder courses/nowhere"),
        ("paper.toml", b'course = "../.."', "no folder courses/"),
    ],
)
def test_each_fault_is_one_clear_line_and_the_rest_is_read(tmp_path: Path, name: str, data: bytes, what: str) -> None:
    """What, where, what to do; and the jottings beside it are read all the same."""
    put(tmp_path / "jottings.md", "peat, water")
    put(tmp_path / name, data)
    paper = read_paper(tmp_path)
    assert len(paper.problems) == 1
    assert what in paper.problems[0].what
    assert "\n" not in str(paper.problems[0])
    assert paper.files["jottings.md"].text == "peat, water"


def test_a_draft_in_another_encoding_is_read(tmp_path: Path) -> None:
    """Its letters are right, and the problem says that it is never rewritten in place."""
    put(tmp_path / "draft.md", "naïve".encode("cp1252"))
    paper = read_paper(tmp_path)
    assert paper.files["draft.md"].text == "naïve"
    assert "never rewritten in place" in paper.problems[0].mend


def test_links_are_followed(desk: Path, tmp_path_factory: pytest.TempPathFactory) -> None:
    """A paper's folder may be a link, and so may a source in it; the desk is found from where the link stands."""
    away = tmp_path_factory.mktemp("away") / "peat"
    (desk / "peat").rename(away)
    (desk / "peat").symlink_to(away, target_is_directory=True)
    put(away.parent / "far.txt", "far")
    (away / "sources" / "far-1999.txt").symlink_to(away.parent / "far.txt")
    (away / "sources" / "gone-1999.txt").symlink_to(away.parent / "gone.txt")
    paper = read_paper(desk / "peat")
    assert paper.desk.name == "Ida Vance"
    assert paper.find_source("far-1999")[0].text == "far"
    assert [problem.where for problem in paper.problems] == ["sources/gone-1999.txt"]


def test_a_link_that_leads_round_ends(tmp_path: Path) -> None:
    """A link back to its own folder does not hold up the reading."""
    put(tmp_path / "draft.md", "Words.")
    put(tmp_path / "map.png", "x")
    (tmp_path / "again").symlink_to(tmp_path, target_is_directory=True)
    assert sorted(read_paper(tmp_path).files) == ["draft.md", "map.png"]


def test_what_is_no_file_is_told(tmp_path: Path) -> None:
    """A folder called draft.md is a problem, not a crash."""
    (tmp_path / "draft.md").mkdir()
    assert "no ordinary file" in read_paper(tmp_path).problems[0].what


def test_a_file_that_goes_meanwhile_is_told(tmp_path: Path) -> None:
    """A source deleted after the folder was listed is told when it is asked for."""
    path = put(tmp_path / "sources" / "a.txt", "x")
    paper = read_paper(tmp_path)
    path.unlink()
    with pytest.raises(FileUnreadable, match=r"sources/a\.txt: it cannot be read"):
        _ = paper.files["sources/a.txt"].data


@pytest.mark.parametrize("name", ["It's “here”", "Élan & co", "名前", "a#b?c%20"])
def test_names_with_quotes_and_accents_are_names(tmp_path: Path, name: str) -> None:
    """Folders and sources may be called as they like."""
    put(tmp_path / name / "draft.md", "x")
    put(tmp_path / name / "sources" / f"{name}.txt", "y")
    paper = read_paper(find_paper(tmp_path / name))
    assert paper.find_source(name)[0].text == "y"


@pytest.mark.skipif(sys.platform != "linux", reason="only there may a name be any bytes")
def test_a_name_in_another_encoding_can_be_said(tmp_path: Path) -> None:
    """A source whose name is in no encoding that we know is seen, and its name can be printed."""
    put(tmp_path / "sources" / os.fsdecode(b"caf\xe9.txt"), "y")
    put(tmp_path / "sources" / os.fsdecode(b"\xe9.txt"), b"0" * (9 * 2**20))
    paper = read_paper(tmp_path)
    assert [name.encode() for name in paper.files] == [b"sources/caf?.txt"]
    assert str(paper.problems[0]).encode().startswith(b"sources/?.txt: it is 9 MB")


def test_a_source_is_found_by_a_plain_form_of_its_id(tmp_path: Path) -> None:
    """An id that no file name can hold finds its file by letters and digits alone."""
    put(tmp_path / "sources" / "doi-10.5555_ABC.txt", "y")
    assert read_paper(tmp_path).find_source("doi:10.5555/abc")[0].text == "y"


def test_a_paper_is_found_from_within_and_by_name(desk: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A file in it, its sources' folder, or its bare name from elsewhere on the desk all mean the paper."""
    paper = desk / "peat"
    for path in (paper, paper / "draft.md", paper / "sources"):
        assert find_paper(path) == paper
    monkeypatch.chdir(desk / "courses")
    assert find_paper(Path("peat")) == paper
    assert (find_desk(paper / "sources"), list_papers(desk)) == (desk, (paper,))


def test_no_paper_is_said(tmp_path: Path) -> None:
    """An empty folder, or none, is told in one line that says what to do."""
    for path in (tmp_path, tmp_path / "none"):
        with pytest.raises(NoPaperHere, match="fairhand new"):
            find_paper(path)
    with pytest.raises(NoPaperHere):
        read_paper(tmp_path / "none")
