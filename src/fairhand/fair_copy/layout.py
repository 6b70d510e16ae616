"""The page of each style's student paper, with what the sheet asks laid over it."""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Sequence
from dataclasses import replace
from typing import Literal

from fairhand.fair_copy.document import Layout
from fairhand.fair_copy.faces import face_for, named_face
from fairhand.model.requirement import Requirement

Paper = Literal["us-letter", "a4"]

PAPER_SIZES_PT: dict[Paper, tuple[float, float]] = {"us-letter": (612.0, 792.0), "a4": (595.28, 841.89)}
"""Width and height. **Source**: ANSI A; ISO 216."""

PROOF_MARGIN_PT = 108.0
"""An inch and a half on both sides, for marks by hand."""

APA = Layout(
    "APA 7, student paper",
    first_page="title-page",
    title_bold=True,
    title_again=True,
    title_page_form="upper half",
    heading_forms=(
        "centred bold",
        "left bold",
        "left bold italic",
        "indented bold run-in",
        "indented bold italic run-in",
    ),
)
"""**Source**: Publication Manual of the APA, 7th ed., chapter 2."""

MLA = Layout(
    "MLA 9",
    running_head="surname",
    list_title="Works Cited",
    list_title_bold=False,
    heading_forms=("left bold", "left italic", "centred bold", "centred italic", "left plain"),
    caption_form="mla",
    table_spacing=2.0,
)
"""**Source**: MLA Handbook, 9th ed., chapter 1; it has no fixed set of headings, these are common practice."""

CHICAGO = Layout(
    "Turabian 9 (Chicago)",
    first_page="title-page",
    number_title_page=False,
    list_title="Bibliography",
    list_title_bold=False,
    list_spacing=1.0,
    quote_spacing=1.0,
    note_spacing=1.0,
    heading_forms=("centred bold", "centred plain", "left bold", "left plain", "indented bold run-in"),
    caption_form="chicago",
)
"""**Source**: Turabian, A Manual for Writers, 9th ed., appendix."""

BRITISH = Layout(
    "Harvard",
    spacing=1.5,
    list_spacing=1.5,
    quote_spacing=1.5,
    note_spacing=1.0,
    page_number="bottom centre",
    title_bold=True,
    heading_forms=(
        "left bold",
        "left bold italic",
        "left italic",
        "indented bold run-in",
        "indented bold italic run-in",
    ),
)
"""**Source**: common practice; Harvard referencing prescribes no page."""

NUMBERED = Layout(
    "numbered references",
    title_bold=True,
    note_spacing=1.0,
    heading_forms=BRITISH.heading_forms,
)
"""**Source**: common practice for double-spaced manuscripts in the sciences."""

LAYOUTS = {
    "chicago-author-date": replace(CHICAGO, style="Turabian 9 (Chicago, author-date)", list_title="References"),
    "turabian-author-date": replace(CHICAGO, style="Turabian 9 (author-date)", list_title="References"),
    "chicago": CHICAGO,
    "turabian": CHICAGO,
    "mla": MLA,
    "modern-language": MLA,
    "apa": APA,
    "mhra": replace(BRITISH, style="MHRA 4", list_title="Bibliography", spacing=2.0),
    "harvard": BRITISH,
    "ieee": replace(NUMBERED, style="IEEE"),
    "ama": replace(NUMBERED, style="AMA 11"),
    "vancouver": replace(NUMBERED, style="Vancouver"),
    "asa": replace(APA, style="ASA 7", title_again=False, title_bold=False),
}
"""Each style's page; the first row whose name begins (else occurs in) the style's name holds."""


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
            layout = FORMAT_RULES[str(what)](layout, value if isinstance(value, str) else "")
    return layout


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


def note_size_pt(layout: Layout) -> float:
    """The size of a footnote's type: the text's own where notes are double-spaced, else two points less."""
    return layout.size_pt if layout.note_spacing > 1 else max(8.0, layout.size_pt - 2)


_UNITS_PT = {"pt": 1.0, "point": 1.0, "cm": 72 / 2.54, "mm": 72 / 25.4, "in": 72.0, '"': 72.0, "”": 72.0}
_LENGTH = re.compile(r'(\d{1,4}(?:[.,]\d{1,4})?|½)\s{0,3}-?\s{0,3}(pt|point|cm|mm|in|"|”)', re.IGNORECASE)
_NUMBER = re.compile(r"\d{1,3}(?:[.,]\d{1,3})?")
_SPACINGS = {"double": 2.0, "single": 1.0, "one and a half": 1.5, "one-and-a-half": 1.5, "1½": 1.5}


