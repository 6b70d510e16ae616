"""``fairhand find``: where the sources speak of something."""

from __future__ import annotations

from pathlib import Path

from click.testing import CliRunner

from fairhand.cli import commands


def run(*args: str) -> str:
    """What the command prints, once it has ended well."""
    result = CliRunner().invoke(commands, ["find", *args], catch_exceptions=False)
    assert result.exit_code == 0, result.output
    return " ".join(result.output.split())


def test_each_passage_has_its_page(demo_paper: Path) -> None:
    """With its sentence in half brackets; a word that stands nowhere is told of."""
    said = run(str(demo_paper), "strap", "readars")
    assert "Nothing stands for “readars”; searched for “readers”." in said
    assert "Osei (2014), page 118 ⸢" in said
    assert "Nothing was found in the texts at hand." in run(str(demo_paper), "xylophone")
    assert "ask with --most 2" in run(str(demo_paper), "tram", "--most", "1")


def test_questions_are_asked_in_words_or_by_their_number(demo_paper: Path) -> None:
    """Of those in the paper's focus; both find the same."""
    (demo_paper / "focus.toml").write_text('[[questions]]\ntext = "Who kept the slips?"\n', "utf-8")
    by_number = run(str(demo_paper), "--question", "1")
    assert by_number == f"Who kept the slips? {run(str(demo_paper), '--ask', 'Who', 'kept', 'the', 'slips?')}"


def test_without_words_there_is_nothing_to_find(demo_paper: Path) -> None:
    """That is said in one line."""
    for more in ([], ["  "], ["--question", "9"]):
        result = CliRunner().invoke(commands, ["find", str(demo_paper), *more])
        assert result.exit_code != 0
        assert "Nothing to look for" in str(result.exception) or "no such question" in str(result.exception)
