"""What reads a copy that came back, by the ending of its file."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from fairhand.errors import UnknownFormat
from fairhand.model.remark import Returned
from fairhand.reading.returned_docx import read_returned_docx
from fairhand.reading.returned_odt import read_returned_odt
from fairhand.reading.returned_pdf import read_returned_pdf

RETURNED: Mapping[str, Callable[[bytes, str], Returned]] = {
    ".docx": read_returned_docx,
    ".odt": read_returned_odt,
    ".pdf": read_returned_pdf,
}


def read_returned(data: bytes, file: str) -> Returned:
    """What was written into a copy, at its places.

    Args:
        data: The file's bytes.
        file: Its name.

    Raises:
        UnknownFormat: It is no kind of file that remarks are read from.
        InputError: It cannot be read.
    """
    read = RETURNED.get(f".{file.rpartition('.')[2].lower()}")
    if read is None:
        message = f"{file}: remarks are read from {', '.join(RETURNED)}; save it as one of them"
        raise UnknownFormat(message)
    return read(data, file)
