"""What the terminal does with the findings of the copy-edit: marked first, mended later."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from fairhand.cli.screen import say

if TYPE_CHECKING:
    from fairhand.model.stet import Word


def mark(paper: Path, said: dict[Word, Sequence[int]], why: str, back: Sequence[int], lapses: Sequence[int]) -> None:
    """What is said of findings is kept, by their numbers as they were before any of it."""
    from fairhand.desk.clock import now
    from fairhand.session.correction.going_through import leave_for_later, list_numbered, name_finding, take_back
    from fairhand.session.correction.lapses import keep_lapse
    from fairhand.session.correction.learning import lapse_of
    from fairhand.session.opened import OpenPaper

    opened, at = OpenPaper(paper), now()
    numbered, draft = list_numbered(opened), opened.verdict().draft
    wanted = [(word, name_finding(numbered, n)) for word, numbers in said.items() for n in numbers]
    for one in [name_finding(numbered, n) for n in back]:
        take_back(paper, one)
    for word, one in wanted:
        leave_for_later(paper, one, draft, word, at, why if word == "stet" else "")
    for one in [name_finding(numbered, n) for n in lapses]:
        keep_lapse(paper, lapse_of(one.finding, draft, at.date()))


def mend_offers(paper: Path, numbers: Sequence[int], *, marked: bool) -> None:
    """What is offered stands in the draft; what offers nothing is told, with its line, to be mended by hand."""
    from fairhand.desk.clock import now
    from fairhand.language.counts import count_of
    from fairhand.model.span import line_at
    from fairhand.session.correction.going_through import list_numbered, mend_offered, name_finding, offer_of
    from fairhand.session.opened import OpenPaper

    opened = OpenPaper(paper)
    numbered, draft = list_numbered(opened), opened.verdict().draft
    chosen = [name_finding(numbered, n) for n in numbers]
    chosen += [one for one in numbered if marked and one not in chosen and one.mark and one.mark.word == "mend"]
    done = mend_offered(paper, [one.finding for one in chosen], draft, now().date())
    say(f"Mended: {count_of(len(done), 'place')}. The draft as it was is in the record.")
    for one in chosen:
        span = one.finding.span
        where = f"line {line_at(draft, span.start)}: " if span else ""
        if one.finding in done:
            say(f"{where}{offer_of(one.finding, draft)}", 2, 4)
        else:
            say(f"{where}{one.finding.check}: how it is mended is yours to word; mend it in draft.md", 2, 4)
    say()
