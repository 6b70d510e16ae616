"""The stages of a paper: what each asks to be done, by what the sheet asks and how the paper stands.

What is not asked makes no step. Times without a source are common practice.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass

from fairhand.language.counts import count_of, open_with
from fairhand.planning.standing import Milestone, Standing, Unread

READ_WPM, ALOUD_WPM = 238, 183
"""Words a minute, read silently and aloud. **Source**: Brysbaert 2019, Journal of Memory and Language 109."""
WITH_NOTES = 2
"""How many times longer reading takes with notes."""
DRAFTED = 350
"""Words of researched prose drafted in an hour: the middle of 200–500 (from memory, weak)."""
REVISED, COPY_EDITED, PROOFREAD = 750, 1250, 1750
"""Words an hour: the middles of heavy copy-editing (500–1,000), medium (1,000–1,500) and proofreading (1,000–2,500).
**Source**: the trade's pages of rates."""
PRINTED_PAGE = 400
"""Words on a page of a printed source."""
UNKNOWN_SOURCE = 6000
"""Words of a source of which nothing is known: an article of fifteen pages."""
MOST_OF_A_SOURCE = 180
"""Minutes with one source: of a book no more is read than is used."""
FIND_MINUTES, QUESTION_MINUTES, FINDING_MINUTES = 30, 3, 2
"""To find one source, to settle one question of the sheet, to mend one finding."""
MILESTONES: Mapping[str, tuple[str, str, int, int]] = {
    "proposal": ("focus", "write the proposal", 250, 0),
    "annotated-bibliography": ("reading", "write the annotated bibliography", 0, 0),
    "outline": ("reading", "write the outline", 0, 45),
    "peer-review": ("draft", "comment on a fellow student’s draft", 0, 45),
    "presentation": ("revision", "prepare the presentation", 0, 120),
    "reflection": ("revision", "write the reflection", 400, 0),
}
"""Each piece with its own hour: the stage it comes after, what is done, and its usual words or minutes."""
ANNOTATION = 120
"""Words on each source of an annotated bibliography."""
HANDING_IN = {
    "upload": "upload it, and keep the receipt",
    "email": "send it, and keep the message",
    "print": "print it, and hand it over",
    "in-class": "print it, and take it to class",
}


@dataclass(frozen=True, slots=True)
class Sketch:
    """A step before the pace, and what comes before it, are known."""

    name: str
    does: str
    minutes: float
    """At the usual pace."""
    why: str
    follows: str = ""
    """The step of its own stage that it comes after."""
    loses: str = ""
    """What the paper goes without where it is left out; empty where it cannot be."""
    due: dt.datetime | None = None
    beside: bool = False
    """Whether nothing waits for it."""


def _sketch_sheet(standing: Standing) -> Iterator[Sketch]:
    if not standing.has_sheet:
        yield Sketch("sheet", "bring in the assignment sheet", 5, "It says what there is to do, and by when.")
    elif standing.questions:
        asked = count_of(standing.questions, "thing")
        minutes = standing.questions * QUESTION_MINUTES
        yield Sketch("sheet", "answer what the sheet leaves open", minutes, f"It leaves {asked} for you to answer.")


def _sketch_jottings(standing: Standing) -> Iterator[Sketch]:
    if not (standing.has_jottings or standing.words_written or standing.has_focus):
        yield Sketch("jottings", "jot down what comes to mind", 10, "Nothing is jotted down yet.")


def _sketch_focus(standing: Standing) -> Iterator[Sketch]:
    if not (standing.has_focus or standing.words_written):
        why = "There is no thesis and no point yet: what is read depends on them."
        yield Sketch("focus", "settle the focus and the points", 45, why)


def _sketch_reading(standing: Standing) -> Iterator[Sketch]:
    """The sources: those that are missing are found, and what is not read yet is read."""
    if not standing.asks_for_sources:
        return
    missing = standing.sources_missing
    if missing:
        more = "more " if standing.sources_there else ""
        does = f"find {count_of(missing, f'{more}source')}"
        yield Sketch("sources", does, missing * FIND_MINUTES, _why_sources(standing))
    for one in standing.unread:
        yield Sketch(f"read-{one.id}", f"read {one.name}", _reading_minutes(one), _why_read(one))
    if missing:
        does = f"read the {f'{missing} sources' if missing > 1 else 'source'} still to be found"
        minutes = missing * _reading_minutes(Unread("", ""))
        why = f"Each is reckoned at {UNKNOWN_SOURCE:,} words, with notes."
        yield Sketch("read-found", does, minutes, why, follows="sources")


def _why_sources(standing: Standing) -> str:
    if standing.sources_asked - standing.sources_there >= standing.sources_for_points:
        there = f"{standing.sources_there or 'none'} of them {'is' if standing.sources_there == 1 else 'are'} there"
        return f"The sheet asks for {standing.sources_asked}, and {there}."
    points = open_with(standing.thin_points, "point has", "points have")
    return f"{points} fewer sources than you want."


