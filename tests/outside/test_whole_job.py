"""The whole job on one paper, from its sheet to the archive that is handed in and the paper put away.

**Source**: the paper ``rain-gardens`` with its sheet, sources and two drafts, made for measuring this program (see
CONTRIBUTING, outside data). Nothing of it stands here; the test skips where it is missing.
"""

from __future__ import annotations

import json
import shutil
import zipfile
from collections.abc import Callable
from pathlib import Path

import pytest

from fairhand.cli import main
from fairhand.desk.record import check_record
from fairhand.hand_in.names import holds_name

NAME = "R. Ferrier-Quill"
ON = "2023-11-10"


@pytest.fixture
def matter(outside_data: Callable[[str], Path]) -> Path:
    """The paper's matter."""
    return outside_data("papers/rain-gardens")


@pytest.fixture
def say(capsys: pytest.CaptureFixture[str]) -> Callable[..., str]:
    """Runs a command, which ends as it should, and gives what it says."""

    def run(*words: object, ends: tuple[int, ...] = (0,)) -> str:
        with pytest.raises(SystemExit) as ended:
            main([str(word) for word in words])
        told = capsys.readouterr()
        assert ended.value.code in ends, f"{words}: {told.out}{told.err}"
        return " ".join((told.out + told.err).split())

    return run


def test_the_whole_job_from_the_terminal(matter: Path, tmp_path: Path, say: Callable[..., str]) -> None:
    """Every stage touched, from the sheet to the paper put away; no name in what is handed in, and nothing lost."""
    desk = tmp_path / "desk"
    say("desk", desk, "--begin", "--name", NAME, "--zone", "Etc/UTC")
    say("new", "Slowing the Storm", "--brief", matter / "brief.txt", "--desk", desk)
    paper = desk / "slowing-the-storm"
    # Preparation
    assert "1,350 to 1,600 words" in say("brief", paper)
    (paper / "jottings.md").write_text("- what does a cloudburst cost?\n- who digs?\n", "utf-8")
    say("jot", paper, "--sort")
    say("focus", paper, "--set", "Rain gardens before pipes", "--ask", "What do they hold back?")
    shutil.copyfile(matter / "points.json", paper / "points.json")
    assert "find 8 sources" in say("plan", desk, "--on", ON, ends=(0, 1))
    # Research
    say("add", paper, matter / "sources.json")
    shutil.copytree(matter / "sources", paper / "sources", dirs_exist_ok=True)
    sources = json.loads((paper / "sources.json").read_text("utf-8"))
    say("find", paper, "rain")
    say("note", paper, sources[0]["id"], "To be looked up again.", "--kind", "thought")
    say("support", paper)
    # Drafting
    (paper / "rough.md").write_text("Water wants room.\n", "utf-8")
    say("rough", paper)
    shutil.copyfile(matter / "draft.md", paper / "draft.md")
    say("outline", paper, ends=(0, 1))
    assert "not ready" in say("ready", paper, "--on", ON, ends=(1,)).lower()
    # Correction: the faults of the first draft are mended in the second
    shutil.copyfile(matter / "clean.md", paper / "draft.md")
    say("citations", paper)
    told = say("ready", paper, "--on", ON, ends=(0, 1))
    assert "left, in this order" in told
    say("print", paper, "--proof")
    say("proof", paper, "--begin", "paper")
    say("proof", paper, "--end")
    say("final", paper, "--fit")
    # The hand-in, without the name
    say("hand-in", paper, "--anonymous", "--called", "Candidate 0421", ends=(0, 1))
    say("hand-in", paper, "--state", "help", "Nobody helped me.", "--make", "--zip")
    (made,) = paper.glob("fair/hand-in*")
    (archive,) = (made / "to hand in").iterdir()
    with zipfile.ZipFile(archive) as whole:
        assert whole.testzip() is None
        assert sorted(Path(name).suffix for name in whole.namelist()) == [".pdf", ".txt"]
    for path in made.rglob("*"):
        if path.is_file():
            assert holds_name(NAME, path.name, path.read_bytes()) == ()
    say("hand-in", paper, "--receipt", "No. 7")
    printed = tmp_path / "record.pdf"
    say("record", paper, "--print", "--to", printed)
    assert holds_name(NAME, printed.name, printed.read_bytes()) == ()
    assert "is whole" in say("record", "--check", printed)
    # What came back
    say("returned", paper, "--mark", "A-", "--by", "argument and focus", "36/40", "--put-away")
    away = desk / "done" / "slowing-the-storm"
    assert check_record(away) == ()
    assert "A-" in say("desk", desk)
