"""The draft changed from within the program, and what the writer lets stand; never over what somebody else wrote."""

from __future__ import annotations

import codecs
import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from fairhand.desk.seen import FileSeen, hash_bytes, see_file
from fairhand.desk.writing import write_file
from fairhand.errors import DraftChangedOnDisk
from fairhand.manuscript.draft import read_manuscript
from fairhand.model.finding import Finding
from fairhand.model.stet import Word
from fairhand.proof.marks_file import WHERE, add_mark, drop_mark
from fairhand.proof.passages import list_passages
from fairhand.proof.stets import make_stet

DRAFT = "draft.md"


@dataclass(frozen=True, slots=True)
class Written:
    """One of the writer's texts as it stands on disk."""

    text: str = ""
    r"""What it holds, lines ended by ``\n``."""
    seen: str | None = None
    """The hash of its bytes; None where there is no such file yet."""


def read_text(folder: Path, name: str) -> Written:
    """The text of one of the paper's files; empty where it is not there yet.

    Raises:
        FileUnreadable: It is no text.
        FileTooLarge: It is larger than is read.
    """
    found = _see(folder, name)
    return Written(one_line_end(found.text), found.sha256) if found else Written()


def state_of(value: object) -> str:
    """A hash that changes when one of our values does, as a note or a point."""
    return hash_bytes(repr(value).encode("utf-8", "replace"))


def refuse_changed(where: str, what: str, now: str, was: str) -> None:
    """Raises where something is not in the state that a change to it was made from.

    Args:
        where: The file that it stands in.
        what: What it is called.
        now: Its state; empty where it is not there any more.
        was: The state that the change was made from.

    Raises:
        DraftChangedOnDisk: They differ.
    """
    if now != was:
        message = f"{where}: {what} {'was changed meanwhile' if now else 'has gone'}; look at it again"
        raise DraftChangedOnDisk(message)


def save_text(folder: Path, name: str, text: str, seen: str | None) -> FileSeen:
    r"""The file holds the text, with the line ends and the byte order mark that it had.

    Args:
        folder: The paper's folder.
        name: The file's name.
        text: What it shall hold, lines ended by ``\n``.
        seen: The hash of the bytes that the change was made from; None where there was no file.

    Raises:
        DraftChangedOnDisk: The file is not the one that was seen.
        FolderNotWritable: The folder is closed or full.
    """
    found = _see(folder, name)
    mark = codecs.BOM_UTF8 if found and found.data.startswith(codecs.BOM_UTF8) else b""
    if found and "\r\n" in found.text:
        text = text.replace("\n", "\r\n")
    return write_file(folder, name, mark + text.encode(), seen)


@dataclass(frozen=True, slots=True)
class Passage:
    """A passage as it was shown, and what it shall be."""

    was: str
    """As it was shown, markup and all."""
    now: str
    """What it shall be; nothing, to take it out."""
    alike: tuple[int, int] = (0, 1)
    """Which of the passages that read so it was, from 0, and how many they were."""


def mend_passage(folder: Path, was: str, now: str, alike: tuple[int, int] = (0, 1)) -> None:
    """The draft holds ``now`` in place of the one passage that read ``was``; everything else stands as it is on disk.

    Args:
        folder: The paper's folder.
        was: The passage as it was shown, markup and all.
        now: What it shall be; nothing, to take it out.
        alike: Which of the passages that read so it was, from 0, and how many they were.

    Raises:
        DraftChangedOnDisk: No passage of the draft reads so any more, or there are several, and not as many as before.
        FolderNotWritable: The folder is closed or full.
    """
    mend_passages(folder, [Passage(was, now, alike)])


def mend_passages(folder: Path, passages: Sequence[Passage]) -> None:
    """The draft holds each passage as it shall be, all of them at once or, where one was changed meanwhile, none.

    Raises:
        DraftChangedOnDisk: A passage is not to be told from others, or does not read so any more.
        FolderNotWritable: The folder is closed or full.
    """
    seen = _see(folder, DRAFT)
    text = one_line_end(seen.text) if seen else ""
    there = list_passages(read_manuscript(text))
    changes = []
    for passage in passages:
        places = [span for span in there if span.of(text) == passage.was]
        which, many = passage.alike if len(places) > 1 else (0, 1)
        if seen is None or len(places) != many or which not in range(many):
            what = "another passage has come to read like that" if places else "the passage was changed meanwhile"
            message = f"{DRAFT}: {what}; nothing was written: look at both and choose"
            raise DraftChangedOnDisk(message)
        start, end = places[which].start, places[which].end
        if not passage.now.strip():
            end = len(text) - len(text[end:].lstrip())
        changes.append((start, end, passage.now))
    for start, end, now in sorted(changes, reverse=True):
        text = text[:start] + now + text[end:]
    save_text(folder, DRAFT, text, seen.sha256 if seen else None)


def likest_passage(folder: Path, was: str, which: int = 0) -> tuple[str, tuple[int, int]]:
    """The passage of the draft, as it now stands, that is likest to one that was changed; nothing where none is.

    Args:
        folder: The paper's folder.
        was: The passage as it was shown.
        which: Which of several that read alike it was, from 0.

    Returns:
        It, and which of the passages that read as it does it is taken for, with how many they are.
    """
    from rapidfuzz import fuzz

    seen = _see(folder, DRAFT)
    text = one_line_end(seen.text) if seen else ""
    passages = [span.of(text) for span in list_passages(read_manuscript(text))]
    likest = max(passages, key=lambda passage: fuzz.ratio(was, passage), default="")
    many = passages.count(likest)
    return likest, (min(which, many - 1), many)


def add_stet(folder: Path, finding: Finding, draft: str, reason: str, at: dt.datetime, word: Word = "stet") -> None:
    """The finding stands from now on, for as long as its words do; it is kept in ``marks.jsonl`` with the reason.

    By another word it is marked, and left for afterwards.

    Raises:
        DraftChangedOnDisk: Another program wrote to the file at the same moment.
        FolderNotWritable: The folder is closed or full.
    """
    present = read_text(folder, WHERE)
    stet = make_stet(finding, draft, reason, at.isoformat(timespec="seconds"), word)
    save_text(folder, WHERE, add_mark(present.text, stet), present.seen)


def remove_stet(folder: Path, name: str) -> None:
    """The stet of that name is taken back; what it was stays among the earlier states.

    Raises:
        DraftChangedOnDisk: Another program wrote to the file at the same moment.
        FolderNotWritable: The folder is closed or full.
    """
    present = read_text(folder, WHERE)
    if present.seen:
        save_text(folder, WHERE, drop_mark(present.text, name), present.seen)


def _see(folder: Path, name: str) -> FileSeen | None:
    path = folder / name
    return see_file(path, name) if path.exists() else None


def one_line_end(text: str) -> str:
    r"""The text with every line ended by ``\n``, as we read it."""
    return text.replace("\r\n", "\n").replace("\r", "\n")
