"""What stands beside the files that are handed in: their hashes, and the statements in the writer's words."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass

from fairhand.hand_in.asked import HEADS
from fairhand.language.counts import count_of

ANSWERS = {"ready": "ready", "not ready": "not ready", "ask": "not ready: something was still to be answered"}


@dataclass(frozen=True, slots=True)
class Sheet:
    """What is kept of one hand-in."""

    title: str
    when: dt.datetime
    words: int
    words_by: str
    answer: str
    """The last verdict: ``ready``, ``not ready`` or ``ask``."""
    open_: int
    """How many things it found wanting."""
    files: tuple[tuple[str, int, str], ...]
    """Each file's name, bytes, and the SHA-256 of them."""


def write_sheet(sheet: Sheet) -> bytes:
    """The sheet as plain text; no name stands in it.

    >>> moment = dt.datetime(2027, 2, 19, 15, 20, tzinfo=dt.UTC)
    >>> print(write_sheet(Sheet("Tides", moment, 980, "the sheet", "ready", 0, (("tides.pdf", 9, "ab12"),))).decode())
    Tides
    Made on 19 February 2027 at 15:20 to be handed in.
    980 words, counted by the sheet.
    The last verdict on it: ready.
    <BLANKLINE>
    SHA-256 of what is handed in
    ab12  tides.pdf (9 bytes)
    <BLANKLINE>
    The same file has the same hash, on any machine; whoever changes a letter changes it.
    <BLANKLINE>
    """
    open_ = f", with {count_of(sheet.open_, 'thing')} open" if sheet.open_ and sheet.answer != "ready" else ""
    lines = [
        sheet.title,
        f"Made on {sheet.when.day} {sheet.when:%B %Y} at {sheet.when:%H:%M} to be handed in.",
        f"{count_of(sheet.words, 'word')}, counted by {sheet.words_by}.",
        f"The last verdict on it: {ANSWERS.get(sheet.answer, sheet.answer)}{open_}.",
        "",
        "SHA-256 of what is handed in",
        *(f"{sha256}  {name} ({count_of(size, 'byte')})" for name, size, sha256 in sheet.files),
        "",
        "The same file has the same hash, on any machine; whoever changes a letter changes it.",
    ]
    return ("\n".join(lines) + "\n").encode()


def write_statements(statements: Mapping[str, str]) -> bytes:
    r"""The statements as plain text, each under what it is about; nothing where there are none.

    >>> write_statements({"help": "Nobody helped me."})
    b'Help received\n\nNobody helped me.\n'
    """
    told = [f"{HEADS[kind]}\n\n{statements[kind].strip()}\n" for kind in HEADS if statements.get(kind, "").strip()]
    return "\n\n".join(told).encode()
