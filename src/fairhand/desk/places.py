"""Where desks and papers stand, and the names of what is in them."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from fairhand.errors import NoPaperHere

OWN_FILES = (
    "paper.toml",
    "jottings.md",
    "focus.toml",
    "points.json",
    "sources.json",
    "notes.jsonl",
    "rough.md",
    "draft.md",
    "outline.jsonl",
    "support.toml",
    "groups.toml",
    "searches.jsonl",
    "leads.jsonl",
    "time.jsonl",
    "offcuts.jsonl",
    "marks.jsonl",
    "readers.toml",
    "hand-in.toml",
)
"""The writer's own files in a paper's folder: those whose every state is kept."""

SHEET_SUFFIXES = frozenset({".txt", ".md", ".html", ".htm", ".pdf", ".docx", ".odt", ".png", ".jpg", ".jpeg"})
"""Kinds of file that an assignment sheet may be."""

DRAFT_SUFFIXES = frozenset({".md", ".markdown", ".txt", ".docx", ".odt", ".rtf", ".doc"})
"""Kinds of file that a draft is now and then kept in; it is read from ``draft.md`` alone."""

RECORD = "record.sqlite"
CACHE = ".fairhand"
PRINTED = "fair"
DONE = "done"
"""Where on a desk papers are put away."""

_TELLS_A_PAPER = frozenset({"draft", "brief"})
"""What, whatever its ending, makes a folder a paper, as any of the writer's own files does."""
INBOX = "inbox"
"""Where a phone or a browser saves what is to be taken in."""
_WITHIN_A_PAPER = frozenset({"brief", "sources", INBOX, PRINTED, CACHE})


def find_desk(path: Path) -> Path | None:
    """The desk that a place is on: the nearest folder at or above it that holds ``desk.toml``; or None.

    A link is looked for where it stands first, and then where it leads.
    """
    for start in (path.absolute(), path.resolve()):
        for folder in (start, *start.parents):
            if (folder / "desk.toml").is_file():
                return folder
    return None


def desk_of(place: Path) -> Path:
    """The desk that a place is on; for a paper that stands alone, the folder that holds it."""
    return find_desk(place) or (place.absolute().parent if is_paper(place) else place)


def find_paper(path: Path) -> Path:
    """The folder of the paper that is meant: the path itself, the folder of a file in it, or a paper of this desk.

    Args:
        path: A paper's folder, a file or folder within it, or the bare name of a paper on the desk that the current
            folder is on.

    Raises:
        NoPaperHere: Nothing of a paper stands there.
    """
    folder = path.absolute()
    if not folder.exists() and path.parts == (path.name,):
        desk = find_desk(Path())
        folder = desk / path if desk else folder
    if folder.is_file():
        folder = folder.parent
    while folder.name in _WITHIN_A_PAPER and not is_paper(folder):
        folder = folder.parent
    if is_paper(folder):
        return folder
    what = "no draft, brief, or sources stand there" if folder.is_dir() else "there is no such folder"
    message = f"{path}: {what}; name a paper's folder, or make one with `fairhand new`"
    raise NoPaperHere(message)


def is_paper(folder: Path) -> bool:
    """Whether a folder holds anything of a paper."""
    return any(
        path.name in OWN_FILES
        or (path.stem.lower() in _TELLS_A_PAPER and (path.suffix.lower() in DRAFT_SUFFIXES | SHEET_SUFFIXES))
        or (path.name == "brief" and path.is_dir())
        for path in list_folder(folder)
    )


def list_papers(desk: Path) -> tuple[Path, ...]:
    """The work in hand: the folders on a desk that hold a paper, by name."""
    apart = {"courses", DONE}
    return tuple(path for path in list_folder(desk) if path.name not in apart and path.is_dir() and is_paper(path))


def list_done(desk: Path) -> tuple[Path, ...]:
    """The papers that were put away when they had come back, by name."""
    return tuple(path for path in list_folder(desk / DONE) if path.is_dir() and is_paper(path))


def list_folder(folder: Path) -> list[Path]:
    """What stands in a folder, by name, without hidden files; nothing where the folder is missing or closed."""
    try:
        return sorted(path for path in folder.iterdir() if not path.name.startswith((".", "~$")))
    except OSError:
        return []


def walk_folder(folder: Path, depth: int = 4, *, _walked: frozenset[Path] = frozenset()) -> Iterator[Path]:
    """Every ordinary file under a folder, by name, links followed; hidden ones and what was printed are left out.

    Args:
        folder: Where to begin.
        depth: How many folders deep; a link that leads back into its own folder is not followed.
    """
    place = folder.resolve()
    for path in list_folder(folder) if place not in _walked else ():
        if path.is_file():
            yield path
        elif depth and path.name != PRINTED and path.is_dir():
            yield from walk_folder(path, depth - 1, _walked=_walked | {place})
