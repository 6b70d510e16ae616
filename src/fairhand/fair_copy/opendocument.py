"""The reference document that gives an OpenDocument file its styles, header and page."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Callable
from typing import Any

from fairhand.fair_copy.document import FairCopy
from fairhand.fair_copy.layout import PAPER_SIZES_PT
from fairhand.fair_copy.looks import HEADED, HEADING_LEVELS, Look, looks_for, run_in_style
from fairhand.fair_copy.wording import Furniture, furniture

_SPACES = {
    "office": "urn:oasis:names:tc:opendocument:xmlns:office:1.0",
    "style": "urn:oasis:names:tc:opendocument:xmlns:style:1.0",
    "text": "urn:oasis:names:tc:opendocument:xmlns:text:1.0",
    "table": "urn:oasis:names:tc:opendocument:xmlns:table:1.0",
    "fo": "urn:oasis:names:tc:opendocument:xmlns:xsl-fo-compatible:1.0",
}
_NAMES = {
    "Normal": "Standard",
    "First Paragraph": "First_20_paragraph",
    "Body Text": "Text_20_body",
    "Block Text": "Quotations",
    "Footnote Text": "Footnote",
    "Source Code": "Preformatted_20_Text",
}
"""Styles that pandoc and OpenDocument call otherwise than word processors' own files do."""
_SIDES = {"left": "start", "centre": "center", "full": "justify", "right": "end"}


def reference_odt(copy: FairCopy, base: bytes) -> bytes:
    """Pandoc's own reference document ``base`` with the styles, header and page of ``copy``."""
    return _rewritten(base, "styles.xml", lambda tree: _restyle(tree, copy))


def finish_odt(data: bytes) -> bytes:
    """Pandoc's document with its tables at the left and ruled, and a heading wherever a style is a heading's."""
    return _rewritten(data, "content.xml", _finish)


def _finish(tree: Any) -> None:
    for words in list(tree.iter(_q("text:p"))):
        if words.get(_q("text:style-name")) in map(_own_name, HEADED):
            words.tag = _q("text:h")
            words.set(_q("text:outline-level"), "1")
    _rule_tables(tree)


def _rewritten(data: bytes, name: str, change: Callable[[Any], None]) -> bytes:
    """The archive with one of its XML files changed."""
    from lxml import etree

    kept = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(data)) as old, zipfile.ZipFile(kept, "w", zipfile.ZIP_DEFLATED) as new:
        for member in old.infolist():
            held = old.read(member)
            if member.filename == name:
                tree = etree.fromstring(held)
                change(tree)
                held = etree.tostring(tree, xml_declaration=True, encoding="UTF-8")
            new.writestr(member, held)
    return kept.getvalue()


def _rule_tables(tree: Any) -> None:
    styles = tree.find(_q("office:automatic-styles"))
    last = _add(styles, "style:style", {"style:name": "TableEndRowCell", "style:family": "table-cell"})
    _add(last, "style:table-cell-properties", {"fo:border-bottom": "0.75pt solid #000000"})
    for style in styles:
        if style.get(_q("style:name")) == "TableHeaderRowCell":
            rules = {_q("fo:border-top"): "0.75pt solid #000000", _q("fo:border-bottom"): "0.5pt solid #000000"}
            style[0].attrib.pop(_q("fo:border"), None)
            style[0].attrib.update(rules)
        if style.get(_q("style:family")) == "table":
            style[0].set(_q("table:align"), "left")
    for table in tree.iter(_q("table:table")):
        rows = table.findall(_q("table:table-row"))
        for cell in rows[-1] if rows else ():
            cell.set(_q("table:style-name"), "TableEndRowCell")


def _q(name: str) -> str:
    """The full name of an element or attribute."""
    space, _, local = name.partition(":")
    return f"{{{_SPACES[space]}}}{local}"


def _restyle(tree: Any, copy: FairCopy) -> None:
    styles = tree.find(_q("office:styles"))
    known = {style.get(_q("style:name")): style for style in styles.findall(_q("style:style"))}
    for name, look in looks_for(copy.layout).items():
        own_name = _own_name(name)
        style = known.get(own_name)
        if style is None:
            style = _add(styles, "style:style", {"style:name": own_name, "style:family": "paragraph"})
            style.set(_q("style:display-name"), name)
        _set_look(style, look)
    for level in range(1, HEADING_LEVELS + 1):
        look, name = looks_for(copy.layout)[f"Heading {level}"], run_in_style(level)
        style = _add(styles, "style:style", {"style:name": _own_name(name), "style:family": "text"})
        style.set(_q("style:display-name"), name)
        _set_type(style, look)
    _set_links(styles)
    notes = next(tree.iter(_q("text:notes-configuration")))
    notes.set(_q("style:num-suffix"), ". ")
    lines = next(tree.iter(_q("text:linenumbering-configuration")))
    lines.set(_q("text:number-lines"), "true" if copy.layout.line_numbers else "false")
    lines.set(_q("text:increment"), "1")
    lines.set(_q("text:restart-on-page"), "true" if copy.layout.proof else "false")
    _set_page(tree, copy)
    if copy.layout.first_page == "title-page" and not copy.layout.number_title_page:
        _set_title_page(tree, copy)


def _own_name(name: str) -> str:
    return _NAMES.get(name, name.replace(" ", "_20_"))


def _add(parent: Any, name: str, attributes: dict[str, str]) -> Any:
    from lxml import etree

    return etree.SubElement(parent, _q(name), {_q(key): value for key, value in attributes.items()})


