"""New desks, courses and papers, and the answers set in them."""

import datetime as dt
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.desk.answers import set_answer, set_setting
from fairhand.desk.making import make_course, make_desk, make_paper, name_folder
from fairhand.desk.paper_files import read_paper
from fairhand.desk.places import is_paper
from fairhand.desk.record import list_states
from fairhand.errors import DeskError, NoPaperHere, PaperExistsAlready, UnknownFormat
from fairhand.model.settings import Answer, CourseSettings, DeskSettings, PaperSettings

GIVEN = dt.date(2026, 2, 3)


@pytest.fixture
def desk(tmp_path: Path) -> Path:
    """A desk with a course that has one sheet."""
    desk = make_desk(tmp_path / "desk", DeskSettings(name="Ida Vance", time_zone="Europe/Oslo", spelling="GB"))
    make_course(
        desk, CourseSettings(title="Geography 1", teacher="Dr Sand", style="APA 7"), {"policy.txt": b"No late papers."}
    )
    return desk


def test_a_paper_that_was_made_is_read_as_it_was_told(desk: Path) -> None:
    """What the writer said is there; what the course knows is not repeated, but read with it."""
    sheets = {"Essay sheet.txt": b"Write 1,000 words.", "policy.txt": b"No late papers."}
    settings = PaperSettings(title="Peat & “Water”", course="geography-1", given=GIVEN)
    folder = make_paper(desk, settings, sheets)
    paper = read_paper(folder)
    assert (folder.name, paper.settings, paper.desk.name) == ("peat-water", settings, "Ida Vance")
    assert paper.course == CourseSettings("geography-1", "Geography 1", "Dr Sand", "", "APA 7")
    assert [sheet.name for sheet in paper.sheets] == ["courses/geography-1/policy.txt", "brief.txt"]
    assert paper.problems == ()
    assert sorted(path.name for path in folder.iterdir()) == ["brief.txt", "paper.toml", "record.sqlite"]
    assert [(state.name, state.how) for state in list_states(folder)] == [("paper.toml", "written")]


def test_several_sheets_keep_their_order(desk: Path) -> None:
    """Sheets given in one go are read in the order in which they were given."""
    names = [f"{letter}.txt" for letter in "zaqb"]
    folder = make_paper(desk, PaperSettings(title="Peat"), {name: name.encode() for name in names})
    assert [sheet.name for sheet in read_paper(folder).sheets] == [f"brief/{name}" for name in names]


def test_a_paper_is_not_made_twice(desk: Path) -> None:
    """The folder that is there is left as it is, and nothing half-made stays behind."""
    folder = make_paper(desk, PaperSettings(title="Peat"), {"a.txt": b"one"})
    with pytest.raises(PaperExistsAlready, match="another title"):
        make_paper(desk, PaperSettings(title="PEAT!"), {"a.txt": b"two"})
    assert (folder / "brief.txt").read_bytes() == b"one"
    with pytest.raises(PaperExistsAlready):
        make_desk(desk, DeskSettings())
    assert sorted(path.name for path in desk.iterdir()) == ["courses", "desk.toml", "peat"]


def test_what_cannot_be_made_is_said(desk: Path) -> None:
    """A course that is not there, or a sheet that nothing reads, is told before anything is made."""
    with pytest.raises(NoPaperHere, match="no such course"):
        make_paper(desk, PaperSettings(title="Peat", course="history"))
    with pytest.raises(UnknownFormat, match="not read from such a file"):
        make_paper(desk, PaperSettings(title="Peat"), {"sheet.pages": b"x"})
    assert not (desk / "peat").exists()


def test_a_sheet_cannot_lead_out(desk: Path) -> None:
    """A sheet's name is a name, whatever folders it speaks of."""
    folder = make_paper(desk, PaperSettings(title="Peat"), {"../../a.txt": b"a", "C:\\x\\b?.txt": b"b"})
    assert sorted(path.name for path in (folder / "brief").iterdir()) == ["a.txt", "b_.txt"]


@given(st.text(max_size=200))
def test_any_title_names_a_folder(title: str) -> None:
    """Every title gives a name that every system can hold, and the same name again."""
    name = name_folder(title)
    assert name
    assert len(name.encode()) <= 255
    assert not set(name) & set('<>:"/\\|?*. \0')
    assert name == name_folder(name)
    assert name == name.casefold()


