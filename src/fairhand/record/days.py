"""Words by day, as a plain picture: what came into the draft above the line, what went out below it."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass
from html import escape

from fairhand.record.sittings import Sitting

WIDE, HIGH = 576.0, 180.0
"""The picture's size, in its own units."""
LEFT, LETTERED = 52.0, 26.0
"""What is kept free at its left for numbers and below for days."""
THICKEST = 14.0
"""The broadest bar."""
MOST_NAMED = 8
"""Days that are written below the line."""


@dataclass(frozen=True, slots=True)
class Day:
    """One day on which the draft was worked at."""

    on: dt.date
    came: int
    went: int


def list_days(sittings: Sequence[Sitting]) -> tuple[Day, ...]:
    """The days with words that came into the draft or went out of it; a sitting counts for the day it began on."""
    found: dict[dt.date, Day] = {}
    for one in sittings:
        if one.came or one.went:
            on = one.start.date()
            known = found.get(on, Day(on, 0, 0))
            found[on] = Day(on, known.came + one.came, known.went + one.went)
    return tuple(found[on] for on in sorted(found))


def draw_days(days: Sequence[Day]) -> str:
    """The picture as SVG, in the ink of whatever it stands in; nothing where there is no day to show.

    >>> drawn = draw_days([Day(dt.date(2027, 2, 8), 400, 20), Day(dt.date(2027, 2, 10), 90, 150)])
    >>> drawn.count("<rect"), "8 Feb" in drawn, draw_days([])
    (4, True, '')
    """
    if not days:
        return ""
    first, last = days[0].on, days[-1].on
    span = (last - first).days + 1
    most_in, most_out = max(one.came for one in days), max(one.went for one in days)
    scale = (HIGH - LETTERED - 24) / max(1, most_in + most_out)
    base = 12 + most_in * scale
    step = (WIDE - LEFT) / span
    thick = max(1.0, min(THICKEST, step * 0.7))
    parts = [f'<line x1="{LEFT:.1f}" x2="{WIDE:.1f}" y1="{base:.1f}" y2="{base:.1f}" stroke="currentColor"/>']
    for one in days:
        x = LEFT + ((one.on - first).days + 0.5) * step - thick / 2
        if one.came:
            high = one.came * scale
            parts.append(_bar(x, base - high, thick, high, "currentColor"))
        if one.went:
            parts.append(_bar(x, base, thick, one.went * scale, "none"))
    parts += [
        _number(base - most_in * scale, most_in),
        *([_number(base + most_out * scale, most_out)] * bool(most_out)),
    ]
    every = -(-len(days) // MOST_NAMED)
    lettered, free = days[::every], -100.0
    for one in lettered:
        x = LEFT + ((one.on - first).days + 0.5) * step
        if x - free >= 60:
            parts.append(
                f'<text x="{min(x, WIDE - 24):.1f}" y="{HIGH - 6:.1f}" text-anchor="middle" font-size="14" '
                f'fill="currentColor">{one.on.day} {one.on:%b}</text>'
            )
            free = x
    said = escape(
        f"From {first.day} {first:%B %Y} to {last.day} {last:%B %Y}: {sum(one.came for one in days):,} words came in "
        f"and {sum(one.went for one in days):,} went out, on {len(days)} days. The table has each day."
    )
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {WIDE:.0f} {HIGH:.0f}" role="img" '
        f'aria-labelledby="days-title days-said" width="100%">'
        f'<title id="days-title">Words by day</title><desc id="days-said">{said}</desc>{"".join(parts)}</svg>'
    )


def _bar(x: float, y: float, wide: float, high: float, fill: str) -> str:
    return (
        f'<rect x="{x:.1f}" y="{y:.1f}" width="{wide:.1f}" height="{max(high, 0.5):.1f}" '
        f'fill="{fill}" stroke="currentColor"/>'
    )


def _number(y: float, number: int) -> str:
    place = f'x="{LEFT - 6:.1f}" y="{y + 4:.1f}" text-anchor="end"'
    return f'<text {place} font-size="14" fill="currentColor">{number:,}</text>'
