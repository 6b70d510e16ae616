"""Slips of grammar in sentences that learners wrote: whether annotators changed the places that are told.

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

GRAMMAR = ("plural-missing", "agreement", "comma-splice", "fragment")
CHECKED = [check for check in CHECKS if check.name in GRAMMAR]
AGREED = {"plural-missing": 0.6, "agreement": 0.8, "comma-splice": 0.6, "fragment": 0.7}
"""The share of the alarms at whose place two of four annotators changed something, at least."""


def told(text: str) -> list[Finding]:
    """What the checks of grammar say of a text."""
    return list(run_checks(Analysis(Paper("p", text, ()), lambda _: None), CHECKED, allowed=lambda _: "must"))


def places_changed(source: str, written: str) -> set[int]:
    """The words of a sentence that an annotator wrote otherwise, or beside which something was put in or left out."""
    one, other = source.split(), written.split()
    changed: set[int] = set()
    for kind, a, b, _, _ in difflib.SequenceMatcher(None, one, other, autojunk=False).get_opcodes():
        if kind != "equal":
            changed.update(range(a, b) if b > a else range(max(0, a - 1), a + 1))
    return changed


def test_annotators_changed_the_places_that_are_told(outside_data: Callable[[str], Path]) -> None:
    """By check: alarms at whose place two of four annotators changed something, beside what a blind alarm would score.

    Annotators leave true faults standing, and mend *these evidence* at the other word, so that the figure is a lower
    bound. The sentences written anew are told of less.
    """
    folder = outside_data("data/learner-sentences") / "dev"
    source = (folder / "dev.src").read_text("utf-8").splitlines()
    anew = [(folder / f"dev.ref{number}").read_text("utf-8").splitlines() for number in range(4)]
    alarms: Counter[str] = Counter()
    agreed: Counter[str] = Counter()
    blind = [0, 0]
    for number, sentence in enumerate(source):
        counts = Counter(at for written in anew for at in places_changed(sentence, written[number]))
        words = sentence.split()
        blind = [blind[0] + sum(counts[at] >= 2 for at in range(len(words))), blind[1] + len(words)]
        for found in told(sentence):
            assert found.span is not None
            first = len(sentence[: found.span.start].split())
            places = range(first, first + len(found.span.of(sentence).split()))
            alarms[found.check] += 1
            agreed[found.check] += any(counts[at] >= 2 for at in places)
    after = sum(len(told(sentence)) for written in anew for sentence in written) / 4
    print(f"\na blind alarm: {blind[0] / blind[1]:.2f} of the words were changed by two of four")
    for check in GRAMMAR:
        print(f"{check}: {agreed[check]} of {alarms[check]} alarms at a place that two of four changed")
    print(f"alarms on the source {alarms.total()}, on a sentence written anew {after:.1f} of {len(source)}")
    for check in GRAMMAR:
        assert agreed[check] >= AGREED[check] * alarms[check]
    assert after <= 0.4 * alarms.total()
