"""Sources added, whatever they come as: files, lists, folders of them, addresses, numbers of registries."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path

from fairhand.citing.entry_files import ENDINGS, detect, read_entries
from fairhand.citing.entry_list import Joined
from fairhand.citing.identifiers import Identifier, find_identifier
from fairhand.citing.same_work import Double, find_doubles
from fairhand.desk.inbox import let_go
from fairhand.desk.paper_files import SOURCE_SUFFIXES, read_paper
from fairhand.desk.places import walk_folder
from fairhand.desk.seen import FileSeen, see_file
from fairhand.errors import FairhandError, UnknownFormat
from fairhand.model.description import Said
from fairhand.session.job import Job
from fairhand.session.loading import load_entries
from fairhand.session.sources.entries import join_list
from fairhand.session.sources.intake import Taken, take_files
from fairhand.session.sources.looking_up import fetch_page, look_up

_MAY_BE_LISTS = frozenset((".txt", ".enw"))
_SHEET = "the assignment sheet of this paper, and no source of it"
_FRONT = 400
"""Bytes of a text by which it is told from a list."""


@dataclass(frozen=True)
class Asked:
    """What is to be added, sorted by what it is."""

    files: tuple[Path, ...] = ()
    lists: tuple[Path, ...] = ()
    addresses: tuple[str, ...] = ()
    numbers: tuple[Identifier, ...] = ()

    @property
    def needs_outside(self) -> bool:
        """Whether anything is to be asked elsewhere."""
        return bool(self.addresses or self.numbers)

    def __len__(self) -> int:
        """How many things there are."""
        return len(self.files) + len(self.lists) + len(self.addresses) + len(self.numbers)


@dataclass(frozen=True)
class Added:
    """What became of what was to be added."""

    taken: tuple[Taken, ...] = ()
    """Of each file, page and number."""
    joined: tuple[tuple[str, Joined], ...] = ()
    """Of each list, by its name."""
    doubles: tuple[Double, ...] = ()
    """Sources that are likely to be of one work, offered for joining."""
    left: int = 0
    """What was not come to, because the work was stopped."""

    @property
    def new(self) -> tuple[str, ...]:
        """The ids of the sources that are in the list now and were not before."""
        files = (one.id for one in self.taken if one.outcome == "new")
        return (*files, *(name for _, joined in self.joined for name in joined.new))


def sort_asked(whats: Sequence[str]) -> Asked:
    """What is to be added, each told by what it is: a file or folder that is there before anything else.

    Raises:
        UnknownFormat: It is no file here, no address, and no number of a registry.

    >>> sort_asked(["10.5555/tide.7", "https://shore.example/ebb"]).addresses
    ('https://shore.example/ebb',)
    """
    files: list[Path] = []
    lists: list[Path] = []
    addresses: list[str] = []
    numbers: list[Identifier] = []
    for what in whats:
        path = Path(what)
        identifier = find_identifier(what)
        if path.exists():
            for one in _files_at(path):
                (lists if _is_list(one) else files).append(one)
        elif identifier is not None:
            numbers.append(identifier)
        elif what.startswith(("https://", "http://")):
            addresses.append(what)
        else:
            message = (
                f"{what}: there is no such file, and it is no address, DOI, ISBN or PMID; look at how it is written"
            )
            raise UnknownFormat(message)
    return Asked(tuple(files), tuple(lists), tuple(addresses), tuple(numbers))


def _files_at(path: Path) -> Iterator[Path]:
    """The file itself; of a folder, the files in it that a source is read from."""
    if not path.is_dir():
        yield path
        return
    for one in walk_folder(path):
        if one.suffix.lower() in SOURCE_SUFFIXES | ENDINGS:
            yield one


def _is_list(path: Path) -> bool:
    if path.suffix.lower() in _MAY_BE_LISTS:
        with path.open("rb") as file:
            front = file.read(_FRONT).decode("utf-8", "replace").removeprefix("\ufeff").lstrip()
        return front[:1] not in {"[", "{"} and detect(front.split("\n", 1)[0]) != ""
    return path.suffix.lower() in ENDINGS


@dataclass
class _Adding:
    """What became of each thing so far."""

    folder: Path
    taken: list[Taken] = field(default_factory=list)
    joined: list[tuple[str, Joined]] = field(default_factory=list)


def add_sources(folder: Path, asked: Asked, job: Job[Added]) -> Added:
    """What was asked for has joined the paper's sources; each thing that could not is told, and the rest goes on.

    Args:
        folder: The paper's folder.
        asked: What to add.
        job: Counts, and says when to stop.

    Raises:
        FileUnreadable: The paper's list is no list of records, and must be mended first.
        FolderNotWritable: The folder is closed or full.
    """
    adding = _Adding(folder)
    job.total += len(asked.lists) + len(asked.numbers) + len(asked.addresses)
    for path in asked.lists:
        if not job.cancelled:
            _add_list(adding, path)
            job.count()
    for number in asked.numbers:
        if not job.cancelled:
            _add_number(adding, number)
            job.count()
    fetched: dict[Path, tuple[Said, ...]] = {}
    for address in asked.addresses:
        if not job.cancelled:
            fetched |= _fetch(adding, address)
            job.count()
    own = _sheets_among(folder, asked.files)
    adding.taken += [Taken(one.name, "refused", problems=(f"{one.name}: it is {_SHEET}",)) for one in own]
    files = [one for one in asked.files if one not in own]
    adding.taken += take_files(folder, (*files, *fetched), job, fetched)
    added = Added(tuple(adding.taken), tuple(adding.joined), left=job.total - job.done)
    entries = load_entries(read_paper(folder), []) if added.new else ()
    return replace(added, doubles=find_doubles(entries, added.new))


def _sheets_among(folder: Path, paths: Sequence[Path]) -> tuple[Path, ...]:
    """Those of some files that are, byte for byte, sheets of the paper: a folder that is added holds them too."""
    sheets = read_paper(folder).sheets
    return tuple(path for path in paths if any(_is_same(path, sheet) for sheet in sheets))


def _is_same(path: Path, sheet: FileSeen) -> bool:
    """Whether a file holds what a sheet holds; one that cannot be read is told where it is taken."""
    try:
        return path.stat().st_size == sheet.size and path.read_bytes() == sheet.data
    except (OSError, FairhandError):
        return False


def _add_list(adding: _Adding, path: Path) -> None:
    try:
        entries, problems = read_entries(see_file(path, path.name).data, path.name)
        joined = join_list(adding.folder, entries, "taken")
    except FairhandError as error:
        adding.taken.append(_refused(path.name, error))
    else:
        adding.joined.append((path.name, Joined(joined.new, joined.there, problems)))
        if entries:
            let_go(adding.folder, path)


def _add_number(adding: _Adding, number: Identifier) -> None:
    try:
        joined = join_list(adding.folder, [look_up(read_paper(adding.folder), number)], "taken")
    except FairhandError as error:
        adding.taken.append(_refused(str(number), error))
    else:
        name = (*joined.new, *joined.there)[0]
        adding.taken.append(Taken(str(number), "new" if joined.new else "there", name))


def _fetch(adding: _Adding, address: str) -> dict[Path, tuple[Said, ...]]:
    try:
        path, said = fetch_page(read_paper(adding.folder), address)
    except FairhandError as error:
        adding.taken.append(_refused(address, error))
        return {}
    return {path: said}


def _refused(name: str, error: FairhandError) -> Taken:
    return Taken(name, "refused", problems=(" ".join(str(error).split()),))
