"""What is still left of one paper before its hour, by its own standing and the writer's pace."""

from __future__ import annotations

import contextlib
import datetime as dt
import json
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from fairhand.desk.cache import fingerprint, keep_cached, read_cached
from fairhand.desk.clock import find_zone, now
from fairhand.desk.places import desk_of, list_done, list_papers
from fairhand.desk.seen import hash_bytes
from fairhand.readiness.left import Left, read_told, tell_left
from fairhand.session.kept import program_state

_LOG = "time.jsonl"


def read_left(folder: Path, told: Mapping[str, Any], at: dt.datetime | None = None) -> Left:
    """What must still be done on a paper, in order, with the time that it takes; worked out once while nothing changes.

    Args:
        folder: The paper's folder.
        told: Its verdict as plain values.
        at: The present hour; the clock's, where it is None.

    Raises:
        FairhandError: Its sheet cannot be read.
    """
    zone = str(told["time_zone"])
    moment = (at or now(zone)).astimezone(find_zone(zone) if zone else None)
    key = (
        f"left {program_state()} {fingerprint(folder)} {_state_of_logs(folder)} {_state_of_told(told)} {moment.date()}"
    )
    kept = read_cached(folder, key)
    if kept is not None:
        return read_told(json.loads(kept), moment)
    left = _work_out(folder, told, moment)
    keep_cached(folder, key, json.dumps(tell_left(left)).encode())
    return left


def _work_out(folder: Path, told: Mapping[str, Any], moment: dt.datetime) -> Left:
    from dataclasses import replace

    from fairhand.planning.steps import list_steps
    from fairhand.readiness.left_to_do import list_left
    from fairhand.session.schedule.plan import desk_pace
    from fairhand.session.schedule.standings import read_standing

    standing = read_standing(folder, moment)
    if standing is None:  # only where nothing but what is kept was asked for
        return Left()
    passes = [one["pass"] for one in told["findings"] if one["weight"] != "query"]
    standing = replace(standing, findings={in_pass: passes.count(in_pass) for in_pass in sorted(set(passes))})
    steps = list_steps(standing, desk_pace(desk_of(folder)), zone=moment.tzinfo)
    return list_left((one for one in steps if one.paper == standing.paper), told, standing.due, moment)


def _state_of_told(told: Mapping[str, Any]) -> str:
    """A hash of what of the verdict the list holds."""
    open_ = [(one["id"], one["state"], one["why"]) for one in told["requirements"] if one["kind"] != "due"]
    found = [(one["check"], one["pass"], one["weight"]) for one in told["findings"]]
    return hash_bytes(repr((open_, found)).encode("utf-8", "replace"))


def _state_of_logs(folder: Path) -> str:
    """A hash that changes when any log on the desk does, from which the pace is learnt."""
    desk = desk_of(folder)
    stats = []
    for paper in (*list_papers(desk), *list_done(desk)):
        with contextlib.suppress(OSError):
            stat = (paper / _LOG).stat()
            stats.append((paper.name, stat.st_size, stat.st_mtime_ns))
    return hash_bytes(repr(stats).encode("utf-8", "surrogateescape"))
