"""The leaves of a PDF."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from typing import TYPE_CHECKING

from fairhand.errors import FileEncrypted, FileTooLarge, FileUnreadable
from fairhand.model.problem import Problem
from fairhand.reading.leaves import Leaves
from fairhand.reading.pdfium import TURN

if TYPE_CHECKING:
    from pypdfium2 import PdfDocument

MOST_PAGES = 3000
MOST_TOLD = 5
"""Damaged sheets that are told one by one."""
_MOST_CHARACTERS = 30_000_000
_NEEDS_PASSWORD = 4
"""PDFium's error code for a file that asks for a password."""
_NOT_JOINED = re.compile(r"\ufffe(?=[\dA-Z])")
"""A hyphen at a page's end that PDFium has joined to the folio or the foot line after it."""


def read_pdf(data: bytes, file: str) -> Leaves:
    """The text of each page of a PDF, in reading order as PDFium gives it, and the file's own page labels.

    Raises:
        FileEncrypted: It asks for a password.
        FileUnreadable: It is broken or has no page.
        FileTooLarge: It has more pages, or more text, than we read.
    """
    with TURN:
        return _read_in_turn(data, file)


def _read_in_turn(data: bytes, file: str) -> Leaves:
    with open_pdf(data, file) as document:
        return _leaves(document, file)


@contextmanager
def open_pdf(data: bytes, file: str) -> Iterator[PdfDocument]:
    """A PDF while it is open; its turn must be held.

    Raises:
        FileEncrypted: It asks for a password.
        FileUnreadable: It is broken or has no page.
        FileTooLarge: It has more pages than we read.
    """
    import pypdfium2

    try:
        document = pypdfium2.PdfDocument(data)
    except pypdfium2.PdfiumError as error:
        if error.err_code == _NEEDS_PASSWORD:
            raise FileEncrypted(f"{file}: it asks for a password; save a copy without one") from error
        raise FileUnreadable(
            f"{file}: it is broken or cut short, and no page of it can be read; get it again"
        ) from error
    try:
        count = len(document)
        if not count:
            raise FileUnreadable(f"{file}: it has no pages; get it again")
        if count > MOST_PAGES:
            raise FileTooLarge(
                f"{file}: {count} pages are more than are read at once ({MOST_PAGES}); save the part you use"
            )
        yield document
    finally:
        document.close()


def _leaves(document: PdfDocument, file: str) -> Leaves:
    import pypdfium2

    count = len(document)
    texts = []
    damaged: list[int] = []
    total = 0
    for number in range(count):
        try:
            page = document[number]
            text = page.get_textpage().get_text_range()
            page.close()
        except pypdfium2.PdfiumError:
            damaged.append(number + 1)
            text = ""
        text = unicodedata.normalize("NFC", text.replace("\r\n", "\n").replace("\r", "\n").replace("\0", ""))
        text = _NOT_JOINED.sub("-\n", text)
        total += len(text)
        if total > _MOST_CHARACTERS:
            raise FileTooLarge(f"{file}: it holds more text than is read at once; save the part that you use")
        texts.append(text)
    problems = list(_tell_damaged(file, damaged, count))
    bare = sum(not text.strip() for text in texts)
    if bare * 2 > count:
        which = "its pages are" if bare == count else f"{bare} of its {count} pages are"
        problems.append(
            Problem(
                file,
                f"{which} pictures, and no text of them is at hand",
                "get a copy with text, or type out what you quote",
            )
        )
    labels = tuple(document.get_page_label(number) for number in range(count))
    return Leaves(tuple(texts), leaved=True, labels=labels if any(labels) else None, problems=tuple(problems))


def _tell_damaged(file: str, damaged: Sequence[int], count: int) -> Iterator[Problem]:
    """What is said of damaged sheets: of each where they are few, of all of them at once where they are many."""
    if len(damaged) > MOST_TOLD:
        what = f"{len(damaged)} of its {count} sheets are damaged and were left out"
        yield Problem(file, what, "get the file again")
        return
    for number in damaged:
        yield Problem(f"{file}, sheet {number}", "it is damaged and was left out", "get the file again")