def _why_read(one: Unread) -> str:
    if one.words:
        return f"There is no note from it yet; it has {one.words:,} words."
    if one.pages:
        return f"There is no note from it yet; it has {count_of(one.pages, 'page')}."
    return f"There is no note from it yet; {UNKNOWN_SOURCE:,} words are reckoned, as its text is not at hand."


def _reading_minutes(one: Unread) -> float:
    words = one.words or one.pages * PRINTED_PAGE or UNKNOWN_SOURCE
    return min(MOST_OF_A_SOURCE, words / READ_WPM * WITH_NOTES)


def _sketch_draft(standing: Standing) -> Iterator[Sketch]:
    left, whole = standing.words_unwritten, standing.words_whole
    if not left:
        return
    due = next((one.hour for one in standing.milestones if one.what == "draft"), None)
    why = f"{left:,} of {whole:,} words are still to be written."
    if not standing.words_asked:
        why = f"Nothing is written yet; the sheet names no length, so {whole:,} words are reckoned."
    yield Sketch("draft", "write the draft", left / DRAFTED * 60, why, due=due)


def _sketch_revision(standing: Standing) -> Iterator[Sketch]:
    found = standing.findings.get("revision", 0)
    why = "The argument, its order and its support come before the language."
    if found:
        why = f"{count_of(found, 'finding is', 'findings are')} open on the argument and its support."
    minutes = standing.words_whole / REVISED * 60 + found * FINDING_MINUTES
    yield Sketch("revision", "revise the argument", minutes, why)


def _sketch_readers(standing: Standing) -> Iterator[Sketch]:
    """First readers, one after another: a fresh eye is fresh only once. Those who have it, or had it, are none."""
    count = 0 if standing.no_readers else standing.wishes.readers
    for number in range(len(standing.readers_until) + 1, count + 1):
        days = standing.wishes.reader_days
        yield Sketch(
            f"reader-{number}",
            "give it to a first reader" if count == 1 else f"give it to first reader {number}",
            20,
            f"Somebody new to it reads it, for {count_of(days, 'day')}; then what was said is weighed.",
            follows=f"reader-{number - 1}" if number > 1 else "",
            loses="a reader",
        )


def _sketch_copy_edit(standing: Standing) -> Iterator[Sketch]:
    found = standing.findings.get("copy-edit", 0)
    why = "Language and form are mended once the argument stands."
    if found:
        why = f"{count_of(found, 'finding is', 'findings are')} open on language, form and citations."
    minutes = standing.words_whole / COPY_EDITED * 60 + found * FINDING_MINUTES
    yield Sketch("copy-edit", "copy-edit it", minutes, why)


def _sketch_proof(standing: Standing) -> Iterator[Sketch]:
    why = "It is read as the page that will be handed in, and marked."
    yield Sketch("proof", "read the proof", standing.words_whole / PROOFREAD * 60, why)


def _sketch_final_reading(standing: Standing) -> Iterator[Sketch]:
    why = f"{count_of(standing.words_whole, 'word')}, aloud, from start to end."
    yield Sketch("final-reading", "read it through once", standing.words_whole / ALOUD_WPM, why)


def _sketch_hand_in(standing: Standing) -> Iterator[Sketch]:
    does = HANDING_IN.get(standing.hand_in, "print the fair copy, and hand it in")
    yield Sketch("hand-in", does, 10, "The fair copy is made and handed in.")


STAGES: Mapping[str, Callable[[Standing], Iterator[Sketch]]] = {
    "sheet": _sketch_sheet,
    "jottings": _sketch_jottings,
    "focus": _sketch_focus,
    "reading": _sketch_reading,
    "draft": _sketch_draft,
    "revision": _sketch_revision,
    "readers": _sketch_readers,
    "copy-edit": _sketch_copy_edit,
    "proof": _sketch_proof,
    "final-reading": _sketch_final_reading,
    "hand-in": _sketch_hand_in,
}
"""The stages of a paper, in the order in which handbooks have them; each comes after the one before."""


def _is_after(standing: Standing, one: Milestone) -> bool:
    """Whether a piece is due after the paper itself."""
    return standing.due is not None and one.hour > standing.due


def pieces_after(standing: Standing) -> list[Milestone]:
    """The pieces that are due after the paper itself."""
    return [one for one in standing.milestones if one.what in MILESTONES and _is_after(standing, one)]


def sketch_milestones(standing: Standing, stage: str) -> list[Sketch]:
    """The pieces that come after a stage; nothing of the paper waits for them."""
    return [
        sketch_milestone(standing, one)
        for one in standing.milestones
        if one.what in MILESTONES and MILESTONES[one.what][0] == stage and not _is_after(standing, one)
    ]


def sketch_milestone(standing: Standing, one: Milestone) -> Sketch:
    """A piece with an hour of its own, as a step."""
    _, does, words, minutes = MILESTONES[one.what]
    if one.what == "annotated-bibliography":
        words = ANNOTATION * max(standing.sources_asked, standing.sources_there, 3)
    words = one.words or words
    day = f"{one.hour:%A} {one.hour.day} {one.hour:%B}"
    return Sketch(
        one.what, does, words / DRAFTED * 60 or minutes, f"It is due by itself, on {day}.", due=one.hour, beside=True
    )
