"""The full-text index over a paper's sources, in ``.fairhand/``, by SQLite's FTS5; it may be deleted at any time.

Each source goes in, or out, whole: a process that is killed leaves the index as it was before that source. One that is
damaged is made anew. Where the folder is closed, the index is kept in memory alone.
"""

from __future__ import annotations

import contextlib
import sqlite3
from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from fairhand.desk.disk import is_writable
from fairhand.desk.places import CACHE
from fairhand.errors import DeskError
from fairhand.model.piece import Piece

INDEX = "search.sqlite"
_MADE_BY = 2
"""Raised when the tables change, so that what is there is made anew."""
_SCHEMA = """
CREATE TABLE source(
    number INTEGER PRIMARY KEY, id TEXT UNIQUE, looks TEXT, content TEXT, title TEXT, pieces INTEGER, length INTEGER);
CREATE TABLE piece(
    number INTEGER PRIMARY KEY, source INTEGER, page INTEGER, label TEXT, start INTEGER, text TEXT);
CREATE INDEX piece_source ON piece(source);
CREATE TABLE meaning(piece INTEGER PRIMARY KEY, vector BLOB);
CREATE TABLE word(word TEXT PRIMARY KEY, stem TEXT, times INTEGER) WITHOUT ROWID;
CREATE VIRTUAL TABLE search USING fts5(stems, content='', tokenize='unicode61 remove_diacritics 0');
CREATE VIRTUAL TABLE seen USING fts5vocab(search, 'row');
"""
_OF_SOURCE = """
SELECT s.id, p.page, p.label, p.start, p.text, s.title, p.number
FROM piece p JOIN source s ON s.number = p.source WHERE s.number = ?
"""
_FOUND = """
WITH found AS (SELECT rowid AS number, rank AS weight FROM search WHERE search MATCH ? ORDER BY rank LIMIT ?)
SELECT s.id, p.page, p.label, p.start, p.text, s.title, p.number
FROM found f JOIN piece p ON p.number = f.number JOIN source s ON s.number = p.source ORDER BY f.weight, f.number
"""
_COUNT = """
INSERT INTO word(word, stem, times) VALUES (?, ?, ?) ON CONFLICT DO UPDATE SET times = times + excluded.times
"""
_BUSY = {sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED}
_PATIENCE_SECONDS = 30.0
_MOST_BEGUN = 200
"""Stems that the beginning of a word is read as."""


@dataclass(frozen=True, slots=True)
class Words:
    """What a piece's text is searched by."""

    words: Sequence[str]
    """In order, as they are compared."""
    stems: Sequence[str]
    """The stem of each."""
    length: int
    """How many of them say something, those of the title among them."""


@dataclass(frozen=True, slots=True)
class Known:
    """A source as it is in the index."""

    looks: str
    """Size and time of its files, by which they are known to be as they were."""
    content: str
    """A hash of all that was read."""


