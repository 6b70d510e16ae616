"""The outline from the terminal."""

from __future__ import annotations

import json
from collections.abc import Callable
from functools import partial
from pathlib import Path

import pytest


@pytest.fixture
def run(run: Callable[..., tuple[int, str]], demo_paper: Path) -> Callable[..., tuple[int, str]]:
    """Runs the command on the paper."""
    return partial(run, "outline", demo_paper)


def test_the_outline_is_told_and_corrected(run: Callable[..., tuple[int, str]], demo_paper: Path) -> None:
    """Each paragraph with what it serves; a correction holds after the draft was changed, and is taken back."""
    code, told = run()
    assert code == 0
    assert " 1 " in told
    assert "serves p1" in told
    assert "Does it hang together" in told
    assert "The argument does not stand yet" in told
    code, told = run("--of", "2", "--says", "What trams were for.", "--off-focus", "--point", "")
    assert "2 What trams were for. (yours)" in told
    assert "serves no point that could be told; off the focus;" in told
    draft = demo_paper / "draft.md"
    draft.write_text(draft.read_text("utf-8").replace(". ", ".  ", 40), "utf-8")
    assert "What trams were for. (yours)" in run()[1]
    assert "(yours)" not in run("--of", "2", "--as-seen")[1]
    assert not (demo_paper / "outline.jsonl").read_text("utf-8")


def test_a_question_is_answered(run: Callable[..., tuple[int, str]], demo_paper: Path) -> None:
    """The answer stands beside it and is kept with its hour."""
    assert "You: It does not." in run("--answer", "conclusion", "It does  not.")[1]
    (line,) = (demo_paper / "outline.jsonl").read_text("utf-8").splitlines()
    kept = json.loads(line)
    assert (kept["asks"], kept["answer"]) == ("conclusion", "It does not.")
    assert kept["when"]


@pytest.mark.parametrize(
    ("options", "says"),
    [
        (["--of", "99", "--says", "x"], "--of: name the paragraph by its number, 1 to "),
        (["--says", "x"], "--of: name the paragraph by its number, 1 to "),
        (["--of", "1", "--point", "p99"], "--point: there is no point p99; there are p1"),
        (["--answer", "beauty", "Yes."], "“beauty” is none of the questions; they are verb, hangs-together"),
    ],
)
def test_what_is_not_there_cannot_be_corrected(
    run: Callable[..., tuple[int, str]], demo_paper: Path, options: list[str], says: str
) -> None:
    """One line says what, where, and what to do; nothing is written."""
    code, told = run(*options)
    assert code == 2
    assert says in told
    assert not (demo_paper / "outline.jsonl").exists()
