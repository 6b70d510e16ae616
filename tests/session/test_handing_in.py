"""The hand-in of a whole paper: files, hashes, statements, and no name where none may stand."""

from __future__ import annotations

import datetime as dt
import io
import re
import shutil
import zipfile
from pathlib import Path
from typing import Any

import pytest

from fairhand.errors import FairhandError, FileUnreadable, FolderNotWritable, MatterLeft, NameLeft
from fairhand.hand_in.names import holds_name
from fairhand.session.hand_in.handing_in import (
    Made,
    keep_receipt,
    look_at_hand_in,
    make_hand_in,
    read_hand_in,
    set_name,
    state,
    was_handed_in,
)
from fairhand.session.kept import told_verdict
from fairhand.session.opened import OpenPaper
from fairhand.session.schedule.plan import plan_desk

AT = dt.datetime(2027, 2, 19, 15, 20, tzinfo=dt.UTC)


@pytest.fixture
def paper(demo_paper: Path) -> Path:
    """The demo's paper with nothing left in it that is not printed."""
    draft = demo_paper / "draft.md"
    text = draft.read_text("utf-8").replace("[NB: find out what the book was?]", "").replace("TK", "")
    draft.write_text(text, "utf-8")
    return demo_paper


def hand_in(folder: Path, **more: Any) -> Made:
    """What is made of a paper."""
    return make_hand_in(OpenPaper(folder, at=AT), told_verdict(folder, at=AT), at=AT, **more)


def writer(folder: Path) -> str:
    """The desk's writer."""
    return OpenPaper(folder).look().paper.desk.name


def test_what_is_handed_in_stands_apart_with_its_hashes(paper: Path) -> None:
    """The form that the sheet asks for, under its name; whether a file is that one can be asked later."""
    made = hand_in(paper)
    assert made.folder.parent == paper / "fair"
    (file,) = made.files
    assert file.name == "tram-libraries.pdf"
    sheet = (made.folder / "hashes.txt").read_text()
    assert "by the sheet" in sheet
    assert "not ready" in sheet
    (handed,) = read_hand_in(paper).handed
    assert (handed.words, handed.files[0][0]) == (made.words, file.name)
    assert was_handed_in(paper, file.read_bytes()) == handed.when
    assert was_handed_in(paper, file.read_bytes() + b" ") == ""


def test_a_second_hand_in_leaves_the_first(paper: Path) -> None:
    """Within the same minute, too."""
    first, second = hand_in(paper), hand_in(paper)
    assert first.folder != second.folder
    assert first.files[0].exists()
    assert len(read_hand_in(paper).handed) == 2


def test_statements_are_the_writers_and_go_with_the_paper(paper: Path) -> None:
    """None is filled in; what was taken back is gone."""
    assert read_hand_in(paper).statements == {}
    state(paper, "help", "My sister read it aloud to me.")
    state(paper, "tools", "None.")
    state(paper, "tools", "")
    made = hand_in(paper)
    assert [path.name for path in made.files] == ["tram-libraries.pdf", "statements.txt"]
    assert made.files[1].read_text() == "Help received\n\nMy sister read it aloud to me.\n"
    with pytest.raises(FairhandError, match="there are tools, help, originality"):
        state(paper, "oath", "I swear.")


def test_what_the_sheet_wants_stated_is_missing_until_it_is_written(paper: Path) -> None:
    """The words of the sheet are shown with it."""
    sheet = paper / "brief.txt"
    sheet.write_text(sheet.read_text("utf-8") + "\nAttach a signed declaration of originality.\n", "utf-8")
    stands = look_at_hand_in(OpenPaper(paper))
    assert stands.missing == ("originality",)
    assert stands.asked.statements[-1].asks == "Attach a signed declaration of originality."
    state(paper, "originality", "It is mine.")
    assert look_at_hand_in(OpenPaper(paper)).missing == ()


def test_one_archive_holds_the_same_files(paper: Path) -> None:
    """And nothing but them."""
    state(paper, "help", "Nobody.")
    (file,) = hand_in(paper, as_zip=True, form="docx").files
    with zipfile.ZipFile(file) as archive:
        assert archive.namelist() == ["tram-libraries.docx", "statements.txt"]
        assert archive.testzip() is None


@pytest.mark.parametrize("form", ["pdf", "docx", "odt", "html", "md"])
@pytest.mark.parametrize("called", ["", "Candidate 0421"])
def test_no_name_stands_in_anything_that_is_handed_in(paper: Path, form: str, called: str) -> None:
    """In no file, its properties, its name, its archive or the sheet of its hashes, searched in the unpacked bytes."""
    name = writer(paper)
    named = hand_in(paper, form=form)
    assert any(holds_name(name, path.name, path.read_bytes()) for path in named.files) or form == "md"
    set_name(paper, anonymous=True, called=called)
    made = hand_in(paper, form=form, as_zip=True)
    for path in made.folder.rglob("*"):
        if path.is_file():
            assert holds_name(name, path.relative_to(made.folder).as_posix(), path.read_bytes()) == ()
    if called and form in {"docx", "html", "md"}:
        with zipfile.ZipFile(io.BytesIO(made.files[0].read_bytes())) as archive:
            data = archive.read(archive.namelist()[0])
        assert holds_name("0421", "paper", data)


