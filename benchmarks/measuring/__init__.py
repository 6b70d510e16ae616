"""Times taken in one run, and told as ratios beside their goals."""

from __future__ import annotations

import statistics
import subprocess
import sys
import time
from collections.abc import Callable

RUNS = 9


def in_turn(*things: Callable[[], float], runs: int = RUNS) -> list[list[float]]:
    """Seconds of several things measured in turn, so that the machine's own drift falls on all of them."""
    rounds = [[thing() for thing in things] for _ in range(runs)]
    return [list(each) for each in zip(*rounds, strict=True)]


def over(subject: list[float], floor: list[float]) -> float:
    """How many times the floor the subject takes, at the median."""
    return statistics.median(subject) / statistics.median(floor)


def measured(what: Callable[[], object]) -> float:
    """Seconds that a call takes."""
    begun = time.perf_counter()
    what()
    return time.perf_counter() - begun


def seconds_of(command: list[str], fails_with: int = 0) -> float:
    """Seconds that a process takes, from start to end."""
    begun = time.perf_counter()
    run = subprocess.run(command, capture_output=True, check=False)
    taken = time.perf_counter() - begun
    if run.returncode not in {0, fails_with}:
        sys.exit(f"{command[:3]} failed: {run.stderr.decode(errors='replace')}")
    return taken


def tell(what: str, figure: float, goal: str) -> None:
    """Prints one figure beside its goal."""
    print(f"{figure:8.3f}  {what} ({goal})")
