"""The findings of the copy-edit gone through: marked first, and mended afterwards, one by one or in one go.

A mark is kept in ``marks.jsonl`` beside the stets, by its words, so that it is found again when the draft was edited.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from fairhand.errors import DraftChangedOnDisk, FairhandError
from fairhand.manuscript.parts import Manuscript
from fairhand.model.finding import Finding, Pass
from fairhand.model.span import Span
from fairhand.model.stet import Stet, Word
from fairhand.proof.galley import order_findings
from fairhand.proof.marks_file import WHERE, drop_mark, read_left_marks
from fairhand.proof.offering import offers, put_offered, tell_offer
from fairhand.proof.passages import count_alike, list_passages, passage_at
from fairhand.proof.stets import name_stet, recognise
from fairhand.readiness.table import CHECKS
from fairhand.session.correction.lapses import count_lapse
from fairhand.session.correction.learning import lapse_of
from fairhand.session.editing import (
    DRAFT,
    Passage,
    add_stet,
    mend_passages,
    one_line_end,
    read_text,
    remove_stet,
    save_text,
)
from fairhand.session.opened import OpenPaper

OF_LANGUAGE = frozenset(check.name for check in CHECKS if check.of_language)
"""The checks whose findings may be lapses, and of which what they offer may be put in."""
COPY_EDIT: Pass = "copy-edit"
SAYS: Mapping[Word, str] = {"stet": "stet", "mend": "mend later", "later": "come back"}
"""Each word as the page and the terminal have it."""


@dataclass(frozen=True, slots=True)
class ToMend:
    """A passage of the draft with what is marked in it to be mended."""

    passage: Passage
    """As it stands, and with what the findings offer put in."""
    findings: tuple[Finding, ...]
    offered: tuple[str, ...]
    """What is put in, a line for each finding that offers something."""


@dataclass(frozen=True, slots=True)
class Numbered:
    """A finding of the copy-edit with its number, and what was said of it."""

    number: int
    """From 1, in the order of the text, what is let stand counted too."""
    finding: Finding
    mark: Stet | None
    """The stet, or the mark that was left on it."""

    @property
    def told(self) -> str:
        """How loud it is, or what was said of it."""
        if self.mark is not None and self.mark.word == "stet":
            return "stet"
        return self.finding.weight + (f", {SAYS[self.mark.word]}" if self.mark else "")


def list_numbered(paper: OpenPaper) -> tuple[Numbered, ...]:
    """Everything that the copy-edit finds, numbered as the page has it, with what was said of it."""
    verdict = paper.verdict()
    found = [(one, None) for one in verdict.findings if one.in_pass == COPY_EDIT]
    stood = [(one.finding, one.stet) for one in verdict.stets if one.finding.in_pass == COPY_EDIT]
    left = read_left(paper.folder, [one for one, _ in found], verdict.draft)
    ordered = order_findings([*found, *stood])
    return tuple(Numbered(n, one, stet or left.get(one)) for n, (one, stet) in enumerate(ordered, 1))


def name_finding(numbered: Sequence[Numbered], number: int) -> Numbered:
    """The finding of that number.

    Raises:
        FairhandError: There is none.
    """
    found = next((one for one in numbered if one.number == number), None)
    if found is None:
        last = f"the last is {len(numbered)}" if numbered else "nothing was found"
        message = f"{number}: no finding has that number; {last} (fairhand copy-edit lists them)"
        raise FairhandError(message)
    return found


def read_left(folder: Path, findings: Sequence[Finding], draft: str) -> dict[Finding, Stet]:
    """Which findings were marked and left for afterwards, and by what word."""
    held = recognise(findings, read_left_marks(read_text(folder, WHERE).text), draft)
    return {findings[index]: mark for index, mark in held.items()}


def leave_for_later(folder: Path, one: Numbered, draft: str, word: Word, at: dt.datetime, why: str = "") -> None:
    """The finding is marked: to be mended, to be come back to, or to stand; an earlier mark on it gives way.

    Raises:
        FairhandError: It is let stand already, or cannot be.
        DraftChangedOnDisk: Another program wrote to the file at the same moment.
        FolderNotWritable: The folder is closed or full.
    """
    if one.finding.span is None and not one.finding.concerns:
        message = f"{one.number}: the sheet asks it; what no longer holds is waived in the brief (fairhand answer)"
        raise FairhandError(message)
    take_back(folder, one)
    add_stet(folder, one.finding, draft, why, at, word)


def take_back(folder: Path, one: Numbered) -> None:
    """The finding is as if it had not been gone through: the mark or the stet on it is gone."""
    if one.mark is not None:
        remove_stet(folder, name_stet(one.mark))


def offer_of(finding: Finding, draft: str) -> str:
    """What the finding offers, in a few words; nothing where it offers nothing that may be put in unseen."""
    return tell_offer(finding, draft) if finding.check in OF_LANGUAGE else ""


def mend_offered(folder: Path, findings: Sequence[Finding], draft: str, day: dt.date) -> tuple[Finding, ...]:
    """What the findings offer stands in the draft, all at once; each counts as a lapse; those are returned.

    Args:
        folder: The paper's folder.
        findings: What is to be mended; those that offer nothing are left.
        draft: The draft that they were found in.
        day: Today.

    Raises:
        DraftChangedOnDisk: The draft is not the one that was looked at; nothing was written.
        FolderNotWritable: The folder is closed or full.
    """
    present = read_text(folder, DRAFT)
    if present.text != one_line_end(draft):
        message = f"{DRAFT}: it was changed meanwhile; nothing was written: look at it again"
        raise DraftChangedOnDisk(message)
    able = tuple(one for one in findings if one.check in OF_LANGUAGE and offers(one))
    now = one_line_end(put_offered(draft, able))
    if now != present.text:
        marks = [mark for one, mark in read_left(folder, findings, draft).items() if one in able]
        save_text(folder, DRAFT, now, present.seen)
        _drop(folder, marks)
        for one in able:
            count_lapse(folder, lapse_of(one, draft, day))
    return able


def list_to_mend(manuscript: Manuscript, findings: Sequence[Finding]) -> tuple[ToMend, ...]:
    """The passages that hold these findings, in the order of the draft, each with what it would read once mended."""
    draft, passages = manuscript.text, list_passages(manuscript)
    groups: dict[Span, list[Finding]] = {}
    for one in findings:
        passage = passage_at(passages, one.span)
        if passage is not None:
            groups.setdefault(passage, []).append(one)
    out = []
    for passage in sorted(groups):
        own = groups[passage]
        able = [one for one in own if offer_of(one, draft)]
        was, alike = passage.of(draft), count_alike(passages, draft, passage)
        now = put_offered(draft, able, passage)
        shown = Passage(one_line_end(was), one_line_end(now), alike)
        out.append(ToMend(shown, tuple(own), tuple(offer_of(one, draft) for one in able)))
    return tuple(out)


def mend_in_one_go(folder: Path, typed: Sequence[Passage], marked: Sequence[ToMend], draft: str, day: dt.date) -> int:
    """The passages stand in the draft as the writer has them now, all at once; how many were changed is returned.

    Args:
        folder: The paper's folder.
        typed: The passages as the writer sends them.
        marked: What was marked in the draft as it was looked at, by which lapses are learnt.
        draft: That draft.
        day: Today.

    Raises:
        DraftChangedOnDisk: One of the passages was changed meanwhile; none was written.
        FairhandError: Nothing was changed.
        FolderNotWritable: The folder is closed or full.
    """
    changed = [one for one in typed if one.now != one.was]
    if not changed:
        message = "Nothing was changed in these passages; their marks stand"
        raise FairhandError(message)
    mend_passages(folder, changed)
    own = {(one.passage.was, one.passage.alike): one.findings for one in marked}
    for one in changed:
        for finding in own.get((one.was, one.alike), ()):
            learn_from_mending(folder, finding, draft, one, day)
    return len(changed)


def learn_from_mending(folder: Path, finding: Finding, draft: str, passage: Passage, day: dt.date) -> None:
    """Where mending a passage took out a slip of the language, it counts as one of the writer's lapses."""
    if finding.check not in OF_LANGUAGE or finding.span is None:
        return
    words = finding.span.of(draft)
    if passage.now.count(words) < passage.was.count(words):
        count_lapse(folder, lapse_of(finding, draft, day))


def _drop(folder: Path, marks: Sequence[Stet]) -> None:
    present = read_text(folder, WHERE)
    text = present.text
    for mark in marks:
        text = drop_mark(text, name_stet(mark))
    if text != present.text:
        save_text(folder, WHERE, text, present.seen)
