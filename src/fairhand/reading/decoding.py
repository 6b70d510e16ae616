"""Bytes of a plain text file as characters."""

from __future__ import annotations

import codecs
import unicodedata

from fairhand.errors import FileTooLarge, FileUnreadable
from fairhand.model.problem import Problem

MOST_TEXT_BYTES = 24_000_000
"""A plain text of more bytes is not read: some twenty long novels."""
_BYTE_ORDER_MARKS = (
    (codecs.BOM_UTF8, "utf-8-sig", "UTF-8"),
    (codecs.BOM_UTF32_LE, "utf-32", "UTF-32"),
    (codecs.BOM_UTF32_BE, "utf-32", "UTF-32"),
    (codecs.BOM_UTF16_LE, "utf-16", "UTF-16"),
    (codecs.BOM_UTF16_BE, "utf-16", "UTF-16"),
)
_SAMPLE = 4096


def decode_text(data: bytes) -> tuple[str, str]:
    r"""The characters that ``data`` stands for, and the name of the encoding that they were read in.

    UTF-8, UTF-16 and UTF-32 are recognised; anything else is read as Windows-1252, the commonest of the old Western
    encodings. Lines end in ``\n``; letters with accents are single characters (Unicode form C).

    >>> decode_text("Quay caf\u00e9".encode("cp1252"))
    ('Quay café', 'Windows-1252')
    """
    text, how = _decode(data)
    text = text.replace("\r\n", "\n").replace("\r", "\n")
    return (text if text.isascii() else unicodedata.normalize("NFC", text)), how


def _decode(data: bytes) -> tuple[str, str]:
    for mark, codec, name in _BYTE_ORDER_MARKS:
        if data.startswith(mark):
            return data.decode(codec, errors="replace"), name
    sample = data[:_SAMPLE]
    if len(sample) > 1 and sample.count(0) * 3 > len(sample):
        # Western text in UTF-16 without a mark has a zero in nearly every second byte.
        low_first = sample[1::2].count(0) >= sample[0::2].count(0)
        return data.decode("utf-16-le" if low_first else "utf-16-be", errors="replace"), "UTF-16"
    try:
        return data.decode("utf-8"), "UTF-8"
    except UnicodeDecodeError:
        text = data.decode("utf-8", errors="replace")
    wrong = text.count("\ufffd")
    right = sum(1 for character in text if character > "\x7f") - wrong
    if right > wrong:
        return text, "UTF-8 with faults"
    return data.decode("cp1252", errors="replace"), "Windows-1252"


def read_text_file(data: bytes, file: str) -> tuple[str, tuple[Problem, ...]]:
    """The text of a plain text file, and a word where its encoding had to be guessed.

    Raises:
        FileTooLarge: It is longer than any text that we read.
        FileUnreadable: It is empty, or it is no text.
    """
    if len(data) > MOST_TEXT_BYTES:
        raise FileTooLarge(
            f"{file}: a text of {len(data) / 1e6:.0f} MB is more than is read at once "
            f"({MOST_TEXT_BYTES / 1e6:.0f} MB); cut it to the part that you use"
        )
    text, how = decode_text(data)
    if "\0" in text:
        raise FileUnreadable(f"{file}: it is no text, whatever its name says; export it again as text or PDF")
    if not text.strip():
        raise FileUnreadable(f"{file}: it is empty; put the text in, or remove the file")
    if how in ("Windows-1252", "UTF-8 with faults"):
        return text, (
            Problem(file, f"it is not in UTF-8 and was read as {how}", "look at its accents and quotation marks"),
        )
    return text, ()
