"""The page that the fair copy has in a browser: a manuscript page, without scripts, ready to print."""

from __future__ import annotations

import re
from functools import cache
from importlib.resources import files

from fairhand.fair_copy.document import FairCopy, Layout
from fairhand.fair_copy.faces import face_for
from fairhand.fair_copy.flow import heading_look
from fairhand.fair_copy.layout import annotation_indent_pt, note_size_pt, title_page_spaces_pt
from fairhand.fair_copy.looks import HEADING_LEVELS
from fairhand.fair_copy.wording import furniture

_NAMED = {
    'role="doc-endnotes">\n<hr />': 'role="doc-endnotes">\n<h2>Notes</h2>',
    'role="doc-backlink"': 'role="doc-backlink" aria-label="Back to the text"',
    "<th>": '<th scope="col">',
}
_MARGIN_BOXES = ("top-left", "top-center", "top-right", "bottom-left", "bottom-center", "bottom-right")
_NOTES = re.compile(r"<section id=\"footnotes\".*?</section>\n?", re.DOTALL)
_LIST = '<section class="level2 list-title">'
_GENERIC = {"serif": "serif", "sans": "sans-serif", "mono": "monospace"}


def page_template(copy: FairCopy) -> str:
    """Pandoc's template for the page: its style sheet is within it, with the layout's own measures."""
    return _template().replace("/* measures */", _measures(copy)).replace("/* headings */", _headings(copy.layout))


def finish_html(data: bytes) -> bytes:
    """Pandoc's page with its notes headed, before the list, and with names for what a screen reader meets."""
    page = data.decode()
    for plain, named in _NAMED.items():
        page = page.replace(plain, named)
    notes, references = _NOTES.search(page), page.find(_LIST)
    if notes and references >= 0:
        page = page[:references] + notes[0] + page[references : notes.start()] + page[notes.end() :]
    return page.encode()


@cache
def _template() -> str:
    return files("fairhand.fair_copy").joinpath("page.html").read_text("utf-8")


def _measures(copy: FairCopy) -> str:
    """The layout's measures as properties of the whole page, and what stands in a printed page's margins."""
    layout = copy.layout
    face = face_for(layout.font)[0]
    asked = "".join(letter for letter in layout.font if letter.isalnum() or letter in " -")
    top, right, bottom, left = layout.margins_pt
    size = "A4" if layout.paper == "a4" else "letter"
    values = {
        "font": f'"{asked}", "{face.name}", {_GENERIC[face.kind]}',
        "size": f"{layout.size_pt}pt",
        "line": f"{layout.spacing * face.line:.4f}",
        "quote-line": f"{layout.quote_spacing * face.line:.4f}",
        "list-line": f"{layout.list_spacing * face.line:.4f}",
        "list-gap": "1em" if layout.list_spacing == 1 else "0",
        "note-line": f"{layout.note_spacing * face.line:.4f}",
        "table-line": f"{layout.table_spacing * face.line:.4f}",
        "indent": f"{layout.indent_pt}pt",
        "annotation": f"{annotation_indent_pt(layout)}pt",
        "align": "justify" if layout.justified else "left",
        "title-weight": "bold" if layout.title_bold else "normal",
        "list-title-weight": "bold" if layout.list_title_bold else "normal",
        "note-size": f"{note_size_pt(layout)}pt",
        "print-title": "0",
    }
    sheet = f"@page {{ size: {size}; margin: {top}pt {right}pt {bottom}pt {left}pt; {_margins(copy)}}}\n"
    if layout.first_page == "title-page":
        before, after = title_page_spaces_pt(layout)
        values["print-title"] = f"{before:.1f}pt 0 {after:.1f}pt"
        if not layout.number_title_page:
            bare = " ".join(f"@{place} {{ content: none; }}" for place in _MARGIN_BOXES)
            sheet += f"@page :first {{ counter-increment: page 0; {bare} }}\n"
    return sheet + ":root { " + " ".join(f"--{name}: {value};" for name, value in values.items()) + " }"


def _margins(copy: FairCopy) -> str:
    """The running head and the number of a printed page, as the boxes of its margins."""
    boxes = ""
    for line, place in zip(furniture(copy), ("top", "bottom"), strict=True):
        head = '"' + "".join(letter for letter in line.head if letter not in '"\\\n<>') + '"' if line.head else ""
        number = "counter(page)" if line.numbered else ""
        font = f"font: {copy.layout.size_pt}pt var(--font);"
        if line.parted:
            boxes += f"@{place}-left {{ content: {head}; {font} }} @{place}-right {{ content: {number}; {font} }} "
        elif line:
            side = line.side.replace("centre", "center")
            content = " ' ' ".join(filter(None, (head, number)))
            boxes += f"@{place}-{side} {{ content: {content}; {font} }} "
    return boxes


def _headings(layout: Layout) -> str:
    """One rule for each level; the title is the page's first heading, so the paper's first is its second."""
    rules = []
    for level in range(1, HEADING_LEVELS):
        look = heading_look(level, layout)
        rules.append(
            f"h{level + 1} {{ font-weight: {'bold' if 'bold' in look else 'normal'};"
            f" font-style: {'italic' if 'italic' in look else 'normal'};"
            f" text-align: {'center' if 'centred' in look else 'left'}; }}"
        )
    return "\n".join(rules)
