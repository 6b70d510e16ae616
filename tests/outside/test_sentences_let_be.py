"""What the checks of the sentence say of prose that nobody here wrote: next to nothing, as it should be.

Sources: academic prose and textbooks of GUM (A. Zeldes and others); annotated student papers of the OpenStax *Writing
Guide with Handbook*; the novel of the Project Dialogism Novel Corpus; the corrected sentences of JFLEG (C. Napoles, K.
Sakaguchi and J. Tetreault 2017).
"""

from __future__ import annotations

import importlib
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from fairhand.model.paper import Paper
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import run_checks
from fairhand.readiness.table import CHECKS

TOOLS = Path(__file__).resolve().parents[2] / "tools"
WORDS_TO_AN_ALARM = 20_000
"""Words of good prose in which one alarm at most is heard, of all the checks of the sentence together."""


def count_alarms(paragraphs: list[str]) -> tuple[int, int]:
    """The alarms in some prose, printed, and its words."""
    names: Any = importlib.import_module("measuring.tally")
    checks = [check for check in CHECKS if check.name in names.SENTENCES]
    text = "\n\n".join(paragraphs)
    alarms = run_checks(Analysis(Paper("p", text, ()), lambda _: None), checks, allowed=lambda _: "must")
    words = len(text.split())
    print(
        f"\n{len(alarms)} alarms in {words:,} words", *((a.check, a.span and a.span.of(text)) for a in alarms), sep="\n"
    )
    return len(alarms), words


@pytest.mark.parametrize("name", ["GUM", "student papers", "novel", "corrected"])
def test_good_prose_is_let_be(outside_data: Callable[[str], Path], name: str) -> None:
    """One alarm in twenty thousand words, and one more where there are not so many."""
    for each in ("sentences", "student-papers", "quotations"):
        outside_data(f"data/{each}")
    learners = outside_data("data/learner-sentences")
    with pytest.MonkeyPatch.context() as patch:
        patch.syspath_prepend(str(TOOLS))
        corpora: Any = importlib.import_module("measuring.corpora")
        if name == "novel":
            paragraphs = [" ".join(each.split()) for each in corpora.novel().text.split("\n\n")]
        elif name == "corrected":
            paragraphs = (learners / "dev/dev.ref0").read_text("utf-8").splitlines()
        else:
            paragraphs = [each for found in corpora.prose() if found.corpus == name for each in found.paragraphs]
        alarms, words = count_alarms(paragraphs)
    assert alarms <= 1 + words / WORDS_TO_AN_ALARM
