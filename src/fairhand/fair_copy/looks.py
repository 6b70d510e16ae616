"""The named paragraph styles of the fair copy in a word processor, and how each looks."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Literal

from fairhand.fair_copy.document import Layout
from fairhand.fair_copy.flow import heading_look
from fairhand.fair_copy.layout import annotation_indent_pt, line_pitch_pt, note_size_pt, title_page_spaces_pt

HEADING_LEVELS = 6
HEADED = ("Abstract Title", "Opening Heading", "List Title")
"""The styles of headings of the first level that have a look or a page of their own."""


@dataclass(frozen=True, slots=True)
class Look:
    """How a paragraph style looks; lengths in points."""

    font: str
    size_pt: float
    spacing: float
    base: str = "Normal"
    bold: bool = False
    italic: bool = False
    side: Literal["left", "centre", "full"] = "left"
    left_pt: float = 0.0
    first_pt: float = 0.0
    """Indent of the first line, against the others; less than 0 hangs them."""
    before_pt: float = 0.0
    after_pt: float = 0.0
    keep: bool = False
    """Whether it stays on the page of the next paragraph."""
    new_page: bool = False
    outline: int | None = None
    """Its level in the outline, 0 for the highest."""


def looks_for(layout: Layout) -> Mapping[str, Look]:
    """Every style that the fair copy's file uses, by name.

    >>> from fairhand.fair_copy.layout import layout_for
    >>> looks_for(layout_for("apa"))["Bibliography"].first_pt
    -36.0
    """
    normal = Look(layout.font, layout.size_pt, layout.spacing, base="", side="full" if layout.justified else "left")
    plain = replace(normal, base="Normal")
    body = replace(plain, first_pt=layout.indent_pt)
    centred = replace(plain, side="centre")
    title = replace(centred, bold=layout.title_bold, keep=True)
    blank = line_pitch_pt(layout, layout.spacing)
    before, after = title_page_spaces_pt(layout)
    title_of_page = replace(title, before_pt=before, after_pt=after)
    list_title = replace(
        centred, bold=layout.list_title_bold, keep=True, new_page=layout.list_new_page, outline=0, base="Heading 1"
    )
    close = layout.list_spacing == 1
    annotation = replace(
        plain,
        spacing=layout.list_spacing,
        left_pt=annotation_indent_pt(layout),
        after_pt=line_pitch_pt(layout, 1.0) if close else 0.0,
    )
    set_off = (layout.spacing - layout.quote_spacing) * blank / layout.spacing
    quote = replace(plain, left_pt=layout.indent_pt, spacing=layout.quote_spacing, after_pt=set_off)
    note = replace(plain, size_pt=note_size_pt(layout), spacing=layout.note_spacing, first_pt=layout.indent_pt)
    table = replace(plain, spacing=layout.table_spacing)
    headings = {f"Heading {level}": _heading(plain, level, layout) for level in range(1, HEADING_LEVELS + 1)}
    return {
        "Normal": normal,
        "Body Text": body,
        "First Paragraph": replace(body, base="Body Text"),
        "Opening Text": replace(body, base="Body Text", new_page=True),
        "Continued": replace(plain, base="Body Text"),
        "Run-in Text": replace(body, base="Body Text"),
        "Compact": plain,
        "Table Text": table,
        "After Table": replace(body, base="Body Text", before_pt=blank / 2),
        "Heading Line": plain,
        "Title": title_of_page if layout.first_page == "title-page" else title,
        "Title Page Line": centred,
        "Title Again": replace(title, base="Normal", new_page=True),
        **headings,
        "Opening Heading": replace(headings["Heading 1"], base="Heading 1", new_page=True),
        "Abstract Title": replace(title, base="Heading 1", new_page=True, outline=0),
        "Abstract": plain,
        "List Title": list_title,
        "Bibliography": replace(
            plain,
            spacing=layout.list_spacing,
            left_pt=layout.indent_pt,
            first_pt=-layout.indent_pt,
            after_pt=line_pitch_pt(layout, 1.0) if close else 0.0,
        ),
        "Annotation": annotation,
        "Annotation Continued": replace(annotation, base="Annotation", first_pt=layout.indent_pt),
        "Block Text": quote,
        "Caption": replace(plain, keep=True),
        "Figure": replace(plain, keep=True),
        "Section Break": centred,
        "Source Code": replace(plain, font=VERBATIM_FONT, size_pt=max(8.0, layout.size_pt - 2), spacing=1.0),
        "Footnote Text": note,
        "Header": replace(plain, spacing=1.0),
        "Footer": replace(plain, spacing=1.0),
    }


def run_in_style(level: int) -> str:
    """The name of the character style that is linked with a heading's, for one that runs in.

    >>> run_in_style(4)
    'Heading 4 Char'
    """
    return f"Heading {min(level, HEADING_LEVELS)} Char"


VERBATIM_FONT = "Courier New"
"""The face of verbatim text, by the name that word processors know; its twin is Cousine."""


def _heading(plain: Look, level: int, layout: Layout) -> Look:
    look = heading_look(level, layout)
    return replace(
        plain,
        bold="bold" in look,
        italic="italic" in look,
        side="centre" if "centred" in look else "left",
        left_pt=layout.indent_pt if "indented" in look else 0.0,
        keep=True,
        outline=level - 1,
    )
