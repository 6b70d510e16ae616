"""The page of each style's student paper, with what the sheet asks laid over it."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace
from typing import Literal

from fairhand.fair_copy.document import Layout
from fairhand.fair_copy.faces import face_for
from fairhand.fair_copy.sheet_rules import FORMAT_RULES
from fairhand.fair_copy.student_papers import BRITISH, LAYOUTS
from fairhand.model.requirement import Requirement, Value

Paper = Literal["us-letter", "a4"]

PAPER_SIZES_PT: dict[Paper, tuple[float, float]] = {"us-letter": (612.0, 792.0), "a4": (595.28, 841.89)}
"""Width and height. **Source**: ANSI A; ISO 216."""

PROOF_MARGIN_PT = 108.0
"""An inch and a half on both sides, for marks by hand."""


def layout_for(style_name: str, requirements: Sequence[Requirement] = (), paper: Paper = "us-letter") -> Layout:
    """The style's student paper on that size of paper, with the sheet's format rules over it.

    Rules that merely allow something change nothing. A style without a row gets Harvard's plain page.

    >>> layout_for("mla-9").running_head, layout_for("apa-7", paper="a4").first_page
    ('surname', 'title-page')
    """
    name = style_name.casefold()
    rows = [row for row in LAYOUTS if name.startswith(row)] or [row for row in LAYOUTS if row in name]
    layout = replace(LAYOUTS[rows[0]] if rows else replace(BRITISH, style=style_name or "plain page"), paper=paper)
    for requirement in requirements:
        what, value = requirement.values.get("what"), requirement.values.get("value")
        if requirement.kind == "format" and requirement.force != "may" and what in FORMAT_RULES:
            layout = FORMAT_RULES[str(what)](layout, _said(value))
    return layout


def _said(value: Value) -> str:
    """A rule's value in words; nothing where the sheet only wants the thing."""
    if value is None or isinstance(value, bool):
        return ""
    return ", ".join(value) if isinstance(value, tuple) else str(value)


def proof_layout(layout: Layout) -> Layout:
    """The same page as a proof: lines numbered, an inch and a half on both sides for marks.

    >>> proof_layout(layout_for("mla")).margins_pt
    (72.0, 108.0, 72.0, 108.0)
    """
    top, right, bottom, left = layout.margins_pt
    wide = (top, max(right, PROOF_MARGIN_PT), bottom, max(left, PROOF_MARGIN_PT))
    return replace(layout, proof=True, line_numbers=True, margins_pt=wide)


def layout_notes(layout: Layout) -> tuple[str, ...]:
    """What the writer should know of the page: where a face was replaced by one that is not its twin.

    >>> layout_notes(layout_for("mla"))
    ()
    """
    face, twin = face_for(layout.font)
    if twin:
        return ()
    note = (
        f"No free face has the widths of {layout.font}: the PDF is set in {face.name}, so its pages may fall otherwise"
    )
    return (f"{note}; the DOCX and ODT ask for {layout.font}.",)


def line_pitch_pt(layout: Layout, spacing: float) -> float:
    """The distance from one baseline to the next, as a word processor sets it.

    >>> round(line_pitch_pt(layout_for("mla"), 2.0), 1)
    27.6
    """
    return spacing * face_for(layout.font)[0].line * layout.size_pt


def text_height_pt(layout: Layout) -> float:
    """The height between the top and the bottom margin."""
    return PAPER_SIZES_PT[layout.paper][1] - layout.margins_pt[0] - layout.margins_pt[2]


def lines_per_page(layout: Layout) -> int:
    """How many lines of the body's spacing a page holds, as a word processor counts them.

    >>> lines_per_page(layout_for("mla"))
    23
    """
    return max(1, math.floor(text_height_pt(layout) / line_pitch_pt(layout, layout.spacing) + 1e-9))


def title_page_spaces_pt(layout: Layout) -> tuple[float, float]:
    """The room above and below the title on a title page."""
    if layout.title_page_form == "upper half":
        blank = line_pitch_pt(layout, layout.spacing)
        return 3 * blank, blank
    third = text_height_pt(layout) / 3
    return third, third


def note_size_pt(layout: Layout) -> float:
    """The size of a footnote's type: the text's own where notes are double-spaced, else two points less."""
    return layout.size_pt if layout.note_spacing > 1 else max(8.0, layout.size_pt - 2)


def annotation_indent_pt(layout: Layout) -> float:
    """How far an annotation stands from the left margin: twice the indent in MLA, else as far as its entry hangs.

    **Source**: MLA Handbook, 9th ed., 5.132; APA 7, 9.51; from memory.

    >>> annotation_indent_pt(layout_for("mla")), annotation_indent_pt(layout_for("apa"))
    (72.0, 36.0)
    """
    return layout.indent_pt * (2 if layout.style.startswith("MLA") else 1)
