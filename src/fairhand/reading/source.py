"""A source's file read: its text, page by page."""

from __future__ import annotations

from dataclasses import replace

from fairhand.model.entry import Entry
from fairhand.model.problem import Problem
from fairhand.model.source import SourceText
from fairhand.reading.hyphens import join_hyphens
from fairhand.reading.kinds import kind_of
from fairhand.reading.leaves import Leaves
from fairhand.reading.paging import number_leaves


def read_leaves(data: bytes, file: str) -> Leaves:
    """The leaves of any file that we read, by the reader of its kind.

    Raises:
        FileUnreadable: It is broken, empty, or not what its name says.
        FileEncrypted: It asks for a password.
        FileTooLarge: It is larger, or expands further, than we read.
        UnknownFormat: Nothing here reads that kind of file.
    """
    # Each reader is loaded with its libraries when the first file of its kind comes up.
    match kind_of(data, file):
        case "pdf":
            from fairhand.reading.pdf import read_pdf as read
        case "text":
            from fairhand.reading.plain import read_plain as read
        case "html":
            from fairhand.reading.html import read_html as read
        case "docx":
            from fairhand.reading.word_files import read_docx as read
        case "odt":
            from fairhand.reading.word_files import read_odt as read
        case "epub":
            from fairhand.reading.epub import read_epub as read
        case "picture":
            problem = Problem(file, "a picture: no text of it is at hand", "type out what you quote")
            return Leaves((), leaved=False, problems=(problem,))
    return read(data, file)


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
    return text_of(read_leaves(data, file), file, entry)


def text_of(leaves: Leaves, file: str, entry: Entry | None) -> tuple[SourceText, tuple[Problem, ...]]:
    """The text of a source whose leaves were read, as `read_source` gives it."""
    leaves = replace(leaves, texts=join_hyphens(leaves.texts))
    pages, paged, origin = number_leaves(leaves, entry)
    id_ = entry.id if entry is not None else file.replace("\\", "/").rpartition("/")[2].rpartition(".")[0]
    return SourceText(id_, pages, paged, file, origin), leaves.problems
