"""The demo's desk as it is laid out."""

from __future__ import annotations

from pathlib import Path

from fairhand.desk.paper_files import read_paper
from fairhand.desk.record import list_states
from fairhand.session.correction.lapses import most_frequent, survey_lapses
from fairhand.session.demo import lay_out_demo
from fairhand.session.opened import OpenPaper
from fairhand.session.saving import keep_record


def test_what_the_program_laid_out_is_not_called_changed_outside(demo_paper: Path) -> None:
    """The first state of each of the demo's files is written by the program, and opening it adds none."""
    keep_record(read_paper(demo_paper))
    states = list_states(demo_paper)
    assert {state.how for state in states} == {"written"}
    assert {state.name for state in states} >= {"paper.toml", "draft.md", "points.json"}
    assert len({state.name for state in states}) == len(states)


def test_the_demo_s_writer_has_lapses(demo_paper: Path) -> None:
    """The three most frequent stand before the copy-edit, two of them in the draft; one has died out."""
    opened = OpenPaper(demo_paper)
    seen, problems = survey_lapses(demo_paper, opened.look(), opened.verdict().findings)
    assert problems == ()
    shown = [(one.lapse.name, len(one.places)) for one in most_frequent(seen)]
    assert shown == [("the same word twice", 1), ("“very” before a plain fact", 1), ("“amount of” for “number of”", 0)]
    assert [one.lapse.name for one in seen if one.died_out] == ["“reason is because” for “reason is that”"]


def test_another_s_desk_gets_no_lapses_of_the_demo_s_writer(tmp_path: Path) -> None:
    """Nor the papers that came back: they would be taken for the desk's own."""
    (tmp_path / "seals").mkdir()
    (tmp_path / "seals" / "draft.md").write_text("Seals.", "utf-8")
    lay_out_demo(tmp_path)
    assert not (tmp_path / "lapses.toml").exists()
    assert not (tmp_path / "done").exists()
