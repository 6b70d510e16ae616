"""A DOCX that came back from a reader: the text as it was sent, its comments, and its tracked changes.

**Source**: ECMA-376-1 (2016), sections 17.13.4 (*Comments*) and 17.13.5 (*Revisions*); the answers to comments,
``commentsExtended.xml``, are [MS-DOCX], section 2.5.1.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from fairhand.model.remark import Remark, RemarkKind, Returned
from fairhand.model.span import Span
from fairhand.reading.archive import Archive, open_archive
from fairhand.reading.word_files import main_part

if TYPE_CHECKING:
    from lxml.etree import _Element

_W = "{http://schemas.openxmlformats.org/wordprocessingml/2006/main}"
_W14 = "{http://schemas.microsoft.com/office/word/2010/wordml}"
_W15 = "{http://schemas.microsoft.com/office/word/2012/wordml}"
_KINDS: dict[str, RemarkKind] = {
    "ins": "insertion", "moveTo": "insertion", "cellIns": "insertion",
    "del": "deletion", "moveFrom": "deletion", "cellDel": "deletion",
}  # fmt: skip
_PLACES = ("r", "p", "tc", "tr", "tbl", "body")
"""What a change of form is about: the nearest of these that holds it."""
_CHARACTERS = {"tab": "\t", "br": "\n", "cr": "\n", "noBreakHyphen": "-"}


@dataclass
class _Copy:
    """The copy as it is walked through."""

    letters: list[str] = field(default_factory=list)
    length: int = 0
    came: int = 0
    """Within how many insertions the walk stands: what stands there was not sent."""
    remarks: list[Remark] = field(default_factory=list)
    within: list[list[str]] = field(default_factory=list)
    """The words of every change that is open, the innermost last."""
    ranges: dict[str, list[int]] = field(default_factory=dict)
    """Where each comment begins and ends, or is referred to."""

    def add(self, text: str | None) -> None:
        """Characters of the text."""
        if not text:
            return
        for words in self.within:
            words.append(text)
        if not self.came:
            self.letters.append(text)
            self.length += len(text)


def read_returned_docx(data: bytes, file: str) -> Returned:
    """The text as it was sent, with every comment and tracked change at its place.

    Raises:
        FileUnreadable: It is no DOCX, or it is broken.
        FileTooLarge: It expands beyond all bounds.
    """
    archive = open_archive(data, file)
    main = main_part(archive)
    folder = main.rpartition("/")[0]
    copy = _Copy()
    _walk(archive.read_xml(main), copy)
    for name in sorted(archive.names):
        where, _, own = name.rpartition("/")
        if where == folder and own.endswith(".xml") and own.startswith(("footnotes", "endnotes", "header", "footer")):
            _walk(archive.read_xml(name), copy)
    comments = _comments(archive, folder, copy)
    ordered = sorted([*copy.remarks, *comments], key=lambda one: (one.span.start, one.span.end))
    return Returned("".join(copy.letters), tuple(ordered))


def _walk(root: _Element, copy: _Copy) -> None:
    """One part of the document, from start to end."""
    from lxml import etree

    starts: dict[_Element, int] = {}
    forms: dict[_Element, list[_Element]] = {}
    walk = etree.iterwalk(root, events=("start", "end"))
    for event, element in walk:
        tag = etree.QName(element).localname
        if event == "end":
            if tag in _KINDS and element in starts:
                _close(copy, element, _KINDS[tag], starts.pop(element))
            elif tag in _PLACES:
                _end_place(copy, element, tag, starts, forms)
            continue
        if tag == "Fallback":
            walk.skip_subtree()
        elif tag.endswith("Change") or tag == "cellMerge" or (tag.startswith("customXml") and tag.endswith("Start")):
            if element.get(f"{_W}author") is not None:
                forms.setdefault(_place_of(element), []).append(element)
            walk.skip_subtree()
        elif tag in _KINDS and element.tag == _W + tag and not _is_mark(element):
            starts[element] = copy.length
            copy.within.append([])
            copy.came += _KINDS[tag] == "insertion"
        elif tag in _PLACES:
            starts[element] = copy.length
            if tag in ("tr", "tc") and _mark_of(element, tag, "insertion") is not None:
                copy.came += 1
        elif tag in ("t", "delText"):
            copy.add(element.text)
        elif tag in _CHARACTERS and _is_in_run(element):
            copy.add(_CHARACTERS[tag])
        elif tag in ("commentRangeStart", "commentRangeEnd", "commentReference"):
            copy.ranges.setdefault(element.get(f"{_W}id", ""), []).append(copy.length)


def _is_in_run(element: _Element) -> bool:
    """Whether an element stands in a run: a ``tab`` elsewhere tells where a stop is."""
    parent = element.getparent()
    return parent is not None and parent.tag == f"{_W}r"


def _is_mark(element: _Element) -> bool:
    """Whether a change is to the mark of a paragraph, to a row, a cell or a numbering, and holds no words itself."""
    parent = element.getparent()
    return parent is not None and parent.tag in (f"{_W}rPr", f"{_W}trPr", f"{_W}tcPr", f"{_W}numPr")


def _mark_of(element: _Element, tag: str, kind: RemarkKind) -> _Element | None:
    """The change of that kind to a paragraph's mark, a row or a cell; None where there is none."""
    where = {"p": f"{_W}pPr/{_W}rPr", "tr": f"{_W}trPr", "tc": f"{_W}tcPr"}.get(tag)
    names = [name for name, one in _KINDS.items() if one == kind]
    found = (element.find(f"{where}/{_W}{name}") for name in names) if where else ()
    return next((one for one in found if one is not None), None)


