"""A reader's days of waiting are known to the plan."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

from fairhand.session.schedule.standings import read_standing

NOW = dt.datetime(2027, 2, 8, 12, tzinfo=dt.UTC)


def test_the_register_feeds_the_plan(demo_paper: Path) -> None:
    """Until the day a copy is due, or on which it came back; where no day was named, the usual days."""
    (demo_paper / "readers.toml").write_text(
        '[[readers]]\nname = "A"\nsent = 2027-02-03\ndue = 2027-02-12\n'
        '[[readers]]\nname = "B"\nsent = 2027-02-03\n'
        '[[readers]]\nname = "C"\nsent = 2027-02-01\ndue = 2027-02-12\nback = 2027-02-04\n'
        '[[readers]]\nname = "D"\n',
        "utf-8",
    )
    for _ in range(2):  # worked out, and as it was kept
        standing = read_standing(demo_paper, NOW)
        assert standing is not None
        assert standing.readers_until == tuple(dt.date(2027, 2, day) for day in (12, 5, 4))
