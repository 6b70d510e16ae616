"""The proof read and marked: a pass is begun, marked and ended, and only then are its marks gone through.

Marking writes ``marks.jsonl`` and nothing else; the draft changes only when the writer mends a mark of a pass that has
ended.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Sequence
from dataclasses import replace
from pathlib import Path

from fairhand.errors import DraftChangedOnDisk, FairhandError
from fairhand.fair_copy.document import FairCopy
from fairhand.fair_copy.typesetting import to_typst
from fairhand.manuscript.draft import read_manuscript
from fairhand.model.proof_mark import Fate, ProofMark
from fairhand.model.span import Span
from fairhand.proof.marks_file import WHERE
from fairhand.proof.mending import mend_text
from fairhand.proof.pass_file import drop_line, put_line, read_passes
from fairhand.proof.placing import (
    Proofed,
    anchor,
    find_mark,
    find_written,
    join_lines,
    read_type,
    stands_as_marked,
)
from fairhand.proof.printed_lines import read_printed_lines
from fairhand.proof.written_marks import WrittenMark, find_fault
from fairhand.reading.found_again import Place, find_surely
from fairhand.session.correction.lapses import count_lapse
from fairhand.session.correction.learning import lapse_of_mark
from fairhand.session.correction.passes import moment_of, new_id, pass_under_way, refuse_under_way
from fairhand.session.editing import DRAFT, read_text, save_text
from fairhand.session.opened import OpenPaper


def read_proof(paper: OpenPaper) -> Proofed:
    """The proof's lines, as it is printed at this moment; asides and TKs are not in it.

    Raises:
        EngineFailed: Pandoc or typst refused the paper.
    """
    if not paper.look().paper.draft.strip():
        return join_lines(())
    return read_lines(paper, paper.fair_copy(proof=True))


def read_lines(paper: OpenPaper, copy: FairCopy) -> Proofed:
    """The lines of a copy as it is printed, its pages numbered as they are there.

    Raises:
        EngineFailed: Typst refused it.
    """
    layout = copy.layout
    first = 0 if layout.first_page == "title-page" and not layout.number_title_page else 1
    return join_lines(read_printed_lines(paper.engines.typeset(to_typst(copy)).pdf, layout.margins_pt, first))


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
    found = find_surely(type_.text, exact, before, after)
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
    going = pass_under_way(present.text)
    text, kept = present.text, []
    for mark in marks:
        fault = find_fault(mark.sign, mark.exact, mark.words)
        if fault:
            raise FairhandError(f"{WHERE}: {fault}")
        made = replace(mark, id=new_id(), in_pass=going.id, when=moment_of(at), fate="open", why="")
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
    going, mark = pass_under_way(present.text), _find(present.text, mark_id)
    if mark.in_pass != going.id:
        message = f"{WHERE}: that mark is of another pass, which has ended; let it stand instead"
        raise FairhandError(message)
    save_text(folder, WHERE, drop_line(present.text, mark_id), present.seen)


def settle_mark(folder: Path, mark_id: str, fate: Fate, why: str = "") -> ProofMark:
    """What became of a mark is kept with it, with the writer's reason; the draft is not touched.

    A slip of the language that was mended counts as one of the writer's lapses.

    Raises:
        FairhandError: There is no such mark, or its pass is still under way.
        DraftChangedOnDisk: Another program wrote to the file at the same moment.
    """
    present = read_text(folder, WHERE)
    refuse_under_way(present.text)
    before = _find(present.text, mark_id)
    settled = replace(before, fate=fate, why=" ".join(why.split())[:500])
    save_text(folder, WHERE, put_line(present.text, settled), present.seen)
    lapse = lapse_of_mark(settled) if fate == "mended" and before.fate != "mended" else None
    if lapse:
        context = " ".join(f"{settled.before[-30:]}{settled.exact}{settled.after[:30]}".split())
        count_lapse(folder, replace(lapse, example=context))
    return settled


def place_marks(marks: Sequence[ProofMark], draft: str) -> dict[str, Place | None]:
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
    refuse_under_way(present.text)
    mark = _find(present.text, mark_id)
    if mark.fate == "mended":
        message = f"{WHERE}: “{mark.exact[:40]}” was mended before; nothing more was written"
        raise FairhandError(message)
    found = find_mark(mark, draft.text)
    if found is None or not found.sure or not stands_as_marked(mark, draft.text, found.span):
        where = "stands in print alone" if mark.where != DRAFT else "does not stand there any more as it was marked"
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
