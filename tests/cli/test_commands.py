"""The command line: what it prints, and how it ends."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import click
import pytest

from fairhand import errors
from fairhand.cli import COMMANDS, commands
from fairhand.cli.exit_codes import EXIT_CODES
from fairhand.readiness.contract import CONTRACT, OF_FINDING


def test_every_exception_has_its_exit_code() -> None:
    """The shell's one table names each class of the tree."""

    def tree(kind: type[errors.FairhandError]) -> set[type[errors.FairhandError]]:
        return {kind}.union(*map(tree, kind.__subclasses__()))

    ours = {kind for kind in tree(errors.FairhandError) if kind.__module__ == errors.__name__}
    assert set(EXIT_CODES) == ours


@pytest.mark.parametrize("name", COMMANDS)
def test_every_command_has_its_help(ends: Callable[..., int], name: str, capsys: pytest.CaptureFixture[str]) -> None:
    """Each command's own help is whole."""
    assert ends(name, "--help") == 0
    assert "Usage: fairhand" in capsys.readouterr().out
    assert commands.get_command(click.Context(commands), name) is not None


def test_the_verdict_as_json_is_the_contract(
    ends: Callable[..., int], demo_paper: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Keys are exactly those that other programs rely on, and each place is its quote."""
    assert ends("ready", str(demo_paper), "--json", "--on", "2027-02-08") == 1
    answer = json.loads(capsys.readouterr().out)
    assert tuple(answer) == CONTRACT
    draft = (demo_paper / "draft.md").read_text("utf-8")
    for finding in answer["findings"]:
        assert tuple(finding) == OF_FINDING
        if finding["start"] is not None:
            assert draft[finding["start"] : finding["end"]] == finding["quote"]
            assert draft.count("\n", 0, finding["start"]) + 1 == finding["line"]
    assert {r["id"] for r in answer["requirements"]} >= {"length.paper", "style", "due.final", "policy.ai"}
    assert {r["state"] for r in answer["requirements"]} <= {"met", "unmet", "ask", "waived"}


def test_printing_asks_before_it_leaves_matter_out(
    ends: Callable[..., int], demo_paper: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Asides and TKs stop the printing, unless it is to be done anyway; then they do not print."""
    assert ends("print", str(demo_paper), "--as", "md") == 1
    assert "--anyway" in capsys.readouterr().err
    assert not (demo_paper / "fair").exists()
    assert ends("print", str(demo_paper), "--as", "md", "--anyway") == 0
    printed = (demo_paper / "fair" / "tram-libraries.md").read_text("utf-8")
    assert "NB" not in printed
    assert "TK" not in printed


@pytest.mark.parametrize("kind", ["pdf", "docx", "odt", "html", "md"])
def test_each_form_is_written_where_it_is_asked(
    ends: Callable[..., int], demo_paper: Path, tmp_path: Path, kind: str
) -> None:
    """``--to`` names a file; the paper's folder is left as it was."""
    target = tmp_path / f"copy.{kind}"
    assert ends("print", str(demo_paper), "--as", kind, "--anyway", "--to", str(target)) == 0
    assert target.stat().st_size > 1000
    assert not (demo_paper / "fair").exists()


def test_an_answer_is_kept_and_taken_back(
    ends: Callable[..., int], demo_paper: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """What was asked is met once answered, waived once waived, and asked again when that is taken back."""

    def states() -> dict[str, str]:
        capsys.readouterr()
        ends("ready", str(demo_paper), "--json", "--on", "2027-02-08")
        return {r["id"]: r["state"] for r in json.loads(capsys.readouterr().out)["requirements"]}

    assert states()["policy.ai"] == "ask"
    assert ends("answer", "policy.ai", "task.argue", "--paper", str(demo_paper), "--say", "yes") == 0
    assert ends("answer", "style", "--waive", "--by", "Dr. Marrow", "--paper", str(demo_paper)) == 0
    assert [states()[i] for i in ("policy.ai", "task.argue", "style")] == ["met", "met", "waived"]
    assert ends("answer", "length.paper", "--set", "max=500", "--set", "min=100", "--paper", str(demo_paper)) == 0
    assert ends("answer", "policy.ai", "--undo", "--paper", str(demo_paper)) == 0
    assert "the answer is taken back" in capsys.readouterr().out
    assert ends("answer", "policy.ai", "--undo", "--paper", str(demo_paper)) == 0
    assert "there was no answer to take back" in capsys.readouterr().out
    assert [states()[i] for i in ("policy.ai", "length.paper")] == ["ask", "unmet"]


def test_an_unknown_requirement_is_refused_in_one_line(
    ends: Callable[..., int], demo_paper: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """The line names what the sheet asks."""
    assert ends("answer", "length.poem", "--paper", str(demo_paper)) == 2
    error = capsys.readouterr().err
    assert error.count("\n") == 1
    assert "length.paper" in error


def test_a_paper_is_begun_from_its_sheet(
    ends: Callable[..., int], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """The folder holds the sheet; the course is made once and found again by its title."""
    sheet = tmp_path / "sheet.txt"
    sheet.write_text("Write an essay of 1,000 words in MLA style. Due 3 March 2027.", "utf-8")
    desk = tmp_path / "desk"
    assert ends("desk", str(desk), "--begin", "--name", "Robin Å") == 0
    words = ("--brief", str(sheet), "--desk", str(desk), "--course", "History: 2")
    assert ends("new", "Who's “Afraid” of Déjà Vu?", *words) == 0
    assert ends("new", "Another", *words, "--given", "2027-01-18") == 0
    capsys.readouterr()
    assert ends("desk", str(desk)) == 0
    shown = capsys.readouterr().out
    assert "Déjà Vu" in shown
    assert "3 March 2027" in shown
    assert [path.name for path in (desk / "courses").iterdir()] == ["history-2"]
    assert (desk / "whos-afraid-of-deja-vu" / "brief.txt").read_bytes() == sheet.read_bytes()


def test_nothing_is_lost_when_a_draft_is_taken(
    ends: Callable[..., int], demo_paper: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A fair copy in DOCX comes in as a draft; the draft that stood there can be brought back."""
    before = (demo_paper / "draft.md").read_bytes()
    docx = demo_paper.parent / "draft.docx"
    assert ends("print", str(demo_paper), "--as", "docx", "--anyway", "--to", str(docx)) == 0
    assert ends("take", str(docx), "--paper", str(demo_paper)) == 0
    assert "knew to a page how far they would get" in (demo_paper / "draft.md").read_text("utf-8")
    capsys.readouterr()
    assert ends("record", str(demo_paper), "--file", "draft.md") == 0
    first = capsys.readouterr().out.splitlines()[0].split()[0]
    assert ends("record", str(demo_paper), "--back", first) == 0
    assert any(path.read_bytes() == before for path in demo_paper.glob("draft (state *).md"))
    assert ends("record", str(demo_paper), "--check") == 0


def test_sources_join_and_none_is_lost(
    ends: Callable[..., int], demo_paper: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A faulty entry is named; the others join; a faulty record that was there stays."""
    bib = tmp_path / "more.bib"
    bib.write_text("@book{ny, title={New}, author={Ny, Ola}, year=2001}\n@book{broken, title={\n", "utf-8")
    sources = demo_paper / "sources.json"
    held = json.loads(sources.read_text("utf-8"))
    sources.write_text(json.dumps([*held, {"no": "id"}]), "utf-8")
    assert ends("take", str(bib), "--paper", str(demo_paper)) == 0
    now = json.loads(sources.read_text("utf-8"))
    assert len(now) == len(held) + 2
    assert {"no": "id"} in now
    assert "ny" in capsys.readouterr().out


def test_citations_are_told(ends: Callable[..., int], demo_paper: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Each citation, the source that is meant, and why."""
    assert ends("citations", str(demo_paper)) == 0
    shown = capsys.readouterr().out
    assert "osei-2014" in shown
    assert "Sundby" in shown
