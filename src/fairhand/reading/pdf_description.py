"""What a PDF says of its work: its XMP packet, its information dictionary, its first page.

**Source**: ISO 16684-1 (XMP), with the Dublin Core and PRISM 2.1 schemas; ISO 32000-1, 14.3.3 (information dictionary).
The day that the file was made is not the day that the work appeared, and is not used.
"""

from __future__ import annotations

import re
import zlib
from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import islice
from typing import TYPE_CHECKING

from fairhand.errors import FileUnreadable
from fairhand.model.description import Said
from fairhand.reading.archive import parse_xml
from fairhand.reading.first_pages import FIRST_PAGE, say_of_first_pages

if TYPE_CHECKING:
    from lxml.etree import _Element
    from pypdfium2 import PdfDocument

XMP = "the record that the PDF carries (XMP)"
INFORMATION = "the PDF’s own information"
LARGEST = f"the largest type on {FIRST_PAGE}"
_MOST_XMP = 2_000_000
_MOST_PACKETS = 40
_PACKET = re.compile(rb"<x:xmpmeta[^>]{0,400}>|<rdf:RDF[^>]{0,2000}>")
_METADATA = re.compile(
    rb"/Type\s{0,3}/Metadata[^>]{0,300}?>>\s{0,4}stream\r?\n|/Subtype\s{0,3}/XML[^>]{0,300}?>>\s{0,4}stream\r?\n"
)
_RDF = "{http://www.w3.org/1999/02/22-rdf-syntax-ns#}"
_DC = "{http://purl.org/dc/elements/1.1/}"
_PRISM = re.compile(r"\{http://prismstandard\.org/namespaces/basic/[\d.]{1,6}/\}")
_PRISM_FIELDS = {
    "publicationName": "container-title",
    "volume": "volume",
    "number": "issue",
    "pageRange": "page",
    "doi": "DOI",
    "issn": "ISSN",
    "isbn": "ISBN",
    "url": "URL",
    "edition": "edition",
    "publicationDate": "issued",
    "coverDate": "issued",
}
_KINDS = {
    "journal": "article-journal",
    "magazine": "article-magazine",
    "newspaper": "article-newspaper",
    "book": "book",
}
_NO_TITLE = re.compile(
    r"untitled\b.{0,20}|microsoft word\b.{0,300}|(?:slide|document|doc|page|title|scan)\s?\d{0,6}|powerpoint.{0,60}"
    r"|.{0,200}\.(?:docx?|pdf|dvi|tex|indd|qxd|odt|rtf|eps|ps|pptx?|tif|jpg)|[\W\d_]{1,200}",
    re.IGNORECASE,
)
_NO_AUTHOR = re.compile(
    r"(?:user|admin(?:istrator)?|owner|author|unknown|default|anonymous|microsoft|adobe|acrobat|root|guest|pc|test)"
    r"[\w .-]{0,20}|\S{1,12}\d{2,6}|[a-z]{1,20}|.{0,60}@.{0,60}",
    re.IGNORECASE,
)
_BETWEEN_NAMES = re.compile(r"\s*;\s*|\s+(?:and|&)\s+")
_MOST_MEASURED = 2500
"""Characters of the first page whose size is looked at."""
_LEAST_LETTERS = 8
_MOST_LETTERS = 300
_LIKE = 0.93
"""What is of at least so much of the largest type's height is of its size: letters of one line differ a little."""
_SMALLER = 0.87
"""Some type on the page must be at most so high beside it."""


def say_of_pdf(data: bytes, texts: Sequence[str] = ()) -> Iterator[Said]:
    """What a PDF says of its work, in the order in which it is trusted."""
    import pypdfium2

    said = list(say_of_xmp(data))
    try:
        document = pypdfium2.PdfDocument(data)
    except pypdfium2.PdfiumError:
        document = None
    if document is not None:
        said += _say_of_information(document.get_metadata_dict())
        if not any(value for name, value, _ in said if name == "title"):
            said.append(("title", _largest_type(document), LARGEST))
        document.close()
    yield from said
    yield from say_of_first_pages(texts)