def _end_place(
    copy: _Copy, element: _Element, tag: str, starts: dict[_Element, int], forms: dict[_Element, list[_Element]]
) -> None:
    """The end of a run, paragraph, cell, row or table: the changes to it as a whole are told."""
    start = starts.pop(element, copy.length)
    kinds: tuple[RemarkKind, ...] = ("insertion", "deletion")
    marks = {kind: mark for kind in kinds if (mark := _mark_of(element, tag, kind)) is not None}
    begun = start
    if tag == "p":
        begun = copy.length
        copy.came += "insertion" in marks
        copy.add("\n")
    if tag in ("p", "tr", "tc"):
        copy.came -= "insertion" in marks
    for kind, mark in marks.items():
        copy.remarks.append(_remark(mark, kind, Span(begun, copy.length), "\n" if tag == "p" else ""))
    numbered = element.find(f"{_W}pPr/{_W}numPr/{_W}ins") if tag == "p" else None
    for change in [*forms.pop(element, []), *([numbered] if numbered is not None else [])]:
        copy.remarks.append(_remark(change, "form", Span(start, copy.length), ""))


def _place_of(element: _Element) -> _Element:
    """The run, paragraph, cell, row or table that holds an element."""
    above = element.iterancestors()
    return next(one for one in above if one.tag.rpartition("}")[2] in _PLACES or one.getparent() is None)


def _close(copy: _Copy, element: _Element, kind: RemarkKind, start: int) -> None:
    said = "".join(copy.within.pop())
    copy.came -= kind == "insertion"
    copy.remarks.append(_remark(element, kind, Span(start, copy.length), said))


def _remark(element: _Element, kind: RemarkKind, span: Span, said: str) -> Remark:
    return Remark(
        kind, span, said, element.get(f"{_W}author", ""), element.get(f"{_W}date", ""), element.get(f"{_W}id", "")
    )


def _comments(archive: Archive, folder: str, copy: _Copy) -> Iterator[Remark]:
    """The comments, each at its place; one that no place refers to stands at the end."""
    name = f"{folder}/comments.xml" if folder else "comments.xml"
    if name not in archive.names:
        return
    found = [*archive.read_xml(name).iter(f"{_W}comment")]
    own = {p.get(f"{_W14}paraId"): one.get(f"{_W}id", "") for one in found for p in one.iter(f"{_W}p")}
    parents = dict(_parents(archive, folder))
    for one in found:
        name = one.get(f"{_W}id", "")
        at = copy.ranges.get(name, [copy.length])
        paragraphs = [*one.iter(f"{_W}p")]
        said = "\n".join("".join(t.text or "" for t in p.iter(f"{_W}t", f"{_W}delText")) for p in paragraphs)
        named = (parents.get(p.get(f"{_W14}paraId")) for p in reversed(paragraphs) if p.get(f"{_W14}paraId"))
        answers = next((own.get(parent, "") for parent in named if parent), "")
        span = Span(min(at), max(at))
        yield Remark("comment", span, said.strip(), one.get(f"{_W}author", ""), one.get(f"{_W}date", ""), name, answers)


def _parents(archive: Archive, folder: str) -> Iterator[tuple[str | None, str | None]]:
    """Which comment's last paragraph answers which."""
    name = f"{folder}/commentsExtended.xml"
    if name in archive.names:
        for one in archive.read_xml(name).iter(f"{_W15}commentEx"):
            yield one.get(f"{_W15}paraId"), one.get(f"{_W15}paraIdParent")