def test_a_name_in_the_text_is_told_and_not_taken_out(paper: Path) -> None:
    """The writer's sentences are the writer's: the line is named, and nothing is made until it is said anyway."""
    name = writer(paper)
    draft = paper / "draft.md"
    draft.write_text(draft.read_text("utf-8") + f"\nThanks are due to {name}'s mother.\n", "utf-8")
    sheet = paper / "brief.txt"
    sheet.write_text(sheet.read_text("utf-8") + "\nDo not put your name on the paper.\n", "utf-8")
    lines = len(draft.read_text("utf-8").splitlines())
    assert look_at_hand_in(OpenPaper(paper)).named_at[-1] == lines
    with pytest.raises(NameLeft, match=f"line .*{lines}"):
        hand_in(paper)
    assert not (paper / "fair").exists()
    assert hand_in(paper, anyway=True).files


def test_the_writer_overrules_the_sheet_on_the_name(paper: Path) -> None:
    """Both ways, and leaves it to the sheet again."""
    sheet = paper / "brief.txt"
    sheet.write_text(sheet.read_text("utf-8") + "\nEssays are marked anonymously.\n", "utf-8")
    assert look_at_hand_in(OpenPaper(paper)).anonymous
    set_name(paper, anonymous=False, called="")
    assert not look_at_hand_in(OpenPaper(paper)).anonymous
    set_name(paper, anonymous=None, called="")
    assert look_at_hand_in(OpenPaper(paper)).anonymous


def test_a_receipt_is_kept_with_what_was_handed_in(paper: Path) -> None:
    """As words, or as a file beside it; before there is a hand-in, there is nothing to keep it with."""
    with pytest.raises(FileUnreadable, match="nothing was handed in"):
        keep_receipt(paper, "No. 7")
    made = hand_in(paper)
    keep_receipt(paper, "No. 7")
    assert read_hand_in(paper).handed[-1].receipt == "No. 7"
    assert plan_desk(paper.parent, AT, keep=False).steps == {}
    kept = keep_receipt(paper, file=("mail.txt", b"It has come."))
    assert (paper / kept).read_bytes() == b"It has come."
    assert (paper / kept).parent == made.folder
    assert read_hand_in(paper).handed[-1].receipt == kept


def test_a_receipt_never_leaves_the_paper(paper: Path) -> None:
    """A folder that the file names elsewhere, by somebody's hand, gets nothing."""
    (paper.parent / "elsewhere").mkdir()
    hand_in(paper)
    told = paper / "hand-in.toml"
    told.write_text(re.sub(r'folder = ".*"', 'folder = "../elsewhere"', told.read_text("utf-8")), "utf-8")
    assert keep_receipt(paper, file=("mail.txt", b"It has come.")) == "receipt mail.txt"
    assert list((paper.parent / "elsewhere").iterdir()) == []


def test_what_is_left_in_the_draft_stops_it(demo_paper: Path) -> None:
    """Nothing is made of a draft with asides in it, unless it is said anyway."""
    with pytest.raises(MatterLeft):
        hand_in(demo_paper)
    assert not (demo_paper / "fair").exists()
    assert hand_in(demo_paper, anyway=True).files


def test_a_closed_folder_is_told_and_nothing_is_kept_of_it(paper: Path) -> None:
    """One clear line, and no hand-in that is not there."""
    (paper / "fair").mkdir()
    (paper / "fair").chmod(0o555)
    try:
        with pytest.raises(FolderNotWritable, match="nothing can be written there"):
            hand_in(paper)
    finally:
        (paper / "fair").chmod(0o755)
    assert read_hand_in(paper).handed == ()
    shutil.rmtree(paper / "fair")


@pytest.mark.parametrize(
    ("asked", "called", "name"),
    [
        ("Surname_Essay2.pdf", None, "Achterberg_Essay2.pdf"),
        ("FirstName_LastName_Trams.pdf", None, "Robin_Achterberg_Trams.pdf"),
        ("Surname_Essay2.pdf", "", "tram-libraries.pdf"),
        ("Surname_Essay2.pdf", "Candidate 0421", "0421_Essay2.pdf"),
    ],
)
def test_the_file_is_named_as_the_sheet_has_it(paper: Path, asked: str, called: str | None, name: str) -> None:
    """Its parts filled with the name, or with what stands in its place; where nothing does, the folder's name."""
    desk = paper.parent / "desk.toml"
    desk.write_text(re.sub('name = ".*"', 'name = "Robin Achterberg"', desk.read_text("utf-8")), "utf-8")
    sheet = paper / "brief.txt"
    sheet.write_text(f"{sheet.read_text('utf-8')}\nSave it as {asked}.\n", "utf-8")
    if called is not None:
        set_name(paper, anonymous=True, called=called)
    assert look_at_hand_in(OpenPaper(paper)).file_name == name
