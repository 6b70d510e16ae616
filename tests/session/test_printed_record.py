"""The record told in sittings, printed, and checked where nothing but the printed file is at hand."""

from __future__ import annotations

import datetime as dt
import json
import random
import shutil
import sqlite3
from pathlib import Path

import pytest

from fairhand.desk.record import check_record, keep_state, list_states
from fairhand.errors import FileUnreadable, UnknownFormat
from fairhand.hand_in.names import holds_name
from fairhand.record.document import write_document
from fairhand.record.page import read_page
from fairhand.session.record.printed_record import Checked, check_printed, compare_with_paper, print_record, tell_record

AT = dt.datetime(2027, 3, 1, 12, tzinfo=dt.UTC)
SOURCE = {"id": "a", "type": "book", "title": "Quays", "author": [{"family": "Vale", "given": "Anna"}]}


def write(paper: Path, name: str, text: str, day: int, hour: int, minute: int = 0, how: str = "written") -> None:
    """A state of a file, saved at an hour of February 2027; the file stands so."""
    (paper / name).write_text(text, "utf-8")
    moment = dt.datetime(2027, 2, day, hour, minute, tzinfo=dt.UTC)
    keep_state(paper, name, text.encode(), how, at=moment)  # type: ignore[arg-type]


def check(path: Path) -> Checked:
    """A printed record, looked through."""
    return check_printed(path.name, path.read_bytes())


@pytest.fixture
def paper(tmp_path: Path) -> Path:
    """A paper written on three days, in four sittings."""
    desk = tmp_path / "desk"
    folder = desk / "quays"
    folder.mkdir(parents=True)
    (desk / "desk.toml").write_text('name = "Ida Vance"\ntime_zone = "Etc/UTC"\n')
    write(folder, "paper.toml", 'title = "Quays"\n', 1, 9)
    write(folder, "jottings.md", "- who paid for them?\n", 1, 9, 10)
    write(folder, "sources.json", json.dumps([SOURCE]), 1, 15)
    write(folder, "draft.md", "# Quays\n\nThey were long.\n\n## Why\n\nTrade.\n", 3, 18)
    write(folder, "draft.md", "# Quays\n\nThey were long.\n\n## Why\n\nTrade, and war with it.\n", 3, 18, 20)
    write(folder, "readers.toml", '[[readers]]\nname = "Ines"\nsent = 2027-02-04\n', 4, 8)
    write(folder, "draft.md", "# Quays\n\nLong.\n\n## Why\n\nTrade, and war with it.\n", 9, 10, how="changed outside")
    return folder


def test_the_record_tells_each_sitting(paper: Path) -> None:
    """Words in and out by section, sources, readers, and what another program changed, each in its sitting."""
    document = tell_record(paper, AT)
    first, second, third, fourth, fifth = document.sittings
    assert (first.start.hour, first.end.minute, first.states) == (9, 10, (1, 2))
    assert [(one.part, one.came) for one in first.beside] == [("jottings", 4)]
    assert second.sources == ("Anna Vale, “Quays”",)
    assert [(one.part, one.came, one.went) for one in third.draft] == [("the opening", 4, 0), ("Why", 6, 0)]
    assert fourth.readers == ("sent to Ines",)
    assert fifth.outside == ("draft.md",)
    assert [(one.part, one.came, one.went) for one in fifth.draft] == [("the opening", 0, 2)]


@pytest.mark.parametrize("kind", ["pdf", "html"])
def test_a_printed_record_is_checked_anywhere(paper: Path, tmp_path: Path, kind: str) -> None:
    """With nothing of the paper at hand; beside the paper, its states are found in the paper's own record."""
    alone = shutil.move(print_record(paper, kind, at=AT), tmp_path / f"sent.{kind}")
    checked = check(Path(alone))
    assert checked.faults == ()
    assert checked.document.title == "Quays"
    assert compare_with_paper(checked.document, paper).startswith("Each of its states")
    assert holds_name("Ida Vance", "record", Path(alone).read_bytes()) == ()


@pytest.mark.parametrize(
    ("change", "fault"),
    [
        (('"came":6', '"came":60'), "the seal is not"),
        (('"title":"Quays"', '"title":"Wharves"'), "the seal is not"),
        (('"changed outside"', '"written"'), "does not follow"),
        (("2027-02-03T18:20", "2027-02-03T18:25"), "does not follow"),
    ],
)
def test_whoever_changes_a_printed_record_is_noticed(
    paper: Path, tmp_path: Path, change: tuple[str, str], fault: str
) -> None:
    """In its numbers, its title, its hours, or in how a state came about."""
    page = print_record(paper, "html", at=AT).read_text("utf-8")
    assert change[0] in page
    forged = tmp_path / "forged.html"
    forged.write_text(page.replace(*change), "utf-8")
    assert any(fault in one for one in check(forged).faults)


