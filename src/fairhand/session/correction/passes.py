"""Passes over the proof: begun, ended, and what was not read of it.

While one is under way nothing is mended, and no mark of another is shown.
"""

from __future__ import annotations

import datetime as dt
import uuid
from collections.abc import Iterable
from dataclasses import dataclass, replace
from pathlib import Path

from fairhand.desk.paper_files import read_paper
from fairhand.errors import DeskError, FairhandError
from fairhand.model.proof_mark import Medium, ProofMark, ProofPass
from fairhand.model.requirement import Requirement
from fairhand.proof.marks_file import WHERE
from fairhand.proof.pass_file import put_line, read_passes
from fairhand.proof.placing import Proofed
from fairhand.session.editing import DRAFT, read_text, save_text
from fairhand.session.opened import OpenPaper
from fairhand.session.record.states import draft_of
from fairhand.session.saving import keep_record


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


def medium_asked(requirements: Iterable[Requirement]) -> Medium:
    """In what form the paper will be read, as its sheet has it: on paper where that asks for a printed copy.

    >>> medium_asked(())
    'screen'
    """
    printed = any(
        requirement.values.get("what") == "printed" or requirement.values.get("by") in ("print", "in-class")
        for requirement in requirements
    )
    return "paper" if printed else "screen"


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
    keep_record(read_paper(folder))  # what is read now can be told afterwards, whatever is mended
    by, lapse = (" ".join(said.split())[:200] for said in (by, lapse))
    begun = ProofPass(new_id(), medium, by, lapse, moment_of(at), draft=draft.seen or "")
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
    going = pass_under_way(present.text)
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
    ended = replace(going, closed=moment_of(at), read_to=read_to, unread=unread)
    save_text(folder, WHERE, put_line(present.text, ended), present.seen)
    return ended


def draft_read(folder: Path, one: ProofPass) -> str:
    """The draft as it was when a pass was begun.

    Raises:
        DeskError: It is not among the paper's earlier states.
    """
    draft = draft_of(folder, one.draft)
    if draft is None:
        message = f"{folder.name}: the draft that the pass read is not among its earlier states"
        raise DeskError(message)
    return draft


def paper_as_read(paper: OpenPaper, marking: Marking) -> OpenPaper:
    """The paper with the draft that the pass under way reads: its lines are those of the proof that was printed then.

    It is the paper itself where no pass is under way, or nothing was changed since.
    """
    going = marking.under_way
    if going is None or not going.draft or going.draft == read_text(paper.folder, DRAFT).seen:
        return paper
    try:
        return OpenPaper(paper.folder, at=paper.look().paper.now, draft=draft_read(paper.folder, going))
    except DeskError:
        return paper


def pass_under_way(text: str) -> ProofPass:
    """The pass that ``marks.jsonl`` says is under way.

    Raises:
        FairhandError: None is.
    """
    going = Marking(*read_passes(text)).under_way
    if going is None:
        message = f"{WHERE}: no pass is under way; begin one to mark the proof"
        raise FairhandError(message)
    return going


def refuse_under_way(text: str) -> None:
    """Raises where ``marks.jsonl`` says that a pass is under way: nothing is mended meanwhile.

    Raises:
        FairhandError: One is.
    """
    going = Marking(*read_passes(text)).under_way
    if going:
        message = f"{WHERE}: a pass is under way{_since(going)}; read it to its end and end it, and mend afterwards"
        raise FairhandError(message)


def _since(going: ProofPass) -> str:
    return f" since {going.begun[:16].replace('T', ' ')}" if going.begun else ""


def moment_of(at: dt.datetime) -> str:
    """An hour as annotations have it."""
    return at.isoformat(timespec="seconds")


def new_id() -> str:
    """A name for a pass or a mark that nothing else has."""
    return f"urn:uuid:{uuid.uuid4()}"
