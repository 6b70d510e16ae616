"""Files taken in among the sources: read in processes apart, put in place, and entered in the list.

The order makes it safe to be killed at any moment: a file's bytes stand whole under ``sources/`` before the list names
it, and it leaves the inbox only when the list does. Whoever begins again finds each file by its content: one that is in
the list is there already, and one that only stands in the folder is entered under the name that it has.
"""

from __future__ import annotations

import time
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, Literal

from fairhand.citing.entries import name_entry, read_entry
from fairhand.desk.disk import lock_folder, sweep_unfinished
from fairhand.desk.inbox import let_go
from fairhand.desk.paper_files import SOURCE_SUFFIXES, plain_name
from fairhand.desk.places import list_folder
from fairhand.desk.seen import hash_bytes, see_file
from fairhand.desk.writing import write_file
from fairhand.errors import FairhandError, FileUnreadable, InputError, UnknownFormat
from fairhand.model.description import Said
from fairhand.press.apart import Limits, WorkKilled, do_apart
from fairhand.session.job import Job
from fairhand.session.loading import load_entries
from fairhand.session.sources.entries import name_text, open_list, write_list
from fairhand.session.sources.reading_apart import Read, Task, read_apart

LIMITS = Limits(seconds=60, most_bytes=2 * 2**30)
"""What one file may take to be read: a scanned book of a thousand pages takes a tenth of it."""
_TOGETHER = 24
"""Files that are entered in the list at once, so that a thousand do not write it a thousand times."""
_SECONDS_TOGETHER = 2.0
"""How long a file that was read waits for others to be entered with."""


@dataclass(frozen=True)
class Taken:
    """What became of one file."""

    name: str
    """Its name as it came."""
    outcome: Literal["new", "there", "refused"]
    id: str = ""
    """The id of its source; empty where it was refused."""
    problems: tuple[str, ...] = ()
    """Why it was refused, or what of it could not be read."""


def take_files(
    folder: Path,
    paths: Sequence[Path],
    job: Job[Any],
    said: Mapping[Path, tuple[Said, ...]] | None = None,
    limits: Limits = LIMITS,
) -> tuple[Taken, ...]:
    """The files stand among the paper's sources, each with its entry in the list; what is refused stays where it was.

    Args:
        folder: The paper's folder.
        paths: The files; those in the paper's inbox leave it.
        job: Counts them, and says when to stop.
        said: What is known of a file's work from elsewhere.
        limits: What one file may take to be read.

    Raises:
        FileUnreadable: The list is no list of records, and must be mended first.
        FolderNotWritable: The folder is closed or full.
    """
    job.total += len(paths)
    with lock_folder(folder):
        sweep_unfinished(folder / "sources")
    taking = _Taking(folder, _Shelf(folder))
    tasks = (Task(path, path.name, folder, (said or {}).get(path, ())) for path in taking.pass_known(paths, job))
    for task, outcome in do_apart(read_apart, tasks, limits=limits, stopped=lambda: job.cancelled):
        taking.add(task, outcome)
        job.count()
    taking.enter()
    return tuple(taking.done)


@dataclass
class _Shelf:
    """The files that stand among the paper's own sources, by their content."""

    folder: Path
    by_size: dict[int, list[Path]] = field(default_factory=lambda: defaultdict(list))
    hashes: dict[Path, str] = field(default_factory=dict)
    """Of those that were looked into."""

    def __post_init__(self) -> None:
        """Each file's size is known; its bytes are read when another has it too."""
        for path in list_folder(self.folder / "sources"):
            if path.suffix.lower() in SOURCE_SUFFIXES and path.is_file():
                self.by_size[path.stat().st_size].append(path)

    def find(self, size: int, sha256: str) -> Path | None:
        """The file with those bytes."""
        return next((path for path in self.by_size.get(size, ()) if self._hash(path) == sha256), None)

    def has_size(self, size: int) -> bool:
        """Whether any file is so long."""
        return bool(self.by_size.get(size))

    def put(self, path: Path, size: int, sha256: str) -> None:
        """One more stands there."""
        self.by_size[size].append(path)
        self.hashes[path] = sha256

    def _hash(self, path: Path) -> str:
        if path not in self.hashes:
            self.hashes[path] = hash_bytes(path.read_bytes())
        return self.hashes[path]


