"""What lapses are learnt from: findings, marks on the proof, and the comments of a reader or teacher."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

from fairhand.copyedit.lapses import WHERE, note_learnt, read_learnt
from fairhand.copyedit.remarked import read_comment
from fairhand.copyedit.words.confused import confusions
from fairhand.desk.places import desk_of
from fairhand.language.lexicon import find_word
from fairhand.model.finding import Finding
from fairhand.model.lapse import Lapse
from fairhand.model.proof_mark import ProofMark
from fairhand.readiness.table import CHECKS
from fairhand.session.correction.lapses import CONFUSED, MISSPELLED, keep_lapse
from fairhand.session.editing import read_text, save_text


def lapse_of(finding: Finding, draft: str, day: dt.date | None = None) -> Lapse:
    """The lapse that a finding is one case of: its words, or its check."""
    words_found = finding.span.of(draft) if finding.span else ""
    start, end = (finding.span.start, finding.span.end) if finding.span else (0, 0)
    example = " ".join(draft[max(0, start - 30) : end + 30].split())
    last = day.isoformat() if day else ""
    if finding.check in (MISSPELLED, CONFUSED) and words_found:
        right = finding.instead[0].words if finding.instead else ""
        check = CONFUSED if finding.check == CONFUSED else ""
        return Lapse(f"{words_found} for {right}", words_found, right, check, last=last, example=example)
    return Lapse(finding.check.replace("-", " "), check=finding.check, last=last, example=example)


def lapse_of_mark(mark: ProofMark) -> Lapse | None:
    """The lapse that a mark on the proof is one case of: a word that is none, or one of two that are taken for another.

    A word put in the place of another good one is a change of wording, and no lapse.

    >>> lapse_of_mark(ProofMark("m", "p", "substitute", "recieve", words="receive")).name
    'recieve for receive'
    >>> lapse_of_mark(ProofMark("m", "p", "substitute", "large", words="great")) is None
    True
    """
    wrong, right = mark.exact.casefold(), mark.words.casefold()
    if mark.sign != "substitute" or not (wrong.isalpha() and right.isalpha()) or wrong == right:
        return None
    if any(row.meant == right for row in confusions().get(wrong, ())):
        return Lapse(f"{wrong} for {right}", wrong, right, CONFUSED)
    if find_word(wrong) is None and find_word(right) is not None:
        return Lapse(f"{wrong} for {right}", wrong, right)
    return None


def learn_from_comments(folder: Path, comments: Sequence[str]) -> tuple[Lapse, ...]:
    """The lapses that a reader's or teacher's remarks name are on the desk; those that name none are passed over.

    A remark on a paper that was learnt from before is passed over too: it would be counted twice.

    Raises:
        FileUnreadable: The list of lapses must be mended first.
        DraftChangedOnDisk: Another program wrote to it at the same moment.
        FolderNotWritable: The folder is closed or full.
    """
    desk, checks = desk_of(folder), {one.name for one in CHECKS}
    paper = folder.resolve().name
    known = read_learnt(read_text(desk, WHERE).text)
    found = []
    for comment in dict.fromkeys(comments):
        lapse = read_comment(comment)
        if lapse is None or (lapse.check and lapse.check not in checks) or (paper, comment) in known:
            continue
        if any(row.meant == lapse.right.casefold() for row in confusions().get(lapse.wrong.casefold(), ())):
            lapse = replace(lapse, check=CONFUSED)  # both are good words: told only where the check finds one wrong
        keep_lapse(folder, lapse)
        present = read_text(desk, WHERE)
        save_text(desk, WHERE, note_learnt(present.text, paper, comment), present.seen)
        found.append(lapse)
    return tuple(found)
