"""Killed at any moment while a proof is marked and mended, the program loses nothing that it said was kept."""

from __future__ import annotations

import os
import random
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from fairhand.desk.record import check_record
from fairhand.session.correction.passes import read_marking

KILLS = int(os.environ.get("FAIRHAND_KILLS", "8"))
SOONEST_SECONDS, LATEST_SECONDS = 0.02, 0.6
ROOT = Path(__file__).parents[2]
WORK = """
import datetime as dt, sys
from pathlib import Path
from fairhand.model.proof_mark import ProofMark
from fairhand.session.correction.passes import begin_pass, end_pass, read_marking
from fairhand.session.correction.proof import keep_marks, mend_mark

folder, at = Path(sys.argv[1]), dt.datetime(2027, 2, 8, 12, tzinfo=dt.timezone.utc)
print("begun", flush=True)
marking = read_marking(folder)
if marking.under_way is None and len(marking.passes) == 0:
    begin_pass(folder, "page", at)
if read_marking(folder).under_way:
    for n in range(len(read_marking(folder).marks), 30):
        around = ("" if n == 0 else f"word{n - 1:02} ", f" word{n + 1:02}")
        keep_marks(folder, [ProofMark("", "", "substitute", f"word{n:02}", *around, words=f"mended{n:02}")], at)
        print(f"kept {n}", flush=True)
    end_pass(folder, at)
    print("ended", flush=True)
for number, mark in read_marking(folder).open:
    try:
        mend_mark(folder, mark.id)
        print(f"mended {mark.exact[4:]}", flush=True)
    except Exception as fault:
        print(f"refused {mark.exact[4:]}", flush=True)
"""


@pytest.mark.skipif(not hasattr(signal, "SIGKILL"), reason="no such signal on this system")
def test_no_mark_and_no_mending_is_lost_or_done_twice(demo_paper: Path) -> None:
    """Again and again on one paper: what was said to be kept is there, the draft is whole, the record is sound."""
    chance = random.Random(9)  # noqa: S311 - moments, no secrets
    draft = demo_paper / "draft.md"
    words = [f"word{n:02}" for n in range(31)]
    draft.write_text(" ".join(words) + "\n", "utf-8")
    environment = {**os.environ, "PYTHONPATH": str(ROOT / "src")}
    kept: set[int] = set()
    mended: set[int] = set()
    ended, running = False, 0
    for kill in range(KILLS + 1):
        process = subprocess.Popen(
            [sys.executable, "-c", WORK, str(demo_paper)], env=environment, stdout=subprocess.PIPE, text=True
        )
        assert process.stdout is not None
        said = [process.stdout.readline()]
        if kill < KILLS:
            time.sleep(chance.uniform(SOONEST_SECONDS, LATEST_SECONDS))
            running += process.poll() is None
            process.kill()
        said += process.stdout.read().splitlines()
        process.wait()
        kept |= {int(line.split()[1]) for line in said if line.startswith("kept ")}
        mended |= {int(line.split()[1]) for line in said if line.startswith("mended ")}
        ended |= "ended" in said
        marking = read_marking(demo_paper)
        there = {int(mark.exact[4:]) for mark in marking.marks}
        assert kept <= there
        assert len(there) == len(marking.marks)
        assert not ended or marking.under_way is None
        now = draft.read_text("utf-8").split()
        assert len(now) == len(words)
        assert all(one in (was, was.replace("word", "mended")) for one, was in zip(now, words, strict=True))
        assert all(now[n] == f"mended{n:02}" for n in mended)
        assert all(now[int(mark.exact[4:])].startswith("mended") for mark in marking.marks if mark.fate == "mended")
    assert check_record(demo_paper) == ()
    print(f"\n{KILLS} kills, {running} of them at work, {len(kept)} marks kept, {len(mended)} mended: nothing lost")
