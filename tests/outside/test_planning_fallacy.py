"""How much longer a paper takes than its writer foresees."""

from __future__ import annotations

from fairhand.planning.pace import PUBLISHED, learn_pace


def test_the_published_multiplier() -> None:
    """Predicted 33.9 days, actual 55.5: 1.64.

    **Source**: Buehler, Griffin & Ross 1994, Journal of Personality and Social Psychology 67, as the trade's check
    values give it.
    """
    assert round(55.5 / 33.9, 2) == PUBLISHED
    for few in range(5):
        assert learn_pace([3.0] * few).likely == PUBLISHED


def test_the_worked_log() -> None:
    """Ratios 1.1, 1.3, 1.4, 1.6, 1.9, 2.4: median 1.5, 80th percentile 1.9.

    **Source**: the trade's check values, section 6; re-computed by hand.
    """
    pace = learn_pace([1.9, 1.1, 2.4, 1.3, 1.6, 1.4])
    assert (pace.likely, pace.safe, pace.steps) == (1.5, 1.9, 6)
