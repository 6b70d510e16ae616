"""The text of an EPUB, chapter by chapter, or page by page where it tells the pages of the printed book."""

from __future__ import annotations

import posixpath
from urllib.parse import unquote

from fairhand.errors import FileEncrypted, FileUnreadable
from fairhand.reading.archive import Archive, open_archive
from fairhand.reading.html import lay_text, parse_html
from fairhand.reading.leaves import Leaves

_CONTAINER = "META-INF/container.xml"
_ENCRYPTION = "META-INF/encryption.xml"


def read_epub(data: bytes, file: str) -> Leaves:
    """The text of an EPUB, in the order of its spine.

    Raises:
        FileUnreadable: It is broken, or there is no text in it.
        FileEncrypted: Its text is locked.
        FileTooLarge: It expands beyond all bounds.
    """
    archive = open_archive(data, file)
    package_name = find_package(archive)
    package = archive.read_xml(package_name)
    folder = posixpath.dirname(package_name)
    items = {
        item.get("id", ""): posixpath.normpath(posixpath.join(folder, unquote(item.get("href", ""))))
        for item in package.iter("{*}item")
    }
    names = [items[ref] for found in package.iter("{*}itemref") if (ref := found.get("idref", "")) in items]
    locked = archive.read(_ENCRYPTION).decode("utf-8", "replace") if _ENCRYPTION in archive.names else ""
    parts: list[tuple[str | None, str]] = []
    for name in names:
        if name not in archive.names:
            continue
        if locked and name in locked:
            raise FileEncrypted(f"{file}: its text is locked to one reader's account; use a copy that is not")
        data_of_part = archive.read(name)
        if not data_of_part.strip():
            continue
        laid = lay_text(parse_html(data_of_part, f"{file}, {name}"), part_at="pages")
        # What stands before a chapter's first page break still belongs to the page before it.
        parts.extend((label or (parts[-1][0] if parts else None), text) for label, text in laid)
    if not parts:
        raise FileUnreadable(f"{file}: there is no text in it; get it again")
    if not any(label for label, _ in parts):
        return Leaves(tuple(text for _, text in parts), leaved=False)
    return Leaves(
        tuple(text for _, text in parts), leaved=True, labels=tuple(label or "" for label, _ in parts), printed=True
    )


def find_package(archive: Archive) -> str:
    """The name of an EPUB's package within it.

    Raises:
        FileUnreadable: It has no container that names one.
    """
    return next((found.get("full-path", "") for found in archive.read_xml(_CONTAINER).iter("{*}rootfile")), "")
