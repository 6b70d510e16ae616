"""How many pages the body fills, read off the typeset page: to cast off is to reckon a copy's length in pages."""

from __future__ import annotations

from collections.abc import Collection, Iterator

from fairhand.fair_copy.document import Layout
from fairhand.fair_copy.faces import face_for
from fairhand.fair_copy.layout import line_pitch_pt, lines_per_page, note_size_pt
from fairhand.model.request import Typeset

PARTS = {"block-quotes": "quote", "figures": "figure", "headings": "heading", "appendices": "appendix"}
"""What a sheet may leave uncounted within the body, by the name that requirements have for it; and ``footnotes``."""


def body_pages(typeset: Typeset, layout: Layout, excludes: Collection[str] = ()) -> float:
    """The pages from the body's first line to its last, the parts in ``excludes`` left out.

    Title page, heading lines, abstract and the list of references are not the body. A page is as many lines of the
    body's spacing as it holds: half of them are half a page.
    """
    parts = [name for excluded in excludes if excluded in PARTS for name in _numbered(typeset, PARTS[excluded])]
    pages = pages_of(typeset, layout, "body") - _union([_interval(typeset, layout, name) for name in parts])
    if "footnotes" in excludes:
        pages -= sum(_note_pages(typeset, layout, name) for name in _numbered(typeset, "note"))
    return max(0.0, pages)


def pages_of(typeset: Typeset, layout: Layout, part: str) -> float:
    """The pages that ``part`` (``"body"``, ``"abstract"``, ``"references"``) fills; 0 where the paper has none."""
    if f"{part} start" not in typeset.places:
        return 0.0
    start, end = _interval(typeset, layout, part)
    return end - start


def part_starts(typeset: Typeset, layout: Layout, part: str) -> tuple[float, ...]:
    """Where ``part``, or each part of that name that is numbered, begins: in pages from the paper's first, in order."""
    names = [part] if f"{part} start" in typeset.places else list(_numbered(typeset, part))
    return tuple(_interval(typeset, layout, name)[0] for name in names)


def _numbered(typeset: Typeset, part: str) -> Iterator[str]:
    """The names of the parts of that kind, in order."""
    number = 0
    while f"{part} {number} start" in typeset.places:
        yield f"{part} {number}"
        number += 1


def _interval(typeset: Typeset, layout: Layout, part: str) -> tuple[float, float]:
    """Where the part starts and ends, in pages from the paper's first; the space below its last line is its own."""
    face = face_for(layout.font)[0]
    leading_pt = line_pitch_pt(layout, layout.spacing) - (face.ascent + face.descent) * layout.size_pt
    ends = []
    for name, below_pt in ((f"{part} start", 0.0), (f"{part} end", leading_pt)):
        page, y_pt = typeset.places[name]
        ends.append(page - 1 + min(1.0, max(0.0, (y_pt + below_pt - layout.margins_pt[0]) / _page_pt(layout))))
    return ends[0], max(ends)


def _note_pages(typeset: Typeset, layout: Layout, name: str) -> float:
    """What a footnote takes from its page; nothing on the body's last page, which is measured above its notes."""
    page, top_pt = typeset.places[f"{name} start"]
    end_page, bottom_pt = typeset.places[f"{name} end"]
    if end_page >= typeset.places["body end"][0] or page != end_page:
        return 0.0
    line_pt = line_pitch_pt(layout, layout.note_spacing) * note_size_pt(layout) / layout.size_pt
    return (bottom_pt - top_pt + line_pt) / _page_pt(layout)


def _page_pt(layout: Layout) -> float:
    """The height of a page's lines."""
    return lines_per_page(layout) * line_pitch_pt(layout, layout.spacing)


def _union(intervals: list[tuple[float, float]]) -> float:
    """The length of all the intervals together, what they share counted once.

    >>> _union([(0, 2), (1, 3), (5, 6)])
    4.0
    """
    total, reached = 0.0, float("-inf")
    for start, end in sorted(intervals):
        total += max(0.0, end - max(start, reached))
        reached = max(reached, end)
    return total
