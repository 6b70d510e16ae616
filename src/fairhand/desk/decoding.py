"""The text of a file, whatever encoding it was saved in."""

from __future__ import annotations

import codecs
from dataclasses import dataclass

from fairhand.errors import FileUnreadable
from fairhand.model.problem import Problem

_SIGNATURES = (
    (codecs.BOM_UTF8, "utf-8"),
    (codecs.BOM_UTF32_LE, "utf-32-le"),
    (codecs.BOM_UTF32_BE, "utf-32-be"),
    (codecs.BOM_UTF16_LE, "utf-16-le"),
    (codecs.BOM_UTF16_BE, "utf-16-be"),
)
"""Byte order marks, the longer before the shorter that begins it (Unicode Standard 15, section 23.8)."""

_NOT_TEXT = (
    (b"%PDF-", "a PDF"),
    (b"PK\x03\x04", "a zip, as DOCX and ODT are"),
    (b"\xd0\xcf\x11\xe0", "an old word-processor file"),
    (b"{\\rtf", "RTF"),
    (b"\x89PNG", "a PNG picture"),
    (b"\xff\xd8\xff", "a JPEG picture"),
    (b"SQLite format 3\x00", "a database"),
    (b"\x1f\x8b", "a compressed file"),
)
"""First bytes of what is now and then saved under a text file's name."""

_SPOKEN = {
    "utf-8": "UTF-8",
    "utf-16-le": "UTF-16",
    "utf-16-be": "UTF-16",
    "utf-32-le": "UTF-32",
    "utf-32-be": "UTF-32",
    "cp1252": "Windows-1252",
}


@dataclass(frozen=True, slots=True)
class Decoded:
    """A file's text and how it was read."""

    text: str
    """Without a byte order mark; line ends as they stand."""
    encoding: str
    """Python's name of the encoding."""
    whole: bool = True
    """False where some bytes stand for no letter, and U+FFFD stands in their place."""

    @property
    def spoken(self) -> str:
        """The encoding as one says it."""
        return _SPOKEN[self.encoding]


def decode_text(data: bytes, name: str) -> Decoded:
    r"""The text of a file: by its mark, else UTF-8, else UTF-16 where every other byte is nought, else cp1252.

    >>> decode_text("naïve".encode("utf-16"), "draft.md").text
    'naïve'
    >>> decode_text(b"na\xefve \x93so\x94", "draft.md")
    Decoded(text='naïve “so”', encoding='cp1252', whole=True)

    Args:
        data: The file's bytes.
        name: Its name, for the message.

    Raises:
        FileUnreadable: The bytes are a PDF, a picture, or of another kind that is not text.
    """
    for first, kind in _NOT_TEXT:
        if data.startswith(first):
            raise FileUnreadable(
                Problem(name, f"it is {kind} and not text", "save it as plain text, or under its right name")
            )
    for mark, encoding in _SIGNATURES:
        if data.startswith(mark):
            return _decode(data[len(mark) :], encoding)
    wide = _guess_wide(data)
    if wide:
        return _decode(data, wide)
    try:
        return Decoded(data.decode("utf-8"), "utf-8")
    except UnicodeDecodeError:
        return _decode(data, "cp1252")


def _decode(data: bytes, encoding: str) -> Decoded:
    try:
        return Decoded(data.decode(encoding), encoding)
    except UnicodeDecodeError:
        return Decoded(data.decode(encoding, errors="replace"), encoding, whole=False)


def _guess_wide(data: bytes) -> str:
    """UTF-16 without a mark, told by its noughts: a text in a Latin script has one in nearly every pair of bytes."""
    head = data[:2000]
    pairs = len(head) // 2
    if len(data) % 2 or pairs < 2:
        return ""
    for nought, letter, encoding in ((1, 0, "utf-16-le"), (0, 1, "utf-16-be")):
        if head[nought::2].count(0) > 0.7 * pairs and head[letter::2].count(0) < 0.1 * pairs:
            return encoding
    return ""
