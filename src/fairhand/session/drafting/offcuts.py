"""Passages cut from the draft, and brought back; the draft and ``offcuts.jsonl`` are written together or not at all."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from fairhand.desk.disk import lock_folder
from fairhand.errors import DraftChangedOnDisk, FairhandError
from fairhand.manuscript.draft import read_manuscript
from fairhand.manuscript.parts import Manuscript
from fairhand.model.problem import Problem
from fairhand.model.span import Span
from fairhand.proof.passages import list_passages
from fairhand.revision.offcuts import WHERE, Offcut, add_offcut, drop_offcut, find_cut, read_offcuts, take_offcut
from fairhand.revision.returning import Return, find_return, is_there
from fairhand.session.editing import DRAFT, Written, read_text, save_text


@dataclass(frozen=True, slots=True)
class Kept:
    """An offcut, and where it would go back now."""

    offcut: Offcut
    back: Return
    line: int
    """The line of the draft at which it would stand, from 1."""


def list_offcuts(folder: Path) -> tuple[tuple[Kept, ...], tuple[Problem, ...]]:
    """What was cut, the last first, each with the place where it would stand again."""
    text = read_text(folder, DRAFT).text
    passages = list_passages(read_manuscript(text))
    found, problems = read_offcuts(read_text(folder, WHERE).text)
    kept = []
    for one in reversed(found):
        back = find_return(text, one, passages)
        start = back.at + len(back.words) - len(back.words.lstrip())
        kept.append(Kept(one, back, (text[: back.at] + back.words).count("\n", 0, start) + 1))
    return tuple(kept), problems


def cut_span(folder: Path, span: Span, was: str, reason: str, at: dt.datetime) -> Offcut:
    r"""What stands in a place of the draft is among the offcuts, and no longer in the draft.

    Args:
        folder: The paper's folder.
        span: The place, in code points of the draft with lines ended by ``\n``.
        was: What was seen to stand there.
        reason: Why it goes; may be empty.
        at: The present hour.

    Raises:
        FairhandError: Nothing stands there.
        DraftChangedOnDisk: Something else stands there now.
    """
    draft = read_text(folder, DRAFT)
    if not was.strip():
        message = f"{DRAFT}: nothing is chosen there; choose the words that are to be cut"
        raise FairhandError(message)
    if span.of(draft.text) != was:
        message = f"{DRAFT}: the passage was changed meanwhile; nothing was cut: look at it again"
        raise DraftChangedOnDisk(message)
    cut = find_cut(draft.text, span)
    whole, place = _with_offcuts(draft.text, cut, read_offcuts(read_text(folder, WHERE).text)[0])
    one = replace(
        take_offcut(whole, place, list_passages(read_manuscript(whole))),
        reason=" ".join(reason.split()),
        when=at.isoformat(timespec="seconds"),
        section=_section_of(read_manuscript(draft.text), span.start),
    )
    without = draft.text[: cut.start] + draft.text[cut.end :]
    _write_both(folder, draft, without, lambda text: add_offcut(text, one))
    return one


def _with_offcuts(text: str, cut: Span, offcuts: Sequence[Offcut]) -> tuple[str, Span]:
    """The draft with what was cut earlier where it would stand, but not within what is cut now; and where that is."""
    for one in reversed(offcuts):
        back = find_return(text, one, list_passages(read_manuscript(text)))
        if cut.start < back.at < cut.end:
            continue
        text = text[: back.at] + back.words + text[back.at :]
        # Where it stood between what comes before and what is cut now, it comes first.
        cut = cut.shifted(len(back.words)) if back.at <= cut.start else cut
    return text, cut


def cut_lines(folder: Path, first: int, last: int, reason: str, at: dt.datetime) -> Offcut:
    """The lines of the draft from one to another, counted from 1, are among the offcuts.

    Raises:
        FairhandError: The draft has no such lines, or nothing stands on them.
    """
    text = read_text(folder, DRAFT).text
    lines = text.split("\n")
    if not 1 <= first <= last <= len(lines):
        message = f"{DRAFT}: it has no lines {first} to {last}; it has {len(lines)}, counted from 1"
        raise FairhandError(message)
    start = sum(len(line) + 1 for line in lines[: first - 1])
    span = Span(start, start + len("\n".join(lines[first - 1 : last])))
    return cut_span(folder, span, span.of(text), reason, at)


def cut_words(folder: Path, words: str, reason: str, at: dt.datetime) -> Offcut:
    """The words are among the offcuts, wherever lines break in the draft.

    Raises:
        FairhandError: The draft does not have them, or has them more than once.
    """
    text = read_text(folder, DRAFT).text
    pattern = re.compile(r"\s+".join(map(re.escape, words.split())) or r"(?!)")
    places = [Span(*found.span()) for found in pattern.finditer(text)]
    if len(places) != 1:
        what = f"it has these words {len(places)} times" if places else "it has no such words"
        message = f"{DRAFT}: {what}; give them as they stand there, and enough of them, or the lines"
        raise FairhandError(message)
    return cut_span(folder, places[0], places[0].of(text), reason, at)


def tell_return(one: Kept) -> str:
    """Where an offcut would stand again, in a sentence.

    >>> tell_return(Kept(Offcut("Rain."), Return(0, "Rain.", "at the end"), 3))
    'It would stand at line 3 again, at the end.'
    """
    return f"It would stand at line {one.line} again, {one.back.how}."


def bring_back(folder: Path, name: str) -> Return:
    """The offcut stands in the draft again: where it stood, or nearest to what stood around it.

    Raises:
        FairhandError: There is no offcut of that name.
        DraftChangedOnDisk: Another program wrote to the draft at the same moment.
    """
    draft, (found, _) = read_text(folder, DRAFT), read_offcuts(read_text(folder, WHERE).text)
    one = next((each for each in found if each.name == name), None)
    if one is None:
        message = f"{WHERE}: there is no such offcut, or it is back already"
        raise FairhandError(message)
    back = find_return(draft.text, one, list_passages(read_manuscript(draft.text)))
    whole = draft.text[: back.at] + back.words + draft.text[back.at :]
    if is_there(draft.text, one):
        whole = draft.text  # the draft was written, and the list was not, when something stopped the program
    _write_both(folder, draft, whole, lambda text: drop_offcut(text, name))
    return back


def give_reason(folder: Path, name: str, reason: str) -> None:
    """The offcut of that name has another reason."""
    present = read_text(folder, WHERE)
    one = next((each for each in read_offcuts(present.text)[0] if each.name == name), None)
    if one is not None:
        changed = add_offcut(drop_offcut(present.text, name), replace(one, reason=" ".join(reason.split())))
        save_text(folder, WHERE, changed, present.seen)


def _write_both(folder: Path, draft: Written, text: str, change: Callable[[str], str]) -> None:
    """The draft and the list of offcuts, the one that gains the words first: at no moment are they in neither."""
    with lock_folder(folder.resolve()):
        kept = read_text(folder, WHERE)
        changed = change(kept.text)
        if len(changed) < len(kept.text):
            if text != draft.text:
                save_text(folder, DRAFT, text, draft.seen)
            save_text(folder, WHERE, changed, kept.seen)
            return
        written = save_text(folder, WHERE, changed, kept.seen)
        try:
            save_text(folder, DRAFT, text, draft.seen)
        except FairhandError:
            save_text(folder, WHERE, kept.text, written.sha256)
            raise


def _section_of(manuscript: Manuscript, at: int) -> str:
    """The innermost heading above a place; empty where there is none."""
    over = [one for one in manuscript.sections if one.heading and one.span.start <= at < one.span.end]
    return over[-1].title if over else ""
