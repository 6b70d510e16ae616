"""The final reading: the fair copy alone, in one sitting, and the one question after it."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

from fairhand.brief.telling import say_day
from fairhand.errors import FairhandError
from fairhand.language.counts import say_minutes
from fairhand.language.words import words
from fairhand.model.final_reading import FinalReading
from fairhand.proof.aloud import seconds_aloud
from fairhand.proof.final_file import add_final, read_finals
from fairhand.proof.marks_file import WHERE
from fairhand.proof.placing import Proofed
from fairhand.session.correction.passes import moment_of, new_id
from fairhand.session.correction.proof import read_lines
from fairhand.session.editing import DRAFT, read_text, save_text
from fairhand.session.hand_in.printing import refuse_unprintable
from fairhand.session.opened import OpenPaper


def read_copy(paper: OpenPaper) -> Proofed:
    """The fair copy's own lines, as they are handed in.

    Raises:
        MatterLeft: Asides or TKs stand in the draft: it is not finished yet.
        NothingToPrint: There is no draft yet.
        EngineFailed: Pandoc or typst refused the paper.
    """
    refuse_unprintable(paper)
    return read_lines(paper, paper.fair_copy())


def minutes_of(copy: Proofed) -> int:
    """How long a copy takes, read from start to end as one reads aloud."""
    return max(1, round(seconds_aloud(len(words(copy.text))) / 60))


def tell_final(folder: Path, copy: Proofed | None = None) -> str:
    """What the last final reading said and whether the draft is still that one, or what to do; in a sentence."""
    finals = read_finals(read_text(folder, WHERE).text)
    if not finals:
        takes = f"; it takes about {say_minutes(minutes_of(copy))}" if copy else ""
        return f"Read the fair copy once from start to end, in one sitting, and change nothing meanwhile{takes}."
    last = finals[-1]
    answer = "fit to hand in" if last.fit else "not fit to hand in"
    why = f": {last.why}" if last.why else ""
    told = f"After the final reading of {say_day(last.ended[:10])} you held it {answer}{why}."
    if last.draft != (read_text(folder, DRAFT).seen or ""):
        return f"{told} The draft was changed since: read it once more."
    return told


def answer_final(folder: Path, at: dt.datetime, *, fit: bool, why: str = "", begun: str = "", draft: str = "") -> str:
    """The answer is kept, about the draft as it now stands.

    Args:
        folder: The paper's folder.
        at: The present hour.
        fit: Whether it is fit to hand in.
        why: Why not; asked for where it is not fit.
        begun: When the reading was begun, as ISO 8601 has it.
        draft: The hash of the draft that was read, where it is known.

    Returns:
        What is said then.

    Raises:
        FairhandError: It is not fit, and nothing says why; or the draft was changed while it was read.
        DraftChangedOnDisk: Another program wrote to the file at the same moment.
    """
    why = " ".join(why.split())[:2000]
    if not fit and not why:
        message = f"{WHERE}: say why it is not fit to hand in, so that you find it again when you mend it"
        raise FairhandError(message)
    seen = read_text(folder, DRAFT).seen or ""
    if draft and draft != seen:
        message = f"{DRAFT}: it was changed while it was read, so that the answer is about another text; read it again"
        raise FairhandError(message)
    present = read_text(folder, WHERE)
    one = FinalReading(new_id(), fit, why, begun, moment_of(at), seen)
    save_text(folder, WHERE, add_final(present.text, one), present.seen)
    return tell_final(folder)
