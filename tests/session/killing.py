"""A process that works at a paper until it is killed, and says of each thing when it is done.

Run by ``test_killed_at_work``: one process loads the program once; each life is a fork of it, killed at a random
moment. What was said to be saved stands on a pipe, which outlives the life; after each one the folder is looked
through.
"""

from __future__ import annotations

import datetime as dt
import json
import os
import random
import signal
import sys
import time
from collections import Counter
from pathlib import Path
from typing import Any

from fairhand.desk.paper_files import read_paper
from fairhand.desk.record import check_record, list_states
from fairhand.desk.seen import hash_bytes
from fairhand.model.finding import Finding
from fairhand.model.span import Span
from fairhand.proof.marks_file import read_marks
from fairhand.session.editing import add_stet, read_text, save_text
from fairhand.session.hand_in.handing_in import make_hand_in, read_hand_in, state
from fairhand.session.opened import OpenPaper
from fairhand.session.record.printed_record import check_printed, print_record
from fairhand.session.saving import keep_record

AT = dt.datetime(2027, 2, 19, 15, 20, tzinfo=dt.UTC)
SOONEST_SECONDS = 0.004
LATEST_SECONDS = (0.1, 0.4, 0.4, 1.6)
"""The longest that a life lasts, drawn by lot: some are long enough to print what is handed in."""
TOLD: dict[str, Any] = {"verdict": "ask", "requirements": [], "findings": []}
WORDS = "The quay was long and the harbour was small. "
OFTEN = 25
"""Each so many lives the whole record is looked through, state by state."""


def text_of(number: int) -> str:
    """The draft's text after so many savings: long enough that half of it would be noticed."""
    return f"# Quays\n\nState {number}.\n\n{WORDS * (200 + number % 40)}\n\nEnd of state {number}.\n"


def live(paper: Path, said: int, number: int, chance: random.Random) -> None:
    """Works until it is killed."""

    def say(*words: object) -> None:
        os.write(said, (" ".join(map(str, words)) + "\n").encode())

    opened = OpenPaper(paper)
    while True:
        number += 1
        what = chance.choice(("save", "save", "mark", "outside", "state", "print", "print"))
        if what == "save":
            say("trying", number)
            save_text(paper, "draft.md", text_of(number), read_text(paper, "draft.md").seen)
            say("saved", number)
        elif what == "outside":
            say("trying", number)
            aside = paper / ".aside"
            aside.write_text(text_of(number), "utf-8")
            aside.replace(paper / "draft.md")
            keep_record(read_paper(paper))
            say("saved", number)
        elif what == "mark":
            finding = Finding("doubled-word", "copy-edit", "should", Span(0, 7), "It stands twice.", "common practice")
            add_stet(paper, finding, text_of(number), f"mark {number}", AT)
            say("marked", number)
        elif what == "state":
            state(paper, "help", f"Statement {number}.")
            say("stated", number)
        elif chance.random() < 0.7:
            print_record(paper, "html", at=AT)
            say("printed", number)
        else:
            made = make_hand_in(opened, TOLD, form="md", anyway=True, at=AT)
            say("handed", made.folder.name)


def look_through(paper: Path, told: Counter[str], last: dict[str, int], tried: int, *, whole: bool) -> None:
    """Nothing that was said to be saved is lost, and nothing is torn."""
    draft = (paper / "draft.md").read_text("utf-8")
    stands = int(draft.split("State ")[1].partition(".")[0])
    assert draft == text_of(stands), f"the draft is torn: {draft[-60:]}"
    assert last.get("saved", 0) <= stands <= tried, f"saved {last.get('saved')}, tried {tried}, there {stands}"
    kept = {one.sha256 for one in list_states(paper, "draft.md")}
    assert hash_bytes(text_of(last.get("saved", 0)).encode()) in kept
    marks = paper / "marks.jsonl"
    if marks.exists():
        reasons = [one.get("reason", "") for one in map(json.loads, marks.read_text("utf-8").splitlines())]
        assert told["marked"] <= len(reasons) <= told["marked"] + told["lives"]
        assert not read_marks(marks.read_text("utf-8"))[1]
    if "stated" in last:
        number = int(read_hand_in(paper).statements["help"].split()[1].rstrip("."))
        assert number >= last["stated"]
    printed = paper / "fair" / f"record of {paper.name}.html"
    if printed.exists():
        assert check_printed(printed.name, printed.read_bytes()).faults == ()
    for folder in paper.glob("fair/hand-in*"):
        sheet = (folder / "hashes.txt").read_text("utf-8")
        for file in (folder / "to hand in").iterdir():
            assert hash_bytes(file.read_bytes()) in sheet
    if whole:
        assert check_record(paper) == ()


def main(paper: Path, kills: int) -> None:
    """So many lives of one paper, and what came of them."""
    chance = random.Random(11)  # noqa: S311 - the same moments in each run
    told: Counter[str] = Counter()
    last: dict[str, int] = {}
    tried = number = 0
    (paper / "draft.md").write_text(text_of(0), "utf-8")
    keep_record(read_paper(paper))
    for kill in range(1, kills + 1):
        heard, said = os.pipe()
        life = os.fork()
        if not life:
            os.close(heard)
            live(paper, said, number, random.Random(kill))  # noqa: S311
        os.close(said)
        time.sleep(chance.uniform(SOONEST_SECONDS, chance.choice(LATEST_SECONDS)))
        os.kill(life, signal.SIGKILL)
        _, status = os.waitpid(life, 0)
        assert os.WIFSIGNALED(status), f"life {kill} ended by itself"
        told["lives"] += 1
        with os.fdopen(heard) as lines:
            for line in lines:
                what, _, which = line.strip().partition(" ")
                told[what] += 1
                if which.isdigit():
                    last[what] = int(which)
        tried = max(last.get("trying", 0), tried)
        number = max((number, *last.values())) + 1
        look_through(paper, told, last, tried, whole=kill % OFTEN == 0 or kill == kills)
    print(", ".join(f"{told[what]} {what}" for what in ("lives", "saved", "marked", "stated", "printed", "handed")))


if __name__ == "__main__":
    main(Path(sys.argv[1]), int(sys.argv[2]))
