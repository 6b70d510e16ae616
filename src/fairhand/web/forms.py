"""What a form sent: its words and its files."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import TypeVar

from starlette.datastructures import UploadFile
from starlette.requests import Request

from fairhand.desk.file_names import name_file
from fairhand.errors import FairhandError, FileTooLarge

Otherwise = TypeVar("Otherwise")
MOST_FILES = 20
MOST_FIELDS = 2000
MOST_TEXT = 8 * 2**20
"""Bytes of the longest text that is read from a form: some 1.3 million words."""
MOST_FILE = 48 * 2**20
"""Bytes of the largest file that is taken in."""
MOST_DIGITS = 9
"""Digits of the longest number that is read."""


@dataclass(frozen=True)
class Upload:
    """A file that was sent."""

    name: str
    """Its name, without any folder."""
    data: bytes


@dataclass(frozen=True)
class Form:
    """The words and files of one form, by the names of its fields."""

    fields: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    files: Mapping[str, tuple[Upload, ...]] = field(default_factory=dict)

    def text(self, name: str, default: str = "") -> str:
        r"""What was written in a field, its line ends as ``\n``, without space around it.

        >>> Form({"title": (" Two\r\nlines ",)}).text("title")
        'Two\nlines'
        """
        return self.matter(name, default).strip()

    def matter(self, name: str, default: str = "") -> str:
        r"""What was written in a field, space and all; browsers send ``\r\n``, files have ``\n``."""
        return self.fields.get(name, (default,))[-1].replace("\r\n", "\n").replace("\r", "\n")

    def texts(self, name: str) -> tuple[str, ...]:
        """Everything that was written or ticked under a name."""
        return tuple(one.strip() for one in self.fields.get(name, ()))

    def has(self, name: str) -> bool:
        """Whether a field, a tick or a button of that name was sent."""
        return name in self.fields

    def uploads(self, name: str) -> tuple[Upload, ...]:
        """The files that were chosen under a name; a field left empty gives none."""
        return self.files.get(name, ())


async def read_form(request: Request) -> Form:
    """The form that a request carries, within the limits above.

    Raises:
        FileTooLarge: One of its files is larger than is taken in.
        HTTPException: It has more fields or files, or longer text, than is read.
    """
    fields: dict[str, list[str]] = {}
    files: dict[str, list[Upload]] = {}
    async with request.form(max_files=MOST_FILES, max_fields=MOST_FIELDS, max_part_size=MOST_TEXT) as form:
        for name, value in form.multi_items():
            if not isinstance(value, UploadFile):
                fields.setdefault(name, []).append(value)
            elif value.filename:
                files.setdefault(name, []).append(await _read_upload(value))
    return Form({n: tuple(v) for n, v in fields.items()}, {n: tuple(v) for n, v in files.items()})


async def _read_upload(file: UploadFile) -> Upload:
    name = plain_file_name(file.filename or "")
    if (file.size or 0) > MOST_FILE:
        message = f"{name}: it is larger than {MOST_FILE // 2**20} MB; put it into the paper’s folder by hand"
        raise FileTooLarge(message)
    return Upload(name, await file.read())


def read_day(written: str) -> dt.date | None:
    """The day that was written in a field; None where it was left empty.

    Raises:
        FairhandError: It is none.
    """
    try:
        return dt.date.fromisoformat(written) if written else None
    except ValueError as error:
        message = f"“{written[:40]}” is no day; write it as 2027-01-18"
        raise FairhandError(message) from error


def read_number(said: str, otherwise: Otherwise) -> int | Otherwise:
    """A whole number as a form or an address has it; something else where there is none.

    >>> read_number("12", 0), read_number("-3", None), read_number("9" * 5000, 0), read_number("²", 0)
    (12, None, 0, 0)
    """
    return int(said) if said.isascii() and said.isdigit() and len(said) <= MOST_DIGITS else otherwise


def plain_file_name(name: str) -> str:
    r"""The name of a file alone: no folder, nothing that a system cannot hold or show.

    >>> plain_file_name("../../etc/pass\x00wd"), plain_file_name("C:\\sheets\\Brief 2.pdf"), plain_file_name("..")
    ('passwd', 'Brief 2.pdf', 'file')
    """
    return name_file(name.replace("\\", "/").rpartition("/")[2], "file")
