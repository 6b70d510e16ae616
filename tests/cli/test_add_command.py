"""``fairhand add``: what it prints, and how it ends."""

from __future__ import annotations

import io
import json
from collections.abc import Callable
from functools import partial
from pathlib import Path

import pytest

from fairhand.cli import main

EBB = "<!DOCTYPE html><title>Ebb</title><meta name='citation_author' content='Ada Lind'><meta name='citation_doi' content='10.5555/e'>"  # noqa: E501
BIB = "@article{ebb, title={Ebb}, author={Lind, Ada}, doi={10.5555/e}, year=2016}"


@pytest.fixture(autouse=True)
def nobody_at_the_keyboard(monkeypatch: pytest.MonkeyPatch) -> None:
    """Nothing is asked where nobody can answer."""
    monkeypatch.setattr("sys.stdin", io.StringIO())


@pytest.fixture
def run(run: Callable[..., tuple[int, str]]) -> Callable[..., tuple[int, str]]:
    """Runs the command."""
    return partial(run, "add")


def test_each_field_is_told_with_where_it_came_from(
    run: Callable[..., tuple[int, str]], demo_paper: Path, tmp_path: Path
) -> None:
    """And what is missing is the writer's to write; what could not be taken makes the exit code 1."""
    (tmp_path / "ebb.html").write_text(f"{EBB}<p>The ebb.", "utf-8")
    (tmp_path / "bad.pdf").write_bytes(b"%PDF-1.4 x")
    code, said = run(demo_paper, tmp_path / "ebb.html", tmp_path / "bad.pdf")
    assert code == 1
    assert "lind-nd: Ebb" in said
    assert "author, DOI: from its citation tags" in said
    assert "yours to write: when it appeared" in said
    assert "Not taken. bad.pdf" in said


def test_one_work_twice_is_offered_with_the_command_that_joins(
    run: Callable[..., tuple[int, str]], demo_paper: Path, tmp_path: Path
) -> None:
    """And with --join it is joined."""
    (tmp_path / "l.bib").write_text(BIB, "utf-8")
    (tmp_path / "ebb.html").write_text(f"{EBB}<p>The ebb.", "utf-8")
    assert run(demo_paper, tmp_path / "l.bib")[0] == 0
    code, said = run(demo_paper, tmp_path / "ebb.html")
    assert code == 0
    assert "--join-to ebb lind-nd" in said
    assert "has joined ebb" in run(demo_paper, "--join-to", "ebb", "lind-nd")[1]
    (tmp_path / "ebb.html").write_text(f"{EBB}<p>The ebb again.", "utf-8")
    assert "has joined ebb" in run(demo_paper, "--join", tmp_path / "ebb.html")[1]


def test_the_inbox_is_listed_and_taken(run: Callable[..., tuple[int, str]], demo_paper: Path) -> None:
    """Without a name of anything, what waits is told."""
    assert "Nothing waits" in run(demo_paper)[1]
    (demo_paper / "inbox").mkdir()
    (demo_paper / "inbox" / "ebb.html").write_text(f"{EBB}<p>The ebb.", "utf-8")
    assert "ebb.html" in run(demo_paper)[1]
    assert "lind-nd" in run(demo_paper, "--inbox")[1]
    assert "inbox is empty" in run(demo_paper, "--inbox")[1]


def test_nothing_is_asked_elsewhere_unless_it_is_allowed(run: Callable[..., tuple[int, str]], demo_paper: Path) -> None:
    """What would leave the machine is said before anything does."""
    code, said = run(demo_paper, "10.5555/e")
    assert code == 2
    assert "What leaves this machine" in said
    assert "until you allow it" in said
    assert run(demo_paper, "--allow-outside")[0] == 0
    assert "outside = true" in (demo_paper.parent / "desk.toml").read_text("utf-8")


def test_what_is_nothing_is_refused(run: Callable[..., tuple[int, str]], demo_paper: Path) -> None:
    """Before anything else is done."""
    code, said = run(demo_paper, "nosuch.pdf")
    assert code == 2
    assert "no such file" in said


def test_a_wrong_text_is_replaced(run: Callable[..., tuple[int, str]], demo_paper: Path, tmp_path: Path) -> None:
    """The old one is set aside; a file that is not there, or a source that is not, changes nothing."""
    better = tmp_path / "better.txt"
    better.write_text("A better text of the chapter.\n", "utf-8")
    code, said = run(demo_paper, better, "--text-of", "lund-1999")
    assert code == 0
    assert said == "better.txt is the text of lund-1999 now. The old one stands in sources/set aside/lund-1999.txt."
    assert run(demo_paper, better, "--text-of", "nobody")[1].endswith("quist-1988")
    assert "there is no such file" in run(demo_paper, tmp_path / "none.txt", "--text-of", "lund-1999")[1]


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
