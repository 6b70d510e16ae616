"""Where a text turns to another topic, against made texts whose turns are known.

Sources: depths: M. Hearst 1997, TextTiling, with the worked numbers of our trade notes (computed). Error Pk: D.
Beeferman, A. Berger and J. Lafferty 1999, with half a segment's mean length as its window. Texts and parts: F. Choi
2000, of which 500 of 700 are at hand. The figures of TextTiling on them are from a third party's table; those without
any boundary were computed on all 700.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from fairhand.revision.shifts import find_deep_gaps, find_shifts, measure_depths

PARTS = {"3-11": (0.471, 0.317), "3-5": (0.477, 0.44), "6-8": (0.483, 0.376), "9-11": (0.477, 0.311)}
"""By span of the segments: Pk with no boundary, and of TextTiling."""
MOST = 60
"""Texts of a part that are measured, in the order of their names."""


def texts_of(folder: Path, part: str) -> Iterator[list[list[str]]]:
    """The texts of a part, each by segment and sentence."""
    for path in sorted(folder.glob(f"*/{part}/*.ref")):
        segments: list[list[str]] = [[]]
        for line in path.read_text("utf-8", "replace").splitlines():
            if line.startswith("====="):
                segments.append([])
            elif line.strip():
                segments[-1].append(line.strip())
        yield [segment for segment in segments if segment]


def error(segments: list[list[str]], found: tuple[int, ...]) -> float:
    """Pk: the share of places where two sentences half a segment apart are wrongly held to be together, or apart."""
    length = sum(map(len, segments))
    window = max(1, round(length / len(segments) / 2))
    right = [at for at, segment in enumerate(segments) for _ in segment]
    begins = set(found)
    guessed = [0]
    for at in range(1, length):
        guessed.append(guessed[-1] + (at in begins))
    wrong = sum(
        (right[at] == right[at + window]) != (guessed[at] == guessed[at + window]) for at in range(length - window)
    )
    return wrong / (length - window)


def test_depths_are_those_of_the_worked_example() -> None:
    """Five blocks, four gaps: depths 0, 1.397, .053, 0, and one boundary, after the second block."""
    gaps = (0.907, 0.218, 0.873, 0.926)
    assert measure_depths(gaps) == pytest.approx((0, 1.397, 0.053, 0))
    assert find_deep_gaps(gaps) == (1,)
    assert find_deep_gaps(()) == ()
    assert find_deep_gaps((0.5, 0.5, 0.5)) == ()


@pytest.mark.parametrize("part", PARTS)
def test_the_error_is_below_the_published_one(outside_data: Callable[[str], Path], part: str) -> None:
    """On every part; the figure without any boundary is come by again first, on the texts that are at hand."""
    texts = list(texts_of(outside_data("data/topic-shift"), part))
    nothing, published = PARTS[part]
    without = sum(error(one, ()) for one in texts) / len(texts)
    measured = texts[:MOST]
    ours = sum(error(one, find_shifts([s for segment in one for s in segment])) for one in measured) / len(measured)
    print(f"\n{part}: without any boundary {without:.3f} (published {nothing}) on {len(texts)} texts; ", end="")
    print(f"ours {ours:.3f} on {len(measured)}, TextTiling {published}")
    assert without == pytest.approx(nothing, abs=0.012)
    assert ours < published / 2
