"""Zipped documents (DOCX, ODT, EPUB), opened within bounds.

What is promised is checked before anything is expanded, and what comes out is counted while it expands, so that a file
of a few kilobytes cannot fill the memory. XML is parsed without entities, without a network and to a bounded depth.
"""

from __future__ import annotations

import io
import zipfile
import zlib
from dataclasses import dataclass
from typing import TYPE_CHECKING

from fairhand.errors import FileEncrypted, FileTooLarge, FileUnreadable

if TYPE_CHECKING:
    from lxml.etree import _Element

MOST_EXPANDED_BYTES = 120_000_000
"""All that is ever expanded of one document."""
_MOST_MEMBERS = 20_000
_PIECE = 1 << 20


@dataclass
class Archive:
    """An opened document."""

    file: str
    """Its name, for messages."""
    _zip: zipfile.ZipFile
    _left: int = MOST_EXPANDED_BYTES

    @property
    def names(self) -> tuple[str, ...]:
        """The names of its members."""
        return tuple(self._zip.namelist())

    def read(self, name: str) -> bytes:
        """One member, expanded.

        Raises:
            FileUnreadable: There is none of that name, or it is damaged.
            FileTooLarge: It expands beyond all bounds.
            FileEncrypted: It asks for a password.
        """
        try:
            info = self._zip.getinfo(name)
        except KeyError:
            raise FileUnreadable(f"{self.file}: its part {name} is missing; export it again") from None
        if info.flag_bits & 1:
            raise FileEncrypted(f"{self.file}: it asks for a password; save a copy without one")
        if info.file_size > self._left:
            raise _too_large(self.file)
        out = bytearray()
        try:
            with self._zip.open(info) as member:
                while piece := member.read(min(_PIECE, self._left - len(out) + 1)):
                    out += piece
                    if len(out) > self._left:
                        raise _too_large(self.file)
        except (zipfile.BadZipFile, zlib.error, EOFError, NotImplementedError, OSError, ValueError) as error:
            raise FileUnreadable(f"{self.file}: its part {name} is damaged ({error}); get it again") from error
        self._left -= len(out)
        return bytes(out)

    def read_xml(self, name: str) -> _Element:
        """One member, parsed as XML."""
        return self.parse(self.read(name), name)

    def parse(self, data: bytes, name: str) -> _Element:
        """A member that was expanded already, parsed as XML."""
        return parse_xml(data, f"{self.file}, {name}")


def open_archive(data: bytes, file: str) -> Archive:
    """A zipped document, checked but not yet expanded.

    Raises:
        FileUnreadable: It is no zip, or a damaged one.
        FileTooLarge: It promises more than is ever expanded.
    """
    try:
        opened = zipfile.ZipFile(io.BytesIO(data))
        infos = opened.infolist()
    except (zipfile.BadZipFile, ValueError, OSError, EOFError, NotImplementedError) as error:
        raise FileUnreadable(f"{file}: it is broken, or not what its name says ({error}); get it again") from error
    if len(infos) > _MOST_MEMBERS:
        raise _too_large(file)
    return Archive(file, opened)


def _too_large(file: str) -> FileTooLarge:
    return FileTooLarge(
        f"{file}: it expands to more than {MOST_EXPANDED_BYTES / 1e6:.0f} MB, which no paper needs; "
        "save its text in a file of its own"
    )


def parse_xml(data: bytes, where: str) -> _Element:
    """The root of an XML document; entities of its own are left unexpanded.

    Raises:
        FileUnreadable: It is not well formed, or nested too deep.
    """
    from lxml import etree

    parser = etree.XMLParser(resolve_entities=False, no_network=True, load_dtd=False, huge_tree=False)
    try:
        root = etree.fromstring(data, parser)
    except (etree.XMLSyntaxError, ValueError) as error:
        raise FileUnreadable(f"{where}: it is not well formed ({error}); export it again") from error
    if root is None:
        raise FileUnreadable(f"{where}: it is empty; export it again")
    return root