def say_of_xmp(data: bytes) -> Iterator[Said]:
    """What the XMP packet says: titles, names, and where the piece appeared."""
    root = _find_packet(data)
    if root is None:
        return
    said: dict[str, str] = {}
    for element in root.iter():
        tag = str(element.tag)
        name = _PRISM.sub("", tag)
        if name != tag:
            said.setdefault(name, "".join(map(str, element.itertext())))
        for key, value in element.attrib.items():
            attribute = _PRISM.sub("", str(key))
            if attribute != key:
                said.setdefault(attribute, str(value))
    title = next((_first_item(one) for one in root.iter(f"{_DC}title")), "")
    if not _NO_TITLE.fullmatch(title.strip()):
        yield "title", title, XMP
    names = [item for one in root.iter(f"{_DC}creator") for item in _items(one)]
    yield "author", _part_names(names), XMP
    for name, variable in _PRISM_FIELDS.items():
        yield variable, said.get(name, ""), XMP
    ends = [said.get(name, "").strip() for name in ("startingPage", "endingPage")]
    yield "page", "-".join(dict.fromkeys(filter(None, ends))), XMP
    yield "type", _KINDS.get(said.get("aggregationType", "").strip().lower(), ""), XMP
    if said.get("publicationName") and (said.get("volume") or said.get("issn")):
        yield "type", "article-journal", XMP
    if said:  # a publisher's packet; any other gives the maker of the software as the publisher
        yield "publisher", next((_first_item(one) for one in root.iter(f"{_DC}publisher")), ""), XMP


def _find_packet(data: bytes) -> _Element | None:
    """The XMP packet of the whole document: of several the last that names a title or a journal.

    Pictures within it may have packets of their own; a later state of the file stands behind an earlier one.
    """
    for packet in reversed([*_packets_in(data), *_packed_packets(data)]):
        try:
            root = parse_xml(packet, XMP)
        except FileUnreadable:
            continue
        if any(tag in packet for tag in (b"<dc:title", b"publicationName")):
            return root
    return None


def _packets_in(data: bytes) -> list[bytes]:
    """The packets that stand uncompressed in some bytes."""
    packets = []
    for start in islice(_PACKET.finditer(data), _MOST_PACKETS):
        tag = b"</x:xmpmeta>" if start[0].startswith(b"<x:") else b"</rdf:RDF>"
        end = data.find(tag, start.start(), start.start() + _MOST_XMP)
        if end > 0:
            packets.append(data[start.start() : end + len(tag)])
    return packets


def _packed_packets(data: bytes) -> Iterator[bytes]:
    """The packets in compressed streams that are called metadata."""
    for found in islice(_METADATA.finditer(data), _MOST_PACKETS):
        try:
            packet = zlib.decompressobj().decompress(data[found.end() : found.end() + _MOST_XMP], _MOST_XMP)
        except zlib.error:
            continue
        yield from _packets_in(packet)


def _items(element: _Element) -> list[str]:
    """The items of an XMP array, or the one value where it is none."""
    items = ["".join(map(str, item.itertext())) for item in element.iter(f"{_RDF}li")]
    return items or ["".join(map(str, element.itertext()))]


def _first_item(element: _Element) -> str:
    return next(iter(_items(element)), "")


def _say_of_information(information: Mapping[str, str]) -> Iterator[Said]:
    title = information.get("Title", "").strip()
    if not _NO_TITLE.fullmatch(title):
        yield "title", title, INFORMATION
    yield "author", _part_names([information.get("Author", "")]), INFORMATION


def _part_names(lines: Iterable[str]) -> list[str]:
    """The names in lines that hold one or several each, without those that programs put there.

    >>> _part_names(["Lind, Ada", "Bo Marsh, Eva Dun and Li Wei", "admin"])
    ['Lind, Ada', 'Bo Marsh', 'Eva Dun', 'Li Wei']
    """
    names = []
    for one in (name for line in lines for name in _BETWEEN_NAMES.split(line)):
        parts = [part.strip() for part in one.split(",")]
        names += parts if len(parts) > 1 and all(" " in part for part in parts) else [one.strip()]
    return [name for name in names if not _NO_AUTHOR.fullmatch(name)]


def _largest_type(document: PdfDocument) -> str:
    """The words set in the largest type on the first page, where they are a title's length; else nothing."""
    import pypdfium2
    from pypdfium2 import raw

    try:
        page = document[0]
        sheet = page.get_textpage()
    except (pypdfium2.PdfiumError, IndexError):
        return ""
    sized: list[tuple[float, str]] = []
    box = raw.FS_RECTF()
    for number in range(min(sheet.count_chars(), _MOST_MEASURED)):
        raw.FPDFText_GetLooseCharBox(sheet, number, box)
        sized.append((box.top - box.bottom, chr(raw.FPDFText_GetUnicode(sheet, number))))
    lettered = sorted((size for size, character in sized if character.isalpha()), reverse=True)
    if len(lettered) <= _LEAST_LETTERS or lettered[-1] > lettered[_LEAST_LETTERS - 1] * _SMALLER:
        return ""
    least = lettered[_LEAST_LETTERS - 1] * _LIKE
    run: list[str] = []
    for size, character in sized:
        if size >= least or (run and character.isspace()):
            run.append(character)
        elif len("".join(run).strip()) >= _LEAST_LETTERS:
            break
        else:
            run.clear()  # an initial, or a number
    words = " ".join("".join(run).replace("\ufffe", "-").split())
    return words if _LEAST_LETTERS <= len(words) <= _MOST_LETTERS else ""
