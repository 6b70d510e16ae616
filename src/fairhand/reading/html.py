"""The visible text of a web page, in parts at its headings."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Literal

from fairhand.errors import FileTooLarge, FileUnreadable
from fairhand.reading.decoding import MOST_TEXT_BYTES, decode_text
from fairhand.reading.leaves import Leaves

if TYPE_CHECKING:
    from lxml.etree import _Element

# fmt: off
_UNSEEN = frozenset((
    "script", "style", "template", "noscript", "head", "svg", "math", "object", "iframe", "select", "button", "input",
    "textarea", "nav", "canvas", "audio", "video",
))
_BLOCKS = frozenset((
    "p", "div", "section", "article", "main", "header", "footer", "aside", "h1", "h2", "h3", "h4", "h5", "h6", "ul",
    "ol", "li", "dl", "dt", "dd", "table", "tr", "blockquote", "pre", "figure", "figcaption", "address", "form",
    "fieldset", "hr", "body", "caption", "thead", "tbody", "details", "summary",
))
_APART = frozenset((
    "p", "h1", "h2", "h3", "h4", "h5", "h6", "ul", "ol", "dl", "table", "blockquote", "pre", "figure",
))
# fmt: on
_HEADINGS = frozenset(("h1", "h2", "h3"))
_CELLS = frozenset(("td", "th"))
_DECLARATION = re.compile(r"^\s{0,200}<\?xml[^>]{0,200}\?>")
_CHARSET = re.compile(rb"charset\s{0,5}=\s{0,5}[\"']?\s{0,5}([A-Za-z0-9_.:-]{2,40})", re.IGNORECASE)
_SPACES = re.compile(r"[ \t\r\n\f\v]+")
_BLANKS = re.compile(r"[ \t]*\n(?:[ \t]*\n)+")
_LAST_WORD = re.compile(r"(?<![^\W_])(?:\d{1,5}|[ivxlcdm]{1,9})$", re.IGNORECASE)
_UNSEEN_STYLE = re.compile(r"display\s{0,3}:\s{0,3}none|visibility\s{0,3}:\s{0,3}hidden")
_EPUB_TYPE = "{http://www.idpf.org/2007/ops}type"


@dataclass
class _Flow:
    """Text as it is laid down, part by part."""

    parts: list[tuple[str | None, str]] = field(default_factory=list)
    label: str | None = None
    """The label of the printed page that the part stands on, where the text states it."""
    pieces: list[str] = field(default_factory=list)

    def end_part(self) -> None:
        """End the part that is being laid down."""
        text = _BLANKS.sub("\n\n", "".join(self.pieces)).strip()
        self.pieces.clear()
        if text:
            self.parts.append((self.label, text))

    def end_line(self) -> None:
        """End the line."""
        if self.pieces and not self.pieces[-1].endswith("\n"):
            self.pieces.append("\n")

    def add(self, text: str | None, *, as_set: bool = False) -> None:
        """Running text, its spaces closed up unless they stand ``as_set``."""
        if not text:
            return
        if not as_set:
            text = _SPACES.sub(" ", text)
            if not self.pieces or self.pieces[-1].endswith(("\n", " ")):
                text = text.lstrip(" ")
        if text:
            self.pieces.append(text)


def read_html(data: bytes, file: str) -> Leaves:
    """The visible text of a web page; a part begins at each heading of the first three levels.

    Raises:
        FileUnreadable: There is no text in it.
        FileTooLarge: It is longer than any page that we read.
    """
    parts = lay_text(parse_html(data, file), part_at="headings")
    if not parts:
        raise FileUnreadable(f"{file}: there is no text in it; save the page again, once it has loaded")
    return Leaves(tuple(text for _, text in parts), leaved=False)


def parse_html(data: bytes, file: str) -> _Element:
    """The root of an HTML document; no fault in it is too great.

    Raises:
        FileUnreadable: It is empty.
        FileTooLarge: It is longer than any page that we read.
    """
    from lxml import etree

    if len(data) > MOST_TEXT_BYTES:
        raise FileTooLarge(f"{file}: a page of {len(data) / 1e6:.0f} MB is more than is read; save its text alone")
    stated = _CHARSET.search(data, 0, 2048)
    text = ""
    if stated:
        try:
            text = data.decode(stated[1].decode("ascii"))
        except (LookupError, UnicodeDecodeError):
            text = ""
    text = _DECLARATION.sub("", text or decode_text(data)[0]).replace("\0", "")
    try:
        root = etree.fromstring(
            text.encode("utf-8", "replace"), etree.HTMLParser(encoding="utf-8", no_network=True, huge_tree=True)
        )
    except (etree.XMLSyntaxError, ValueError) as error:
        raise FileUnreadable(f"{file}: there is no page in it; save it again") from error
    if root is None:
        raise FileUnreadable(f"{file}: there is no text in it; save the page again, once it has loaded")
    return root


def lay_text(root: _Element, part_at: Literal["headings", "pages", "nothing"]) -> tuple[tuple[str | None, str], ...]:
    """The visible text under ``root``, a line for each block, cells of a row parted by bars.

    Each part comes with the label of the printed page that begins there, where the text states it (EPUB page breaks).
    """
    from lxml import etree

    flow = _Flow()
    walk = etree.iterwalk(root, events=("start", "end", "comment", "pi"))
    set_as_written = 0
    for event, element in walk:
        if event in ("comment", "pi"):
            flow.add(element.tail, as_set=set_as_written > 0)
            continue
        tag = etree.QName(element).localname.lower()
        if event == "end":
            set_as_written -= tag == "pre"
            if tag in _BLOCKS:
                flow.end_line()
                if tag in _APART:
                    flow.pieces.append("\n")
            if element is not root:
                flow.add(element.tail, as_set=set_as_written > 0)
            continue
        if tag in _UNSEEN or element.get("hidden") is not None or _UNSEEN_STYLE.search(element.get("style", "")):
            walk.skip_subtree()
            continue
        if tag in _BLOCKS:
            flow.end_line()
        if part_at == "headings" and tag in _HEADINGS:
            flow.end_part()
        elif part_at == "pages" and (label := _page_break(element)):
            flow.end_part()
            flow.label = label
            walk.skip_subtree()
            continue
        set_as_written += tag == "pre"
        if tag == "br":
            flow.pieces.append("\n")
        elif tag == "li":
            flow.pieces.append("- ")
        elif tag in _CELLS and element.getprevious() is not None:
            flow.pieces.append(" | ")
        flow.add(element.text, as_set=set_as_written > 0)
    flow.end_part()
    return tuple(flow.parts)


def _page_break(element: _Element) -> str:
    """The label of the printed page that begins at an element, or nothing (EPUB 3, ``pagebreak``)."""
    kinds = (element.get("role", ""), element.get(_EPUB_TYPE, ""), element.get("epub:type", ""))
    if not any("pagebreak" in kind for kind in kinds):
        return ""
    for said in (
        element.get("title"),
        element.get("aria-label"),
        "".join(map(str, element.itertext())),
        element.get("id"),
    ):
        if said and (found := _LAST_WORD.search(said.strip())):
            return found.group()
    return ""
