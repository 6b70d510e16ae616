"""Tracked changes of an ODT refused, in the file itself: it reads as it did before them.

What was put in stands between its two marks; what was taken out stands in the list before the text, and in the text a
mark where it was.

**Source**: OpenDocument 1.3, part 3, section 5.5 (*Change tracking*).
"""

from __future__ import annotations

import io
import zipfile
from copy import deepcopy
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from fairhand.reading.archive import open_archive

if TYPE_CHECKING:
    from lxml.etree import _Element

_OFFICE = "{urn:oasis:names:tc:opendocument:xmlns:office:1.0}"
_TEXT = "{urn:oasis:names:tc:opendocument:xmlns:text:1.0}"
_PARAGRAPHS = (f"{_TEXT}p", f"{_TEXT}h")
_MARKS = (f"{_TEXT}change-start", f"{_TEXT}change-end", f"{_TEXT}change")


@dataclass
class _Found:
    """What is to be done, found in one walk."""

    texts: list[_Element] = field(default_factory=list)
    """Elements whose first text was put in."""
    tails: list[_Element] = field(default_factory=list)
    """Elements that what follows was put in."""
    whole: list[_Element] = field(default_factory=list)
    """Elements that were put in as a whole."""
    ends: list[_Element] = field(default_factory=list)
    """Paragraphs whose end was put in."""


def refuse_odt(data: bytes, file: str) -> bytes:
    """The document with all its tracked changes refused.

    Raises:
        FileUnreadable: It is no ODT, or it is broken.
        FileTooLarge: It expands beyond all bounds.
    """
    from lxml import etree

    archive = open_archive(data, file)
    kept = io.BytesIO()
    with zipfile.ZipFile(kept, "w", zipfile.ZIP_DEFLATED) as new:
        for name in dict.fromkeys(archive.names):
            part = archive.read(name)
            if name == "content.xml" and b"changed-region" in part:
                root = archive.parse(part, name)
                _refuse(root)
                part = etree.tostring(root, xml_declaration=True, encoding="UTF-8")
            new.writestr(name, part, zipfile.ZIP_STORED if name == "mimetype" else zipfile.ZIP_DEFLATED)
    return kept.getvalue()


def _refuse(root: _Element) -> None:
    came, gone = _regions(root)
    for changes in [*root.iter(f"{_TEXT}tracked-changes")]:
        _drop(changes)
    found = _walk(root, came)
    for element in found.texts:
        element.text = None
    for element in found.tails:
        element.tail = None
    for element in found.whole:
        _drop(element)
    for mark in [*root.iter(f"{_TEXT}change")]:
        _restore(mark, gone.get(mark.get(f"{_TEXT}change-id", ""), []))
    for paragraph in reversed(found.ends):
        _join_next(paragraph)
    for mark in [*root.iter(*_MARKS)]:
        _drop(mark)


def _regions(root: _Element) -> tuple[set[str], dict[str, list[_Element]]]:
    """The names of what was put in, and for each name what was taken out."""
    came: set[str] = set()
    gone: dict[str, list[_Element]] = {}
    for region in root.iter(f"{_TEXT}changed-region"):
        name = region.get(f"{_TEXT}id") or region.get("{http://www.w3.org/XML/1998/namespace}id") or ""
        if region.find(f"{_TEXT}insertion") is not None:
            came.add(name)
        deletion = region.find(f"{_TEXT}deletion")
        if deletion is not None:
            gone[name] = [one for one in deletion if one.tag != f"{_OFFICE}change-info"]
    return came, gone


def _walk(root: _Element, came: set[str]) -> _Found:
    from lxml import etree

    found, open_ = _Found(), set[str]()
    begun: set[_Element] = set()
    for event, element in etree.iterwalk(root, events=("start", "end")):
        if event == "start":
            name = element.get(f"{_TEXT}change-id", "")
            if element.tag == f"{_TEXT}change-start" and name in came:
                open_.add(name)
            elif element.tag == f"{_TEXT}change-end":
                open_.discard(name)
            elif open_:
                begun.add(element)
                found.texts.append(element)
            continue
        if open_:
            if element.tag in _PARAGRAPHS:
                found.ends.append(element)
            elif element in begun and element.tag not in _MARKS:
                found.whole.append(element)
            found.tails.append(element)
    return found


def _drop(element: _Element) -> None:
    """Without the element; what follows it stays."""
    parent = element.getparent()
    if parent is None:
        return
    _put_text(element, element.tail or "")
    element.tail = None
    parent.remove(element)


def _put_text(element: _Element, text: str) -> None:
    """Text right before an element."""
    if not text:
        return
    before = element.getprevious()
    if before is not None:
        before.tail = (before.tail or "") + text
    elif (parent := element.getparent()) is not None:
        parent.text = (parent.text or "") + text


def _restore(mark: _Element, gone: list[_Element]) -> None:
    """What was taken out stands again at its mark; of several paragraphs, the last goes on with what follows."""
    paragraphs = [deepcopy(one) for one in gone if one.tag in _PARAGRAPHS]
    home = next(mark.iterancestors(*_PARAGRAPHS), None)
    if not paragraphs or home is None:
        return
    first, *others = paragraphs
    _put_text(mark, first.text or "")
    for one in [*first]:
        mark.addprevious(one)
    if not others or mark.getparent() is not home:
        for other in others:
            _put_text(mark, " " + "".join(map(str, other.itertext())))
        return
    last = others[-1]
    _append(last, mark.tail or "", [*mark.itersiblings()])
    mark.tail = None
    for other in reversed(others):
        home.addnext(other)


def _append(paragraph: _Element, text: str, elements: list[_Element]) -> None:
    """Text and elements at the end of a paragraph."""
    if text and len(paragraph):
        paragraph[-1].tail = (paragraph[-1].tail or "") + text
    elif text:
        paragraph.text = (paragraph.text or "") + text
    paragraph.extend(elements)


def _join_next(paragraph: _Element) -> None:
    """The paragraph, whose end was put in, goes on with the next."""
    following = paragraph.getnext()
    if following is None or following.tag not in _PARAGRAPHS:
        return
    matter = (following.text or "", [*following])
    following.text = None
    if paragraph.getparent() is not None:
        _append(paragraph, *matter)
        paragraph.tag = following.tag
        _drop(following)
