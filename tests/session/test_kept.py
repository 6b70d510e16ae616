"""A verdict that outlives the process."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

import pytest

from fairhand.session import opened
from fairhand.session.kept import told_verdict

HOUR = dt.datetime(2027, 2, 8, 12, tzinfo=dt.UTC)


def test_an_unchanged_paper_is_told_again_without_being_worked_out(
    demo_paper: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The second telling is word for word the first."""
    first = told_verdict(demo_paper, at=HOUR)

    def refuse(*_: object, **__: object) -> None:
        pytest.fail("the paper was opened again")

    monkeypatch.setattr(opened, "OpenPaper", refuse)
    assert told_verdict(demo_paper, at=HOUR) == first


def test_deadlines_are_judged_by_the_present_hour(demo_paper: Path) -> None:
    """What was kept yesterday tells today's hours."""
    told_verdict(demo_paper, at=HOUR)
    later = told_verdict(demo_paper, at=HOUR + dt.timedelta(days=30))
    (due,) = (r for r in later["requirements"] if r["kind"] == "due")
    assert due["state"] == "ask"
    assert "ago" in due["why"]


def test_a_changed_file_is_judged_anew(demo_paper: Path) -> None:
    """Any of the paper's files counts."""
    first = told_verdict(demo_paper, at=HOUR)
    draft = demo_paper / "draft.md"
    draft.write_text(draft.read_text("utf-8").replace("and and", "and"), "utf-8")
    second = told_verdict(demo_paper, at=HOUR)
    assert len(second["findings"]) == len(first["findings"]) - 1


def test_another_draft_is_judged_with_the_same_sources(demo_paper: Path, tmp_path: Path) -> None:
    """``--draft`` leaves the folder's own draft alone."""
    other = tmp_path / "other.md"
    other.write_text("# Ebb\n\nOsei says that “the chapter was cut” (119).\n", "utf-8")
    told = told_verdict(demo_paper, at=HOUR, draft=other)
    assert told["title"] == "Ebb"
    assert not any(f["check"].startswith("quotation") for f in told["findings"])
