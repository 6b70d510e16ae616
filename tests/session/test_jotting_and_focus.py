from __future__ import annotations

from pathlib import Path

import pytest

from fairhand.errors import DraftChangedOnDisk, FairhandError
from fairhand.model.focus import Focus, Question
from fairhand.session.editing import state_of
from fairhand.session.opened import OpenPaper
from fairhand.session.research.focus import (
    ask_of_focus,
    keep_focus,
    keep_question,
    look_at_focus,
    remove_question,
    set_state,
    state_of_focus,
    thesis_of_points,
)
from fairhand.session.research.jottings import (
    add_jotting,
    keep_moved,
    list_jottings,
    look_at_groups,
    pick_jottings,
    sort_afresh,
)


@pytest.fixture
def paper(tmp_path: Path) -> Path:
    """A paper's folder with a few jottings."""
    (tmp_path / "jottings.md").write_text("- the bell in the fog\n- who paid the keeper?\n- bells and fog")
    return tmp_path


def test_a_jotting_is_added_at_the_end(paper: Path) -> None:
    """What stood there stays as it is."""
    add_jotting(paper, "  a red   door \n")
    assert (paper / "jottings.md").read_text().endswith("- bells and fog\n- a red door\n")
    assert [one.line for one in list_jottings(paper)] == [1, 2, 3, 4]


def test_looking_writes_nothing_and_moving_keeps_all(paper: Path) -> None:
    """From the first move on every jotting stays where it is, and no word of any is changed."""
    before = (paper / "jottings.md").read_bytes()
    found = look_at_groups(paper)
    assert not found.is_kept
    assert not (paper / "groups.toml").exists()
    keep_moved(paper, {0}, 99, found.state)
    again = look_at_groups(paper)
    assert again.is_kept
    assert [len(group.jottings) for group in again.arrangement.groups][-1] == 1
    assert (paper / "jottings.md").read_bytes() == before
    assert pick_jottings(paper, {0, 1, 2}, again.state)
    sort_afresh(paper, again.state)
    assert look_at_groups(paper).arrangement == found.arrangement


def test_nothing_is_moved_over_what_was_written_meanwhile(paper: Path) -> None:
    """The page shows the jottings again instead."""
    state = look_at_groups(paper).state
    add_jotting(paper, "a goat")
    with pytest.raises(DraftChangedOnDisk, match="changed meanwhile"):
        keep_moved(paper, {0}, None, state)
    with pytest.raises(FairhandError, match="No jotting was ticked"):
        keep_moved(paper, set(), None, look_at_groups(paper).state)


def test_a_focus_called_the_thesis_is_that_of_the_points(tmp_path: Path) -> None:
    """Unless another stands there, which is never written over."""
    empty = state_of_focus(Focus())
    keep_focus(tmp_path, Focus("Bells failed in fog.", is_thesis=True), empty)
    assert thesis_of_points(tmp_path) == "Bells failed in fog."
    now = look_at_focus(tmp_path)[0]
    keep_focus(tmp_path, Focus("Bells failed because they were cheap.", is_thesis=True), state_of_focus(now))
    assert thesis_of_points(tmp_path) == "Bells failed because they were cheap."
    (tmp_path / "points.json").write_text('{"thesis": "Horns won."}')
    now = look_at_focus(tmp_path)[0]
    keep_focus(tmp_path, Focus("Bells failed.", is_thesis=True), state_of_focus(now))
    assert thesis_of_points(tmp_path) == "Horns won."
    with pytest.raises(DraftChangedOnDisk):
        keep_focus(tmp_path, Focus("Bells."), empty)


def test_before_there_is_a_focus_the_thesis_of_the_points_is_it(tmp_path: Path) -> None:
    """What was written once is not asked for again."""
    (tmp_path / "points.json").write_text('{"thesis": "Horns won."}')
    assert look_at_focus(tmp_path)[0] == Focus("Horns won.", is_thesis=True)


def test_questions_are_added_changed_and_taken_out(tmp_path: Path) -> None:
    """Each once, and none over what another program wrote."""
    keep_question(tmp_path, Question("", "Who paid?"))
    keep_question(tmp_path, Question("", "Who paid?"))
    (question,) = look_at_focus(tmp_path)[0].questions
    set_state(tmp_path, "q1", "answered")
    with pytest.raises(DraftChangedOnDisk):
        keep_question(tmp_path, Question("q1", "Who rang?"), state_of(question))
    with pytest.raises(FairhandError, match="there are: q1"):
        set_state(tmp_path, "q9", "open")
    with pytest.raises(FairhandError, match="needs words"):
        keep_question(tmp_path, Question("", ""))
    (question,) = look_at_focus(tmp_path)[0].questions
    assert question.state == "answered"
    remove_question(tmp_path, "q1", state_of(question))
    assert look_at_focus(tmp_path)[0].questions == ()


def test_a_task_to_argue_asks_for_a_claim(demo_paper: Path) -> None:
    """The paper carries its focus, and its faults with it."""
    (demo_paper / "focus.toml").write_text('focus = "Libraries in trams"\nthesis = 3\n')
    paper = OpenPaper(demo_paper).look().paper
    assert paper.focus == Focus("Libraries in trams")
    assert any(one.where == "focus.toml, thesis" for one in paper.problems)
    assert [query.asks for query in ask_of_focus(paper.focus, paper.requirements)][:1] == [
        "It names a subject. What do you say of it?"
    ]
