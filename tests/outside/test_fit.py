"""The choice of passages, held against published knapsacks and the trade's worked example.

Printed with ``pytest -s``; every instance must be exact.
"""

from __future__ import annotations

import json
import random
from collections.abc import Callable, Sequence
from fractions import Fraction
from pathlib import Path

import numpy as np
import pytest

from fairhand.revision.fit import Passage, cut_least, gain_fewest
from fairhand.revision.knapsack import Thing, choose_most

FIVE = (Passage(180, 6), Passage(240, 7), Passage(120, 4), Passage(300, 8), Passage(90, 2))


def test_the_worked_example_of_the_trade() -> None:
    """A to E. **Source**: check-values of the trade, 6.12 [computed]: A+D, 14; B+C, 360 and 11; D+E, 390 and 10."""
    chosen = choose_most([Thing(one.words, one.worth) for one in FIVE], 500)
    assert chosen is not None
    assert sorted(chosen) == [0, 3]
    assert sum(FIVE[one].words for one in chosen) == 480
    assert sum(FIVE[one].worth for one in chosen) == 14
    gained = gain_fewest(FIVE, 350)[0]
    assert (gained.passages, gained.words, gained.worth) == ((1, 2), 360, 11)
    cut = cut_least(FIVE, 350)[0]
    assert (cut.passages, cut.words, cut.worth) == ((3, 4), 390, 10)


def exact(things: Sequence[Thing], room: float) -> Fraction:
    """What the choice is worth, summed without rounding; it fits the room."""
    chosen = choose_most(things, room)
    assert chosen is not None
    assert sum(Fraction(str(things[one].weight)) for one in chosen) <= Fraction(str(room))
    return sum((Fraction(str(things[one].worth)) for one in chosen), Fraction(0))


def test_published_small_knapsacks(outside_data: Callable[[str], Path]) -> None:
    """P01 to P07. **Source**: J. Burkardt, KNAPSACK_01; the optima by exhaustive search."""
    rows = json.loads((outside_data("data/knapsack") / "small" / "knapsack_small.json").read_text("utf-8"))
    for name, row in rows.items():
        things = [Thing(*pair) for pair in zip(row["weights"], row["profits"], strict=True)]
        assert exact(things, row["capacity"]) == row["optimum"], name
    print(f"\nsmall knapsacks: {len(rows)} of {len(rows)} exact")
    assert len(rows) >= 7


def test_published_knapsacks_with_their_optima(outside_data: Callable[[str], Path]) -> None:
    """Every instance that lies beside its optimum, with whole numbers and with decimal ones.

    **Source**: instances of 01 knapsack problems, J. Ortega (low-dimensional; large-scale after D. Pisinger 2005,
    Computers & Operations Research 32).
    """
    folder, done = outside_data("data/knapsack"), 0
    for optima in sorted(folder.glob("*-optimum")):
        for found in sorted(optima.iterdir()):
            lines = (folder / optima.name.removesuffix("-optimum") / found.name).read_text("utf-8").split("\n")
            number, room = int(lines[0].split()[0]), float(lines[0].split()[1])
            pairs = [[float(value) for value in line.split()] for line in lines[1 : number + 1]]
            things = [Thing(weight, worth) for worth, weight in pairs]
            best = Fraction(found.read_text("utf-8").split()[0])
            told = exact(things, room)
            # An optimum with fewer places than the data was rounded by whoever printed it.
            assert abs(told - best) <= (Fraction(1, 10**4) if best.denominator > 1 else 0), found.name
            done += 1
    print(f"\nknapsacks with published optima: {done} of {done} exact")
    assert done >= 10


def make_knapsack(kind: str, number: int, seed: int) -> list[Thing]:
    """An instance as D. Pisinger 2005 makes them, with coefficients up to 1,000."""
    chance, out = random.Random(seed), []  # noqa: S311 - the same instance each time
    for _ in range(number):
        weight = chance.randint(1, 1000)
        worth = {
            "uncorrelated": chance.randint(1, 1000),
            "weakly correlated": max(1, chance.randint(weight - 100, weight + 100)),
            "strongly correlated": weight + 100,
            "subset sum": weight,
        }[kind]
        out.append(Thing(weight, worth))
    return out


@pytest.mark.parametrize("number", [100, 500, 2000, 10000])
@pytest.mark.parametrize("kind", ["uncorrelated", "weakly correlated", "strongly correlated", "subset sum"])
def test_large_knapsacks(kind: str, number: int) -> None:
    """Up to ten thousand things, against the table over every weight. **Source**: R. Bellman 1957, computed here."""
    things, room = make_knapsack(kind, number, number), 9973 if number < 10000 else 19997
    table = np.zeros(room + 1, dtype=np.int64)
    for thing in things:
        weight = int(thing.weight)
        table[weight:] = np.maximum(table[weight:], table[: room + 1 - weight] + int(thing.worth))
    assert exact(things, room) == int(table[-1])
