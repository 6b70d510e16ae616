"""The texts of sheets and sources, read from their files when first asked for and then kept by content."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterator, Mapping
from dataclasses import asdict

from fairhand.desk.cache import keep_cached, read_cached
from fairhand.desk.paper_files import PaperFiles
from fairhand.desk.seen import FileSeen, tell_problem
from fairhand.errors import InputError
from fairhand.model.entry import Entry
from fairhand.model.problem import Problem
from fairhand.model.source import Page, SourceText
from fairhand.reading.sheet import read_sheet_text
from fairhand.reading.source import read_source

READ_BY = "2"
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
        """A file's text, kept by the content of the file and of what its entry says."""
        said = json.dumps(entry.csl if entry else {}, sort_keys=True, default=str)
        key = hashlib.sha256(f"{READ_BY}\0{file.name}\0{file.sha256}\0{said}".encode()).hexdigest()
        kept = read_cached(self.files.folder, f"source-{key}")
        if kept is not None:
            try:
                return _thaw(kept)
            except (ValueError, KeyError, TypeError):
                pass  # what was kept is damaged: read the file again
        text, problems = read_source(file.data, file.name, entry)
        keep_cached(self.files.folder, f"source-{key}", _freeze(text, problems))
        return text, problems


def read_sheet(sheet: FileSeen) -> tuple[str, tuple[Problem, ...]]:
    """The text of an assignment sheet."""
    return read_sheet_text(sheet.data, sheet.name)


def _preference(file: FileSeen) -> int:
    ending = "." + file.name.rpartition(".")[2].lower()
    return PREFERRED.index(ending) if ending in PREFERRED else len(PREFERRED)


def _freeze(text: SourceText, problems: tuple[Problem, ...]) -> bytes:
    return json.dumps({"text": asdict(text), "problems": [asdict(p) for p in problems]}).encode()


def _thaw(data: bytes) -> tuple[SourceText, tuple[Problem, ...]]:
    found = json.loads(data)
    text = found["text"]
    pages = tuple(Page(**page) for page in text.pop("pages"))
    return SourceText(pages=pages, **text), tuple(Problem(**problem) for problem in found["problems"])
