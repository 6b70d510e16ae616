"""An ODT that came back from a reader: the text as it was sent, its comments, and its tracked changes.

**Source**: OpenDocument 1.3, part 3, sections 5.5 (*Change tracking*) and 14.1 (*Annotation*).
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from fairhand.errors import FileEncrypted
from fairhand.model.remark import Remark, RemarkKind, Returned
from fairhand.model.span import Span
from fairhand.reading.archive import open_archive

if TYPE_CHECKING:
    from lxml.etree import _Element

_OFFICE = "{urn:oasis:names:tc:opendocument:xmlns:office:1.0}"
_TEXT = "{urn:oasis:names:tc:opendocument:xmlns:text:1.0}"
_DC = "{http://purl.org/dc/elements/1.1/}"
_KINDS: dict[str, RemarkKind] = {
    f"{_TEXT}insertion": "insertion", f"{_TEXT}deletion": "deletion", f"{_TEXT}format-change": "form",
}  # fmt: skip
_CHARACTERS = {"tab": "\t", "line-break": "\n"}
_SKIPPED = ("tracked-changes", "note-citation", "automatic-styles", "styles", "meta", "settings")


@dataclass(frozen=True, slots=True)
class _Change:
    """A change as the list before the text tells it."""

    kind: RemarkKind
    by: str
    when: str
    gone: str = ""
    """Of a deletion, the words taken out."""


@dataclass
class _Copy:
    """The copy as it is walked through."""

    letters: list[str] = field(default_factory=list)
    length: int = 0
    open: dict[str, tuple[int, list[str]]] = field(default_factory=dict)
    """For each change that is open, where it began, and its words."""
    came: set[str] = field(default_factory=set)
    """The insertions among them: what stands there was not sent."""
    comments: dict[str, tuple[int, _Element]] = field(default_factory=dict)
    """Comments whose end has not come yet."""
    remarks: list[Remark] = field(default_factory=list)

    def add(self, text: str | None) -> None:
        """Characters of the text."""
        if not text:
            return
        for _, words in self.open.values():
            words.append(text)
        if not self.came:
            self.letters.append(text)
            self.length += len(text)


def read_returned_odt(data: bytes, file: str) -> Returned:
    """The text as it was sent, with every comment and tracked change at its place.

    Raises:
        FileEncrypted: It asks for a password.
        FileUnreadable: It is no ODT, or it is broken.
        FileTooLarge: It expands beyond all bounds.
    """
    archive = open_archive(data, file)
    if "META-INF/manifest.xml" in archive.names and b"encryption-data" in archive.read("META-INF/manifest.xml"):
        raise FileEncrypted(f"{file}: it asks for a password; save a copy without one")
    root = archive.read_xml("content.xml")
    changes = {name: one for region in root.iter(f"{_TEXT}changed-region") for name, one in _region(region)}
    copy = _Copy()
    _walk(root, copy, changes)
    for start, element in copy.comments.values():
        copy.remarks.append(_comment(element, Span(start, start)))
    for name, (start, words) in copy.open.items():
        if name in changes:
            copy.remarks.append(_changed(changes[name], name, Span(start, copy.length), "".join(words)))
    ordered = sorted(copy.remarks, key=lambda one: (one.span.start, one.span.end))
    return Returned("".join(copy.letters), tuple(ordered))


def _region(region: _Element) -> list[tuple[str, _Change]]:
    """What a region of the list of changes tells, by its name."""
    name = region.get(f"{_TEXT}id") or region.get("{http://www.w3.org/XML/1998/namespace}id") or ""
    for one in region:
        kind = _KINDS.get(str(one.tag))
        if kind is not None:
            info = one.find(f"{_OFFICE}change-info")
            matter = [each for each in one if each.tag != f"{_OFFICE}change-info"]
            gone = "\n".join(_plain(each) for each in matter) if kind == "deletion" else ""
            return [(name, _Change(kind, _said(info, "creator"), _said(info, "date"), gone))]
    return []


def _said(element: _Element | None, name: str) -> str:
    return (element.findtext(f"{_DC}{name}") or "").strip() if element is not None else ""


def _plain(element: _Element) -> str:
    """The words of a paragraph, without what is noted beside them."""
    if element.tag == f"{_OFFICE}annotation":
        return ""
    within = "".join(_plain(one) + (one.tail or "") for one in element.iterchildren("*"))
    spaces = " " if element.tag == f"{_TEXT}s" else _CHARACTERS.get(str(element.tag).removeprefix(_TEXT), "")
    return (element.text or "") + spaces + within


def _walk(root: _Element, copy: _Copy, changes: dict[str, _Change]) -> None:
    """The text from start to end."""
    from lxml import etree

    walk = etree.iterwalk(root, events=("start", "end", "comment", "pi"))
    for event, element in walk:
        if event in ("comment", "pi"):
            copy.add(element.tail)
            continue
        tag = etree.QName(element).localname
        if event == "end":
            if tag in ("p", "h"):
                copy.add("\n")
            copy.add(element.tail if _is_within_text(element) else None)
            continue
        if tag == "annotation":
            name = element.get(f"{_OFFICE}name") or f"comment {len(copy.remarks) + len(copy.comments)}"
            copy.comments[name] = (copy.length, element)
            walk.skip_subtree()
        elif tag in _SKIPPED:
            walk.skip_subtree()
        elif tag == "annotation-end":
            start, comment = copy.comments.pop(element.get(f"{_OFFICE}name", ""), (0, None))
            if comment is not None:
                copy.remarks.append(_comment(comment, Span(start, copy.length)))
        elif tag in ("change-start", "change-end", "change"):
            _meet(copy, tag, element.get(f"{_TEXT}change-id", ""), changes)
        elif tag == "s":
            count = element.get(f"{_TEXT}c", "1")
            copy.add(" " * min(int(count) if count.isascii() and count.isdigit() else 1, 80))
        elif tag in _CHARACTERS:
            copy.add(_CHARACTERS[tag])
        elif _holds_words(element):
            copy.add(element.text)


def _holds_words(element: _Element) -> bool:
    """Whether what an element holds is text: a paragraph, or something within one."""
    return element.tag in (f"{_TEXT}p", f"{_TEXT}h") or _is_within_text(element)


def _is_within_text(element: _Element) -> bool:
    """Whether an element stands within a paragraph, so that what follows it is text."""
    parent = element.getparent()
    while parent is not None and parent.tag in (f"{_TEXT}span", f"{_TEXT}a", f"{_TEXT}ruby", f"{_TEXT}ruby-base"):
        parent = parent.getparent()
    return parent is not None and parent.tag in (f"{_TEXT}p", f"{_TEXT}h")


def _meet(copy: _Copy, tag: str, name: str, changes: dict[str, _Change]) -> None:
    """The place where a change begins, ends, or took something out."""
    change = changes.get(name)
    if change is None:
        return
    if tag == "change-start":
        copy.open[name] = (copy.length, [])
        if change.kind == "insertion":
            copy.came.add(name)
    elif tag == "change-end" and name in copy.open:
        copy.came.discard(name)
        start, words = copy.open.pop(name)
        copy.remarks.append(_changed(change, name, Span(start, copy.length), "".join(words)))
    elif tag == "change":
        start = copy.length
        copy.add(change.gone)
        copy.remarks.append(_changed(change, name, Span(start, copy.length), change.gone))


def _changed(change: _Change, name: str, span: Span, words: str) -> Remark:
    return Remark(change.kind, span, "" if change.kind == "form" else words, change.by, change.when, name)


def _comment(element: _Element, span: Span) -> Remark:
    said = "\n".join(_plain(one) for one in element if one.tag in (f"{_TEXT}p", f"{_TEXT}list"))
    name = element.get(f"{_OFFICE}name", "")
    answers = next((value for key, value in element.attrib.items() if str(key).endswith("parent-name")), "")
    who, when = _said(element, "creator"), _said(element, "date")
    return Remark("comment", span, said.strip(), who, when, name, str(answers))
