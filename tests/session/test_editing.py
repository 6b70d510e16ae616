"""The draft mended from within the program, and marks let stand."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

import pytest

from fairhand.errors import DraftChangedOnDisk
from fairhand.proof.stets import name_stet
from fairhand.session.editing import add_stet, likest_passage, mend_passage, remove_stet, save_text
from fairhand.session.kept import told_verdict
from fairhand.session.opened import OpenPaper

HOUR = dt.datetime(2027, 2, 8, 12, tzinfo=dt.UTC)
WAS = "He had had enough."


def test_a_passage_is_mended_and_nothing_else(tmp_path: Path) -> None:
    """Line ends, the byte order mark and every other passage stay as they are."""
    draft = tmp_path / "draft.md"
    draft.write_bytes("\ufeff# Rain\r\n\r\nHe had had\r\nenough.\r\n\r\nIt stopped.\r\n".encode())
    mend_passage(tmp_path, "He had had\nenough.", "He had\nenough.")
    assert draft.read_bytes() == "\ufeff# Rain\r\n\r\nHe had\r\nenough.\r\n\r\nIt stopped.\r\n".encode()


def test_a_passage_taken_out_leaves_no_gap(tmp_path: Path) -> None:
    """The blank lines after it go with it."""
    (tmp_path / "draft.md").write_text(f"One.\n\n{WAS}\n\nTwo.\n", "utf-8")
    mend_passage(tmp_path, WAS, "")
    assert (tmp_path / "draft.md").read_text("utf-8") == "One.\n\nTwo.\n"


def test_a_change_to_another_passage_is_kept(tmp_path: Path) -> None:
    """What another program wrote meanwhile elsewhere in the draft is there beside the mended passage."""
    (tmp_path / "draft.md").write_text(f"Another opening.\n\n{WAS}\n", "utf-8")
    mend_passage(tmp_path, WAS, "He had enough.")
    assert (tmp_path / "draft.md").read_text("utf-8") == "Another opening.\n\nHe had enough.\n"


@pytest.mark.parametrize("present", ["He had had quite enough.\n", f"{WAS}\n\n{WAS}\n"])
def test_a_passage_that_is_not_there_alone_is_not_written_over(tmp_path: Path, present: str) -> None:
    """Where it was changed, or stands twice, the writer chooses."""
    (tmp_path / "draft.md").write_text(present, "utf-8")
    with pytest.raises(DraftChangedOnDisk, match=r"draft\.md: .*; nothing was written"):
        mend_passage(tmp_path, WAS, "He had enough.")
    assert (tmp_path / "draft.md").read_text("utf-8") == present
    assert likest_passage(tmp_path, WAS)[0] == present.partition("\n")[0]


def test_one_of_several_alike_is_mended(tmp_path: Path) -> None:
    """The one that is meant, as long as there are as many as there were; what stands elsewhere may have changed."""
    (tmp_path / "draft.md").write_text(f"{WAS}\n\nNew.\n\n{WAS}\n", "utf-8")
    assert likest_passage(tmp_path, WAS, 1)[1] == (1, 2)
    mend_passage(tmp_path, WAS, "Enough.", (1, 2))
    assert (tmp_path / "draft.md").read_text("utf-8") == f"{WAS}\n\nNew.\n\nEnough.\n"
    mend_passage(tmp_path, WAS, "Enough.", (1, 2))
    assert (tmp_path / "draft.md").read_text("utf-8") == "Enough.\n\nNew.\n\nEnough.\n"
    with pytest.raises(DraftChangedOnDisk):
        mend_passage(tmp_path, "Enough.", "", (2, 3))


def test_a_text_is_not_saved_over_another(tmp_path: Path) -> None:
    """The hash that was seen decides; a new file has none."""
    seen = save_text(tmp_path, "jottings.md", "rain\n", None)
    assert save_text(tmp_path, "jottings.md", "rain, tide\n", seen.sha256).text == "rain, tide\n"
    with pytest.raises(DraftChangedOnDisk):
        save_text(tmp_path, "jottings.md", "snow\n", seen.sha256)


def test_a_stet_is_remembered_everywhere_and_can_be_taken_back(demo_paper: Path) -> None:
    """Neither page nor terminal tells of it any more, until its words change or it is taken back."""
    before = OpenPaper(demo_paper, at=HOUR).verdict()
    doubled = next(f for f in before.findings if f.check == "doubled-word")
    add_stet(demo_paper, doubled, before.draft, "as she said it", HOUR)
    told = told_verdict(demo_paper, at=HOUR)
    assert "doubled-word" not in {finding["check"] for finding in told["findings"]}
    assert [(one["check"], one["reason"]) for one in told["stets"]] == [("doubled-word", "as she said it")]
    stetted = OpenPaper(demo_paper, at=HOUR).verdict().stets
    remove_stet(demo_paper, name_stet(stetted[0].stet))
    assert OpenPaper(demo_paper, at=HOUR).verdict().findings == before.findings
