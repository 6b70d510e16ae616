"""Apostrophes, capitals, hyphens and small words of learners: whether annotators changed the places that are told.

Source: JFLEG (C. Napoles, K. Sakaguchi and J. Tetreault 2017, *JFLEG: A Fluency Corpus and Benchmark for Grammatical
Error Correction*, EACL): sentences of learners, each written anew by four annotators.
"""

from __future__ import annotations

import difflib
from collections import Counter
from collections.abc import Callable
from pathlib import Path

from fairhand.model.finding import Finding
from fairhand.model.paper import Paper
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import run_checks
from fairhand.readiness.table import CHECKS

SIGNS = ("apostrophe", "missing-word", "capital", "hyphen", "number-form")
CHECKED = [check for check in CHECKS if check.name in SIGNS]
AGREED = {"apostrophe": 0.6, "missing-word": 0.7, "capital": 0.8}
"""The share of the alarms at whose place two of four annotators changed something, at least."""


def told(text: str) -> list[Finding]:
    """What the checks of signs say of a text."""
    return list(run_checks(Analysis(Paper("p", text, ()), lambda _: None), CHECKED, allowed=lambda _: "must"))


def test_annotators_changed_the_places_that_are_told(outside_data: Callable[[str], Path]) -> None:
    """By check: alarms at whose place two of four annotators changed something; sentences written anew have few."""
    folder = outside_data("data/learner-sentences") / "dev"
    source = (folder / "dev.src").read_text("utf-8").splitlines()
    anew = [(folder / f"dev.ref{number}").read_text("utf-8").splitlines() for number in range(4)]
    alarms: Counter[str] = Counter()
    agreed: Counter[str] = Counter()
    for number, sentence in enumerate(source):
        counts = Counter(at for written in anew for at in _changed(sentence, written[number]))
        for found in told(sentence):
            assert found.span is not None
            first = len(sentence[: found.span.start].split())
            places = range(first, first + len(found.span.of(sentence).split()))
            alarms[found.check] += 1
            agreed[found.check] += any(counts[at] >= 2 for at in places)
    after = sum(len(told(sentence)) for written in anew for sentence in written) / 4
    print()
    for check in SIGNS:
        print(f"{check}: {agreed[check]} of {alarms[check]} alarms at a place that two of four changed")
    print(f"alarms on the source {alarms.total()}, on a sentence written anew {after:.1f} of {len(source)}")
    assert all(agreed[check] >= floor * alarms[check] for check, floor in AGREED.items())
    assert after <= 0.4 * alarms.total()


def _changed(source: str, written: str) -> set[int]:
    """The words of a sentence that another version of it has otherwise, or beside which it has one more."""
    one, two = source.split(), written.split()
    out: set[int] = set()
    for kind, start, end, _, _ in difflib.SequenceMatcher(None, one, two, autojunk=False).get_opcodes():
        if kind != "equal":
            out.update(range(start, end) if end > start else (start - 1, start))
    return out
