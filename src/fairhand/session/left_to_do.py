"""What is still left of one paper before its hour, by its own standing and the writer's pace."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path
from typing import Any

from fairhand.planning.steps import list_steps
from fairhand.readiness.left_to_do import Left, list_left
from fairhand.session.overview import read_desk
from fairhand.session.plan import desk_now, desk_of, desk_pace
from fairhand.session.standings import read_standing


def read_left(folder: Path, told: Mapping[str, Any], at: dt.datetime | None = None) -> Left:
    """What must still be done on a paper, in order, with the time that it takes.

    Args:
        folder: The paper's folder.
        told: Its verdict as plain values.
        at: The present hour; the clock's, where it is None.

    Raises:
        FairhandError: Its sheet cannot be read.
    """
    desk = desk_of(folder)
    now = desk_now(read_desk(desk), at)
    standing = read_standing(folder, now)
    if standing is None:  # only where nothing but what is kept was asked for
        return Left()
    passes = [one["pass"] for one in told["findings"] if one["weight"] != "query"]
    standing = replace(standing, findings={in_pass: passes.count(in_pass) for in_pass in sorted(set(passes))})
    steps = [one for one in list_steps(standing, desk_pace(desk), zone=now.tzinfo) if one.paper == standing.paper]
    return list_left(steps, told, standing.due, now)
