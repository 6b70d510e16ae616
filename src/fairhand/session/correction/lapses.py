"""The writer's lapses, as the terminal and the page both show them: counted, and carried from paper to paper."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Iterator, Sequence
from contextlib import suppress
from dataclasses import dataclass, replace
from pathlib import Path

from fairhand.copyedit.lapses import (
    SHOWN,
    WHERE,
    drop_lapse,
    find_lapse,
    has_died_out,
    note_lapse,
    read_lapses,
)
from fairhand.copyedit.own_prose import own_prose
from fairhand.copyedit.words.confused import find_confused
from fairhand.desk.clock import now
from fairhand.desk.places import desk_of, list_done, list_papers
from fairhand.errors import FairhandError, FileUnreadable, InputError
from fairhand.language.words import words
from fairhand.manuscript.draft import read_manuscript
from fairhand.model.finding import Finding
from fairhand.model.lapse import Lapse
from fairhand.model.problem import Problem
from fairhand.model.span import Span
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.language_tools import shut_by
from fairhand.readiness.table import CHECKS
from fairhand.session.editing import DRAFT, read_text, save_text

WORTH = 200
"""Words from which on a draft tells whether a lapse has died out."""
MISSPELLED, CONFUSED = "spelling", "confused-words"
"""Checks whose lapses are the words themselves, of the second only where they are wrong; of every other check, what it
finds is one lapse."""


@dataclass(frozen=True, slots=True)
class LapseSeen:
    """A lapse, and where it stands in the present draft."""

    lapse: Lapse
    places: tuple[Span, ...] = ()
    died_out: bool = False
    """Whether it stands in none of the last drafts."""
    looked_for: bool = True
    """False while the sheet's rule on tools keeps the language from being looked at."""

    @property
    def stands(self) -> str:
        """How often it stands in the present draft, in words."""
        if not self.looked_for:
            return "not looked for, by the sheet’s rule on tools"
        return f"{len(self.places) or 'not'} in this draft"


def survey_lapses(
    folder: Path, known: Analysis, findings: Sequence[Finding] = ()
) -> tuple[tuple[LapseSeen, ...], tuple[Problem, ...]]:
    """Every lapse of the desk, the most frequent first, with its places in the draft; nothing is written.

    Where the sheet's rule on tools keeps the language shut, they are listed and not looked for.

    Args:
        folder: The paper's folder.
        known: The paper.
        findings: What the checks say of it.
    """
    desk = desk_of(folder)
    lapses, problems = read_lapses(read_text(desk, WHERE).text)
    if shut_by(known):
        return tuple(LapseSeen(lapse, looked_for=False) for lapse in lapses), problems
    drafts = _other_drafts(desk) if any(one.count > 1 and one.wrong for one in lapses) else []
    seen = []
    for lapse in lapses:
        places = tuple(_places(lapse, known, findings))
        later = [stands(lapse) for day, stands in drafts if day > lapse.last]
        seen.append(LapseSeen(lapse, places, bool(lapse.wrong) and not places and has_died_out(lapse, later)))
    return tuple(seen), problems


def _places(lapse: Lapse, known: Analysis, findings: Sequence[Finding]) -> Iterator[Span]:
    """Where a lapse stands: where its check finds it, of those words where it has some; else where its words stand."""
    if not lapse.check:
        yield from find_lapse(known.own_prose, lapse)
    for finding in findings:
        if lapse.check and finding.check == lapse.check and finding.span is not None:
            said = finding.span.of(known.manuscript.text)
            if not lapse.wrong or said.casefold() == lapse.wrong.casefold():
                yield finding.span


def most_frequent(seen: Sequence[LapseSeen]) -> tuple[LapseSeen, ...]:
    """Those that are shown before the copy-edit: the most frequent that have not died out."""
    return tuple(one for one in seen if not one.died_out)[:SHOWN]


def keep_lapse(folder: Path, lapse: Lapse) -> None:
    """The lapse stands on the desk, counted once more where it is there already.

    Raises:
        FairhandError: It says nothing to look for, or names no check that there is.
        FileUnreadable: The file must be mended first.
        DraftChangedOnDisk: Another program wrote to it at the same moment.
        FolderNotWritable: The folder is closed or full.
    """
    if not (lapse.wrong.strip() or lapse.check):
        message = "A lapse needs the words that are wrong, or the name of a check."
        raise FairhandError(message)
    if lapse.check and lapse.check not in (names := [one.name for one in CHECKS]):
        message = f"{lapse.check}: no check has that name; there are {', '.join(names)}"
        raise FairhandError(message)
    desk = desk_of(folder)
    present = read_text(desk, WHERE)
    dated = replace(lapse, last=lapse.last or now().date().isoformat())
    save_text(desk, WHERE, note_lapse(present.text, dated), present.seen)


def count_lapse(folder: Path, lapse: Lapse) -> None:
    """A lapse that was mended is kept, unless the list must be mended first: that is told where it is shown.

    What was mended stands in the draft already, and is not to be called undone for the sake of the list.
    """
    with suppress(FileUnreadable):
        keep_lapse(folder, lapse)


def forget_lapse(folder: Path, name: str) -> None:
    """The lapse of that name is looked for no more.

    Raises:
        FairhandError: There is none of that name.
    """
    desk = desk_of(folder)
    present = read_text(desk, WHERE)
    names = [one.name for one in read_lapses(present.text)[0]]
    if name not in names:
        message = f"{name}: no lapse has that name; there are {', '.join(names) or 'none'}"
        raise FairhandError(message)
    save_text(desk, WHERE, drop_lapse(present.text, name), present.seen)


def _other_drafts(desk: Path) -> list[tuple[str, Callable[[Lapse], bool]]]:
    """The drafts on the desk that are long enough to tell, the newest first, each with its day."""
    drafts = []
    for folder in (*list_papers(desk), *list_done(desk)):
        try:
            text = read_text(folder, DRAFT).text
        except InputError:
            continue  # it is told of where that paper is opened
        if len(words(text)) >= WORTH:
            day = dt.datetime.fromtimestamp((folder / DRAFT).stat().st_mtime).astimezone().date().isoformat()
            drafts.append((day, text))
    drafts.sort(reverse=True)

    def looker(text: str) -> Callable[[Lapse], bool]:
        own = own_prose(read_manuscript(text), ())

        def stands(lapse: Lapse) -> bool:
            if lapse.check == CONFUSED:
                return any(each.word.casefold() == lapse.wrong.casefold() for each in find_confused(own))
            return any(True for _ in find_lapse(own, lapse))

        return stands

    return [(day, looker(text)) for day, text in drafts]
