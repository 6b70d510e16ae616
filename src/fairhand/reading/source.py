"""A source's file read: its text, page by page."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from fairhand.errors import FileTooLarge
from fairhand.model.entry import Entry
from fairhand.model.problem import Problem
from fairhand.model.source import SourceText
from fairhand.reading.decoding import read_text_file
from fairhand.reading.epub import read_epub
from fairhand.reading.html import read_html
from fairhand.reading.hyphens import join_hyphens
from fairhand.reading.kinds import FileKind, kind_of
from fairhand.reading.leaves import Leaves
from fairhand.reading.paging import number_leaves
from fairhand.reading.pdf import read_pdf
from fairhand.reading.word_files import read_docx, read_odt

_MOST_LEAVES = 20_000


def _read_plain(data: bytes, file: str) -> Leaves:
    """The leaves of a plain text: form feeds part them."""
    text, problems = read_text_file(data, file)
    leaves = text.split("\f")
    if len(leaves) > _MOST_LEAVES:
        raise FileTooLarge(f"{file}: {len(leaves)} form feeds part it into more pages than any book has; take them out")
    while len(leaves) > 1 and not leaves[-1].strip():
        leaves.pop()
    return Leaves(tuple(leaf.strip("\n") for leaf in leaves), leaved=len(leaves) > 1, problems=problems)


def _read_picture(data: bytes, file: str) -> Leaves:  # noqa: ARG001 - one of the readers
    """No leaves, and a word why."""
    return Leaves(
        (), leaved=False, problems=(Problem(file, "a picture: no text of it is at hand", "type out what you quote"),)
    )


READERS: dict[FileKind, Callable[[bytes, str], Leaves]] = {
    "pdf": read_pdf,
    "text": _read_plain,
    "html": read_html,
    "docx": read_docx,
    "odt": read_odt,
    "epub": read_epub,
    "picture": _read_picture,
}
"""The reader of each kind of file."""


def read_source(data: bytes, file: str, entry: Entry | None) -> tuple[SourceText, tuple[Problem, ...]]:
    r"""The text of a source, page by page with the labels by which its pages are cited, and what could not be read.

    Args:
        data: The file's bytes.
        file: Its name, relative to the paper's folder.
        entry: Its bibliographic data, where there are any: they tell how its pages are numbered.

    Raises:
        FileUnreadable: It is broken, empty, or not what its name says.
        FileEncrypted: It asks for a password.
        FileTooLarge: It is larger, or expands further, than we read.
        UnknownFormat: Nothing here reads that kind of file.

    >>> source, problems = read_source(b"The quay was sold.\fNobody bought it.", "sources/quay.txt", None)
    >>> [page.label for page in source.pages], source.labels_from, problems
    (['1', '2'], 'counted', ())
    """
    leaves = READERS[kind_of(data, file)](data, file)
    leaves = replace(leaves, texts=join_hyphens(leaves.texts))
    pages, paged, origin = number_leaves(leaves, entry)
    id_ = entry.id if entry is not None else file.replace("\\", "/").rpartition("/")[2].rpartition(".")[0]
    return SourceText(id_, pages, paged, file, origin), leaves.problems
