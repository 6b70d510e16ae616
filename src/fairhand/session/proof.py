"""The proof read and marked: a pass is begun, marked and ended, and only then are its marks gone through.

Marking writes ``marks.jsonl`` and nothing else; the draft changes only when the writer mends a mark of a pass that has
ended.
"""

from __future__ import annotations

import datetime as dt
import uuid
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from fairhand.errors import DraftChangedOnDisk, FairhandError
from fairhand.fair_copy.typesetting import to_typst
from fairhand.manuscript.draft import read_manuscript
from fairhand.model.proof_mark import Fate, Medium, ProofMark, ProofPass
from fairhand.model.span import Span
from fairhand.proof.marks_file import WHERE
from fairhand.proof.mending import mend_text
from fairhand.proof.pass_file import drop_line, put_line, read_passes
from fairhand.proof.placing import Found, Proofed, anchor, find_mark, find_words, find_written, join_lines, read_type
from fairhand.proof.printed_lines import read_printed_lines
from fairhand.proof.written_marks import WrittenMark, find_fault
from fairhand.session.editing import DRAFT, read_text, save_text
from fairhand.session.opened import OpenPaper


@dataclass(frozen=True, slots=True)
class Marking:
    """The passes over a paper's proof and their marks."""

    passes: tuple[ProofPass, ...] = ()
    marks: tuple[ProofMark, ...] = ()

    @property
    def under_way(self) -> ProofPass | None:
        """The pass that has been begun and not ended."""
        return next((one for one in self.passes if not one.closed), None)

    def of(self, one: ProofPass) -> tuple[ProofMark, ...]:
        """The marks of a pass."""
        return tuple(mark for mark in self.marks if mark.in_pass == one.id)

    @property
    def shown(self) -> tuple[tuple[int, ProofMark], ...]:
        """The marks with their numbers: while a pass is under way its own alone, so that each reader's eye is fresh."""
        going = self.under_way
        return tuple(
            (number, mark) for number, mark in enumerate(self.marks, 1) if going is None or mark.in_pass == going.id
        )

    @property
    def open(self) -> tuple[tuple[int, ProofMark], ...]:
        """Those that are still to be gone through."""
        return tuple(each for each in self.shown if each[1].fate == "open")


def read_marking(folder: Path) -> Marking:
    """What ``marks.jsonl`` holds of passes and their marks."""
    return Marking(*read_passes(read_text(folder, WHERE).text))


def read_proof(paper: OpenPaper) -> Proofed:
    """The proof's lines, as it is printed at this moment; asides and TKs are not in it.

    Raises:
        EngineFailed: Pandoc or typst refused the paper.
    """
    if not paper.look().paper.draft.strip():
        return join_lines(())
    copy = paper.fair_copy(proof=True)
    return join_lines(read_printed_lines(paper.engines.typeset(to_typst(copy)).pdf, copy.layout.margins_pt))


def begin_pass(folder: Path, medium: Medium, at: dt.datetime, *, by: str = "", lapse: str = "") -> ProofPass:
    """A pass is under way.

    Args:
        folder: The paper's folder.
        medium: In what form it is read.
        at: The present hour.
        by: Who reads; empty for the writer.
        lapse: The one thing that is looked for; empty for everything.

    Raises:
        FairhandError: Another one has not been ended.
        DraftChangedOnDisk: Another program wrote to the file at the same moment.
    """
    present, draft = read_text(folder, WHERE), read_text(folder, DRAFT)
    going = Marking(*read_passes(present.text)).under_way
    if going:
        message = f"{WHERE}: a pass is under way{_since(going)}; end it first"
        raise FairhandError(message)
    if not draft.text.strip():
        message = f"{folder / DRAFT}: the draft is empty or not there yet; there is nothing to read"
        raise FairhandError(message)
    by, lapse = (" ".join(said.split())[:200] for said in (by, lapse))
    begun = ProofPass(_new_id(), medium, by, lapse, _moment(at), draft=draft.seen or "")
    save_text(folder, WHERE, put_line(present.text, begun), present.seen)
    return begun


