"""Killed at any moment while it takes files in, the program loses nothing and takes nothing twice."""

from __future__ import annotations

import json
import os
import random
import signal
import subprocess
import sys
import time
from collections import Counter
from pathlib import Path

import pytest

from fairhand.desk.disk import lock_folder
from fairhand.desk.record import check_record

KILLS = int(os.environ.get("FAIRHAND_KILLS", "10"))
FIRST, EACH = 60, 20
"""Files that wait at first, and that come in before each further kill."""
SOONEST_SECONDS, LATEST_SECONDS = 0.25, 0.9
ROOT = Path(__file__).parents[2]


def begin(paper: Path) -> subprocess.Popen[bytes]:
    """The command that takes the inbox in, under way."""
    environment = {**os.environ, "PYTHONPATH": str(ROOT / "src")}
    command = [sys.executable, "-m", "fairhand", "add", "--inbox", str(paper)]
    return subprocess.Popen(command, env=environment, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)


@pytest.mark.skipif(not hasattr(signal, "SIGKILL"), reason="no such signal on this system")
def test_nothing_is_lost_and_nothing_taken_twice(demo_paper: Path) -> None:
    """At random moments, again and again on one inbox: each file stands once in the folder and once in the list."""
    chance = random.Random(5)  # noqa: S311 - moments, no secrets
    inbox = demo_paper / "inbox"
    inbox.mkdir()
    before = {one["id"] for one in json.loads((demo_paper / "sources.json").read_text("utf-8"))}
    given: Counter[bytes] = Counter()
    running = halfway = 0
    for kill in range(KILLS):
        for n in range(EACH if kill else FIRST):
            data = f"<!DOCTYPE html><title>Ebb {kill} {n}</title><p>{'The ebb scours the quay. ' * 4000}".encode()
            (inbox / f"p{kill}-{n}.html").write_bytes(data)
            given[data] += 1
        process = begin(demo_paper)
        time.sleep(chance.uniform(SOONEST_SECONDS, LATEST_SECONDS))
        running += process.poll() is None
        process.kill()
        process.wait()
        halfway += any(inbox.iterdir())
        json.loads((demo_paper / "sources.json").read_text("utf-8"))
    assert begin(demo_paper).wait() == 0
    with lock_folder(demo_paper):
        stands = Counter(path.read_bytes() for path in (demo_paper / "sources").glob("*.html"))
    assert {data: stands[data] for data in given} == dict(given)
    records = json.loads((demo_paper / "sources.json").read_text("utf-8"))
    new = [one["id"] for one in records if one["id"] not in before]
    assert Counter(one["title"] for one in records if one["id"] in new).most_common(1)[0][1] == 1
    assert len(new) == len(given)
    assert all((demo_paper / "sources" / f"{name}.html").exists() for name in new)
    assert list(inbox.iterdir()) == []
    assert not list((demo_paper / "sources").glob(".*"))
    assert check_record(demo_paper) == ()
    print(f"\n{KILLS} kills, {running} of them at work, {halfway} with files left: nothing lost, nothing twice")
