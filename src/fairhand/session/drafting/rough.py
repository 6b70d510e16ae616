"""The rough draft: ``rough.md``, where anything goes; the draft begun from it; the warm-up page of the desk."""

from __future__ import annotations

import re
from pathlib import Path

from fairhand.desk.record import keep_state
from fairhand.errors import DraftChangedOnDisk, FairhandError
from fairhand.manuscript.counting import count_words
from fairhand.manuscript.draft import read_manuscript
from fairhand.model.point import Points
from fairhand.session.editing import DRAFT, read_text, save_text

ROUGH = "rough.md"
WARM_UP = "warm-up.md"
"""The page to warm up on; it stands on the desk, and belongs to no paper."""
_OPENING = re.compile(r"\[(?:NB|TK):")
_BRACKET = re.compile(r"[\[\]]")
_BLANK = re.compile(r"[ \t]*\n[ \t]*\n\s*")


def count_rough(text: str) -> int:
    """The words of a rough draft; asides and TKs are none.

    >>> count_rough("The tide turns [NB: where?] twice.")
    4
    """
    return count_words(read_manuscript(text)).counted


def begin_draft(folder: Path, *, over: bool = False) -> None:
    """The rough draft, as it stands, is the draft; it stays where it is.

    Only a remark to oneself that runs over several paragraphs is made one of each, so that none of them is printed.

    Args:
        folder: The paper's folder.
        over: Whether a draft that is there gives way; it stays among the earlier states.

    Raises:
        FairhandError: There is no rough draft.
        DraftChangedOnDisk: There is a draft already, and nobody said that it gives way.
    """
    rough, draft = read_text(folder, ROUGH), read_text(folder, DRAFT)
    if not rough.text.strip():
        message = f"{ROUGH}: nothing is written there yet; write it first"
        raise FairhandError(message)
    begun = part_remarks(rough.text)
    if draft.text == begun:
        return
    if draft.text.strip() and not over:
        message = (
            f"{DRAFT}: there is a draft already; nothing was written: go on with it, or say that it is to give way"
        )
        raise DraftChangedOnDisk(message)
    save_text(folder, DRAFT, begun, draft.seen)


def part_remarks(text: str) -> str:
    r"""The text, each labelled remark that runs over several paragraphs made one of each; one never closed stays.

    >>> part_remarks("[NB: why?\n\nWho [else] asks?] So.\n\n[NB: open\n\nand on")
    '[NB: why?]\n\n[NB: Who [else] asks?] So.\n\n[NB: open\n\nand on'
    """
    out, at = [], 0
    for opening in _OPENING.finditer(text):
        end = _closing(text, opening.end()) if opening.start() >= at else None
        if end is not None:
            whole = text[opening.start() : end]
            out += [text[at : opening.start()], _BLANK.sub(lambda gap: f"]{gap[0]}{opening[0]} ", whole)]  # noqa: B023
            at = end
    return "".join([*out, text[at:]])


def _closing(text: str, at: int) -> int | None:
    """Where the bracket that was opened before a place is closed; None where it never is."""
    depth = 1
    for found in _BRACKET.finditer(text, at):
        depth += 1 if found[0] == "[" else -1
        if not depth:
            return found.start()
    return None


def add_at_end(folder: Path, words: str, file: str = ROUGH) -> None:
    """The words stand at the end of the rough draft, or of another text, as a paragraph of their own.

    Raises:
        DraftChangedOnDisk: Another program wrote to the file at the same moment.
    """
    present = read_text(folder, file)
    before = f"{present.text.rstrip()}\n\n" if present.text.strip() else ""
    save_text(folder, file, f"{before}{words.strip()}\n", present.seen)


def lay_out_points(points: Points) -> str:
    r"""The points in their order, each an aside to write under; the thesis comes first.

    >>> from fairhand.model.point import Point
    >>> lay_out_points(Points("Tides made the town.", (Point("p1", "Ebb tides scour."),)))
    '[NB: Tides made the town.]\n\n[NB: Ebb tides scour.]\n'
    """
    said = [points.thesis, *(point.text for point in points.points)]
    return "\n\n".join(aside(one) for one in said if one.strip()) + "\n"


def aside(words: str) -> str:
    """Some words as a remark to oneself; brackets in them become round, so that the remark ends where it should.

    >>> aside("Who counted [them]?")
    '[NB: Who counted (them)?]'
    """
    return f"[NB: {' '.join(words.split()).translate(str.maketrans('[]', '()'))}]"


def save_warm_up(desk: Path, text: str, seen: str | None) -> str:
    """The warm-up page holds the text, and what it held is kept too; the hash of its bytes.

    Raises:
        DraftChangedOnDisk: The file is not the one that was seen.
        FolderNotWritable: The folder is closed or full.
    """
    saved = save_text(desk, WARM_UP, text, seen)
    keep_state(desk, WARM_UP, saved.data, "written")
    return saved.sha256
