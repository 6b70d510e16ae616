"""Sheets that were sent and wait for the writer to say which of their papers to begin."""

from __future__ import annotations

import datetime as dt
import secrets
import tempfile
import threading
from collections import OrderedDict
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from fairhand.web.forms import Upload

MOST_WAITING = 8
"""The oldest goes when another comes."""


@dataclass(frozen=True)
class Beginning:
    """What is known of a paper, or of several from one sheet, before there is one."""

    title: str
    sheets: tuple[Upload, ...] = ()
    course: str = ""
    given: dt.date | None = None
    assignments: tuple[str, ...] = ()
    """The titles of the papers that the sheets ask for, where they ask for several."""


class Waiting:
    """Beginnings by the words that stand for them in addresses; kept in memory alone."""

    def __init__(self) -> None:
        """Nothing waits."""
        self._kept: OrderedDict[str, Beginning] = OrderedDict()
        self._lock = threading.Lock()

    def keep(self, beginning: Beginning) -> str:
        """The word under which it is found again."""
        word = secrets.token_urlsafe(8)
        with self._lock:
            self._kept[word] = beginning
            while len(self._kept) > MOST_WAITING:
                self._kept.popitem(last=False)
        return word

    def find(self, word: str) -> Beginning | None:
        """What was kept under a word; None where it has gone."""
        return self._kept.get(word)


@contextmanager
def laid_down(sheets: Sequence[Upload]) -> Iterator[tuple[Path, ...]]:
    """The sheets as files, in a folder that is gone afterwards; two of one name do not cover each other."""
    with tempfile.TemporaryDirectory(prefix="fairhand-sheets-") as folder:
        paths = []
        for number, sheet in enumerate(sheets):
            path = Path(folder) / str(number) / sheet.name
            path.parent.mkdir()
            path.write_bytes(sheet.data)
            paths.append(path)
        yield tuple(paths)
