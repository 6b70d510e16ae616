"""A paper's folder as it stands: what is there is read, what is missing is missing."""

from __future__ import annotations

import datetime as dt
import unicodedata
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from pathlib import Path
from typing import TypeVar

from fairhand.desk.places import DRAFT_SUFFIXES, OWN_FILES, SHEET_SUFFIXES, find_desk, list_folder, walk_folder
from fairhand.desk.seen import TEXT_SUFFIXES, FileSeen, see_file, tell_problem
from fairhand.desk.settings import read_course_settings, read_desk_settings, read_paper_settings
from fairhand.desk.sheets import order_sheets
from fairhand.errors import InputError, NoPaperHere
from fairhand.model.problem import Problem
from fairhand.model.settings import CourseSettings, DeskSettings, PaperSettings

_T = TypeVar("_T")
PICTURE_SUFFIXES = frozenset({".png", ".jpg", ".jpeg", ".gif", ".svg", ".webp"})
"""Endings of pictures that a draft may show."""
SOURCE_SUFFIXES = SHEET_SUFFIXES | {".epub", ".xhtml"}
"""Endings of files that a source may be read from."""


@dataclass(frozen=True)
class PaperFiles:
    """Everything that a paper's folder holds, and what its desk and course say of it."""

    folder: Path
    desk_folder: Path | None = None
    """The folder of its desk, or None where it stands alone."""
    desk: DeskSettings = field(default_factory=DeskSettings)
    course: CourseSettings | None = None
    settings: PaperSettings = field(default_factory=PaperSettings)
    files: Mapping[str, FileSeen] = field(default_factory=dict)
    """By name: the path in the folder with ``/`` (``draft.md``, ``sources/lind-2019.pdf``); what comes from the course
    begins with ``courses/<course>/``; ``lapses.toml`` and ``words.txt`` are the desk's. What is too large, or no
    text, is left out."""
    sheets: tuple[FileSeen, ...] = ()
    """The assignment sheets, oldest first."""
    sources: Mapping[str, tuple[FileSeen, ...]] = field(default_factory=dict)
    """The files of each source by the stem of their name; the paper's own before the course's."""
    problems: tuple[Problem, ...] = ()

    def find_source(self, entry_id: str) -> tuple[FileSeen, ...]:
        """The files of the source with that id: by exact name, else leaving aside case, accents' form and marks.

        >>> PaperFiles(Path()).find_source("lind-2019")
        ()
        """
        exact = self.sources.get(entry_id)
        return exact or self._by_plain_name.get(plain_name(entry_id), ())

    @cached_property
    def _by_plain_name(self) -> dict[str, tuple[FileSeen, ...]]:
        return {plain_name(stem): files for stem, files in reversed(list(self.sources.items()))}


def plain_name(name: str) -> str:
    """A name without case and without what a file's name may not hold.

    >>> plain_name("DOI:10.5555/juc.2019") == plain_name("doi 10.5555_JUC.2019")
    True
    """
    folded = unicodedata.normalize("NFKC", name).casefold()
    return "".join(letter for letter in folded if letter.isalnum())


def read_paper(folder: Path) -> PaperFiles:
    """The paper's files as they stand on disk, each fault a problem and the rest read; nothing is ever written.

    Args:
        folder: The paper's folder, or a link to it.

    Raises:
        NoPaperHere: There is no such folder.
    """
    folder = folder.absolute()
    if not folder.is_dir():
        message = f"{folder}: there is no such folder; name a paper's folder, or make one with `fairhand new`"
        raise NoPaperHere(message)
    return _Reading(folder).read()


