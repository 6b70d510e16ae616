"""What zipped documents say of their work: the package of an EPUB, the core properties of DOCX and ODT.

**Source**: EPUB 2.0.1 and 3.3, package metadata; ECMA-376, part 2 (core properties); OpenDocument 1.3, part 2, 4.3. The
days on which a word processor's file was made and changed are not the day that the work appeared, and are not used.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from fairhand.model.description import Said
from fairhand.reading.archive import open_archive
from fairhand.reading.epub import find_package
from fairhand.reading.first_pages import is_isbn

if TYPE_CHECKING:
    from lxml.etree import _Element

PACKAGE, PROPERTIES = "the EPUB’s own record", "the document’s properties"
_DC = "{http://purl.org/dc/elements/1.1/}"
_ROLES = {"aut": "author", "edt": "editor", "trl": "translator"}
"""MARC relators."""
_CORE = "docProps/core.xml"
_META = "meta.xml"
_MAKERS = frozenset(
    ("user", "windows user", "microsoft office user", "admin", "administrator", "author", "python-docx")
)


def say_of_epub(data: bytes, file: str) -> Iterator[Said]:
    """What an EPUB's package says.

    Raises:
        InputError: It is broken, or expands beyond all bounds.
    """
    archive = open_archive(data, file)
    package = archive.read_xml(find_package(archive))
    refined: dict[tuple[str, str], str] = {}
    for meta in package.iter("{*}meta"):
        if meta.get("refines") and meta.get("property"):
            refined[meta.get("refines", "").removeprefix("#"), meta.get("property", "")] = (meta.text or "").strip()
    titles = list(package.iter(f"{_DC}title"))
    main = [one for one in titles if refined.get((one.get("id", ""), "title-type")) == "main"] or titles[:1]
    subtitles = [one for one in titles if refined.get((one.get("id", ""), "title-type")) == "subtitle"]
    yield "title", ": ".join(filter(None, (_text(one) for one in (*main[:1], *subtitles[:1])))), PACKAGE
    people: dict[str, list[str]] = {}
    for tag, usual in (("creator", "aut"), ("contributor", "")):
        for one in package.iter(f"{_DC}{tag}"):
            relator = one.get("{http://www.idpf.org/2007/opf}role") or refined.get((one.get("id", ""), "role")) or usual
            filed = one.get("{http://www.idpf.org/2007/opf}file-as") or refined.get((one.get("id", ""), "file-as"))
            if relator in _ROLES:
                people.setdefault(_ROLES[relator], []).append(filed if filed and "," in filed else _text(one))
    for role, names in people.items():
        yield role, names, PACKAGE
    yield "publisher", _first(package, "publisher"), PACKAGE
    for date in package.iter(f"{_DC}date"):
        if date.get("{http://www.idpf.org/2007/opf}event", "publication") == "publication":
            yield "issued", _text(date).partition("T")[0], PACKAGE
    yield "language", _first(package, "language"), PACKAGE
    for identifier in package.iter(f"{_DC}identifier"):
        said = _text(identifier).lower().removeprefix("urn:").removeprefix("isbn:").replace("-", "").strip().upper()
        if is_isbn(said):
            yield "ISBN", said, PACKAGE
    yield "type", "book", "its being an EPUB"


def say_of_word_file(data: bytes, file: str) -> Iterator[Said]:
    """What the properties of a DOCX or an ODT say.

    Raises:
        InputError: It is broken, or expands beyond all bounds.
    """
    archive = open_archive(data, file)
    for name in (_CORE, _META):
        if name in archive.names:
            root = archive.read_xml(name)
            yield "title", _first(root, "title"), PROPERTIES
            makers = [_text(one) for one in root.iter("{*}initial-creator")] or [_first(root, "creator")]
            yield "author", [name for one in makers for name in one.split(";") if _is_person(name)], PROPERTIES
            yield "language", _first(root, "language"), PROPERTIES


def _is_person(name: str) -> bool:
    return name.strip().lower() not in _MAKERS


def _first(root: _Element, tag: str) -> str:
    return next((_text(one) for one in root.iter(f"{_DC}{tag}")), "")


def _text(element: _Element) -> str:
    return "".join(map(str, element.itertext())).strip()
