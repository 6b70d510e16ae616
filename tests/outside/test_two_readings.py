"""What two proofreaders leave unseen: worked values, and pairs of readers whose rates are known.

Sources: G. Pólya 1976, American Mathematical Monthly 83, p. 42 (values from a public page); Chapman 1951 (worked by
hand); Spirrison and Gordy 1993 for readers who miss 24 of 100 errors (as cited on a public page).
"""

from __future__ import annotations

import random

from fairhand.evidence.share_found import estimate_by_two_routes
from fairhand.model.span import Span
from fairhand.proof.two_readings import TwoReadings, match_marks, range_of_errors, unseen_by_polya

PAIRS = 300
"""Pairs of readers simulated for each pair of rates."""


def test_polya() -> None:
    """18 and 15 with 9 in common: 30 in all, 24 found, 6 unseen. 30 and 25 with 5: 100 unseen. None in common: none."""
    first = TwoReadings(18, 15, 9)
    assert (first.found, unseen_by_polya(first)) == (24, 6)
    assert unseen_by_polya(TwoReadings(30, 25, 5)) == 100
    assert unseen_by_polya(TwoReadings(5, 4, 0)) is None


def test_chapman() -> None:
    """18, 15, 9: 29.4, standard error 3.86, 21.8 to 37.0, never below the 24 found. 5, 4, 0: too few to tell."""
    told = estimate_by_two_routes(18, 15, 9)
    assert [round(x, 2) for x in (told.total, told.error)] == [29.4, 3.86]
    assert [round(x, 1) for x in (told.low, told.high, told.at_least)] == [21.8, 37.0, 24.0]
    few = estimate_by_two_routes(5, 4, 0)
    assert (few.total, round(few.error, 1), few.enough) == (29, 17.3, False)
    assert not TwoReadings(5, 4, 0).enough


def test_two_readers_as_students_read_leave_what_is_published() -> None:
    """Each misses 24 of 100: both together 5.8, and the estimate says so."""
    chance, errors = random.Random(1), 49  # noqa: S311 - readers are simulated, the same each time
    left = told = 0.0
    for _ in range(PAIRS):
        readings = read(chance, errors, 0.76, 0.76)
        left += errors - readings.found
        told += unseen_by_polya(readings) or 0.0
    print(f"\nof {errors} errors {left / PAIRS / errors:.3f} are left by two readers, told {told / PAIRS / errors:.3f}")
    assert abs(left / PAIRS / errors - 0.0576) < 0.01
    assert abs(told / PAIRS / errors - 0.0576) < 0.015


def read(chance: random.Random, errors: int, first: float, second: float) -> TwoReadings:
    """What two readers find who see each error at their own rates; their marks matched as the program matches them."""
    seen = [[n for n in range(errors) if chance.random() < rate] for rate in (first, second)]
    ours, theirs = ([("delete" if n % 2 else "substitute", Span(20 * n, 20 * n + 5)) for n in each] for each in seen)
    return match_marks(ours, theirs)[0]  # type: ignore[arg-type]


def test_the_range_holds_as_often_as_it_says() -> None:
    """At least nineteen times in twenty, whatever the readers' rates and however few the errors are.

    Beside it stands how often the normal range of Chapman's estimate holds, which is why that is not the one told.
    """
    chance = random.Random(2)  # noqa: S311 - readers are simulated, the same each time
    print("\nerrors  rates       range holds  Chapman's normal range  too few to tell")
    for errors in (10, 25, 49, 100):
        for first, second in ((0.3, 0.3), (0.5, 0.5), (0.76, 0.76), (0.76, 0.5), (0.9, 0.6)):
            held = normal = few = 0
            for _ in range(PAIRS):
                readings = read(chance, errors, first, second)
                low, high = range_of_errors(readings)
                chapman = estimate_by_two_routes(readings.first, readings.second, readings.both)
                held += low <= errors <= high
                normal += chapman.at_least <= errors <= chapman.high
                few += not readings.enough
            print(
                f"{errors:6}  {first:.2f} {second:.2f}  {held / PAIRS:11.3f}  {normal / PAIRS:22.3f}  "
                f"{few / PAIRS:15.3f}"
            )
            assert held / PAIRS >= 0.95