def end_pass(
    folder: Path, at: dt.datetime, read_to: tuple[int, int] = (0, 0), proof: Proofed | None = None
) -> ProofPass:
    """The pass under way has ended, read to its end or to a line; what was not read is kept with it.

    Args:
        folder: The paper's folder.
        at: The present hour.
        read_to: Page and line of the last line that was read; zeros for all.
        proof: The proof's lines, to tell what was not read.

    Raises:
        FairhandError: None is under way, or the proof has no such line.
        DraftChangedOnDisk: Another program wrote to the file at the same moment.
    """
    present = read_text(folder, WHERE)
    going = _under_way(present.text)
    unread = ""
    if read_to != (0, 0):
        index = proof.index_of(*read_to) if proof else None
        if proof and index is None:
            message = f"the proof: page {read_to[0]} has no line {read_to[1]}; name the last line that was read"
            raise FairhandError(message)
        last = proof.lines[-1] if proof else None
        if last and index == len(proof.lines if proof else ()) - 1:
            read_to = (0, 0)
        else:
            unread = f"from page {read_to[0]}, line {read_to[1]} on" + (f" to page {last.page}" if last else "")
    ended = replace(going, closed=_moment(at), read_to=read_to, unread=unread)
    save_text(folder, WHERE, put_line(present.text, ended), present.seen)
    return ended


def place_written(written: WrittenMark, proof: Proofed, draft: str) -> ProofMark:
    """A mark that was written down by its line, anchored to its words.

    Raises:
        FairhandError: Its words do not stand in that line, or stand there twice.
    """
    found = find_written(written, proof)
    if isinstance(found, str):
        raise FairhandError(found)
    return anchor_mark(ProofMark("", "", written.sign, written.exact, words=written.words), found, proof, draft)


def anchor_mark(mark: ProofMark, span: Span, proof: Proofed, draft: str) -> ProofMark:
    """A mark on an interval of the proof's text, anchored to the words of the draft that were printed there.

    What the draft does not have, as a reference or a number set in print, is anchored in the printed words.
    """
    line = proof.line_at(span.start)
    exact, before, after = anchor(proof.text, span)
    mark = replace(mark, exact=exact, before=before, after=after, where="fair copy", page=line.page, line=line.number)
    type_ = read_type(read_manuscript(draft))
    found = find_words(type_.text, exact, before, after)
    if found is None or not found.sure:
        return mark
    exact, before, after = anchor(draft, type_.in_draft(found.span))
    return replace(mark, exact=exact, before=before, after=after, where="draft.md")


def keep_marks(folder: Path, marks: Iterable[ProofMark], at: dt.datetime) -> tuple[ProofMark, ...]:
    """The marks stand in the pass under way; nothing but ``marks.jsonl`` is written.

    Raises:
        FairhandError: No pass is under way, or a mark asks nothing.
        DraftChangedOnDisk: Another program wrote to the file at the same moment.
    """
    present = read_text(folder, WHERE)
    going = _under_way(present.text)
    text, kept = present.text, []
    for mark in marks:
        fault = find_fault(mark.sign, mark.exact, mark.words)
        if fault:
            raise FairhandError(f"{WHERE}: {fault}")
        made = replace(mark, id=_new_id(), in_pass=going.id, when=_moment(at), fate="open", why="")
        text = put_line(text, made)
        kept.append(made)
    if kept:
        save_text(folder, WHERE, text, present.seen)
    return tuple(kept)


def take_mark_back(folder: Path, mark_id: str) -> None:
    """A mark of the pass under way is gone; what it was stays among the earlier states.

    Raises:
        FairhandError: It is of no pass that is under way.
        DraftChangedOnDisk: Another program wrote to the file at the same moment.
    """
    present = read_text(folder, WHERE)
    going, mark = _under_way(present.text), _find(present.text, mark_id)
    if mark.in_pass != going.id:
        message = f"{WHERE}: that mark is of another pass, which has ended; let it stand instead"
        raise FairhandError(message)
    save_text(folder, WHERE, drop_line(present.text, mark_id), present.seen)


