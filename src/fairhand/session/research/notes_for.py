"""The notes by source and page, and by what they are for: the questions that they answer, the points they carry."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Literal

from fairhand.errors import FairhandError
from fairhand.model.note import Note
from fairhand.readiness.analysis import Analysis


@dataclass(frozen=True)
class Served:
    """What a note may be for, in the order of the paper's own lists."""

    questions: Mapping[str, str] = field(default_factory=dict)
    """The words of each question by its id."""
    points: Mapping[str, str] = field(default_factory=dict)
    """The words of each point by its id."""

    def tell(self, note: Note) -> str:
        """What a note is for, in a sentence; nothing where that was not said.

        >>> Served({"q1": "Who counted?"}, {}).tell(Note("n", "lind", question="q1", point="p9"))
        'For the question “Who counted?”, and for a point that is not there any more (p9).'
        """
        told = []
        for what, known, chosen in (("question", self.questions, note.question), ("point", self.points, note.point)):
            if chosen in known:
                told.append(f"the {what} “{known[chosen]}”")
            elif chosen:
                told.append(f"a {what} that is not there any more ({chosen})")
        words = f"{', and for '.join(told)}"
        return f"For {words}{'' if words.endswith(('.”', '?”', '!”')) else '.'}" if told else ""


def list_served(known: Analysis) -> Served:
    """The questions and the points of a paper."""
    return Served(
        {one.id: one.text for one in known.paper.focus.questions},
        {one.id: one.text for one in known.paper.points.points},
    )


def notes_for(notes: Sequence[Note], *, question: str = "", point: str = "") -> tuple[Note, ...]:
    """The notes that are for a question and for a point, in their order; an empty id asks for nothing.

    >>> notes = [Note("a", "lind", point="p1"), Note("b", "lind", point="p2"), Note("c", "lind")]
    >>> [one.id for one in notes_for(notes, point="p1")], len(notes_for(notes))
    (['a'], 3)
    """
    return tuple(one for one in notes if question in ("", one.question) and point in ("", one.point))


def count_for(notes: Sequence[Note]) -> Mapping[str, int]:
    """How many notes each point has, by the point's id.

    >>> count_for([Note("a", "lind", point="p1"), Note("b", "lind", point="p1"), Note("c", "lind")])
    {'p1': 2}
    """
    counts: dict[str, int] = {}
    for note in notes:
        if note.point:
            counts[note.point] = counts.get(note.point, 0) + 1
    return counts


def sources_noted(notes: Sequence[Note], what: Literal["question", "point"]) -> Mapping[str, tuple[str, ...]]:
    """The sources that each question, or each point, has notes from, by its id, each source once.

    >>> sources_noted([Note("a", "lind", point="p1"), Note("b", "lind", point="p1"), Note("c", "moe")], "point")
    {'p1': ('lind',)}
    """
    found: dict[str, tuple[str, ...]] = {}
    for note in notes:
        served = note.point if what == "point" else note.question
        if served and note.source not in found.get(served, ()):
            found[served] = (*found.get(served, ()), note.source)
    return found


def refuse_strangers(note: Note, known: Analysis) -> None:
    """Raises where a note names a source, a question or a point that the paper does not have.

    Raises:
        FairhandError: It does; the message lists those that there are.
    """
    served = list_served(known)
    for what, chosen, there in (
        ("source", note.source, known.names),
        ("question", note.question, served.questions),
        ("point", note.point, served.points),
    ):
        if chosen not in there and (chosen or what == "source"):
            message = f"{chosen}: no {what} of the paper has that id; there are: {', '.join(there) or 'none yet'}"
            raise FairhandError(message)


@dataclass(frozen=True, slots=True)
class Group:
    """The notes from one source, in the order of its pages."""

    source: str
    name: str
    notes: tuple[Note, ...]


def lacks_page(note: Note, known: Analysis) -> bool:
    """Whether a note has no page, though its source has pages to be cited by."""
    return not note.page and note.source in known.entries and known.has_pages(note.source)


def order_notes(notes: Sequence[Note], known: Analysis) -> tuple[Group, ...]:
    """The notes by source, in the order of the list of sources; those of no source in it last."""
    order = [*known.entries, *sorted({note.source for note in notes} - set(known.entries))]
    groups = (Group(i, known.names.get(i, i), notes_from(notes, i, known)) for i in order)
    return tuple(group for group in groups if group.notes)


def notes_from(notes: Sequence[Note], source: str, known: Analysis) -> tuple[Note, ...]:
    """The notes of a source by its pages as its text has them; by the order in which they were taken, otherwise."""
    own = [note for note in notes if note.source == source]
    text = known.paper.texts.get(source) if own else None
    places = {page.label: n for n, page in enumerate(text.pages)} if text else {}
    return tuple(sorted(own, key=lambda note: (places.get(note.page, len(places)), _number(note.page))))


def _number(label: str) -> int:
    return int(label) if label.isascii() and label.isdigit() and len(label) < 7 else 0
