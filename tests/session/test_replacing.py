"""A source's text replaced by a better one."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

import pytest

from fairhand.errors import InputError
from fairhand.model.entry import Entry
from fairhand.model.note import Note
from fairhand.session.opened import OpenPaper
from fairhand.session.research.noting import keep_note
from fairhand.session.sources.replacing import find_notes_again, give_text

HOUR = dt.datetime(2027, 2, 8, 12, tzinfo=dt.UTC)
FIRST = "The conductor kept the key of the box.\fHe lent it to no-\nbody but the boy.\n"
BETTER = (
    "A leaf that the old scan lacked.\fThe conductor kept the key\nof the box.\fHe lent it to nobody but the boy.\n"
)


def find(paper: Path, source: str = "lund-1999") -> Entry:
    """The entry of that id."""
    return OpenPaper(paper).look().entries[source]


def texts(paper: Path) -> list[str]:
    """The pages of the source as they are read now."""
    found = OpenPaper(paper).look().paper.texts.get("lund-1999")
    return [page.text for page in found.pages] if found else []


def test_the_old_text_is_set_aside_and_the_new_one_read(demo_paper: Path) -> None:
    """Under its own name, with a number where that is taken; sent twice it is done once."""
    old = (demo_paper / "sources" / "lund-1999.txt").read_bytes()
    assert give_text(demo_paper, find(demo_paper), "Lund scan.txt", FIRST.encode()) == "sources/set aside/lund-1999.txt"
    assert (demo_paper / "sources" / "set aside" / "lund-1999.txt").read_bytes() == old
    assert texts(demo_paper)[0].startswith("The conductor")
    assert give_text(demo_paper, find(demo_paper), "again.txt", FIRST.encode()) == ""
    page = b"<!DOCTYPE html><title>Lund</title><p>He lent it to nobody but the boy.</p>"
    assert give_text(demo_paper, find(demo_paper), "page.html", page) == "sources/set aside/lund-1999 2.txt"
    assert not (demo_paper / "sources" / "lund-1999.txt").exists()
    assert "nobody but the boy" in texts(demo_paper)[0]


def test_a_source_without_a_text_is_simply_given_one(demo_paper: Path) -> None:
    """Nothing is set aside."""
    assert give_text(demo_paper, find(demo_paper, "quist-1988"), "q.txt", b"Conduct.\n") == ""
    assert (demo_paper / "sources" / "quist-1988.txt").exists()
    assert not (demo_paper / "sources" / "set aside").exists()


@pytest.mark.parametrize(("name", "data"), [("a.pdf", b"%PDF-1.4 broken"), ("a.jpg", b"\xff\xd8\xff\xe0 a picture")])
def test_what_cannot_be_read_takes_no_texts_place(demo_paper: Path, name: str, data: bytes) -> None:
    """The text that is there stays."""
    before = texts(demo_paper)
    with pytest.raises(InputError):
        give_text(demo_paper, find(demo_paper), name, data)
    assert texts(demo_paper) == before
    assert not (demo_paper / "sources" / "set aside").exists()


def test_notes_are_found_again_in_the_new_text(demo_paper: Path) -> None:
    """On their page, on another, or nowhere; other line ends and hyphens do not count."""
    give_text(demo_paper, find(demo_paper), "a.txt", FIRST.encode())
    known = OpenPaper(demo_paper).look()
    labels = [page.label or "" for page in known.paper.texts["lund-1999"].pages]
    for quotation, page in (("kept the key of the box", labels[0]), ("lent it to nobody", ""), ("not in it", "")):
        keep_note(demo_paper, Note("", "lund-1999", page, quotation), "", known.paper.texts, HOUR)
    give_text(demo_paper, find(demo_paper), "b.txt", BETTER.encode())
    again = find_notes_again(demo_paper, "lund-1999", OpenPaper(demo_paper).look().paper.texts["lund-1999"])
    assert [note.quotation for note in again.there] == ["lent it to nobody"]
    assert [(note.quotation, label) for note, label in again.moved] == [("kept the key of the box", labels[1])]
    assert [note.quotation for note in again.lost] == ["not in it"]
    assert again.told.startswith("Of 3 noted quotations 1 stands where its note says, and 1 on another page (")
    assert again.told.endswith("1 was not found: look at the notes below.")
