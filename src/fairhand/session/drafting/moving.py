"""A paragraph or section moved: first what would break by it, then, at the writer's word, the move itself."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from fairhand.errors import DraftChangedOnDisk, FairhandError
from fairhand.manuscript.parts import Manuscript
from fairhand.model.span import Span, line_at
from fairhand.proof.passages import list_passages
from fairhand.readiness.analysis import Analysis
from fairhand.revision.offcuts import find_cut
from fairhand.session.drafting.leaning import Fitting
from fairhand.session.editing import DRAFT, read_text, save_text, state_of


@dataclass(frozen=True, slots=True)
class Movable:
    """A passage, or a whole section, by the line where it begins."""

    line: int
    span: Span
    begins: str
    is_section: bool


@dataclass(frozen=True, slots=True)
class Move:
    """A move that was looked at, and not made yet."""

    what: Movable
    before: int
    """The line before which it is to stand; one more than there are for the end."""
    broken: tuple[str, ...]
    """What would have to be mended then."""
    text: str
    """The draft as it would be."""
    state: str
    """A hash of the draft that it was made from."""


def list_movable(manuscript: Manuscript) -> tuple[Movable, ...]:
    """Every passage in order; at a heading, the whole section under it; the title stays where it is."""
    text, found = manuscript.text, []
    sections = {one.span.start: one for one in manuscript.sections if one.heading}
    for span in list_passages(manuscript):
        section = sections.get(span.start)
        if section is not None and section.heading is not None and section.heading.content == manuscript.title:
            continue
        begins = " ".join(span.of(text).split())
        found.append(
            Movable(line_at(text, span.start), section.span if section else span, begins, is_section=bool(section))
        )
    return tuple(found)


def look_at_move(known: Analysis, line: int, before: int) -> Move:
    """What would break if what stands at a line stood before another line.

    Args:
        known: The paper, worked out.
        line: A line of the passage, or of the heading of the section, from 1.
        before: A line of the passage before which it is to stand; beyond the last, it goes to the end.

    Raises:
        FairhandError: No passage stands there, or it would stand within itself.
    """
    manuscript = known.manuscript
    text = manuscript.text
    there = list_movable(manuscript)
    what = next((one for one in there if _holds(text, one, line)), None)
    if what is None:
        message = f"{DRAFT}, line {line}: no passage stands there that can be moved"
        raise FairhandError(message)
    target = next((one.span.start for one in there if line_at(text, one.span.end) >= before), len(text))
    if what.span.start <= target < what.span.end:
        message = f"{DRAFT}, line {before}: it stands there already, or that is within what is moved"
        raise FairhandError(message)
    fitting = Fitting(known)
    moved = [at for at, one in enumerate(fitting.body) if what.span.contains(one.own_span)]
    rest = [at for at in range(len(fitting.body)) if at not in moved]
    ahead = [at for at in rest if fitting.body[at].span.start < target]
    order = [*ahead, *moved, *(at for at in rest if at not in ahead)]
    return Move(what, before, fitting.tell_broken(order), _moved(text, what.span, target), state_of(text))


def carry_move(folder: Path, move: Move) -> None:
    """The draft is as the move has it.

    Raises:
        DraftChangedOnDisk: The draft was changed meanwhile.
    """
    present = read_text(folder, DRAFT)
    if state_of(present.text) != move.state:
        message = f"{DRAFT}: it was changed meanwhile; look at the move again"
        raise DraftChangedOnDisk(message)
    save_text(folder, DRAFT, move.text, present.seen)


def _holds(text: str, one: Movable, line: int) -> bool:
    """Whether a line is one of a passage, or of a section's heading."""
    last = line_at(text, one.span.end - 1) if not one.is_section else one.line
    return one.line <= line <= last


def _moved(text: str, span: Span, target: int) -> str:
    """The text with a passage before a place; blank lines as there are between paragraphs."""
    cut = find_cut(text, span)
    words = span.of(text).strip()
    without = text[: cut.start] + text[cut.end :]
    at = target if target <= cut.start else max(cut.start, target - len(cut))
    before, after = without[:at].rstrip("\n"), without[at:].lstrip("\n")
    end = "\n" if text.endswith("\n") else ""
    return "\n\n".join(part for part in (before, words, after.rstrip("\n")) if part) + end
