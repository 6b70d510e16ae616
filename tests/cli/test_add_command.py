"""``fairhand add``: what it prints, and how it ends."""

from __future__ import annotations

import io
import json
from pathlib import Path

import pytest

from fairhand.cli import main

EBB = "<!DOCTYPE html><title>Ebb</title><meta name='citation_author' content='Ada Lind'><meta name='citation_doi' content='10.5555/e'>"  # noqa: E501
BIB = "@article{ebb, title={Ebb}, author={Lind, Ada}, doi={10.5555/e}, year=2016}"


@pytest.fixture(autouse=True)
def nobody_at_the_keyboard(monkeypatch: pytest.MonkeyPatch) -> None:
    """Nothing is asked where nobody can answer."""
    monkeypatch.setattr("sys.stdin", io.StringIO())


def run(capsys: pytest.CaptureFixture[str], *words: str | Path) -> tuple[int, str]:
    """How the command ends, and what it printed, on one line."""
    with pytest.raises(SystemExit) as ended:
        main(["add", *map(str, words)])
    printed = capsys.readouterr()
    assert isinstance(ended.value.code, int)
    return ended.value.code, " ".join((printed.out + printed.err).split())


def test_each_field_is_told_with_where_it_came_from(
    demo_paper: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """And what is missing is the writer's to write; what could not be taken makes the exit code 1."""
    (tmp_path / "ebb.html").write_text(f"{EBB}<p>The ebb.", "utf-8")
    (tmp_path / "bad.pdf").write_bytes(b"%PDF-1.4 x")
    code, said = run(capsys, demo_paper, tmp_path / "ebb.html", tmp_path / "bad.pdf")
    assert code == 1
    assert "lind-nd: Ebb" in said
    assert "author, DOI: from its citation tags" in said
    assert "yours to write: when it appeared" in said
    assert "Not taken. bad.pdf" in said


def test_one_work_twice_is_offered_with_the_command_that_joins(
    demo_paper: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """And with --join it is joined."""
    (tmp_path / "l.bib").write_text(BIB, "utf-8")
    (tmp_path / "ebb.html").write_text(f"{EBB}<p>The ebb.", "utf-8")
    assert run(capsys, demo_paper, tmp_path / "l.bib")[0] == 0
    code, said = run(capsys, demo_paper, tmp_path / "ebb.html")
    assert code == 0
    assert "--join-to ebb lind-nd" in said
    assert "has joined ebb" in run(capsys, demo_paper, "--join-to", "ebb", "lind-nd")[1]
    (tmp_path / "ebb.html").write_text(f"{EBB}<p>The ebb again.", "utf-8")
    assert "has joined ebb" in run(capsys, demo_paper, "--join", tmp_path / "ebb.html")[1]


def test_the_inbox_is_listed_and_taken(demo_paper: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Without a name of anything, what waits is told."""
    assert "Nothing waits" in run(capsys, demo_paper)[1]
    (demo_paper / "inbox").mkdir()
    (demo_paper / "inbox" / "ebb.html").write_text(f"{EBB}<p>The ebb.", "utf-8")
    assert "ebb.html" in run(capsys, demo_paper)[1]
    assert "lind-nd" in run(capsys, demo_paper, "--inbox")[1]
    assert "inbox is empty" in run(capsys, demo_paper, "--inbox")[1]


def test_nothing_is_asked_elsewhere_unless_it_is_allowed(demo_paper: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """What would leave the machine is said before anything does."""
    code, said = run(capsys, demo_paper, "10.5555/e")
    assert code == 2
    assert "What leaves this machine" in said
    assert "until you allow it" in said
    assert run(capsys, demo_paper, "--allow-outside")[0] == 0
    assert "outside = true" in (demo_paper.parent / "desk.toml").read_text("utf-8")


def test_what_is_nothing_is_refused(demo_paper: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Before anything else is done."""
    code, said = run(capsys, demo_paper, "nosuch.pdf")
    assert code == 2
    assert "no such file" in said


def test_a_wrong_text_is_replaced(demo_paper: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """The old one is set aside; a file that is not there, or a source that is not, changes nothing."""
    better = tmp_path / "better.txt"
    better.write_text("A better text of the chapter.\n", "utf-8")
    code, said = run(capsys, demo_paper, better, "--text-of", "lund-1999")
    assert code == 0
    assert said == "better.txt is the text of lund-1999 now. The old one stands in sources/set aside/lund-1999.txt."
    assert run(capsys, demo_paper, better, "--text-of", "nobody")[1].endswith("quist-1988")
    assert "there is no such file" in run(capsys, demo_paper, tmp_path / "none.txt", "--text-of", "lund-1999")[1]


def test_a_source_is_taken_off_the_list(demo_paper: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """By its id; one that is not there is refused, with those that are."""
    held = [one["id"] for one in json.loads((demo_paper / "sources.json").read_text("utf-8"))]
    with pytest.raises(SystemExit) as ended:
        main(["add", str(demo_paper), "--remove", held[0]])
    assert ended.value.code == 0
    assert [one["id"] for one in json.loads((demo_paper / "sources.json").read_text("utf-8"))] == held[1:]
    with pytest.raises(SystemExit) as ended:
        main(["add", str(demo_paper), "--remove", held[0]])
    assert ended.value.code == 2
    assert held[1] in capsys.readouterr().err


def test_the_papers_own_sheet_is_no_source(demo_paper: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A folder that holds the sheet too is taken in without it."""
    folder = demo_paper.parent / "downloads"
    folder.mkdir()
    sheet = next(demo_paper.glob("brief.*"))
    (folder / f"sheet{sheet.suffix}").write_bytes(sheet.read_bytes())
    (folder / "other.txt").write_text("Another text.\n", "utf-8")
    with pytest.raises(SystemExit):
        main(["add", str(demo_paper), str(folder)])
    shown = capsys.readouterr().out
    assert "it is the assignment sheet of this paper" in " ".join(shown.split())
    assert "other" in shown
