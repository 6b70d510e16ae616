"""Photographs of pages: with a text of them at hand or without, they are there to be read and noted from."""

from __future__ import annotations

from fairhand.errors import InputError
from fairhand.model.entry import Entry
from fairhand.session.texts import SourceTexts

_SHOWN = {b"\x89PNG": "image/png", b"\xff\xd8\xff": "image/jpeg"}
"""The first bytes of the kinds that every browser shows."""


def find_photograph(texts: SourceTexts, entry: Entry) -> tuple[bytes, str] | None:
    """The bytes and the media type of a source's photograph; None where it has none."""
    for file in texts.files.find_source(entry.id):
        try:
            data = file.data
        except InputError:
            continue
        for begins, media_type in _SHOWN.items():
            if data.startswith(begins):
                return data, media_type
    return None
