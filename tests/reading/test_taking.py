"""A draft from a word processor becomes CommonMark, with its notes, and what is lost is told."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Callable
from pathlib import Path

import docx
import pytest

from fairhand.errors import FairhandError, FileTooLarge, FileUnreadable
from fairhand.model.problem import Problem
from fairhand.model.request import PandocRequest
from fairhand.press.pandoc import run_pandoc
from fairhand.reading.taking import read_taken, take_request


def take(data: bytes, ending: str = ".docx") -> tuple[str, tuple[Problem, ...]]:
    """The draft as taken over."""
    return read_taken(run_pandoc(take_request(data, ending)), "draft" + ending)


def written(markdown: str, kind: str = "docx") -> bytes:
    """A word processor's file of this text."""
    args = ("--from=markdown-citations", f"--to={kind}", "--standalone")
    return run_pandoc(PandocRequest(args, markdown.encode(), output=f"x.{kind}"))


@pytest.mark.parametrize("kind", ["docx", "odt"])
def test_prose_comes_over_whole(kind: str) -> None:
    """Headings, emphasis, quotations, lists, tables and footnotes are as they were."""
    text = (
        "# Ponds\n\nThe pond was *full* at noon.[^1]\n\n> The water keeps no Sabbath.\n\n- ebb\n- flow\n\n"
        "| Year | Tides |\n|------|-------|\n| 1712 | 598   |\n\n[^1]: Lind, 12.\n"
    )
    taken, problems = take(written(text, kind), f".{kind}")
    for piece in ("# Ponds", "*full* at noon.[^1]", "> The water", "- ebb", "| 1712 | 598", "[^1]: Lind, 12."):
        assert piece in taken.replace("-   ", "- ")
    assert problems == ()


def test_asides_are_still_asides() -> None:
    """Square brackets come over unescaped, so that remarks to oneself are known as such."""
    taken, _ = take(written("The count \\[NB: ask Lind\\] rose \\[TK: figure\\] and \\[sic\\] fell.\n"))
    assert "[NB: ask Lind] rose [TK: figure] and [sic] fell." in taken


def test_title_keeps_the_first_level() -> None:
    """A title in its own style is the draft's only heading of the first level."""
    document = docx.Document()
    document.add_heading("Tide Mills", 0)
    document.add_heading("Ponds", 1)
    document.add_paragraph("Water.")
    kept = io.BytesIO()
    document.save(kept)
    assert take(kept.getvalue())[0] == "# Tide Mills\n\n## Ponds\n\nWater.\n"


def test_pictures_are_left_out_and_told() -> None:
    """A picture is left out, and the writer is told how to bring it."""
    dot = "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR42mP4DwABAQEAHLCMmQAAAABJRU5ErkJggg=="
    taken, problems = take(written(f"Here: ![a plan](data:image/png;base64,{dot}) it is.\n"))
    assert "![" not in taken
    assert "picture (a plan)" in problems[0].what


@pytest.mark.parametrize("data", [b"", b"no zip at all", b"PK\x03\x04 broken"])
def test_broken_files_are_refused(data: bytes) -> None:
    """What is no such document is refused in one line."""
    with pytest.raises(FileUnreadable):
        take(data)


def test_a_bomb_is_refused() -> None:
    """A file that expands beyond all bounds never reaches pandoc."""
    kept = io.BytesIO()
    with zipfile.ZipFile(kept, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr("word/document.xml", b" " * 130_000_000)
    with pytest.raises(FileTooLarge):
        take(kept.getvalue())


def test_real_files_are_read(outside_data: Callable[[str], Path]) -> None:
    """Word processors' own files are read, or refused in one line; one in twenty-five of the set is tried."""
    files = sorted(outside_data("data/docx").rglob("*.docx"))[::25]
    taken = [text for text in map(taken_or_refused, files) if text]
    print(f"{len(taken)} of {len(files)} files taken over")
    assert all(text.endswith("\n") for text in taken)
    assert len(taken) >= 0.95 * len(files)


def taken_or_refused(file: Path) -> str:
    """The draft as taken over, or nothing where it was refused in words of ours."""
    try:
        return take(file.read_bytes())[0]
    except FairhandError:
        return ""
