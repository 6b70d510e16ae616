"""Whose spelling a paper keeps: a slip where desk or sheet asks for it, a question where the draft alone shows it."""

from __future__ import annotations

from pathlib import Path

import pytest

from fairhand.session.opened import OpenPaper

DRAFT = "# Tides\n\nThe colour of the harbour was grey, and the labor of the men was cheap.\n"


@pytest.mark.parametrize(
    ("asked", "told"),
    [("Use British spelling.", [("spelling", "should")]), ("Write well.", [("spelling-mixed", "query")])],
)
def test_the_other_countrys_word_is_a_slip_where_one_is_asked_for(
    tmp_path: Path, asked: str, told: list[tuple[str, str]]
) -> None:
    """The sheet's word makes it a rule; without it the draft's own habit is no more than a reason to ask."""
    (tmp_path / "brief.txt").write_text(f"Essay\n\nLength: 10 to 20 words.\n\n{asked}\n", "utf-8")
    (tmp_path / "draft.md").write_text(DRAFT, "utf-8")
    found = OpenPaper(tmp_path).verdict().findings
    assert [(each.check, each.weight) for each in found if each.check.startswith("spelling")] == told
