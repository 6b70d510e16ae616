"""The files that are attached to a PDF."""

from __future__ import annotations

from fairhand.errors import FileUnreadable
from fairhand.reading.pdfium import TURN

MOST_FILES = 20


def read_attached(data: bytes, file: str, name: str) -> bytes | None:
    """The bytes of the attached file of a name; None where none is called so.

    Args:
        data: The PDF's bytes.
        file: What it is called in messages.
        name: The attached file's name; no other is unpacked.

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
                wanted = next((one for one in found if one.get_name() == name), None)
                return bytes(wanted.get_data()) if wanted else None
            finally:
                document.close()
        except pypdfium2.PdfiumError as error:
            message = f"{file}: it is broken or cut short; get it again"
            raise FileUnreadable(message) from error
