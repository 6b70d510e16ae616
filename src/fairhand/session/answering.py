"""What the writer says of the sheet's requirements."""

from __future__ import annotations

import ast
from collections.abc import Sequence
from pathlib import Path

from fairhand.desk.answers import set_answer
from fairhand.desk.clock import now
from fairhand.desk.paper_files import read_paper
from fairhand.errors import DeskError
from fairhand.model.requirement import Value
from fairhand.model.settings import Answer
from fairhand.session.sheets import read_sheets


def answer_requirement(
    folder: Path,
    requirement: str,
    *,
    words: str = "",
    values: Sequence[str] = (),
    waive: bool = False,
    by: str = "",
    undo: bool = False,
) -> str:
    """The answer stands in ``paper.toml``, with the day and who gave it; what is returned says so.

    Args:
        folder: The paper's folder.
        requirement: The requirement's id.
        words: The answer in words.
        values: Corrected values, each as ``key=value``.
        waive: Whether it no longer holds.
        by: Who said so.
        undo: Whether the answer is taken back instead.

    Raises:
        DeskError: The sheet asks no such thing, or a value is not ``key=value``.
    """
    known = [r.id for r in read_sheets(folder)[0].requirements]
    if requirement not in known:
        message = f"{requirement}: the sheet asks no such thing; it asks {', '.join(known) or 'nothing'}"
        raise DeskError(message)
    if undo:
        set_answer(folder, requirement, None)
        return f"{requirement}: the answer is taken back."
    today = now(read_paper(folder).desk.time_zone).date().isoformat()
    answer = Answer(dict(map(_read_value, values)), waive, by, today, words or ("" if values or waive else "yes"))
    set_answer(folder, requirement, answer)
    return f"{requirement}: {'waived' if waive else 'answered'}."


def _read_value(said: str) -> tuple[str, Value]:
    """One ``key=value``: numbers, true and false are read as such, commas part a list.

    >>> _read_value("min=900"), _read_value("on=2027-03-01"), _read_value("excludes=headings,references")
    (('min', 900), ('on', '2027-03-01'), ('excludes', ('headings', 'references')))
    """
    key, found, value = said.partition("=")
    if not found or not key.strip():
        message = f"{said}: a value is set as KEY=VALUE, say on=2027-03-01"
        raise DeskError(message)
    plain = value.strip()
    if plain.lower() in {"true", "false"}:
        return key.strip(), plain.lower() == "true"
    try:
        number = ast.literal_eval(plain)
    except (ValueError, SyntaxError):
        number = None
    if isinstance(number, int | float):
        return key.strip(), number
    return key.strip(), tuple(sorted(part.strip() for part in plain.split(","))) if "," in plain else plain
