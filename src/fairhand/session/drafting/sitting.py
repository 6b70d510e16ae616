"""A sitting at the rough draft: begun with an aim, told of only when asked, and kept for the plan when it ends."""

from __future__ import annotations

import datetime as dt
import json
from dataclasses import dataclass
from pathlib import Path
from typing import Literal

from fairhand.desk.cache import keep_cached, read_cached
from fairhand.language.counts import count_of, say_minutes
from fairhand.planning.pace import WHERE, Logged, add_to_log
from fairhand.planning.stages import DRAFTED
from fairhand.session.drafting.rough import ROUGH, count_rough
from fairhand.session.editing import read_text, save_text

KEY = "sitting"
LONGEST_HOURS = 12
"""After so long a sitting that nobody ended is forgotten."""
LEAST_LEFT = 5
"""Minutes that are left of a draft in any case, until the writer says that it is done."""


@dataclass(frozen=True, slots=True)
class Sitting:
    """A sitting that was begun."""

    began: dt.datetime
    aim: int
    unit: Literal["words", "minutes"]
    had: int
    """Words at its beginning."""

    def seconds_left(self, at: dt.datetime) -> float:
        """Of an aim in minutes, what is left of it; 0 of one in words."""
        return self.aim * 60 - (at - self.began).total_seconds() if self.unit == "minutes" else 0.0


def begin_sitting(folder: Path, aim: int, unit: Literal["words", "minutes"], at: dt.datetime) -> Sitting:
    """A sitting begins; one that was not ended is forgotten."""
    sitting = Sitting(at, aim, unit, count_rough(read_text(folder, ROUGH).text))
    told = {"began": at.isoformat(timespec="seconds"), "aim": aim, "unit": unit, "had": sitting.had}
    keep_cached(folder, KEY, json.dumps(told).encode())
    return sitting


def find_sitting(folder: Path, at: dt.datetime) -> Sitting | None:
    """The sitting that runs; None where none does, or it was begun too long ago."""
    try:
        told = json.loads(read_cached(folder, KEY) or b"null")
        began = dt.datetime.fromisoformat(told["began"])
        unit: Literal["words", "minutes"] = "words" if told["unit"] == "words" else "minutes"
        sitting = Sitting(began, int(told["aim"]), unit, int(told["had"]))
        gone = at - began
    except (ValueError, TypeError, KeyError):
        return None
    return sitting if dt.timedelta() <= gone < dt.timedelta(hours=LONGEST_HOURS) else None


def tell_sitting(folder: Path, sitting: Sitting, at: dt.datetime, *, is_asked: bool) -> str:
    """How far a sitting is, where that is asked; else nothing, until its minutes are over."""
    if is_asked:
        minutes = say_minutes(round((at - sitting.began).total_seconds() / 60))
        words = count_rough(read_text(folder, ROUGH).text) - sitting.had
        return f"{minutes} so far, {count_of(words, 'word')} more; the aim was {sitting.aim:,} {sitting.unit}."
    is_over = sitting.unit == "minutes" and sitting.seconds_left(at) <= 0
    return "The time is over. Write on, or end the sitting." if is_over else ""


def end_sitting(folder: Path, sitting: Sitting, words_asked: int, at: dt.datetime) -> str:
    """The sitting is kept in ``time.jsonl`` as work on the draft; what was done is said.

    What is left of the draft is reckoned from the words that are still wanted.

    Args:
        folder: The paper's folder.
        sitting: The sitting.
        words_asked: How many words the paper is to have; 0 where nobody said.
        at: The present hour.

    Raises:
        DraftChangedOnDisk: Another program wrote to the log at the same moment.
    """
    words = count_rough(read_text(folder, ROUGH).text)
    minutes = max(0, round((at - sitting.began).total_seconds() / 60))
    left = max(LEAST_LEFT, round(max(0, words_asked - words) / DRAFTED * 12) * 5)
    one = Logged("draft", minutes, left_minutes=left, when=at.isoformat(timespec="seconds"))
    log = read_text(folder, WHERE)
    save_text(folder, WHERE, add_to_log(log.text, one), log.seen)
    keep_cached(folder, KEY, b"null")
    return f"{say_minutes(minutes)}, {count_of(words - sitting.had, 'word')} more."