def _set_links(styles: Any) -> None:
    """Links look like the text around them."""
    for style in styles.findall(_q("style:style")):
        if style.get(_q("style:name")) == "Internet_20_link":
            for old in list(style):
                style.remove(old)
            plain = {"fo:color": "#000000", "style:text-underline-style": "none"}
            _add(style, "style:text-properties", plain)


def _set_look(style: Any, look: Look) -> None:
    """Give a paragraph style its look, whatever it looked like before."""
    for old in list(style):
        style.remove(old)
    if look.base:
        style.set(_q("style:parent-style-name"), _own_name(look.base))
    if look.outline is not None:
        style.set(_q("style:default-outline-level"), str(look.outline + 1))
    paragraph = {
        "fo:line-height": f"{look.spacing * 100:.0f}%",
        "fo:margin-top": f"{look.before_pt:.2f}pt",
        "fo:margin-bottom": f"{look.after_pt:.2f}pt",
        "fo:margin-left": f"{look.left_pt:.2f}pt",
        "fo:margin-right": "0pt",
        "fo:text-indent": f"{look.first_pt:.2f}pt",
        "style:auto-text-indent": "false",
        "fo:text-align": _SIDES[look.side],
        "fo:keep-with-next": "always" if look.keep else "auto",
        "fo:widows": "2",
        "fo:orphans": "2",
        "fo:border": "none",
    }
    if look.new_page:
        paragraph["fo:break-before"] = "page"
    _add(style, "style:paragraph-properties", paragraph)
    _set_type(style, look)


def _set_type(style: Any, look: Look) -> None:
    """Give a style of paragraphs or of characters the look's type."""
    _add(
        style,
        "style:text-properties",
        {
            "style:font-name": look.font,
            "fo:font-family": f"'{look.font}'",
            "fo:font-size": f"{look.size_pt}pt",
            "fo:font-weight": "bold" if look.bold else "normal",
            "fo:font-style": "italic" if look.italic else "normal",
            "fo:color": "#000000",
            "fo:hyphenate": "false",
        },
    )


def _set_page(tree: Any, copy: FairCopy) -> None:
    """Paper, margins, running head and page number of every page."""
    layout = copy.layout
    width, height = PAPER_SIZES_PT[layout.paper]
    top, right, bottom, left = layout.margins_pt
    edge_top, edge_bottom = min(36.0, top / 2), min(36.0, bottom / 2)
    lines = furniture(copy)
    for page in tree.iter(_q("style:page-layout-properties")):
        page.attrib.update(
            {
                _q("fo:page-width"): f"{width}pt",
                _q("fo:page-height"): f"{height}pt",
                _q("fo:margin-top"): f"{edge_top if lines[0] else top}pt",
                _q("fo:margin-bottom"): f"{edge_bottom if lines[1] else bottom}pt",
                _q("fo:margin-left"): f"{left}pt",
                _q("fo:margin-right"): f"{right}pt",
            }
        )
        holder = page.getparent()
        for name, line, room in (("header", lines[0], top - edge_top), ("footer", lines[1], bottom - edge_bottom)):
            for old in holder.findall(_q(f"style:{name}-style")):
                holder.remove(old)
            made = _add(holder, f"style:{name}-style", {})
            if line:
                gap = "fo:margin-bottom" if name == "header" else "fo:margin-top"
                size = {"fo:min-height": f"{room}pt", gap: "0pt", "style:dynamic-spacing": "false"}
                _add(made, "style:header-footer-properties", size)
    for master in tree.iter(_q("style:master-page")):
        for old in list(master):
            master.remove(old)
        for name, line in zip(("header", "footer"), lines, strict=True):
            if line:
                _furnish(tree, _add(master, f"style:{name}", {}), line, width - left - right)


def _set_title_page(tree: Any, copy: FairCopy) -> None:
    """A title page without running head or number; the pages after it are counted from 1."""
    masters = tree.find(_q("office:master-styles"))
    standard = masters.find(_q("style:master-page"))
    name, layout_name = standard.get(_q("style:name")), standard.get(_q("style:page-layout-name"))
    bare = {"style:name": "Title_20_Page", "style:page-layout-name": layout_name, "style:next-style-name": name}
    _add(masters, "style:master-page", bare)
    opening = ("Abstract Title",) if copy.front.abstract else ("Opening Text", "Opening Heading")
    for style in tree.find(_q("office:styles")).findall(_q("style:style")):
        if style.get(_q("style:name")) == "Title":
            style.set(_q("style:master-page-name"), "Title_20_Page")
        elif style.get(_q("style:name")) in map(_own_name, opening):
            style.set(_q("style:master-page-name"), name)
            style.find(_q("style:paragraph-properties")).set(_q("style:page-number"), "1")


def _furnish(tree: Any, place: Any, line: Furniture, width_pt: float) -> None:
    """One line of header or footer, in a style made for its side."""
    automatic = tree.find(_q("office:automatic-styles"))
    name = f"Furniture_{place.tag.rpartition('}')[2]}_{len(automatic)}"
    style = _add(automatic, "style:style", {"style:name": name, "style:family": "paragraph"})
    style.set(_q("style:parent-style-name"), "Header")
    properties = _add(style, "style:paragraph-properties", {"fo:text-align": _SIDES[line.side]})
    words = _add(place, "text:p", {"text:style-name": name})
    words.text = f"{line.head} " if line.head and line.numbered and not line.parted else line.head
    if line.parted:
        stops = _add(properties, "style:tab-stops", {})
        _add(stops, "style:tab-stop", {"style:position": f"{width_pt}pt", "style:type": "right"})
        _add(words, "text:tab", {})
    if line.numbered:
        _add(words, "text:page-number", {"text:select-page": "current"}).text = "1"
