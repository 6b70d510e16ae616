"""The drafts of the writer's other papers on the desk, those put away included."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from fairhand.desk.places import find_desk, list_done, list_papers
from fairhand.desk.seen import FileSeen, see_file
from fairhand.errors import InputError

DRAFT = "draft.md"
MOST_PAPERS = 200
"""So many papers are looked at; a desk of more is told of by its first."""


@dataclass(frozen=True, slots=True)
class OtherDraft:
    """One draft that stands elsewhere on the desk."""

    folder: Path
    draft: FileSeen
    put_away: bool


def read_other_drafts(folder: Path) -> tuple[OtherDraft, ...]:
    """The drafts of the other papers, as far as they can be read; none for a paper that was put away itself.

    Args:
        folder: The paper that they are other to.
    """
    return tuple(_read(folder))


def list_put_away(folder: Path) -> tuple[Path, ...]:
    """Where the drafts of the papers that were put away stand, on the desk of a paper."""
    desk = find_desk(folder)
    return tuple(path / DRAFT for path in list_done(desk)) if desk else ()


def _read(folder: Path) -> Iterator[OtherDraft]:
    desk = find_desk(folder)
    if desk is None or folder.resolve() in {path.resolve() for path in list_done(desk)}:
        return
    places = [(path, True) for path in list_done(desk)] + [(path, False) for path in list_papers(desk)]
    for path, put_away in places[:MOST_PAPERS]:
        if path.resolve() == folder.resolve() or not (path / DRAFT).is_file():
            continue
        try:
            draft = see_file(path / DRAFT, f"{path.name}/{DRAFT}")
            if draft.text.strip():
                yield OtherDraft(path, draft, put_away)
        except InputError:
            continue  # it is told of where that paper is opened