class _Taking:
    """The files of one intake, from when each is read until it is in the list."""

    def __init__(self, folder: Path, shelf: _Shelf) -> None:
        self.folder = folder
        self.shelf = shelf
        self.done: list[Taken] = []
        self._waiting: list[tuple[Task, Read]] = []
        self._since = time.monotonic()

    def pass_known(self, paths: Iterable[Path], job: Job[Any]) -> Iterator[Path]:
        """The files that are not in the list already; those that are need not be read again."""
        listed = {plain_name(entry.id): entry.id for entry in load_entries(open_list(self.folder)[0], [])}
        for path in paths:
            try:
                seen = see_file(path, path.name)
                at = self.shelf.find(seen.size, seen.sha256) if self.shelf.has_size(seen.size) else None
            except InputError as error:
                self.refuse(path, str(error))
                job.count()
                continue
            known = listed.get(plain_name(at.stem)) if at else None
            if known is None:
                yield path
            else:
                let_go(self.folder, path)
                self.done.append(Taken(path.name, "there", known))
                job.count()

    def add(self, task: Task, outcome: Read | Exception) -> None:
        """A file was read, or could not be."""
        if isinstance(outcome, Read):
            self._waiting.append((task, outcome))
        elif isinstance(outcome, FairhandError):
            self.refuse(task.path, str(outcome))
        elif isinstance(outcome, WorkKilled | MemoryError):
            what = "reading it took too much time or memory and was stopped"
            self.refuse(task.path, f"{task.name}: {what}; print it to a new PDF, or save its text")
        else:
            self.refuse(task.path, f"{task.name}: it broke the reader ({type(outcome).__name__}); save it anew")
        if len(self._waiting) >= _TOGETHER or time.monotonic() - self._since > _SECONDS_TOGETHER:
            self.enter()

    def refuse(self, path: Path, why: str) -> None:
        """The file stays where it was."""
        self.done.append(Taken(path.name, "refused", problems=(" ".join(why.split()),)))

    def enter(self) -> None:
        """Those that wait stand in place and in the list."""
        waiting, self._waiting = self._waiting, []
        self._since = time.monotonic()
        if not waiting:
            return
        entered: list[tuple[Task, Taken]] = []
        with lock_folder(self.folder):
            files, records = open_list(self.folder)
            ids = {plain_name(entry.id): entry.id for entry in load_entries(files, [])}
            ids |= {
                plain_name(str(one.get("id", ""))): str(one.get("id", "")) for one in records if isinstance(one, dict)
            }
            before = len(records)
            for task, read in waiting:
                try:
                    taken, record = self._place(task, read, ids)
                except InputError as error:
                    self.refuse(task.path, str(error))
                    continue
                entered.append((task, taken))
                if record:
                    records.append(record)
            if len(records) > before:
                write_list(files, records, "taken")
        for task, taken in entered:
            let_go(self.folder, task.path)
            self.done.append(taken)

    def _place(self, task: Task, read: Read, ids: dict[str, str]) -> tuple[Taken, dict[str, object] | None]:
        """The file's bytes stand among the sources; with its new record, where it is not in the list."""
        seen = see_file(task.path, task.name)
        if seen.sha256 != read.sha256:
            raise FileUnreadable(f"{task.name}: it was changed while it was read; add it again")
        at = self.shelf.find(seen.size, seen.sha256)
        if at is not None and plain_name(at.stem) in ids:
            return Taken(task.name, "there", ids[plain_name(at.stem)]), None
        new = at.stem if at is not None else self._name(read, ids)
        if at is None:
            name = task.name if Path(task.name).suffix.lower() in SOURCE_SUFFIXES else f"{task.name}{read.ending}"
            target = name_text(new, name)
            written = write_file(self.folder, target, seen.data, None, how="taken")
            self.shelf.put(written.path, seen.size, seen.sha256)
        letters = name_text(new, "letters.txt")
        if read.letters and not (self.folder / letters).exists():
            write_file(self.folder, letters, f"{read.letters}\n".encode(), None, how="taken")
        ids[plain_name(new)] = new
        return Taken(task.name, "new", new, read.problems), {**read.record, "id": new}

    def _name(self, read: Read, ids: Mapping[str, str]) -> str:
        """An id that no entry has, and whose file's name no file has."""
        entry, _ = read_entry(read.record, "")
        if entry is None:
            raise UnknownFormat("nothing can be cited in it; write its record by hand")
        held = {*ids, *(plain_name(path.stem) for paths in self.shelf.by_size.values() for path in paths)}
        taken: set[str] = set()
        while plain_name(name := name_entry(entry, taken)) in held:
            taken.add(name)
        return name
