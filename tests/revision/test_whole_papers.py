"""The checks of the argument on three whole papers of our own, written before anything was tuned.

An essay on a novel (MLA), a proposal with a survey of the writer's own (APA) and a history full of figures (Chicago):
each clean, and with a claim, a stray paragraph, a repeat and a missing point set into it.
"""

from __future__ import annotations

import json
import shutil
from dataclasses import replace
from pathlib import Path

import pytest

from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import run_checks
from fairhand.readiness.table import CHECKS
from fairhand.session.opened import OpenPaper

PAPERS = Path(__file__).parent / "papers"
OF_ARGUMENT = ("claim-unsupported", "off-focus", "repeated-argument", "point-missing")
VOUCHED = {"quiet-hours": {"claim-unsupported"}}
"""Faults that are not told, and need not be: the page that the next sentence cites holds the figure, nearly."""


def told(paper: Path, draft: str, tmp_path: Path) -> list[tuple[str, str]]:
    """What the checks of the argument say of a draft: each check with its words."""
    folder = Path(shutil.copytree(paper, tmp_path / paper.name, dirs_exist_ok=True))
    known = OpenPaper(folder).look().paper
    checks = [check for check in CHECKS if check.name in OF_ARGUMENT]
    found = run_checks(Analysis(replace(known, draft=draft), lambda _: None), checks)
    return [(one.check, one.span.of(draft) if one.span else "") for one in found]


@pytest.mark.parametrize("name", ["salt-room", "quiet-hours", "brayle-canal"])
def test_what_was_set_into_a_paper_is_told_and_nothing_else(name: str, tmp_path: Path) -> None:
    """Each fault at its place; of the clean paper nothing is told."""
    paper = PAPERS / name
    assert told(paper, (paper / "clean.md").read_text("utf-8"), tmp_path) == []
    found = told(paper, (paper / "draft.md").read_text("utf-8"), tmp_path)
    faults = json.loads((paper / "gold.json").read_text("utf-8"))["faults"]
    for fault in faults:
        if fault["type"] not in VOUCHED.get(name, ()):
            assert any(
                check == fault["type"] and (not at or fault["quote"] in at or at in fault["quote"])
                for check, at in found
            ), fault
    assert len(found) == len(faults) - len(VOUCHED.get(name, ()))