@pytest.mark.parametrize(
    ("title", "name"),
    [
        ("Who Cares? A Study of Care", "who-cares-a-study-of-care"),
        ("L’Été à Ålesund", "lete-a-alesund"),
        ("Straße und Fluß", "strasse-und-fluss"),
        ("NUL", "nul-paper"),
        ("Courses", "courses-paper"),
        ("水と泥炭", "水と泥炭"),
        ("???", "paper"),
        ("a" * 300, "a" * 60),
    ],
)
def test_titles_become_names(title: str, name: str) -> None:
    """Accents, quotation marks and reserved names are dealt with, and other scripts are kept."""
    assert name_folder(title) == name


def test_an_answer_is_set_and_the_rest_stands(desk: Path) -> None:
    """Remarks, order and other settings stand as they were; the answer is read as it was given."""
    folder = make_paper(desk, PaperSettings(title="Peat"))
    path = folder / "paper.toml"
    path.write_text('# mine\ntitle = "Peat"   # for now\n\n[times]\nread = 3\n', encoding="utf-8")
    answer = Answer({"low": 5, "places": ("a", "b"), "note": None}, by="Dr Sand", when="2026-02-10", note="in class")
    set_answer(folder, "length.paper", answer)
    set_answer(folder, "style", Answer(note="Chicago"))
    set_answer(folder, "sources.any-2", Answer(waived=True))
    text = path.read_text(encoding="utf-8")
    assert text.startswith('# mine\ntitle = "Peat"   # for now\n\n[times]\nread = 3\n')
    assert '[requirements."length.paper"]\nanswer = {low = 5, places = ["a", "b"]}\nby = "Dr Sand"\n' in text
    paper = read_paper(folder)
    assert paper.problems == ()
    assert paper.settings.answers == {
        "length.paper": Answer({"low": 5, "places": ("a", "b")}, by="Dr Sand", when="2026-02-10", note="in class"),
        "style": Answer(note="Chicago"),
        "sources.any-2": Answer(waived=True),
    }
    for requirement in paper.settings.answers:
        set_answer(folder, requirement, None)
    assert read_paper(folder).settings.answers == {}
    assert len(list_states(folder, "paper.toml")) == 8  # made, changed by hand, and six answers


@pytest.mark.parametrize(
    "before",
    [
        "",
        '[requirements."length.paper"]\nwaived = true\n',
        "[requirements.length.paper]\nwaived = true\n[times]\nread = 3\n[requirements.style]\nwaived = true\n",
        'requirements = {"length.paper" = {waived = true}, style = {waived = true}}\n',
        "[requirements]\nlength.paper.waived = true\n",
        'requirements."length.paper".waived = true\n',
    ],
)
def test_an_answer_takes_the_place_of_the_one_before(tmp_path: Path, before: str) -> None:
    """However the former answer was written, the new one is read alone, and the others stand."""
    (tmp_path / "paper.toml").write_text(before, encoding="utf-8")
    others = {key: value for key, value in read_paper(tmp_path).settings.answers.items() if key != "length.paper"}
    set_answer(tmp_path, "length.paper", Answer({"max": 900}))
    paper = read_paper(tmp_path)
    assert (dict(paper.settings.answers), paper.problems) == ({**others, "length.paper": Answer({"max": 900})}, ())
    assert ("read" in str(paper.settings.other)) == ("read" in before)


def test_what_is_no_table_is_not_set_into(tmp_path: Path) -> None:
    """Where paper.toml has something else under the name, nothing is written."""
    (tmp_path / "paper.toml").write_text("requirements = 5\n", encoding="utf-8")
    with pytest.raises(DeskError, match="no table"):
        set_answer(tmp_path, "style", Answer(waived=True))


def test_a_setting_is_set(desk: Path) -> None:
    """The day the sheet was given is put where it is read, and can be taken out."""
    folder = desk / "bog"
    folder.mkdir()
    set_setting(folder, "given", GIVEN)
    set_setting(folder, "style", "MLA 9")
    assert read_paper(folder).settings == PaperSettings(given=GIVEN, style="MLA 9")
    set_setting(folder, "style", None)
    assert read_paper(folder).settings == PaperSettings(given=GIVEN)
    assert is_paper(folder)


def test_settings_with_a_fault_are_not_rewritten(desk: Path) -> None:
    """A faulty paper.toml is mended by its writer before anything is set in it."""
    folder = make_paper(desk, PaperSettings(title="Peat"))
    (folder / "paper.toml").write_text("style = MLA\n", encoding="utf-8")
    with pytest.raises(DeskError, match="mended"):
        set_answer(folder, "style", Answer(waived=True))
    assert (folder / "paper.toml").read_text(encoding="utf-8") == "style = MLA\n"