def _length_pt(text: str) -> float | None:
    """The first length in ``text``, in points.

    >>> _length_pt("2.54 cm"), _length_pt("wide")
    (72.0, None)
    """
    found = _LENGTH.search(text)
    if found is None:
        return None
    number = 0.5 if found[1] == "½" else float(found[1].replace(",", "."))
    return number * _UNITS_PT[found[2].lower()]


def _with_font(layout: Layout, value: str) -> Layout:
    return replace(layout, font=named_face(value)) if value.strip() else layout


def _with_size(layout: Layout, value: str) -> Layout:
    found = _NUMBER.search(value)
    size = float(found[0].replace(",", ".")) if found else 0.0
    return replace(layout, size_pt=size) if 6 <= size <= 36 else layout


def _with_spacing(layout: Layout, value: str) -> Layout:
    """One spacing for the whole paper, except what the style sets closer than its text."""
    lower = value.casefold()
    found = _NUMBER.search(lower)
    spacing = next((lines for word, lines in _SPACINGS.items() if word in lower), None)
    if spacing is None and found:
        spacing = float(found[0].replace(",", "."))
    if spacing is None or not 1 <= spacing <= 3:
        return layout

    def closer(old: float) -> float:
        return spacing if old == layout.spacing else min(old, spacing)

    return replace(
        layout,
        spacing=spacing,
        list_spacing=closer(layout.list_spacing),
        quote_spacing=closer(layout.quote_spacing),
        note_spacing=closer(layout.note_spacing),
        table_spacing=closer(layout.table_spacing),
    )


def _with_margins(layout: Layout, value: str) -> Layout:
    """All four margins; a side that the sheet names alone ("4 cm left") keeps to itself."""
    top, right, bottom, left = layout.margins_pt
    for piece in re.split(r"[,;]| and ", value.casefold()):
        length = _length_pt(piece)
        if length is None or not 14 <= length <= 200:
            continue
        sides = [side for side in ("top", "right", "bottom", "left") if side in piece]
        everywhere = not sides
        top = length if everywhere or "top" in sides else top
        right = length if everywhere or "right" in sides else right
        bottom = length if everywhere or "bottom" in sides else bottom
        left = length if everywhere or "left" in sides else left
    return replace(layout, margins_pt=(top, right, bottom, left))


def _with_page_numbers(layout: Layout, value: str) -> Layout:
    """The number where the sheet wants it; where it only wants one, where the style has it."""
    lower = value.casefold().replace("center", "centre")
    if lower in {"none", "no"}:
        return replace(layout, page_number="none")
    old = ("top right" if layout.page_number == "none" else layout.page_number).split()
    height = "bottom" if re.search(r"bottom|foot", lower) else "top" if re.search(r"top|head|upper", lower) else old[0]
    side = next((side for side in ("centre", "right", "left") if side in lower or f"{side[:5]}d" in lower), None)
    if side is None:
        side = "centre" if height == "bottom" and old[0] == "top" else old[1]
    place = f"{height} {side}"
    return replace(layout, page_number=place)  # type: ignore[arg-type]


def _with_running_head(layout: Layout, value: str) -> Layout:
    lower = value.casefold()
    if lower in {"none", "no"}:
        return replace(layout, running_head="none")
    if re.search(r"title", lower):
        return replace(layout, running_head="title")
    if re.search(r"name|surname", lower) or layout.running_head == "none":
        named = re.search(r"name|surname", lower) or not layout.style.startswith("APA")
        return replace(layout, running_head="surname" if named else "title")
    return layout


def _with_indent(layout: Layout, value: str) -> Layout:
    length = _length_pt(value)
    return replace(layout, indent_pt=length) if length is not None and 0 <= length <= 100 else layout


FORMAT_RULES: dict[str, Callable[[Layout, str], Layout]] = {
    "font": _with_font,
    "font-size": _with_size,
    "spacing": _with_spacing,
    "margins": _with_margins,
    "page-numbers": _with_page_numbers,
    "running-head": _with_running_head,
    "title-page": lambda layout, _: replace(layout, first_page="title-page"),
    "no-title-page": lambda layout, _: replace(layout, first_page="heading"),
    "paragraph-indent": _with_indent,
    "line-numbers": lambda layout, _: replace(layout, line_numbers=True),
}
"""What each format requirement changes; those without a row (file names, printing …) do not touch the page."""
