"""Prose that nobody here wrote is let be: how seldom each group of the checks of language speaks in it.

Sources: academic prose and textbooks of GUM (A. Zeldes and others); annotated student papers of the OpenStax *Writing
Guide with Handbook*.
"""

from __future__ import annotations

import pytest

from fairhand.model.paper import Paper
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import run_checks
from fairhand.readiness.table import CHECKS

GROUPS = {
    "grammar": ("plural-missing agreement comma-splice fragment", 4000, True),
    "commas": (
        "comma-opening fused-sentence comma-unneeded comma-nonrestrictive semicolon comma-compound",
        4000,
        False,
    ),
    "signs": ("apostrophe missing-word capital hyphen number-form", 8000, True),
}
"""By group: its checks, the words in which one alarm of all of them is heard at most, and whether each is as loud as a
must may be; else as loud as was measured."""


def are_let_be(group: str, texts: list[str]) -> bool:
    """Whether the group's alarms, printed, are as few as they ought to be."""
    names, words_to_an_alarm, loud = GROUPS[group]
    checks = [check for check in CHECKS if check.name in names.split()]
    alarms = []
    for text in texts:
        analysis = Analysis(Paper("p", text, ()), lambda _: None)
        found = run_checks(analysis, checks, allowed=lambda _: "must") if loud else run_checks(analysis, checks)
        alarms += [(one.check, one.span.of(text)) for one in found if one.span is not None]
    words = sum(len(text.split()) for text in texts)
    print(f"\n{group}: {len(alarms)} alarms in {words:,} words", *alarms, sep="\n")
    return len(alarms) <= words / words_to_an_alarm


@pytest.mark.parametrize("group", GROUPS)
def test_published_academic_prose_is_let_be(published_paragraphs: list[str], group: str) -> None:
    """By paragraph."""
    assert are_let_be(group, published_paragraphs)


@pytest.mark.parametrize("group", GROUPS)
def test_student_papers_are_let_be(student_paragraphs: list[str], group: str) -> None:
    """The same of student papers with their handbook's words about them."""
    assert are_let_be(group, student_paragraphs)
