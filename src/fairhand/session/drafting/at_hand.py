"""What is at hand while one drafts: the paper's questions, points and notes, each as it is put into the text."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from fairhand.citing.in_text import write_in_text
from fairhand.errors import FairhandError
from fairhand.model.note import Note
from fairhand.readiness.analysis import Analysis
from fairhand.session.drafting.rough import aside
from fairhand.session.editing import state_of
from fairhand.session.research.noting import list_notes


@dataclass(frozen=True, slots=True)
class AtHand:
    """One thing that can be put into the text."""

    words: str
    """What it says."""
    puts: str
    """What is put in: a note with its citation, a question or point as a remark to oneself."""
    about: str = ""
    """What it is, or from where."""

    @property
    def name(self) -> str:
        """A short name of it."""
        return state_of((self.words, self.puts))[:12]


def list_at_hand(known: Analysis, folder: Path) -> tuple[tuple[str, tuple[AtHand, ...]], ...]:
    """The questions, the points and the notes, under their headings; a heading with nothing under it is left out."""
    paper = known.paper
    questions = tuple(AtHand(one.text, aside(one.text), one.state) for one in paper.focus.questions)
    points = tuple(_points(known))
    notes = tuple(_notes(known, list_notes(folder)[0]))
    parts = (("Questions", questions), ("Points", points), ("Notes", notes))
    return tuple((heading, found) for heading, found in parts if found)


def cite(known: Analysis, source: str, page: str) -> str:
    """The citation of a source at a page, in the in-text form of the paper's style; of one not on the list, a TK."""
    entry = known.entries.get(source)
    if entry is None:
        return "[TK: the source]"
    return write_in_text(entry, page, known.paper.entries, known.style_rules)


def find_at_hand(known: Analysis, folder: Path, name: str) -> AtHand:
    """What is called so.

    Raises:
        FairhandError: Nothing is, any more.
    """
    found = next((one for _, part in list_at_hand(known, folder) for one in part if one.name == name), None)
    if found is None:
        message = "It was changed meanwhile, or has gone: look at the sheet again"
        raise FairhandError(message)
    return found


def _points(known: Analysis) -> Iterator[AtHand]:
    for one in known.paper.points.points:
        cites = " ".join(cite(known, each.source, each.page) for each in one.support if each.source in known.entries)
        yield AtHand(one.text, aside(f"{one.text} {cites}".strip()), f"{one.id}, {one.weight}")


def _notes(known: Analysis, notes: Sequence[Note]) -> Iterator[AtHand]:
    """The notes by source, in the order of the list of sources."""
    order = {entry: at for at, entry in enumerate(known.entries)}
    for note in sorted(notes, key=lambda note: order.get(note.source, len(order))):
        name = known.names.get(note.source, note.source)
        where = f"{name}, p. {note.page}" if note.page else name
        yield AtHand(
            note.quotation or note.remark, put_note(known, note), f"{where}{f'; {note.kind}' * bool(note.kind)}"
        )


def put_note(known: Analysis, note: Note) -> str:
    """A note as it is put in: the source's words in quotation marks, or one's own; its citation after them."""
    if note.kind == "thought" and not note.quotation:
        return note.remark
    words = f"“{_inner_marks(note.quotation)}”" if note.quotation else note.remark
    return f"{words} {cite(known, note.source, note.page)}"


def _inner_marks(words: str) -> str:
    """A quotation's own double marks made single, since it stands in double ones.

    >>> _inner_marks('He said "no" to “it”.')
    'He said ‘no’ to ‘it’.'
    """
    return re.sub(r'"([^"]*)"', r"‘\1’", " ".join(words.split())).replace("“", "‘").replace("”", "’")
