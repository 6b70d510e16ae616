"""The page that the fair copy has in a browser: a manuscript page, without scripts, ready to print."""

from __future__ import annotations

from functools import cache
from importlib.resources import files

from fairhand.fair_copy.document import FairCopy, Layout
from fairhand.fair_copy.faces import face_for
from fairhand.fair_copy.flow import heading_look
from fairhand.fair_copy.looks import HEADING_LEVELS

_GENERIC = {"serif": "serif", "sans": "sans-serif", "mono": "monospace"}


def page_template(copy: FairCopy) -> str:
    """Pandoc's template for the page: its style sheet is within it, with the layout's own measures."""
    return (
        _template().replace("/* measures */", _measures(copy.layout)).replace("/* headings */", _headings(copy.layout))
    )


@cache
def _template() -> str:
    return files("fairhand.fair_copy").joinpath("page.html").read_text("utf-8")


def _measures(layout: Layout) -> str:
    """The layout's measures as properties of the whole page."""
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
        "align": "justify" if layout.justified else "left",
        "title-weight": "bold" if layout.title_bold else "normal",
        "list-title-weight": "bold" if layout.list_title_bold else "normal",
    }
    sheet = f"@page {{ size: {size}; margin: {top}pt {right}pt {bottom}pt {left}pt; }}\n"
    return sheet + ":root { " + " ".join(f"--{name}: {value};" for name, value in values.items()) + " }"


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
