"""``fairhand record``."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path


def test_the_record_is_told_printed_and_checked(
    run: Callable[..., tuple[int, str]], demo_paper: Path, tmp_path: Path
) -> None:
    """On this machine and, by the printed file alone, on any other; a change is told."""
    code, said = run("record", str(demo_paper))
    assert code == 0
    assert "914 words came into the draft" in said
    assert "certifies nothing" in said
    sent = tmp_path / "sent.html"
    assert run("record", str(demo_paper), "--print", "--as", "html", "--to", str(sent))[0] == 0
    code, said = run("record", "--check", str(sent))
    assert code == 0
    assert "is whole" in said
    assert "Each of its states" in run("record", str(demo_paper), "--check", str(sent))[1]
    sent.write_text(sent.read_text("utf-8").replace("914 words", "9,140 words"), "utf-8")
    code, said = run("record", "--check", str(sent))
    assert code == 1
    assert "The page does not read as it was printed." in said


def test_the_papers_own_record_is_checked_however_it_is_asked(
    run: Callable[..., tuple[int, str]], demo_paper: Path
) -> None:
    """The folder before the option or after it; what is no record is refused in one line."""
    for words in (("record", str(demo_paper), "--check"), ("record", "--check", str(demo_paper))):
        code, said = run(*words)
        assert code == 0
        assert "Every state is whole" in said
    code, said = run("record", "--check", str(demo_paper / "draft.md"))
    assert code == 2
    assert said.startswith("fairhand: draft.md: a printed record is a PDF or an HTML file")


def test_states_are_listed_on_request(run: Callable[..., tuple[int, str]], demo_paper: Path) -> None:
    """All of them, or those of one file."""
    assert "draft.md, written" in run("record", str(demo_paper), "--states")[1]
    assert "points.json" not in run("record", str(demo_paper), "--file", "draft.md")[1]


def test_a_copy_in_conflict_is_told_with_the_states(run: Callable[..., tuple[int, str]], demo_paper: Path) -> None:
    """It is a version of the file, and never passed over."""
    (demo_paper / "draft (1).md").write_text("Another.", "utf-8")
    said = run("record", str(demo_paper), "--states")[1]
    assert "draft (1).md is another version of draft.md, left in conflict by a synchronised folder" in said