def test_a_page_that_reads_otherwise_than_its_list_is_noticed(paper: Path, tmp_path: Path) -> None:
    """Though the list within is as it was printed."""
    page = print_record(paper, "html", at=AT).read_text("utf-8")
    forged = tmp_path / "forged.html"
    forged.write_text(page.replace("6 words in", "6,000 words in", 1), "utf-8")
    assert check(forged).faults == ("the page does not read as it was printed",)


def test_any_letter_of_the_data_that_is_changed_is_noticed(paper: Path, tmp_path: Path) -> None:
    """Two hundred changes of one letter each, at places drawn by lot: no one of them passes."""
    page = print_record(paper, "html", at=AT).read_bytes()
    data = read_page(page, "record.html").encode()
    start = page.index(b'{"format"')
    chance = random.Random(7)  # noqa: S311 - the same changes in each run
    forged = tmp_path / "forged.html"
    for _ in range(200):
        at = start + chance.randrange(len(data))
        letter = chance.choice(b"0123456789abcdef")
        if page[at] == letter:
            continue
        forged.write_bytes(page[:at] + bytes([letter]) + page[at + 1 :])
        try:
            assert check(forged).faults
        except FileUnreadable:
            continue


def test_what_is_no_printed_record_is_told(paper: Path, tmp_path: Path) -> None:
    """One line: what it is, and what to choose."""
    for name, data, error in (
        ("a.html", b"<p>no</p>", FileUnreadable),
        ("a.pdf", b"%PDF-1.7", FileUnreadable),
        ("a.txt", b"", UnknownFormat),
    ):
        (tmp_path / name).write_bytes(data)
        with pytest.raises(error, match=r"a\.\w+: "):
            check(tmp_path / name)
    endless = print_record(paper, "html", at=AT).read_bytes().replace(b'"notes":0', b'"notes":1e999', 1)
    (tmp_path / "a.html").write_bytes(endless)
    with pytest.raises(FileUnreadable, match="print it anew"):
        check(tmp_path / "a.html")
    assert write_document(tell_record(paper, AT)) == write_document(tell_record(paper, AT))


def test_a_folder_copied_renamed_and_moved_keeps_its_record(paper: Path, tmp_path: Path) -> None:
    """The same states with the same hashes, wherever it stands; it goes on from them."""
    before = tell_record(paper, AT)
    copied = Path(shutil.copytree(paper, tmp_path / "copy of quays"))
    moved = Path(shutil.move(paper, tmp_path / "elsewhere"))
    renamed = moved.rename(moved.with_name("wharves"))
    for folder in (copied, renamed):
        assert tell_record(folder, AT).links == before.links
        assert check_record(folder) == ()
        write(folder, "draft.md", "# Quays\n\nLonger.\n", 20, 9)
        assert [state.hash for state in list_states(folder)][: len(before.links)] == [link[8] for link in before.links]
        assert check_record(folder) == ()


def test_a_damaged_state_is_noticed_and_the_others_told(paper: Path, tmp_path: Path) -> None:
    """What is whole is told; the printed record says of the damaged state that it does not follow."""
    with sqlite3.connect(paper / "record.sqlite") as record:
        record.execute("UPDATE state SET blob = X'00' WHERE seq = 5")
    document = tell_record(paper, AT)
    assert len(document.links) == 7
    assert [(one.part, one.came) for one in document.sittings[2].draft] == [("the opening", 4), ("Why", 2)]
    assert check_record(paper)
    printed = print_record(paper, "html", to=tmp_path / "r.html", at=AT)
    assert check(printed).faults == ("state 5 does not follow from the one before",)


def test_a_record_that_another_version_printed_is_whole_and_said_to_have_other_words(
    paper: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The page is held against what was printed, not against how this program would word it now."""
    with monkeypatch.context() as older:
        older.setattr("fairhand.record.page.SHOWS", "In other words.")
        printed = print_record(paper, "html", to=tmp_path / "older.html", at=AT)
    checked = check(printed)
    assert checked.faults == ()
    assert "another version" in checked.note
    assert check(print_record(paper, "html", to=tmp_path / "now.html", at=AT)).note == ""
