"""The paper is named first, in every command and in the same way; each command's help says it with an example."""

from __future__ import annotations

import shlex
import shutil
from collections.abc import Callable
from pathlib import Path

import click
import pytest

from fairhand.cli import COMMANDS, commands
from fairhand.cli.examples import EXAMPLES


@pytest.fixture
def seals(demo_paper: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A paper called harbour-seals on the desk that one stands on."""
    folder = demo_paper.parent / "harbour-seals"
    shutil.copytree(demo_paper, folder)
    monkeypatch.chdir(demo_paper.parent)
    return folder


@pytest.mark.parametrize("name", COMMANDS)
def test_each_example_can_be_typed(name: str, seals: Path) -> None:
    """Each command has an example; its words and options are those of the command."""
    (seals.parent / "draft for Mina.docx").touch()
    assert EXAMPLES[name]
    for example in EXAMPLES[name]:
        program, called, *words = shlex.split(example)
        assert (program, called) == ("fairhand", name)
        top = commands.make_context("fairhand", [], resilient_parsing=True)
        command = commands.get_command(top, name)
        assert command is not None
        command.make_context(name, [*words], parent=top)
        wide = click.Context(command, info_name=name, parent=top, max_content_width=200, terminal_width=200)
        assert example in command.get_help(wide)


def test_the_paper_is_named_first_or_left_out(
    told: Callable[..., tuple[int, str, str]], seals: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """From the desk the paper is named; where one stands in it, its name may be left out; ``--paper`` still serves."""
    assert told("answer", "harbour-seals", "policy.ai", "--say", "kept")[0] == 0
    assert told("answer", "policy.ai", "--undo", "--paper", "harbour-seals")[0] == 0
    assert told("find", "harbour-seals", "tram")[0] == 0
    assert told("answer", "policy.ai") == (
        2,
        "",
        "fairhand: policy.ai: there is no such folder; name a paper's folder, or make one with `fairhand new`\n",
    )
    monkeypatch.chdir(seals)
    assert told("answer", "policy.ai", "--say", "kept")[0] == 0
    assert told("find", "tram")[1] == told("find", ".", "tram")[1]
    assert told("find", "sources")[1] == told("find", ".", "sources")[1]
    assert "no-such.docx" in told("take", "no-such.docx")[2]
    assert told("take", "../harbour-seals", "no-such.docx")[2].startswith("fairhand: no-such.docx")
    assert told("brief")[1] == told("brief", "harbour-seals")[1] != ""


@pytest.mark.usefixtures("seals")
def test_a_step_is_named_after_its_paper(told: Callable[..., tuple[int, str, str]]) -> None:
    """A step is named with its paper as two words, or as one with a stroke."""
    assert told("done", "harbour-seals", "proof", "--minutes", "5")[0] == 0
    assert told("done", "harbour-seals/proof", "--undo")[0] == 0
    assert told("done", "harbour-seals", "proof", "more")[0] == 2


def test_what_is_to_be_typed_next_can_be_typed(told: Callable[..., tuple[int, str, str]], seals: Path) -> None:
    """A command that is told as the next one names the paper, where one does not stand in it."""
    assert "fairhand offcut harbour-seals --lines" in told("offcut", "harbour-seals")[1]
    (seals / "brief.txt").write_text("Write 900 words. AI may be used for spelling only if you declare it.", "utf-8")
    shut = told("copy-edit", "harbour-seals")[1]
    assert 'fairhand answer harbour-seals policy.ai --say "They may be used"' in shut


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (("plan", "--on", "9999-12-31"), "too far from today"),
        (("plan", "--on", "1066-10-14"), "too far from today"),
        (("desk", "no-such-desk"), "fairhand desk --begin no-such-desk"),
        (("desk", "--begin", "other", "--zone", "Mars/Olympus"), "no time zone"),
        (("new", " "), "give the paper a title"),
        (("brief", "."), "name a paper's folder"),
    ],
    ids=["late", "early", "no-desk", "no-zone", "no-title", "no-sheet"],
)
def test_odd_requests_are_refused(
    told: Callable[..., tuple[int, str, str]],
    words: tuple[str, ...],
    says: str,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """What cannot be meant is refused in plain words, and nothing is made."""
    (tmp_path / "empty").mkdir()
    monkeypatch.chdir(tmp_path / "empty")
    code, _, err = told(*words)
    assert code == 2
    assert says in err
    assert not list((tmp_path / "empty").iterdir())


@pytest.mark.parametrize("name", ["copy-edit", "aloud", "proof", "fit"])
def test_a_paper_without_a_draft(told: Callable[..., tuple[int, str, str]], name: str, seals: Path) -> None:
    """Where there is no draft yet, that is said, and nothing else is told of it."""
    (seals / "draft.md").unlink()
    (seals / "brief.txt").write_text("Write an essay of 900 words in MLA style.", "utf-8")
    code, out, _ = told(name, "harbour-seals")
    assert code == 0
    assert "There is no draft yet." in out
    assert "Nothing that a check could find" not in out


def test_nothing_is_answered_where_one_of_the_names_is_wrong(
    told: Callable[..., tuple[int, str, str]], seals: Path
) -> None:
    """All that is named is looked at first; the nearest names are told."""
    code, out, err = told("answer", "harbour-seals", "policy.ai", "length.papers")
    assert (code, out) == (2, "")
    assert "the nearest are length.paper" in err
    assert not (seals / "paper.toml").exists() or "policy.ai" not in (seals / "paper.toml").read_text("utf-8")


def test_a_step_of_the_named_paper_alone_is_meant(told: Callable[..., tuple[int, str, str]], demo_paper: Path) -> None:
    """A step that only another paper has is not called done in its place."""
    other = demo_paper.parent / "tides"
    other.mkdir()
    (other / "brief.txt").write_text("Write an essay of 900 words. Due 3 March 2099.", "utf-8")
    assert told("done", str(demo_paper), "jottings", "--minutes", "5")[0] == 2
    assert not (other / "time.jsonl").exists()


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (("done",), "fairhand done: Missing argument '[PAPER] STEP'. (fairhand done --help)\n"),
        (("plan", "--on", "soon"), "soon is no day; write it as 2027-01-18 (fairhand plan --help)\n"),
        (("offcut", "harbour-seals", "--cut"), "(fairhand offcut --help)\n"),
        (("sing",), "fairhand: No such command 'sing'"),
    ],
    ids=["missing", "no-day", "no-option", "no-command"],
)
@pytest.mark.usefixtures("seals")
def test_words_that_cannot_be_meant_are_refused_in_one_line(
    told: Callable[..., tuple[int, str, str]], words: tuple[str, ...], says: str
) -> None:
    """The line names the command, what was wrong, and where its words are told."""
    code, _, err = told(*words)
    assert code == 2
    assert says in err
    assert err.count("\n") == 1


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (("take", "harbour-seals", "notes.md"), "is put into the folder as draft.md"),
        (("take", "harbour-seals", "lund.pdf"), "taken in with fairhand add"),
        (("record", "harbour-seals", "--back", "999"), "fairhand record --states"),
        (("rough", "harbour-seals", "--begin"), "(--over)"),
        (("lapses", "harbour-seals", "--right", "a lot"), "--wrong"),
        (("hand-in", "harbour-seals", "--make"), "(--anyway)"),
    ],
    ids=["plain-draft", "source", "state", "rough", "lapse", "hand-in"],
)
def test_a_refusal_says_what_can_be_typed_instead(
    told: Callable[..., tuple[int, str, str]], words: tuple[str, ...], says: str, seals: Path
) -> None:
    """The option or the command that does what was meant stands in the line."""
    (seals.parent / "notes.md").write_text("# Notes", "utf-8")
    (seals.parent / "lund.pdf").write_bytes(b"%PDF-1.7")
    (seals / "rough.md").write_text("rough words", "utf-8")
    code, _, err = told(*words)
    assert code in {1, 2}
    assert says in err
    assert err.count("\n") == 1