class _Reading:
    """One reading of a folder, gathering problems on the way."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.files: dict[str, FileSeen] = {}
        self.problems: list[Problem] = []

    def read(self) -> PaperFiles:
        desk_folder = find_desk(self.folder)
        around = desk_folder or self.folder.parent
        desk = self.read_settings(around / "desk.toml", "desk.toml", read_desk_settings) or DeskSettings()
        for name in ("lapses.toml", "words.txt"):
            self.see(around / name, name)
        for name in OWN_FILES:
            self.see(self.folder / name, name)
        settings = self.read_settings(self.folder / "paper.toml", "paper.toml", read_paper_settings) or PaperSettings()
        course = self.read_course(around, settings.course) if settings.course else None
        at_course = around / "courses" / course.folder if course else None
        named = f"courses/{course.folder}/" if course else ""
        self.look_for_misnamed_draft()
        sheets = self.read_sheets(at_course, named, settings.given)
        sources = self.list_sources(at_course, named)
        self.list_figures_and_styles()
        return PaperFiles(
            folder=self.folder,
            desk_folder=desk_folder,
            desk=desk,
            course=course,
            settings=settings,
            files=self.files,
            sheets=sheets,
            sources=sources,
            problems=tuple(dict.fromkeys(self.problems)),
        )

    def see(self, path: Path, name: str, *, read: bool = True) -> FileSeen | None:
        """The file, where one stands there and, if it is text that is read now, is text."""
        name = name.encode(errors="replace").decode()  # a name in another encoding can still be said
        if not path.exists() and not path.is_symlink():
            return None
        try:
            seen = see_file(path, name)
            if read and path.suffix.lower() in TEXT_SUFFIXES:
                self.look_at_encoding(seen)
        except InputError as error:
            self.problems.append(tell_problem(error))
            return None
        self.files[name] = seen
        return seen

    def look_at_encoding(self, seen: FileSeen) -> None:
        decoded = seen.decoded
        if decoded.encoding == "utf-8":
            return
        what = f"it is in {decoded.spoken}, and was read so" + (
            "" if decoded.whole else " except bytes that are no letter"
        )
        mend = "save it as UTF-8 to have it written to; until then it is never rewritten in place"
        self.problems.append(Problem(seen.name, what, mend))

    def read_settings(self, path: Path, name: str, read: Callable[[str], tuple[_T, list[Problem]]]) -> _T | None:
        seen = self.files.get(name) or self.see(path, name)
        if seen is None:
            return None
        settings, problems = read(seen.text)
        self.problems += problems
        return settings

    def read_course(self, around: Path, course: str) -> CourseSettings | None:
        plain = Path(course).name == course and course not in {"", ".", ".."}
        if not plain or not (around / "courses" / course).is_dir():
            self.problems.append(
                Problem("paper.toml, course", f"there is no folder courses/{course}", "name the course's folder")
            )
            return None
        name = f"courses/{course}/course.toml"
        path = around / "courses" / course / "course.toml"
        return self.read_settings(path, name, lambda text: read_course_settings(text, course)) or CourseSettings(course)

    def look_for_misnamed_draft(self) -> None:
        if (self.folder / "draft.md").exists():
            return
        for path in list_folder(self.folder):
            if path.stem.lower() == "draft" and path.suffix.lower() in DRAFT_SUFFIXES:
                mend = f"bring it in with `fairhand take {path.name}`"
                if path.suffix.lower() in TEXT_SUFFIXES | {".markdown"}:
                    mend = "rename it to draft.md"
                self.problems.append(Problem(path.name, "the draft is looked for under the name draft.md", mend))

    def read_sheets(self, at_course: Path | None, named: str, given: dt.date | None) -> tuple[FileSeen, ...]:
        own = [(path, path.name) for path in list_folder(self.folder) if path.stem.lower() == "brief" and path.suffix]
        own += [(path, f"brief/{path.name}") for path in list_folder(self.folder / "brief")]
        held: list[tuple[Path, str]] = []
        if at_course:
            held += [(path, f"{named}{path.name}") for path in list_folder(at_course) if _is_sheet(path)]
            held += [(path, f"{named}brief/{path.name}") for path in list_folder(at_course / "brief")]
        return order_sheets(self.see_sheets(held), self.see_sheets(own), given)

    def see_sheets(self, places: Iterable[tuple[Path, str]]) -> list[FileSeen]:
        sheets = []
        for path, name in places:
            if path.is_file() and not _is_sheet(path):
                self.problems.append(
                    Problem(name, "no sheet is read from such a file", "save it as PDF, DOCX or plain text")
                )
            elif not path.is_dir():
                sheets.append(self.see(path, name))
        return [sheet for sheet in sheets if sheet]

    def list_sources(self, at_course: Path | None, named: str) -> dict[str, tuple[FileSeen, ...]]:
        sources: dict[str, tuple[FileSeen, ...]] = {}
        places = [(self.folder / "sources", "sources/")]
        if at_course:
            self.see(at_course / "sources.json", f"{named}sources.json")
            places.append((at_course / "sources", f"{named}sources/"))
        for folder, before in places:
            for path in list_folder(folder):
                if path.suffix.lower() in SOURCE_SUFFIXES and not path.is_dir():
                    seen = self.see(path, f"{before}{path.name}", read=False)
                    if seen:
                        sources[path.stem] = (*sources.get(path.stem, ()), seen)
        return sources

    def list_figures_and_styles(self) -> None:
        for path in walk_folder(self.folder):
            name = path.relative_to(self.folder).as_posix()
            if path.suffix.lower() in PICTURE_SUFFIXES | {".csl"} and name not in self.files:
                self.see(path, name, read=False)


def _is_sheet(path: Path) -> bool:
    return path.suffix.lower() in SHEET_SUFFIXES and path.is_file()
