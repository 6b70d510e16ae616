"""Tracked changes of a DOCX settled: all accepted, or all refused, in the file itself.

**Source**: ECMA-376-1 (2016), section 17.13.5, *Revisions*. A paragraph whose mark is taken away is one with the next.
"""

from __future__ import annotations

import io
import zipfile
from itertools import islice
from typing import TYPE_CHECKING

from fairhand.reading.archive import open_archive

if TYPE_CHECKING:
    from lxml.etree import _Element

_W = "{http://schemas.openxmlformats.org/wordprocessingml/2006/main}"
_CAME = ("ins", "moveTo")
_WENT = ("del", "moveFrom")
_RANGES = tuple(
    f"{name}Range{end}"
    for name in ("moveFrom", "moveTo", "customXmlIns", "customXmlDel", "customXmlMoveFrom", "customXmlMoveTo")
    for end in ("Start", "End")
)
_PARTS = ("document", "footnotes", "endnotes", "header", "footer", "comments")
_AS_TEXT = {"delText": "t", "delInstrText": "instrText"}


def settle_changes(data: bytes, file: str, *, accept: bool) -> bytes:
    """The document without tracked changes: as it reads when all of them are accepted, or when all are refused.

    Args:
        data: The bytes of a DOCX.
        file: Its name, for messages.
        accept: Whether they are accepted.

    Raises:
        FileUnreadable: It is no DOCX, or it is broken.
        FileTooLarge: It expands beyond all bounds.
    """
    from lxml import etree

    archive = open_archive(data, file)
    kept = io.BytesIO()
    with zipfile.ZipFile(kept, "w", zipfile.ZIP_DEFLATED) as new:
        for name in dict.fromkeys(archive.names):
            part = archive.read(name)
            if name.endswith(".xml") and name.rpartition("/")[2].startswith(_PARTS) and b"author=" in part:
                root = archive.parse(part, name)
                settle(root, accept=accept)
                part = etree.tostring(root, xml_declaration=True, encoding="UTF-8", standalone=True)
            new.writestr(name, part)
    return kept.getvalue()


def settle(root: _Element, *, accept: bool) -> None:
    """The part of a document without tracked changes."""
    gone, stays = (_WENT, _CAME) if accept else (_CAME, _WENT)
    _settle_forms(root, accept=accept)
    _settle_cells(root, accept=accept)
    rows = [row for row in root.iter(f"{_W}tr") if any(row.find(f"{_W}trPr/{_W}{name}") is not None for name in gone)]
    for mark in [one for name in gone for one in root.iter(_W + name) if _is_in(one, "numPr")]:
        _drop(mark.getparent())  # type: ignore[arg-type]
    joined = [paragraph for mark in _marks(root, gone) for paragraph in islice(mark.iterancestors(f"{_W}p"), 1)]
    for names, keep in ((gone, False), (stays, True)):
        for element in [*root.iter(*(_W + name for name in names))]:
            if element.getparent() is not None:
                _unwrap(element) if keep and len(element) else _drop(element)
    for element in [*root.iter(*(_W + name for name in _RANGES))]:
        _drop(element)
    for paragraph in joined:
        _join_next(paragraph)
    for row in rows:
        _drop_row(row)
    for name, plain in _AS_TEXT.items():
        for element in root.iter(_W + name):
            element.tag = _W + plain


def _marks(root: _Element, names: tuple[str, ...]) -> list[_Element]:
    """The changes that are to paragraph marks: those within the properties of a paragraph's mark."""
    found = [*root.iter(*(_W + name for name in names))]
    return [one for one in found if _is_in(one, "rPr", "pPr", "p")]


def _is_in(element: _Element, *names: str) -> bool:
    """Whether an element's parents bear these names, the nearest first."""
    at: _Element | None = element
    for name in names:
        at = at.getparent() if at is not None else None
        if at is None or at.tag != _W + name:
            return False
    return True


def _settle_forms(root: _Element, *, accept: bool) -> None:
    """Changes of form alone: what was before stands again, or is forgotten."""
    changes = [one for one in root.iter(f"{_W}*") if one.tag.endswith("Change")]
    for change in changes:
        properties = change.getparent()
        if properties is None:
            continue
        former = next(iter(change), None)
        _drop(change)
        if accept or former is None or former.tag != properties.tag:
            continue
        kept = [one for one in properties if one.tag in (f"{_W}rPr", f"{_W}ins", f"{_W}del", f"{_W}sectPr")]
        own = [one for one in kept if properties.tag in (f"{_W}pPr", f"{_W}rPr", f"{_W}trPr")]
        for one in [*properties]:
            properties.remove(one)
        properties.extend([*former])
        properties.extend([one for one in own if not any(each.tag == one.tag for each in properties)])


def _settle_cells(root: _Element, *, accept: bool) -> None:
    """Cells that came or went."""
    for name, goes in (("cellDel", accept), ("cellIns", not accept)):
        for mark in [*root.iter(_W + name)]:
            cell = mark.getparent().getparent() if mark.getparent() is not None else None  # type: ignore[union-attr]
            if goes and cell is not None and cell.tag == f"{_W}tc":
                _drop(cell)
            else:
                _drop(mark)
    for mark in [*root.iter(f"{_W}cellMerge")]:
        merged = mark.get(f"{_W}vMerge" if accept else f"{_W}vMergeOrig")
        properties = mark.getparent()
        if merged and properties is not None:
            into = properties.makeelement(f"{_W}vMerge", {f"{_W}val": "restart" if merged == "rest" else "continue"})
            properties.replace(mark, into)
        else:
            _drop(mark)


def _drop_row(row: _Element) -> None:
    """Without the row; a table without rows is none."""
    table = row.getparent()
    _drop(row)
    if table is not None and table.tag == f"{_W}tbl" and table.find(f"{_W}tr") is None:
        _drop(table)


def _drop(element: _Element) -> None:
    """Without the element; whatever text follows it in the file stays."""
    parent = element.getparent()
    if parent is not None:
        parent.remove(element)


def _unwrap(element: _Element) -> None:
    """What the element holds stands in its place."""
    parent = element.getparent()
    if parent is None:
        return
    place = parent.index(element)
    parent[place : place + 1] = [*element]


def _join_next(paragraph: _Element) -> None:
    """The paragraph, whose mark is gone, is one with the next; what is left of it stands before that one's words.

    One that is empty leaves nothing behind; one after which no paragraph comes stays, unless it is empty and may go.
    """
    parent = paragraph.getparent()
    if parent is None:
        return
    following = paragraph.getnext()
    while following is not None and following.tag != f"{_W}p" and following.tag in _BETWEEN:
        following = following.getnext()
    matter = [one for one in paragraph if one.tag != f"{_W}pPr"]
    if following is None or following.tag != f"{_W}p":
        words = any(one.tag in (f"{_W}r", f"{_W}hyperlink") for one in paragraph.iter())
        siblings = [one for one in parent if one.tag == f"{_W}p"]
        if not words and len(siblings) > 1:
            _drop(paragraph)
        return
    place = 1 if len(following) and following[0].tag == f"{_W}pPr" else 0
    following[place:place] = matter
    _drop(paragraph)


_BETWEEN = frozenset(_W + name for name in ("bookmarkStart", "bookmarkEnd", "proofErr", "commentRangeStart"))
