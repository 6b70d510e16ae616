"""Work in processes apart: what dies, hangs or swells is told, and everything else goes on."""

from __future__ import annotations

import itertools
import os
import time
from collections.abc import Iterator

import pytest

from fairhand.press.apart import Limits, WorkKilled, do_apart


def test_every_item_comes_back_with_its_outcome() -> None:
    """Each once, whatever the order."""
    assert dict(do_apart(abs, [-1, -2, -3, -4], lanes=2)) == {-1: 1, -2: 2, -3: 3, -4: 4}


def test_what_the_work_raises_is_its_outcome() -> None:
    """And the next item is done."""
    outcomes = dict(do_apart(int, ["7", "x", "8"], lanes=1))
    assert (outcomes["7"], type(outcomes["x"]), outcomes["8"]) == (7, ValueError, 8)


def test_a_process_that_dies_kills_one_item() -> None:
    """The lane is begun again for the next."""
    outcomes = [outcome for _, outcome in do_apart(os._exit, [3, 4], lanes=1)]
    assert [type(one) for one in outcomes] == [WorkKilled, WorkKilled]


@pytest.mark.skipif(not hasattr(time, "clock_gettime"), reason="no alarm on this system")
def test_no_library_holds_off_the_alarm() -> None:
    """A loop that never comes back to Python is ended."""
    ((_, outcome),) = do_apart(sum, [itertools.repeat(1)], lanes=1, limits=Limits(seconds=0.5))
    assert isinstance(outcome, WorkKilled)


def test_memory_is_bounded() -> None:
    """More than is allowed is not to be had."""
    ((_, outcome),) = do_apart(bytearray, [2**30], lanes=1, limits=Limits(most_bytes=2**29))
    assert isinstance(outcome, MemoryError)


def test_items_are_taken_only_as_they_are_needed_and_none_after_a_stop() -> None:
    """A thousand files are not all held at once."""
    drawn: list[int] = []
    done: list[int] = []

    def items() -> Iterator[int]:
        for number in itertools.count():
            drawn.append(number)
            yield number

    for item, _ in do_apart(abs, items(), lanes=2, stopped=lambda: len(done) >= 3):
        done.append(item)
    assert len(drawn) <= 3 + 2 * 2
