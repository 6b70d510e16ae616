"""The pages of a source's PDF as they look."""

from __future__ import annotations

from functools import lru_cache

from fairhand.desk.seen import FileSeen
from fairhand.errors import InputError
from fairhand.model.source import SourceText
from fairhand.reading.page_picture import PagePicture, draw_page, measure_page
from fairhand.session.texts import SourceTexts


def find_pdf(texts: SourceTexts, text: SourceText) -> FileSeen | None:
    """The file that a source's text was read from, where it is a PDF: its pages are then the text's, one for one."""
    files = texts.files.find_source(text.id)
    return next((file for file in files if file.name == text.file and file.name.lower().endswith(".pdf")), None)


@lru_cache(maxsize=32)
def look_at_page(file: FileSeen, number: int) -> PagePicture | None:
    """The look of a page; None where it cannot be shown, for then its text is."""
    try:
        return measure_page(file.data, number, file.name)
    except InputError:
        return None


@lru_cache(maxsize=16)
def picture_page(file: FileSeen, number: int) -> bytes:
    """A page as a PNG.

    Raises:
        FileUnreadable: It cannot be shown.
    """
    return draw_page(file.data, number, file.name)
