"""The texts of sheets and sources, read from their files when first asked for and then kept by content."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import asdict, replace
from pathlib import Path

from fairhand.desk.cache import keep_cached, read_cached
from fairhand.desk.paper_files import PaperFiles
from fairhand.desk.seen import FileSeen, tell_problem
from fairhand.errors import InputError
from fairhand.model.entry import Entry
from fairhand.model.problem import Problem
from fairhand.model.source import Page, SourceText
from fairhand.reading.kinds import kind_of
from fairhand.session.sources.reading_bounded import read_sheet_bounded, read_source_bounded

READ_BY = "3"
"""Raised when sources are read otherwise than before, so that what was kept is read again."""
PREFERRED = (".txt", ".md", ".html", ".htm", ".xhtml", ".epub", ".docx", ".odt", ".pdf")
"""Of several files of one source, the one that is read: the plainest first."""


class SourceTexts(Mapping[str, SourceText]):
    """The texts at hand, by entry id; a source whose file cannot be read is not in it, and ``problems`` says why."""

    def __init__(self, files: PaperFiles) -> None:
        """No text is read yet."""
        self.files = files
        self._read: dict[str, SourceText | None] = {}
        self.entries: Mapping[str, Entry] = {}
        """The entries whose texts they are."""
        self.problems: list[Problem] = []
        """What went wrong so far."""

    def __getitem__(self, key: str) -> SourceText:
        """The text of the source with that id."""
        if key not in self._read:
            self._read[key] = self._load(key)
        text = self._read[key]
        if text is None:
            raise KeyError(key)
        return text

    def __contains__(self, key: object) -> bool:
        """Whether a text of that source is at hand and can be read."""
        return isinstance(key, str) and self.get(key) is not None

    def __iter__(self) -> Iterator[str]:
        """The ids of the sources whose texts are at hand."""
        return (i for i in self.entries if i in self)

    def __len__(self) -> int:
        """How many there are."""
        return sum(1 for _ in self)

    def _load(self, key: str) -> SourceText | None:
        entry = self.entries.get(key)
        files = self.files.find_source(key) if entry else ()
        for file in sorted(files, key=_preference):
            try:
                text, problems = self._read_file(file, entry)
            except InputError as error:
                self.problems.append(tell_problem(error))
                continue
            self.problems += problems
            if text.pages:
                return text
        return None

    def _read_file(self, file: FileSeen, entry: Entry | None) -> tuple[SourceText, tuple[Problem, ...]]:
        """A file's text, kept by the content of the file and by what its pages are numbered by."""
        kept = read_cached(self.files.folder, text_key(file.sha256, file.name, entry), "texts")
        if kept is not None:
            try:
                return _thaw(kept, file.name, entry)
            except (ValueError, KeyError, TypeError):
                pass  # what was kept is damaged: read the file again
        text, problems = read_source_bounded(file.data, file.name, entry, self.files.folder)
        keep_text(self.files.folder, file.sha256, entry, text, problems)
        return text, problems


def text_key(sha256: str, name: str, entry: Entry | None) -> str:
    """What the text of a file depends on: its bytes, its ending, and what of its entry numbers its pages."""
    numbered_by = (entry.type, entry.page, bool(entry.url)) if entry else ()
    return f"{READ_BY} {sha256} {_ending(name)} {numbered_by!r}"


def keep_text(folder: Path, sha256: str, entry: Entry | None, text: SourceText, problems: Sequence[Problem]) -> None:
    """The text is kept for the paper in the folder, whatever its entry and its file will be called."""
    frozen = json.dumps({"text": asdict(text), "problems": [asdict(one) for one in problems]}).encode()
    keep_cached(folder, text_key(sha256, text.file, entry), frozen, "texts")


def read_sheet(sheet: FileSeen, paper: Path | None = None) -> tuple[str, tuple[Problem, ...]]:
    """The text of an assignment sheet; that of a photographed one is kept in the folder of its paper, if it has one.

    Raises:
        InputError: It cannot be read.
    """
    if kind_of(sheet.data, sheet.name) == "picture":
        from fairhand.session.assignment.photographed import read_photograph  # with all that work apart needs

        return read_photograph(sheet.data, sheet.name, paper)
    return read_sheet_bounded(sheet.data, sheet.name, paper)


def _preference(file: FileSeen) -> int:
    ending = _ending(file.name)
    return PREFERRED.index(ending) if ending in PREFERRED else len(PREFERRED)


def _ending(name: str) -> str:
    return "." + name.rpartition(".")[2].lower()


def _thaw(data: bytes, name: str, entry: Entry | None) -> tuple[SourceText, tuple[Problem, ...]]:
    """A text that was kept, as that of a file and an entry, which may have had other names then."""
    found = json.loads(data)
    text = found["text"]
    pages = tuple(Page(**page) for page in text.pop("pages"))
    read = SourceText(pages=pages, **text)
    problems = (Problem(**problem) for problem in found["problems"])
    renamed = (replace(one, where=one.where.replace(read.file, name, 1)) for one in problems)
    return replace(read, id=entry.id if entry else read.id, file=name), tuple(renamed)
