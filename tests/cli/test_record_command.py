"""``fairhand record``."""

from __future__ import annotations

from pathlib import Path

import pytest

from fairhand.cli import main


def run(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, str]:
    """How the command ends, and what it says."""
    with pytest.raises(SystemExit) as ended:
        main([*words])
    told = capsys.readouterr()
    assert isinstance(ended.value.code, int)
    return ended.value.code, " ".join((told.out + told.err).split())


def test_the_record_is_told_printed_and_checked(
    demo_paper: Path, capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    """On this machine and, by the printed file alone, on any other; a change is told."""
    code, said = run(capsys, "record", str(demo_paper))
    assert code == 0
    assert "914 words came into the draft" in said
    assert "certifies nothing" in said
    sent = tmp_path / "sent.html"
    assert run(capsys, "record", str(demo_paper), "--print", "--as", "html", "--to", str(sent))[0] == 0
    code, said = run(capsys, "record", "--check", str(sent))
    assert code == 0
    assert "is whole" in said
    assert "Each of its states" in run(capsys, "record", str(demo_paper), "--check", str(sent))[1]
    sent.write_text(sent.read_text("utf-8").replace("914 words", "9,140 words"), "utf-8")
    code, said = run(capsys, "record", "--check", str(sent))
    assert code == 1
    assert "The page does not read as it was printed." in said


def test_the_papers_own_record_is_checked_however_it_is_asked(
    demo_paper: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """The folder before the option or after it; what is no record is refused in one line."""
    for words in (("record", str(demo_paper), "--check"), ("record", "--check", str(demo_paper))):
        code, said = run(capsys, *words)
        assert code == 0
        assert "Every state is whole" in said
    code, said = run(capsys, "record", "--check", str(demo_paper / "draft.md"))
    assert code == 2
    assert said.startswith("fairhand: draft.md: a printed record is a PDF or an HTML file")


def test_states_are_listed_on_request(demo_paper: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """All of them, or those of one file."""
    assert "draft.md, written" in run(capsys, "record", str(demo_paper), "--states")[1]
    assert "points.json" not in run(capsys, "record", str(demo_paper), "--file", "draft.md")[1]


def test_a_copy_in_conflict_is_told_with_the_states(demo_paper: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """It is a version of the file, and never passed over."""
    (demo_paper / "draft (1).md").write_text("Another.", "utf-8")
    said = run(capsys, "record", str(demo_paper), "--states")[1]
    assert "draft (1).md is another version of draft.md, left in conflict by a synchronised folder" in said
