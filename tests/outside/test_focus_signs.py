"""What is asked of a focus and of a thesis, on sentences of our own making.

**Source**: 60 sentences as students write them for a thesis, and 44 held against the verb of a task, written and
labelled by us, one half before the signs were settled and one after. What each kind of sentence lacks is after the
handbooks that the queries name.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from fairhand.planning.task_verbs import ask_of_task
from fairhand.planning.thesis import ask_of_thesis

HERE = Path(__file__).parent
BEGINS = {
    "It asks": "question",
    "It says what": "announce",
    "It names": "topic",
    "It seems to state": "figure",
    "It seems to claim": "two",
}


def read_halves(name: str) -> list[list[str]]:
    """The labelled lines of the first part and of the second."""
    halves: list[list[str]] = [[]]
    for line in (HERE / name).read_text("utf-8").splitlines():
        if line.startswith("# The second part"):
            halves.append([])
        if not line.startswith("#"):
            halves[-1].append(line)
    return halves


@pytest.mark.parametrize(("half", "floor"), [(0, 28), (1, 25)])
def test_signs_of_a_thesis(half: int, floor: int) -> None:
    """Each fault is asked about and, above all, a claim that can be disputed is let alone."""
    right, alarms, claims = 0, 0, 0
    lines = read_halves("theses.txt")[half]
    for line in lines:
        label, sentence = line.split(" ", 1)
        asked = [
            name
            for query in ask_of_thesis(sentence)
            for begins, name in BEGINS.items()
            if query.asks.startswith(begins)
        ]
        right += asked == ([] if label == "ok" else [label])
        claims += label == "ok"
        alarms += label == "ok" and bool(asked)
    print(f"\ntheses, part {half + 1}: {right} of {len(lines)} as labelled; {alarms} of {claims} claims asked about")
    assert right >= floor
    assert alarms <= 1


@pytest.mark.parametrize(("half", "floor"), [(0, 21), (1, 18)])
def test_verbs_of_the_task(half: int, floor: int) -> None:
    """A sentence that answers the verb is let alone; a bare subject is asked about."""
    lines = [line.split(" ", 2) for line in read_halves("focuses.txt")[half]]
    right = sum(("no" if ask_of_task(sentence, [verb]) else "yes") == label for verb, label, sentence in lines)
    print(f"\nfocus against the task's verb, part {half + 1}: {right} of {len(lines)} as labelled")
    assert right >= floor
