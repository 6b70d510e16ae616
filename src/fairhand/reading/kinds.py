"""What kind of file some bytes are: by what they hold first, by the name's ending second."""

from __future__ import annotations

from typing import Literal

from fairhand.errors import FileEncrypted, FileUnreadable, UnknownFormat

FileKind = Literal["pdf", "text", "html", "docx", "odt", "epub", "picture"]

_BY_ENDING: dict[str, FileKind] = {
    "pdf": "pdf", "txt": "text", "text": "text", "md": "text", "markdown": "text", "html": "html", "htm": "html",
    "xhtml": "html", "docx": "docx", "docm": "docx", "odt": "odt", "epub": "epub", "png": "picture", "jpg": "picture",
    "jpeg": "picture", "gif": "picture", "webp": "picture", "tif": "picture", "tiff": "picture", "bmp": "picture",
    "heic": "picture",
}  # fmt: skip
_PICTURES = (b"\x89PNG", b"\xff\xd8\xff", b"GIF8", b"II*\0", b"MM\0*", b"BM")
_OLD_OFFICE = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"
_LOCKED_OFFICE = "EncryptedPackage".encode("utf-16-le")
_FRONT = 1024


def ending_of(file: str) -> str:
    """The ending of a file's name, in small letters, without its point.

    >>> ending_of("sources/Lind 2019.PDF")
    'pdf'
    """
    name = file.replace("\\", "/").rpartition("/")[2]
    return name.rpartition(".")[2].lower() if "." in name else ""


def kind_of(data: bytes, file: str) -> FileKind:
    """The kind of file that ``data`` is.

    Raises:
        FileUnreadable: It is empty, or broken so that it is not what its name says.
        FileEncrypted: It is a word processor's file under a password.
        UnknownFormat: Nothing here reads that kind.
    """
    if not data.strip():
        raise FileUnreadable(f"{file}: it is empty; get it again, or remove it")
    ending = ending_of(file)
    named = _BY_ENDING.get(ending)
    front = data[:_FRONT]
    if b"%PDF-" in front:
        return "pdf"
    if front.startswith(_OLD_OFFICE):
        if _LOCKED_OFFICE in data:
            raise FileEncrypted(f"{file}: it asks for a password; save a copy without one")
        raise UnknownFormat(f"{file}: an old word processor's format is not read; save it as DOCX or PDF")
    if front.startswith(b"PK"):
        return _zipped_kind(data, named, file)
    if front.startswith(_PICTURES[:5]) or (named == "picture"):
        return "picture"
    if front.lstrip(b"\xef\xbb\xbf \t\r\n")[:14].lower().startswith((b"<!doctype html", b"<html")):
        return "html"
    if front.startswith(b"{\\rtf"):
        raise UnknownFormat(f"{file}: RTF is not read; save it as DOCX or PDF")
    if named == "pdf":
        raise FileUnreadable(f"{file}: it is no PDF, whatever its name says, or its beginning is lost; get it again")
    if named in ("docx", "odt", "epub"):
        raise FileUnreadable(f"{file}: it is no {ending.upper()} file, whatever its name says; save it again")
    if named is None and (ending or b"\0" in front):
        raise UnknownFormat(f"{file}: that kind of file is not read; save it as PDF, DOCX, HTML or plain text")
    return named or "text"


def _zipped_kind(data: bytes, named: FileKind | None, file: str) -> FileKind:
    """The kind of a zipped document, told by its members' names, which stand uncompressed in it."""
    if b"mimetypeapplication/epub+zip" in data[:_FRONT]:
        return "epub"
    if b"mimetypeapplication/vnd.oasis.opendocument.text" in data[:_FRONT]:
        return "odt"
    if named in ("docx", "odt", "epub"):
        return named
    if b"word/" in data:
        return "docx"
    raise UnknownFormat(f"{file}: a zipped folder is not read; take the file out of it")
