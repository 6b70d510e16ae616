"""What the writer says of the sheet's requirements."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from difflib import get_close_matches
from pathlib import Path

from fairhand.brief.correcting import read_corrections
from fairhand.desk.answers import set_answer
from fairhand.desk.clock import now
from fairhand.desk.paper_files import read_paper
from fairhand.errors import DeskError, FairhandError
from fairhand.model.requirement import Requirement
from fairhand.model.settings import Answer
from fairhand.session.assignment.sheets import read_sheets


def answer_requirement(
    folder: Path,
    requirement: str,
    *,
    words: str = "",
    written: Mapping[str, str] | None = None,
    waive: bool = False,
    by: str = "",
    undo: bool = False,
) -> str:
    """The answer stands in ``paper.toml``, with the day and who gave it; what is returned says so.

    Args:
        folder: The paper's folder.
        requirement: The requirement's id.
        words: The answer in words.
        written: The values as the writer would have them, by name; those that are as the sheet has them are no
            correction, and where all are, an earlier correction is taken back.
        waive: Whether it no longer holds.
        by: Who said so.
        undo: Whether the answer is taken back instead.

    Raises:
        DeskError: The sheet asks no such thing.
        FairhandError: Nothing was said of it, or a value is not what may be written in it.
    """
    found = refuse_unasked(folder, [requirement])
    if undo:
        if requirement not in read_paper(folder).settings.answers:
            return f"{requirement}: there was no answer to take back."
        set_answer(folder, requirement, None)
        return f"{requirement}: the answer is taken back."
    values = read_corrections(found[requirement], written or {})
    if not (words or values or waive):
        if written:
            set_answer(folder, requirement, None)
            return f"{requirement}: it stands as the sheet has it."
        message = f"{requirement}: nothing was said of it; write the answer in a word or two, as yes"
        raise FairhandError(message)
    today = now(read_paper(folder).desk.time_zone).date().isoformat()
    set_answer(folder, requirement, Answer(values, waive, by, today, words))
    return f"{requirement}: {'waived' if waive else 'corrected' if values else 'answered'}."


def refuse_unasked(folder: Path, named: Iterable[str]) -> dict[str, Requirement]:
    """What the sheets of a paper ask, by id, where all that is named is among it.

    Raises:
        DeskError: The sheets ask no such thing; those that are named nearly so are told.
    """
    found = {r.id: r for r in read_sheets(folder)[0].requirements}
    for requirement in named:
        if requirement not in found:
            like = get_close_matches(requirement, found, 3, 0.5)
            those = f"the nearest are {', '.join(like)}" if like else f"it asks {', '.join(found) or 'nothing'}"
            message = f"{requirement}: the sheet asks no such thing; {those} (fairhand brief shows all that it asks)"
            raise DeskError(message)
    return found