class SearchIndex:
    """The index of one paper.

    Args:
        folder: The paper's folder.
        read: The words of a piece; the same piece has the same words.
    """

    folder: Path | None = None
    """The folder that it is kept in; None where it is in memory alone."""

    def __init__(self, folder: Path, read: Callable[[Piece], Words]) -> None:
        """The index is open, empty where there was none that fits.

        Raises:
            DeskError: Another process holds it for long.
        """
        self._read = read
        try:
            self._base = self._open(folder)
        except sqlite3.DatabaseError as error:
            if getattr(error, "sqlite_errorcode", None) in _BUSY:
                message = f"{folder / CACHE / INDEX}: another process holds the index; try again in a moment"
                raise DeskError(message) from error
            for ending in ("", "-wal", "-shm"):
                (folder / CACHE / f"{INDEX}{ending}").unlink(missing_ok=True)
            self._base = self._open(folder)

    def close(self) -> None:
        """The file is let go."""
        self._base.close()

    def known(self) -> Mapping[str, Known]:
        """The sources that it holds, by id."""
        return {i: Known(*told) for i, *told in self._base.execute("SELECT id, looks, content FROM source")}

    def put(self, source: str, known: Known, title: str, pieces: Iterable[Piece]) -> None:
        """The source's pieces are in the index in place of those that were."""
        with self._kept():
            self._drop(source)
            added = self._base.execute(
                "INSERT INTO source(id, looks, content, title) VALUES (?, ?, ?, ?)",
                (source, known.looks, known.content, title),
            ).lastrowid
            words: Counter[tuple[str, str]] = Counter()
            count = length = 0
            for piece in pieces:
                read = self._read(piece)
                number = self._base.execute(
                    "INSERT INTO piece(source, page, label, start, text) VALUES (?, ?, ?, ?, ?)",
                    (added, piece.page, piece.label, piece.start, _storable(piece.text)),
                ).lastrowid
                self._base.execute("INSERT INTO search(rowid, stems) VALUES (?, ?)", (number, " ".join(read.stems)))
                words.update(zip(read.words, read.stems, strict=True))
                count, length = count + 1, length + read.length
            self._base.executemany(_COUNT, [(*word, times) for word, times in words.items()])
            self._base.execute("UPDATE source SET pieces = ?, length = ? WHERE number = ?", (count, length, added))

    def look_alike(self, source: str, looks: str) -> None:
        """The source's files look otherwise, and hold what they held."""
        with self._kept():
            self._base.execute("UPDATE source SET looks = ? WHERE id = ?", (looks, source))

    def drop(self, source: str) -> None:
        """The source is in the index no more."""
        with self._kept():
            self._drop(source)

    def find(self, expression: str, most: int) -> tuple[Piece, ...]:
        """The pieces that an expression of FTS5 matches, the weightiest first."""
        return tuple(Piece(*told) for told in self._base.execute(_FOUND, (expression, most)))

    def count(self, stems: Iterable[str]) -> Mapping[str, int]:
        """In how many pieces each stem stands; those that stand in none are left out."""
        told = ((one, self._base.execute("SELECT doc FROM seen WHERE term = ?", (one,)).fetchone()) for one in stems)
        return {one: row[0] for one, row in told if row}

    def measure(self) -> tuple[int, float]:
        """How many pieces there are, and how long they are on average."""
        pieces, length = self._base.execute("SELECT sum(pieces), sum(length) FROM source").fetchone()
        return pieces or 0, (length or 0) / (pieces or 1) or 1.0

    def stems_beginning(self, beginning: str) -> tuple[str, ...]:
        """The stems of the words that begin so, the commonest first."""
        found = self._base.execute(
            "SELECT stem FROM word WHERE word >= ? AND word < ? GROUP BY stem ORDER BY sum(times) DESC LIMIT ?",
            (beginning, beginning + chr(0x10FFFF), _MOST_BEGUN),
        )
        return tuple(one for (one,) in found)

    def vocabulary(self) -> Mapping[str, int]:
        """Every word that stands anywhere, with how often."""
        return dict(self._base.execute("SELECT word, times FROM word WHERE times > 0"))

    def meanings(self, pieces: Iterable[Piece]) -> Mapping[int, bytes]:
        """The vectors that are kept of some pieces, by their numbers."""
        told = (self._base.execute("SELECT piece, vector FROM meaning WHERE piece = ?", (p.number,)) for p in pieces)
        return {number: vector for rows in told for number, vector in rows}

    def keep_meanings(self, vectors: Sequence[tuple[Piece, bytes]]) -> None:
        """The vectors are kept of those pieces that are still as they were."""
        with self._kept():
            for piece, vector in vectors:
                self._base.execute(
                    "INSERT OR REPLACE INTO meaning SELECT number, ? FROM piece WHERE number = ? AND text = ?",
                    (vector, piece.number, piece.text),
                )

    def _open(self, folder: Path) -> sqlite3.Connection:
        place: str | Path = ":memory:"
        if is_writable(folder):
            with contextlib.suppress(OSError):
                (folder / CACHE).mkdir(exist_ok=True)
                place = folder / CACHE / INDEX
                self.folder = folder
        base = sqlite3.connect(place, timeout=_PATIENCE_SECONDS, isolation_level=None, check_same_thread=False)
        try:
            _write_ahead(base)
            base.execute("PRAGMA synchronous = NORMAL")
            made_by = base.execute("PRAGMA user_version").fetchone()[0]
            if made_by not in {0, _MADE_BY}:
                message = "made by another release"
                raise sqlite3.DatabaseError(message)
            if made_by == 0:
                _make_tables(base)
            base.execute("SELECT count(*) FROM source").fetchone()
        except sqlite3.Error:
            base.close()
            raise
        return base

    def _drop(self, source: str) -> None:
        found = self._base.execute("SELECT number FROM source WHERE id = ?", (source,)).fetchone()
        if not found:
            return
        words: Counter[tuple[str, str]] = Counter()
        for told in self._base.execute(_OF_SOURCE, found).fetchall():
            piece = Piece(*told)
            read = self._read(piece)
            self._base.execute(
                "INSERT INTO search(search, rowid, stems) VALUES ('delete', ?, ?)", (piece.number, " ".join(read.stems))
            )
            self._base.execute("DELETE FROM meaning WHERE piece = ?", (piece.number,))
            words.update(zip(read.words, read.stems, strict=True))
        self._base.executemany(_COUNT, [(*word, -times) for word, times in words.items()])
        self._base.execute("DELETE FROM word WHERE times <= 0")
        self._base.execute("DELETE FROM piece WHERE source = ?", found)
        self._base.execute("DELETE FROM source WHERE number = ?", found)

    @contextlib.contextmanager
    def _kept(self) -> Iterator[None]:
        """What is done within is kept whole or not at all."""
        self._base.execute("BEGIN IMMEDIATE")
        try:
            yield
        except BaseException:
            self._base.execute("ROLLBACK")
            raise
        self._base.execute("COMMIT")


def _write_ahead(base: sqlite3.Connection) -> None:
    """Readers do not wait for a writer; where another process is just seeing to it, it is seen to."""
    try:
        base.execute("PRAGMA journal_mode = WAL")
    except sqlite3.OperationalError as error:
        if error.sqlite_errorcode not in _BUSY:
            raise


def _make_tables(base: sqlite3.Connection) -> None:
    """The tables are there, whichever of two processes was the first to make them."""
    base.execute("BEGIN IMMEDIATE")
    if base.execute("PRAGMA user_version").fetchone()[0] == 0:
        for statement in _SCHEMA.split(";\n"):
            base.execute(statement)
        base.execute(f"PRAGMA user_version = {_MADE_BY}")
    base.execute("COMMIT")


def _storable(text: str) -> str:
    """The text without half letters, which UTF-8 cannot hold; as long as it was."""
    return text.encode("utf-8", "replace").decode()
