"""A paper with seeded faults, written before its writer had read any of the checks; its clean version beside it.

Source: ``gaslight/``, invented whole for this test, people, places and figures too; ``gold.json`` names each fault and
its words. A fault is caught by a finding of its check that touches its words; one of the whole by the check alone.
"""

from __future__ import annotations

import json
import shutil
from dataclasses import replace
from pathlib import Path

import pytest

from fairhand.model.finding import Finding
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import run_checks
from fairhand.readiness.table import CHECKS
from fairhand.session.opened import OpenPaper

PAPER = Path(__file__).parent / "gaslight"
TOLD_BY = {
    "misquote": "quotation-differs",
    "quote-wrong-page": "quotation-elsewhere",
    "quote-silent-omission": "quotation-gap",
    "quote-altered-without-bracket": "quotation-differs",
    "cite-unresolved": "citation-unknown",
    "source-uncited": "source-uncited",
    "cite-ambiguous": "citation-ambiguous",
    "cite-wrong-year": "citation-year",
    "cite-missing-page": "citation-page-missing",
    "overlap-verbatim": "copied-unmarked",
    "overlap-patchwork": "close-wording",
    "claim-unsupported": "claim-unsupported",
    "off-focus": "off-focus",
    "repeated-argument": "repeated-argument",
    "leftover-aside": "aside-left",
    "leftover-tk": "placeholder-left",
    "spelling": "spelling",
    "confusion": "confused-words",
    "missing-plural-s": "plural-missing",
    "agreement": "agreement",
    "comma-splice": "comma-splice",
    "fragment": "fragment",
    "doubled-word": "doubled-word",
    "length": "length",
    "section-missing": "section-missing",
}
OF_SUPPORT = {"point-thin", "point-dependent"}
"""What is said of the sources, which are as they are in both."""
FEWEST_CAUGHT = 30
MOST_FALSE = 1


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The paper, where it may be opened."""
    return Path(shutil.copytree(PAPER, tmp_path_factory.mktemp("desk") / "gaslight"))


def findings_in(folder: Path, name: str) -> tuple[str, tuple[Finding, ...]]:
    """A draft of the paper, and what the checks say of it."""
    draft = (folder / name).read_text("utf-8")
    paper = replace(OpenPaper(folder).look().paper, draft=draft)
    return draft, run_checks(Analysis(paper, lambda _: None), CHECKS)


def test_seeded_faults_are_caught(folder: Path) -> None:
    """All but a few of thirty-three, of twenty-five kinds."""
    draft, found = findings_in(folder, "draft.md")
    missed = []
    for fault in json.loads((folder / "gold.json").read_text("utf-8"))["faults"]:
        start = draft.index(fault["quote"])
        end = start + len(fault["quote"])
        caught = any(
            one.check == TOLD_BY[fault["type"]]
            and (fault.get("anchor") or (one.span is not None and one.span.start < end and start < one.span.end))
            for one in found
        )
        if not caught:
            missed.append((fault["type"], fault["quote"][:60]))
    print(f"\nmissed: {missed}")
    assert 33 - len(missed) >= FEWEST_CAUGHT


def test_its_clean_version_is_left_alone(folder: Path) -> None:
    """Hardly a must or a should on prose that quotes, cites and is written rightly."""
    _, found = findings_in(folder, "clean.md")
    told = [(one.check, one.says) for one in found if one.weight != "query" and one.check not in OF_SUPPORT]
    print(f"\ntold: {told}")
    assert len(told) <= MOST_FALSE
