"""A draft comes in from a word processor, with what others wrote into it."""

from __future__ import annotations

import io
from pathlib import Path

import docx
import pytest
from docx.oxml import parse_xml
from docx.oxml.ns import nsdecls

from fairhand.session.taking import take_file

FIRST = ("The mill stood by the river.", "It ground for two hundred years.")


@pytest.fixture
def paper(tmp_path: Path) -> Path:
    """A paper with a sheet and no draft."""
    folder = tmp_path / "mills"
    folder.mkdir()
    (folder / "brief.txt").write_text("Write about mills.", "utf-8")
    return folder


def written(*paragraphs: str, inserted: str = "", comment: str = "") -> bytes:
    """A DOCX with some words put in at its end, and a comment on its first paragraph."""
    document = docx.Document()
    made = [document.add_paragraph(text) for text in paragraphs]
    if inserted:
        made[-1]._p.append(
            parse_xml(
                f'<w:ins {nsdecls("w")} w:id="9" w:author="Ines Mora" w:date="2027-02-03T10:00:00Z">'
                f'<w:r><w:t xml:space="preserve"> {inserted}</w:t></w:r></w:ins>'
            )
        )
    if comment:
        document.add_comment(made[0].runs, comment, author="Ines Mora")
    kept = io.BytesIO()
    document.save(kept)
    return kept.getvalue()


def take(paper: Path, data: bytes, *, refuse: bool = False) -> str:
    """What is said of it."""
    file = paper.parent / "mills.docx"
    file.write_bytes(data)
    return "\n".join(take_file(paper, file, refuse=refuse))


def test_tracked_changes_are_accepted_or_refused_and_comments_told(paper: Path) -> None:
    """Accepted unless the writer says otherwise; nothing of a comment stands in the draft."""
    data = written(*FIRST, inserted="Then it stopped.", comment="Which river?")
    told = take(paper, data)
    assert "One tracked change was accepted; fairhand take --refuse refuses them." in told
    assert "One comment stands in it" in told
    assert (paper / "draft.md").read_text("utf-8") == f"{FIRST[0]}\n\n{FIRST[1]} Then it stopped.\n"
    assert "refused" in take(paper, data, refuse=True)
    assert (paper / "draft.md").read_text("utf-8") == "\n\n".join(FIRST) + "\n"


def test_a_draft_that_comes_again_is_held_against_the_former(paper: Path) -> None:
    """What was revised since is said, in argument and in wording."""
    take(paper, written(*FIRST))
    told = take(paper, written(FIRST[0], "It ground for two hundred long years.", "Nobody knows why it stopped."))
    assert "revised in argument: 1 sentence new; in wording: 1 sentence." in told
    assert "fairhand record --file draft.md" in told
