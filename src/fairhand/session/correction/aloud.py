"""The paper read aloud: what is read, how long it takes, and a place marked while it is heard."""

from __future__ import annotations

import datetime as dt

from fairhand.errors import DraftChangedOnDisk
from fairhand.language.counts import count_of, say_minutes
from fairhand.model.proof_mark import ProofMark, ProofPass
from fairhand.proof.aloud import LeftOut, Spoken, count_spoken, list_spoken, seconds_aloud
from fairhand.proof.placing import Proofed, anchor, find_in_proof, read_type
from fairhand.session.correction.passes import end_pass
from fairhand.session.correction.proof import keep_marks, read_proof
from fairhand.session.opened import OpenPaper

HEARD = "heard here"
"""What a mark says that was made while listening; its reader looks for what it was afterwards."""


def read_aloud(paper: OpenPaper) -> tuple[Spoken, ...]:
    """Everything of the paper that is read aloud, in order."""
    known = paper.look()
    return list_spoken(known.manuscript, [one.span for one in known.mentions if one.form in _BRACKETED])


_BRACKETED = ("parenthetical", "page-only")
"""Citations that stand in brackets: a sentence reads on without them."""


def tell_time(spoken: tuple[Spoken, ...], left_out: tuple[LeftOut, ...], pace: int) -> str:
    """How long the reading takes, told beforehand.

    >>> from fairhand.model.span import Span
    >>> tell_time((Spoken("text", Span(0, 1), "It ebbs.", "It ebbs."),), (), 183)
    'It takes about 1 minute: 2 words at 183 a minute.'
    """
    many = count_spoken(spoken, left_out)
    minutes = max(1, round(seconds_aloud(many, pace) / 60))
    return f"It takes about {say_minutes(minutes)}: {count_of(many, 'word')} at {pace} a minute."


def mark_heard(paper: OpenPaper, number: int, at: dt.datetime, said: str = "") -> ProofMark:
    """A mark stands on the sentence that was being read, in the pass under way.

    Args:
        paper: The paper.
        number: The sentence's number, from 0.
        at: The present hour.
        said: The sentence as it was read, by which a draft changed meanwhile is noticed.

    Raises:
        FairhandError: No pass is under way.
        DraftChangedOnDisk: There is no such sentence any more.
    """
    spoken = read_aloud(paper)
    if not 0 <= number < len(spoken) or (said and said not in (spoken[number].says, spoken[number].bare)):
        message = "draft.md: it was changed while it was read; look at the page again"
        raise DraftChangedOnDisk(message)
    manuscript = paper.look().manuscript
    exact, before, after = anchor(manuscript.text, spoken[number].span)
    mark = ProofMark("", "", "query", exact, before, after, words=HEARD)
    page, line = _line_of(mark, paper, read_proof(paper))
    made = ProofMark("", "", "query", exact, before, after, words=HEARD, page=page, line=line)
    return keep_marks(paper.folder, [made], at)[0]


def end_aloud(paper: OpenPaper, number: int, at: dt.datetime) -> ProofPass:
    """The pass has ended with a sentence; where it was not the last one, the rest is said to be unread.

    Raises:
        FairhandError: No pass is under way.
    """
    spoken, proof = read_aloud(paper), read_proof(paper)
    place = (0, 0)
    heard = spoken[: number + 1] if 0 <= number < len(spoken) - 1 else ()
    for one in reversed(heard):  # the last one that is found again in print
        exact, before, after = anchor(paper.look().manuscript.text, one.span)
        place = _line_of(ProofMark("", "", "query", exact, before, after), paper, proof, last=True)
        if place != (0, 0):
            break
    return end_pass(paper.folder, at, place, proof)


def _line_of(mark: ProofMark, paper: OpenPaper, proof: Proofed, *, last: bool = False) -> tuple[int, int]:
    """Page and line of the proof where a mark's words begin, or end; zeros where they are not found or have none."""
    manuscript = paper.look().manuscript
    found = find_in_proof(mark, read_type(manuscript), manuscript.text, proof)
    if found is None:
        return 0, 0
    line = proof.line_at(found.span.end - 1 if last else found.span.start)
    return (line.page, line.number) if line.number else (0, 0)