def settle_mark(folder: Path, mark_id: str, fate: Fate, why: str = "") -> ProofMark:
    """What became of a mark is kept with it, with the writer's reason; the draft is not touched.

    Raises:
        FairhandError: There is no such mark, or its pass is still under way.
        DraftChangedOnDisk: Another program wrote to the file at the same moment.
    """
    present = read_text(folder, WHERE)
    _refuse_under_way(present.text)
    settled = replace(_find(present.text, mark_id), fate=fate, why=" ".join(why.split())[:500])
    save_text(folder, WHERE, put_line(present.text, settled), present.seen)
    return settled


def place_marks(marks: Sequence[ProofMark], draft: str) -> dict[str, Found | None]:
    """Where each mark stands in the draft as it now is, by its id."""
    return {mark.id: find_mark(mark, draft) for mark in marks}


def mend_mark(folder: Path, mark_id: str) -> ProofMark:
    """The mark is carried out in the draft, at the writer's word, and counted as mended.

    Raises:
        FairhandError: Its pass is under way, its place is not sure, or its wording is the writer's.
        DraftChangedOnDisk: The draft is not the one that was read.
        FolderNotWritable: The folder is closed or full.
    """
    present, draft = read_text(folder, WHERE), read_text(folder, DRAFT)
    _refuse_under_way(present.text)
    mark = _find(present.text, mark_id)
    if mark.fate == "mended":
        message = f"{WHERE}: “{mark.exact[:40]}” was mended before; nothing more was written"
        raise FairhandError(message)
    found = find_mark(mark, draft.text)
    if found is None or not found.sure:
        where = "stands in print alone" if mark.where != DRAFT else "is not found for sure any more"
        message = f"{DRAFT}: “{mark.exact[:40]}” {where}; mend it by hand, then say that it is mended"
        raise FairhandError(message)
    now = mend_text(draft.text, found.span, mark)
    if now is None:
        message = f"{DRAFT}: what “{mark.sign}” on “{mark.exact[:40]}” makes of it is yours to word; mend it by hand"
        raise FairhandError(message)
    save_text(folder, DRAFT, now, draft.seen)
    return settle_mark(folder, mark_id, "mended")


def name_marks(numbers: Sequence[tuple[int, ProofMark]], number: int) -> ProofMark:
    """The mark of that number.

    Raises:
        FairhandError: There is none.
    """
    found = next((mark for n, mark in numbers if n == number), None)
    if found is None:
        message = f"{WHERE}: no mark has the number {number}; fairhand proof lists them"
        raise FairhandError(message)
    return found


def _find(text: str, mark_id: str) -> ProofMark:
    found = next((mark for mark in read_passes(text)[1] if mark.id == mark_id), None)
    if found is None:
        message = f"{WHERE}: the mark is there no more; look at the proof again"
        raise DraftChangedOnDisk(message)
    return found


def _under_way(text: str) -> ProofPass:
    going = Marking(*read_passes(text)).under_way
    if going is None:
        message = f"{WHERE}: no pass is under way; begin one to mark the proof"
        raise FairhandError(message)
    return going


def _refuse_under_way(text: str) -> None:
    going = Marking(*read_passes(text)).under_way
    if going:
        message = f"{WHERE}: a pass is under way{_since(going)}; read it to its end and end it, and mend afterwards"
        raise FairhandError(message)


def _since(going: ProofPass) -> str:
    return f" since {going.begun[:16].replace('T', ' ')}" if going.begun else ""


def _moment(at: dt.datetime) -> str:
    return at.isoformat(timespec="seconds")


def _new_id() -> str:
    return f"urn:uuid:{uuid.uuid4()}"
