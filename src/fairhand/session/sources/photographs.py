"""Photographs of pages: with a text of them at hand or without, they are there to be read and noted from."""

from __future__ import annotations

from fairhand.desk.seen import FileSeen
from fairhand.errors import InputError
from fairhand.model.entry import Entry
from fairhand.session.texts import SourceTexts

_SHOWN = {b"\x89PNG": "image/png", b"\xff\xd8\xff": "image/jpeg"}
"""The first bytes of the kinds that every browser shows."""


def find_photograph(texts: SourceTexts, entry: Entry) -> tuple[bytes, str] | None:
    """The bytes and the media type of a source's photograph; None where it has none."""
    return next(filter(None, map(_read_photograph, texts.files.find_source(entry.id))), None)


def find_photographed_sheet(texts: SourceTexts, name: str) -> tuple[bytes, str] | None:
    """The bytes and the media type of the sheet of that name, where it is a photograph; else None."""
    return next((_read_photograph(sheet) for sheet in texts.files.sheets if sheet.name == name), None)


def _read_photograph(file: FileSeen) -> tuple[bytes, str] | None:
    try:
        data = file.data
    except InputError:
        return None
    return next(((data, media_type) for begins, media_type in _SHOWN.items() if data.startswith(begins)), None)
