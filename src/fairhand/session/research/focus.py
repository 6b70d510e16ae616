"""The focus and the guiding questions changed from within the program, in ``focus.toml``."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from typing import Literal

from fairhand.desk.toml_reading import read_toml
from fairhand.errors import FairhandError
from fairhand.model.focus import Focus, Query, Question
from fairhand.model.problem import Problem
from fairhand.model.requirement import Requirement
from fairhand.planning.focus_file import WHERE, drop_question, put_focus, put_question, read_focus
from fairhand.planning.points import WHERE as POINTS
from fairhand.planning.points import read_points
from fairhand.session.editing import Written, read_text, refuse_changed, save_text, state_of
from fairhand.session.research.points import keep_thesis


def look_at_focus(folder: Path) -> tuple[Focus, tuple[Problem, ...]]:
    """What the paper is about and what is read for; before that is written, the thesis of the points is the focus."""
    focus, problems = read_focus_text(read_text(folder, WHERE).text)
    if not focus.focus:
        thesis = read_points(read_text(folder, POINTS).text)[0].thesis
        focus = replace(focus, focus=thesis, is_thesis=bool(thesis))
    return focus, problems


def read_focus_text(text: str) -> tuple[Focus, tuple[Problem, ...]]:
    """What the text of ``focus.toml`` says, each fault a problem."""
    table, problems = read_toml(text, WHERE)
    focus, faults = read_focus(table)
    return focus, (*problems, *faults)


def state_of_focus(focus: Focus) -> str:
    """A hash that changes when the sentence, its flag or the audience does."""
    return state_of((focus.focus, focus.is_thesis, focus.audience))


def keep_focus(folder: Path, focus: Focus, was: str) -> None:
    """The sentence, whether it is the thesis, and the audience stand in the file.

    Called the thesis, it is what the points are for as well: it stands in ``points.json``, unless another does there.

    Args:
        folder: The paper's folder.
        focus: Its questions do not count: they have pages of their own.
        was: The state that the change was made from.

    Raises:
        FileUnreadable: One of the files must be mended first.
        DraftChangedOnDisk: Another program changed the focus meanwhile.
    """
    before = look_at_focus(folder)[0]
    if state_of_focus(before) != state_of_focus(focus):
        refuse_changed(WHERE, "the focus", state_of_focus(before), was)
        present = read_text(folder, WHERE)
        save_text(folder, WHERE, put_focus(present.text, focus), present.seen)
    if focus.is_thesis:
        thesis = thesis_of_points(folder)
        if thesis in {"", before.focus}:
            keep_thesis(folder, focus.focus, state_of(thesis))


def thesis_of_points(folder: Path) -> str:
    """The thesis that stands with the points."""
    return read_points(read_text(folder, POINTS).text)[0].thesis


def keep_question(folder: Path, question: Question, was: str = "") -> None:
    """The question stands in the file.

    Args:
        folder: The paper's folder.
        question: The question; without an id it is a new one, and stands last.
        was: The state of the question that the change was made from; empty for a new one.

    Raises:
        FairhandError: It has no words.
        FileUnreadable: The file must be mended first.
        DraftChangedOnDisk: Another program changed the question meanwhile, or it has gone.
    """
    if not question.text:
        message = "A question needs words: write what you want to know."
        raise FairhandError(message)
    present = read_text(folder, WHERE)
    if not question.id:
        if any(one.text == question.text for one in read_focus_text(present.text)[0].questions):
            return  # sent twice
    else:
        now = _find(present, question.id)
        if now == question:
            return
        _refuse_changed(now, was)
    save_text(folder, WHERE, put_question(present.text, question), present.seen)


def set_state(folder: Path, question_id: str, state: Literal["open", "answered"]) -> None:
    """The question is open or answered.

    Raises:
        FairhandError: There is no question of that id.
    """
    questions = look_at_focus(folder)[0].questions
    now = next((one for one in questions if one.id == question_id), None)
    if now is None:
        there = ", ".join(one.id for one in questions) or "none yet"
        message = f"{question_id}: no question has that id; there are: {there}"
        raise FairhandError(message)
    keep_question(folder, replace(now, state=state), state_of(now))


def remove_question(folder: Path, question_id: str, was: str) -> None:
    """The question is gone; what it was stays among the earlier states.

    Raises:
        FileUnreadable: The file must be mended first.
        DraftChangedOnDisk: Another program changed the question meanwhile, or it has gone.
    """
    present = read_text(folder, WHERE)
    _refuse_changed(_find(present, question_id), was)
    save_text(folder, WHERE, drop_question(present.text, question_id), present.seen)


def _find(present: Written, question_id: str) -> Question | None:
    return next((one for one in read_focus_text(present.text)[0].questions if one.id == question_id), None)


def _refuse_changed(now: Question | None, was: str) -> None:
    refuse_changed(WHERE, "the question", state_of(now) if now else "", was or "there")


def ask_of_focus(focus: Focus, requirements: Sequence[Requirement]) -> tuple[Query, ...]:
    """What to ask of the focus: does it answer the task, and is it a claim?

    Whether it is a claim is asked only where it is called the thesis, or the task is to argue.
    """
    from fairhand.planning.task_verbs import ARGUES, ask_of_task  # patterns that most commands never need
    from fairhand.planning.thesis import ask_of_thesis

    verbs = [str(one.values.get("verb", "")) for one in requirements if one.kind == "task"]
    asks_claim = focus.is_thesis or any(verb in ARGUES for verb in verbs)
    return (*(ask_of_thesis(focus.focus) if asks_claim else ()), *ask_of_task(focus.focus, verbs))
