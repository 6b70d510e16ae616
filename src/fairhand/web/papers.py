"""The papers of the desk, each kept open and warm, one request at a time."""

from __future__ import annotations

import datetime as dt
import threading
from dataclasses import dataclass, field
from pathlib import Path

from fairhand.desk.cache import fingerprint
from fairhand.desk.clock import now
from fairhand.desk.places import list_papers
from fairhand.desk.seen import hash_bytes
from fairhand.errors import NoPaperHere
from fairhand.session.opened import OpenPaper
from fairhand.session.schedule.overview import read_desk


@dataclass(frozen=True)
class Kept:
    """One paper that is open in the page."""

    slug: str
    """The name of its folder, as addresses have it."""
    opened: OpenPaper
    lock: threading.RLock = field(default_factory=threading.RLock)
    """Held by whoever answers a request about the paper."""

    @property
    def title(self) -> str:
        """The paper's title, or the name of its folder."""
        return self.opened.look().paper.settings.title or self.slug

    @property
    def folder(self) -> Path:
        """Where it stands."""
        return self.opened.folder


class Papers:
    """The desk's papers by their slugs.

    Args:
        desk: The desk's folder.
        at: The hour to judge deadlines by; the clock's, where it is None.
    """

    def __init__(self, desk: Path, *, at: dt.datetime | None = None) -> None:
        """No paper is opened yet."""
        self.desk = desk.resolve()
        self.at = at
        self._kept: dict[str, Kept] = {}
        self._lock = threading.Lock()

    def now(self) -> dt.datetime:
        """The present hour, in the zone of this machine."""
        return self.at or now()

    @property
    def is_desk(self) -> bool:
        """Whether the folder is a desk already, and no folder that may become one."""
        return (self.desk / "desk.toml").is_file()

    @property
    def writer(self) -> str:
        """The writer's name, as it stands at the head of a manuscript's pages."""
        return read_desk(self.desk).name

    def state(self) -> str:
        """A hash that changes whenever a file of any of the papers does."""
        return hash_bytes(repr([(path.name, fingerprint(path)) for path in list_papers(self.desk)]).encode())

    def find(self, slug: str) -> Kept:
        """The paper with that slug: the name of a paper's folder that stands on the desk, and nothing else.

        Raises:
            NoPaperHere: No such folder stands on the desk, or it is a link that leads out of it.
        """
        folder = next((path for path in list_papers(self.desk) if path.name == slug), None)
        if folder is None:
            message = f"{slug}: no paper of that name is on this desk; choose one of the work in hand"
            raise NoPaperHere(message)
        if not folder.resolve().is_relative_to(self.desk):
            message = f"{slug}: its folder is a link that leads out of the desk; open the desk on which it stands"
            raise NoPaperHere(message)
        with self._lock:
            kept = self._kept.get(slug)
            if kept is None:
                kept = self._kept[slug] = Kept(slug, OpenPaper(folder, at=self.at))
            return kept
