"""One file read on its way in, as it is done in a process apart: its text kept, and what it says of its work."""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path

from fairhand.citing.described import record_of
from fairhand.citing.entries import read_entry
from fairhand.desk.seen import see_file
from fairhand.model.description import Said
from fairhand.outside.letters import read_letters
from fairhand.reading.describing import describe_file
from fairhand.reading.kinds import kind_of
from fairhand.reading.source import read_leaves, text_of
from fairhand.session.texts import keep_text

ENDINGS = {
    "pdf": ".pdf", "text": ".txt", "html": ".html", "docx": ".docx", "odt": ".odt", "epub": ".epub", "picture": ".jpg",
}  # fmt: skip
"""The ending of each kind of file, where its name has none that is known."""
_READ_OFF = "its text was read off the photograph by machine; hold it against the photograph before you quote it"


@dataclass(frozen=True, slots=True)
class Task:
    """A file that is to be read."""

    path: Path
    name: str
    """What it is called in messages, and, by its ending, what it may be."""
    paper: Path
    """The paper's folder, in whose cache its text is kept."""
    said: tuple[Said, ...] = ()
    """What is known of the work from elsewhere, and is trusted before the file itself."""


@dataclass(frozen=True)
class Read:
    """A file that was read."""

    sha256: str
    record: dict[str, object] = field(default_factory=dict)
    """The CSL-JSON record of what it says, without an id."""
    ending: str = ""
    """The ending of its kind."""
    pages: int = 0
    letters: str = ""
    """Of a photograph, the text that was read off it."""
    problems: tuple[str, ...] = ()


def read_apart(task: Task) -> Read:
    """What the file holds; its text is kept in the paper's cache.

    Raises:
        InputError: It is broken, empty, locked, too large or of a kind that is not read.
    """
    seen = see_file(task.path, task.name)
    data = seen.data
    kind = kind_of(data, task.name)
    leaves = read_leaves(data, task.name)
    record = record_of(describe_file(data, task.name, leaves.texts, task.said))
    entry, _ = read_entry(record, task.name)
    text, problems = text_of(leaves, task.name, entry)
    keep_text(task.paper, seen.sha256, entry, text, problems)
    letters = read_letters(data) if kind == "picture" else ""
    told = (f"{task.name}: {_READ_OFF}",) if letters else tuple(map(str, problems))
    return Read(seen.sha256, record, ENDINGS[kind], len(text.pages), letters, told)
