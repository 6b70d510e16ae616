"""Passes and their marks in plain words, as the terminal and the page both say them."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from fairhand.brief.telling import say_day
from fairhand.language.counts import count_of, open_with
from fairhand.model.proof_mark import Fate, ProofMark, ProofPass

MEDIA = {"paper": "on paper", "screen": "on the screen", "page": "in the page", "aloud": "aloud"}
"""How each medium is said."""
LONGEST = 60
"""Characters of marked words that are shown."""


def tell_step(passes: Sequence[ProofPass], marks: Sequence[ProofMark]) -> str:
    """What to do next with the proof, in a sentence.

    >>> tell_step((), ())
    'Read the proof through in one pass: print it, or read it in the page, and mark it without mending.'
    """
    going = next((one for one in passes if not one.closed), None)
    if going:
        made = sum(mark.in_pass == going.id for mark in marks)
        many = count_of(made, "mark") if made else "no mark"
        return f"A pass {MEDIA[going.medium]} is under way, {many} so far: read it to its end, then end it."
    left = sum(mark.fate == "open" for mark in marks)
    if left:
        told = open_with(left, "mark is", "marks are")
        return f"{told} to be gone through, one after another: mend each, let it stand, or leave it as a query."
    asked = sum(mark.fate == "query" for mark in marks)
    if asked:
        return f"Every mark was gone through; {count_of(asked, 'query', 'queries')} still to be asked."
    if passes:
        return "Every mark was gone through: read the proof again, or go on to the final reading."
    return "Read the proof through in one pass: print it, or read it in the page, and mark it without mending."


def tell_pass(one: ProofPass, marks: Sequence[ProofMark]) -> str:
    """A pass in one line: when, by whom, in what form, for what, with what came of it.

    >>> tell_pass(ProofPass("p", "paper", "Ada", "commas", "2027-02-01T10:00", "2027-02-01T11:00", unread="page 4"), ())
    'Monday 1 February 2027, on paper, by Ada, for commas alone: no marks. Not read: page 4.'
    """
    head = [say_day(one.begun[:10]) or "Undated", MEDIA[one.medium]]
    head += [f"by {one.by}"] if one.by else []
    head += [f"for {one.lapse} alone"] if one.lapse else []
    fates = Counter(mark.fate for mark in marks)
    came = [f"{fates[fate]} {said}" for fate, said in _FATES if fates[fate]]
    told = f"{', '.join(head)}: {count_of(len(marks), 'mark') if marks else 'no marks'}"
    told += f" ({', '.join(came)})" if came and one.closed else ""
    told += "" if one.closed else "; under way"
    return f"{told}.{f' Not read: {one.unread}.' if one.unread else ''}"


_FATES: tuple[tuple[Fate, str], ...] = (
    ("mended", "mended"),
    ("stet", "let stand"),
    ("query", "to be asked"),
    ("open", "still open"),
)


def tell_mark(mark: ProofMark, *, sure: bool | None = True) -> str:
    """A mark in one line.

    Args:
        mark: The mark.
        sure: Whether its words were found for sure; None where they were not found at all.

    >>> tell_mark(ProofMark("m", "p", "substitute", "recieve", words="receive", page=3, line=12))
    'Page 3, line 12, “recieve”: substitute “receive”'
    """
    words = " ".join(mark.exact.split())
    shown = words if len(words) <= LONGEST else f"{words[: LONGEST // 2].rstrip()} … {words[-LONGEST // 3 :].lstrip()}"
    where = f"Page {mark.page}" + (f", line {mark.line}" if mark.line else "") + ", " if mark.page else ""
    asks = f"{mark.sign}" + (f" “{mark.words}”" if mark.words else "")
    if mark.where == "fair copy":
        doubt = " (in print alone: not words of the draft)"
    else:
        doubt = {True: "", False: " (its place is uncertain)", None: " (its words stand in the draft no more)"}[sure]
    return f"{where}“{shown}”: {asks}{doubt}"
