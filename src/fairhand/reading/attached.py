"""The files that are attached to a PDF."""

from __future__ import annotations

from collections.abc import Mapping

from fairhand.errors import FileUnreadable
from fairhand.reading.pdfium import TURN

MOST_FILES = 20


def read_attached(data: bytes, file: str) -> Mapping[str, bytes]:
    """The attached files' bytes by their names; nothing where none are.

    Args:
        data: The PDF's bytes.
        file: What it is called in messages.

    Raises:
        FileUnreadable: It is no PDF that can be read.
    """
    import pypdfium2

    with TURN:
        try:
            document = pypdfium2.PdfDocument(data)
            try:
                count = min(document.count_attachments(), MOST_FILES)
                found = [document.get_attachment(number) for number in range(count)]
                return {one.get_name(): bytes(one.get_data()) for one in found}
            finally:
                document.close()
        except pypdfium2.PdfiumError as error:
            message = f"{file}: it is broken or cut short; get it again"
            raise FileUnreadable(message) from error
