"""A draft comes in from a word processor, with what others wrote into it."""

from __future__ import annotations

import io
from pathlib import Path

import docx
import pytest
from docx.oxml import parse_xml
from docx.oxml.ns import nsdecls

from fairhand.desk.record import list_states, state_bytes
from fairhand.errors import FairhandError
from fairhand.readers.register import Reader
from fairhand.readers.remarks_file import read_remarks
from fairhand.session.correction.readers import ask_reader
from fairhand.session.drafting.taking import take_file
from fairhand.session.hand_in.printing import print_paper
from fairhand.session.opened import OpenPaper

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


def take(paper: Path, data: bytes, *, refuse: bool = False, replace: bool = False) -> str:
    """What is said of it."""
    file = paper.parent / "mills.docx"
    file.write_bytes(data)
    return "\n".join(take_file(paper, file, refuse=refuse, replace=replace))


def test_tracked_changes_are_accepted_or_refused_and_comments_told(paper: Path) -> None:
    """Accepted unless the writer says otherwise; nothing of a comment stands in the draft."""
    data = written(*FIRST, inserted="Then it stopped.", comment="Which river?")
    told = take(paper, data)
    assert "One tracked change was accepted; fairhand take --refuse refuses them." in told
    assert "One comment is kept" in told
    (remark,) = read_remarks((paper / "marks.jsonl").read_text("utf-8"))
    assert (remark.exact, remark.said, remark.by) == (FIRST[0], "Which river?", "Ines Mora")
    assert (paper / "draft.md").read_text("utf-8") == f"{FIRST[0]}\n\n{FIRST[1]} Then it stopped.\n"
    assert "refused" in take(paper, data, refuse=True)
    assert (paper / "draft.md").read_text("utf-8") == "\n\n".join(FIRST) + "\n"


def test_a_draft_that_comes_again_is_held_against_the_former(paper: Path) -> None:
    """What was revised since is said, in argument and in wording."""
    take(paper, written(*FIRST))
    told = take(paper, written(FIRST[0], "It ground for two hundred long years.", "Nobody knows why it stopped."))
    assert "revised in argument: 1 sentence new; in wording: 1 sentence." in told
    assert "fairhand record --file draft.md" in told


def test_what_was_changed_here_stands_when_the_draft_comes_again(paper: Path) -> None:
    """Passage by passage; what both changed is named; a stet and the record keep what they had."""
    take(paper, written(*FIRST))
    mine = (paper / "draft.md").read_text("utf-8").replace("stood by", "leaned on")
    (paper / "draft.md").write_text(mine, "utf-8")
    (paper / "marks.jsonl").write_text('{"type": "Annotation"}\n', "utf-8")
    told = take(paper, written(FIRST[0], "It ground for three hundred years.", comment="Which river?"))
    assert "One passage that you changed here stands as you left it." in told
    assert (paper / "draft.md").read_text("utf-8") == (
        "The mill leaned on the river.\n\nIt ground for three hundred years.\n"
    )
    assert (paper / "marks.jsonl").read_text("utf-8").startswith('{"type": "Annotation"}\n')
    told = take(paper, written("The mill stood near the river.", "It ground for three hundred years."))
    assert "Changed here and in the file; the file’s stands" in told
    assert "leaned" not in (paper / "draft.md").read_text("utf-8")
    assert any(b"leaned" in state_bytes(paper, state.seq) for state in list_states(paper, "draft.md"))


def test_the_file_alone_stands_on_request(paper: Path) -> None:
    """Whatever was changed here, which the record keeps."""
    take(paper, written(*FIRST))
    (paper / "draft.md").write_text("Other matter.\n", "utf-8")
    assert "as you left" not in take(paper, written(*FIRST), replace=True)
    assert (paper / "draft.md").read_text("utf-8") == "\n\n".join(FIRST) + "\n"


def test_a_draft_that_never_came_from_a_file_gives_way(paper: Path) -> None:
    """Nothing is joined that did not begin alike; what stood there is in the record."""
    (paper / "draft.md").write_text("Other matter.\n", "utf-8")
    take(paper, written(*FIRST))
    assert (paper / "draft.md").read_text("utf-8") == "\n\n".join(FIRST) + "\n"
    assert any(state_bytes(paper, state.seq) == b"Other matter.\n" for state in list_states(paper, "draft.md"))


def test_a_print_that_was_worked_on_changes_only_what_was_touched(demo_paper: Path) -> None:
    """Asides, citations as they were typed, headings and marks stand; so does what was changed here meanwhile."""
    made = print_paper(demo_paper, "docx", anyway=True)
    document = docx.Document(str(made.path))
    for run in (run for paragraph in document.paragraphs for run in paragraph.runs):
        run.text = run.text.replace("never locked", "always open")
    back = demo_paper.parent / "worked on.docx"
    document.save(str(back))
    draft = (demo_paper / "draft.md").read_text("utf-8").replace("Its readers wanted", "Most readers wanted")
    (demo_paper / "draft.md").write_text(draft, "utf-8")
    told = "\n".join(take_file(demo_paper, back))
    assert "It is a print of the draft, worked on" in told
    was, now = (text.split("\n\n") for text in (draft, (demo_paper / "draft.md").read_text("utf-8")))
    touched = [(a, b) for a, b in zip(was, now, strict=True) if a.strip() != b.strip()]
    assert len(touched) == 1
    assert "always open" in touched[0][1]


def test_a_copy_for_a_reader_is_no_draft(demo_paper: Path) -> None:
    """Its questions never stand in the draft; what was written into it comes in another way."""
    done = ask_reader(OpenPaper(demo_paper), Reader("Ines Mora", asked=("Why?",)))
    assert done.path is not None
    before = (demo_paper / "draft.md").read_bytes()
    with pytest.raises(FairhandError, match="fairhand readers --back"):
        list(take_file(demo_paper, done.path))
    assert (demo_paper / "draft.md").read_bytes() == before
