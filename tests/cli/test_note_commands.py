"""Notes from the terminal."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from click.testing import CliRunner

from fairhand.cli import commands


def test_a_note_is_taken_and_shown(says: Callable[..., str], demo_paper: Path) -> None:
    """With its page, its kind, and the point that it is for; the list can be narrowed to that point."""
    paper = str(demo_paper)
    told = says("note", paper, "osei-2014", "who counted?", "--page", "118", "--kind", "thought", "--point", "p1")
    assert told.startswith("Noted from Osei (2014), page 118. For the point “")
    says("note", paper, "osei-2014", "no page to this one")
    listed = says("notes", paper, "--point", "p1")
    assert "Osei (2014) page 118, thought who counted? For the point “" in listed
    assert "no page to this one" not in listed
    lacking = says("notes", paper, "--without-page")
    assert "no page yet no page to this one" in lacking
    assert "1 without a page: a passage is cited with its page" in lacking
    assert says("notes", paper, "--question", "q1") == "No such note."


def test_a_quotation_that_is_not_there_is_doubted_at_once(says: Callable[..., str], demo_paper: Path) -> None:
    """It is kept all the same: the text at hand may be wrong."""
    told = says(
        "note", str(demo_paper), "osei-2014", "--quotation", "not a word of this stands anywhere in her chapter"
    )
    assert "These words were not found in the text at hand" in told
    assert "“not a word of this" in says("notes", str(demo_paper))


def test_nothing_noted_yet_says_how_to_begin(says: Callable[..., str], demo_paper: Path) -> None:
    """In one line."""
    (demo_paper / "notes.jsonl").unlink(missing_ok=True)
    told = says("notes", str(demo_paper))
    assert told.startswith("Nothing is noted yet. Note something: fairhand note ")
    assert "\n" not in told


def test_the_annotated_bibliography_is_printed(says: Callable[..., str], demo_paper: Path) -> None:
    """From the notes alone; which sources have none is told."""
    paper = str(demo_paper)
    says("note", paper, "osei-2014", "Counts loans by route.", "--page", "118", "--kind", "summary")
    told = says("print", paper, "--bibliography", "--as", "md")
    assert "(annotated bibliography).md" in told
    assert "sources have no note under them: " in told
    (made,) = (demo_paper / "fair").glob("*bibliography).md")
    text = made.read_text("utf-8")
    assert text.index("Osei, Maren") < text.index("Counts loans by route (118).")
    assert "Nine Minutes of Reading" not in text


def test_no_sources_no_bibliography(demo_paper: Path) -> None:
    """One line says what to do."""
    (demo_paper / "sources.json").unlink()
    result = CliRunner().invoke(commands, ["print", str(demo_paper), "--bibliography"])
    assert result.exit_code != 0
    assert "there are no sources yet; add the first with fairhand add" in str(result.exception)
