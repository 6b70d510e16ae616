"""Sheets given to a paper that has begun."""

from __future__ import annotations

import datetime as dt
import tomllib
from pathlib import Path

import pytest

from fairhand.errors import DeskError, FairhandError, FileUnreadable, UnknownFormat
from fairhand.session.assignment.answering import answer_requirement
from fairhand.session.assignment.giving_sheets import give_sheet
from fairhand.session.assignment.sheets import read_sheets

SHEET = b"Write an essay of 1,000 words in MLA style. Due 3 March 2027."
MESSAGE = b"The essay may have 1,400 words."


@pytest.fixture
def paper(tmp_path: Path) -> Path:
    """A paper without a sheet."""
    (tmp_path / "ferry").mkdir()
    (tmp_path / "ferry" / "paper.toml").write_text('# mine\ntitle = "The Ferry"\n', "utf-8")
    return tmp_path / "ferry"


def test_the_later_word_wins(paper: Path) -> None:
    """The first sheet is the brief; a message of a later day, though put there in the same hour, overrules it."""
    assert give_sheet(paper, "../Essay.TXT", SHEET, dt.date(2027, 1, 11)) == "brief.txt"
    assert give_sheet(paper, "message.txt", MESSAGE, dt.date(2027, 1, 25)) == "brief/2027-01-25 message.txt"
    assert (paper / "brief.txt").read_bytes() == SHEET
    assert tomllib.loads((paper / "paper.toml").read_text("utf-8"))["given"] == dt.date(2027, 1, 11)
    brief, problems = read_sheets(paper)
    (length,) = (r for r in brief.requirements if r.kind == "length")
    assert 1400 in length.values.values()
    assert brief.conflicts
    assert problems == ()


def test_a_second_sheet_of_one_name_stands_beside_the_first(paper: Path) -> None:
    """Neither takes the other's place."""
    give_sheet(paper, "sheet.txt", SHEET)
    names = {give_sheet(paper, "message.txt", MESSAGE + extra) for extra in (b"", b" Or fewer.")}
    assert names == {"brief/message.txt", "brief/message (2).txt"}


@pytest.mark.parametrize(
    ("name", "data", "error"),
    [
        ("sheet.exe", SHEET, UnknownFormat),
        ("sheet.pdf", SHEET, FileUnreadable),
        ("sheet.txt", b"", FileUnreadable),
        ("again.txt", MESSAGE, DeskError),
    ],
)
def test_what_is_no_sheet_is_not_put_there(paper: Path, name: str, data: bytes, error: type[FairhandError]) -> None:
    """A kind that is not read, another kind than its name says, nothing, and what is there already."""
    give_sheet(paper, "sheet.txt", MESSAGE)
    before = sorted(paper.rglob("*.*"))
    with pytest.raises(error):
        give_sheet(paper, name, data)
    assert sorted(paper.rglob("*.*")) == before


def test_a_correction_is_of_the_values_kind_and_undone_by_the_sheets_own(paper: Path) -> None:
    """A number is a number; what is put back to the sheet's value is no correction any more; no words are no answer."""
    give_sheet(paper, "sheet.txt", SHEET)
    name = next(r.id for r in read_sheets(paper)[0].requirements if r.kind == "length")
    as_it_is = {"min": "1000", "max": "1000"}
    answer_requirement(paper, name, written={**as_it_is, "max": "1,300"}, by="Dr. Ashe")
    held = tomllib.loads((paper / "paper.toml").read_text("utf-8"))["requirements"][name]
    assert held["answer"] == {"max": 1300}
    assert held["by"] == "Dr. Ashe"
    answer_requirement(paper, name, written=as_it_is)
    assert (paper / "paper.toml").read_text("utf-8").rstrip() == '# mine\ntitle = "The Ferry"'
    with pytest.raises(FairhandError, match="nothing was said"):
        answer_requirement(paper, name, words="")
