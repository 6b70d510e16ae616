"""The text of word processors' files: DOCX (ECMA-376) and ODT (OpenDocument 1.3).

Both are walked once, without recursion. Words that were deleted under tracked changes, comments and field codes are
left out; notes follow the text.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from fairhand.errors import FileEncrypted, FileUnreadable
from fairhand.reading.archive import Archive, open_archive
from fairhand.reading.leaves import Leaves

if TYPE_CHECKING:
    from lxml.etree import _Element

_MAIN_PART = "/officeDocument"
_NOTE_PARTS = ("footnotes.xml", "endnotes.xml")
_CHARACTERS = {"tab": "\t", "br": "\n", "cr": "\n", "noBreakHyphen": "-", "line-break": "\n", "soft-page-break": ""}


@dataclass
class _Lines:
    """Lines as they are laid down; a paragraph may hold others (text boxes), and a cell several."""

    done: list[str] = field(default_factory=list)
    open: list[list[str]] = field(default_factory=list)
    rows: list[list[list[str]]] = field(default_factory=list)
    """For each table that is open, the cells of its row, each a list of paragraphs."""

    def add(self, text: str | None) -> None:
        """Characters of the paragraph that is open."""
        if text and self.open:
            self.open[-1].append(text)

    def end_paragraph(self) -> None:
        """End the innermost paragraph."""
        text = "".join(self.open.pop()).strip() if self.open else ""
        if self.rows and self.rows[-1]:
            if text:
                self.rows[-1][-1].append(text)
        else:
            self.done.append(text)

    def end_row(self) -> None:
        """End a table's row: one line, its cells parted by bars."""
        cells = self.rows[-1] if self.rows else []
        text = " | ".join(" ".join(cell) for cell in cells)
        if self.rows:
            self.rows[-1] = []
        if len(self.rows) > 1 and self.rows[-2]:
            self.rows[-2][-1].append(text)
        else:
            self.done.append(text)


def read_docx(data: bytes, file: str) -> Leaves:
    """The text of a DOCX, its notes after it.

    Raises:
        FileUnreadable: It is broken, or there is no text in it.
        FileTooLarge: It expands beyond all bounds.
    """
    archive = open_archive(data, file)
    main = main_part(archive)
    lines = _docx_lines(archive.read_xml(main))
    folder = main.rpartition("/")[0]
    for part in _NOTE_PARTS:
        name = f"{folder}/{part}" if folder else part
        if name in archive.names:
            lines.extend(_docx_lines(archive.read_xml(name)))
    return _leaves(lines, file)


def main_part(archive: Archive) -> str:
    """The name of the part that holds a DOCX's text."""
    names = archive.names
    if "_rels/.rels" in names:
        for relation in archive.read_xml("_rels/.rels").iter("{*}Relationship"):
            target = relation.get("Target", "").lstrip("/")
            if relation.get("Type", "").endswith(_MAIN_PART) and target in names:
                return target
    if "word/document.xml" in names:
        return "word/document.xml"
    raise FileUnreadable(f"{archive.file}: there is no Word document in it; save it as DOCX again")


def _docx_lines(root: _Element) -> list[str]:
    """The lines of one part of a DOCX."""
    from lxml import etree

    lines = _Lines()
    walk = etree.iterwalk(root, events=("start", "end"))
    for event, element in walk:
        tag = etree.QName(element).localname
        if event == "start":
            if tag in ("Fallback", "del", "moveFrom", "instrText", "comment", "rPr"):
                walk.skip_subtree()
            elif tag == "p":
                lines.open.append([])
            elif tag == "numPr":
                lines.add("- ")
            elif tag == "t":
                lines.add(element.text)
            elif tag in _CHARACTERS:
                if not _is_tab_stop(element):
                    lines.add(_CHARACTERS[tag])
            elif tag == "tbl":
                lines.rows.append([])
            elif tag == "tc" and lines.rows:
                lines.rows[-1].append([])
        elif tag == "p":
            lines.end_paragraph()
        elif tag == "tr":
            lines.end_row()
        elif tag == "tbl" and lines.rows:
            lines.rows.pop()
    return lines.done


def _is_tab_stop(element: _Element) -> bool:
    """Whether a ``tab`` tells where a stop is, and is not one."""
    parent = element.getparent()
    return parent is not None and parent.tag.endswith("}tabs")


def read_odt(data: bytes, file: str) -> Leaves:
    """The text of an ODT, its notes after it.

    Raises:
        FileEncrypted: It asks for a password.
        FileUnreadable: It is broken, or there is no text in it.
        FileTooLarge: It expands beyond all bounds.
    """
    archive = open_archive(data, file)
    if "META-INF/manifest.xml" in archive.names and b"encryption-data" in archive.read("META-INF/manifest.xml"):
        raise FileEncrypted(f"{file}: it asks for a password; save a copy without one")
    return _leaves(_odt_lines(archive.read_xml("content.xml")), file)


def _odt_lines(root: _Element) -> list[str]:
    """The lines of an ODT's content; the notes come last."""
    from lxml import etree

    lines = _Lines()
    notes: list[str] = []
    texts: list[list[str]] = []
    walk = etree.iterwalk(root, events=("start", "end", "comment", "pi"))
    for event, element in walk:
        if event in ("comment", "pi"):
            lines.add(element.tail)
            continue
        tag = etree.QName(element).localname
        skipped = tag in ("tracked-changes", "annotation", "note-citation", "automatic-styles", "tracked-deletion")
        if event == "start":
            if skipped:
                walk.skip_subtree()
                continue
            if tag in ("p", "h"):
                lines.open.append(["- "] if _begins_item(element) else [])
            elif tag == "s":
                count = element.get("{urn:oasis:names:tc:opendocument:xmlns:text:1.0}c", "1")
                lines.add(" " * min(int(count) if count.isascii() and count.isdigit() else 1, 80))
            elif tag in _CHARACTERS:
                lines.add(_CHARACTERS[tag])
            elif tag == "table":
                lines.rows.append([])
            elif tag in ("table-cell", "covered-table-cell") and lines.rows:
                lines.rows[-1].append([])
            elif tag == "note-body":
                texts.append(lines.done)
                lines.done = []
            lines.add(element.text)
            continue
        if tag in ("p", "h") and not skipped:
            lines.end_paragraph()
        elif tag == "table-row":
            lines.end_row()
        elif tag == "table" and lines.rows:
            lines.rows.pop()
        elif tag == "note-body" and texts:
            notes.extend(lines.done)
            lines.done = texts.pop()
        lines.add(element.tail)
    return [*lines.done, *notes]


def _begins_item(element: _Element) -> bool:
    """Whether a paragraph is the first of a list's item."""
    parent = element.getparent()
    return parent is not None and parent.tag.endswith("}list-item") and element.getprevious() is None


def _leaves(lines: list[str], file: str) -> Leaves:
    text = "\n".join(lines).strip("\n")
    if not text.strip():
        raise FileUnreadable(f"{file}: there is no text in it; look whether its words are pictures")
    return Leaves((text,), leaved=False)
