"""What each format rule of a sheet changes on the page."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace

from fairhand.fair_copy.document import Layout
from fairhand.fair_copy.faces import named_face

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
