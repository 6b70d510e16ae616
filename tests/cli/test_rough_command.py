"""The rough draft from the terminal."""

from __future__ import annotations

from pathlib import Path

import pytest

from fairhand.cli import main


def run(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, str]:
    """A command's exit code, and all that it printed on one line."""
    with pytest.raises(SystemExit) as ended:
        main(words)
    printed = capsys.readouterr()
    return int(ended.value.code or 0), " ".join((printed.out + printed.err).split())


def test_the_draft_is_begun_from_the_terminal(demo_paper: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A draft that is there is asked about first; the words are counted when that is asked."""
    paper = str(demo_paper)
    assert "Nothing is written yet" in run(capsys, "rough", paper)[1]
    assert run(capsys, "rough", paper, "--points")[0] == 0
    (demo_paper / "rough.md").write_text("Three more words.\n", "utf-8")
    assert "rough.md: 3 words." in run(capsys, "rough", paper)[1]
    code, told = run(capsys, "rough", paper, "--begin")
    assert (code, "there is a draft already" in told) == (2, True)
    assert run(capsys, "rough", paper, "--begin", "--over")[0] == 0
    assert (demo_paper / "draft.md").read_text("utf-8") == "Three more words.\n"
