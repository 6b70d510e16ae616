"""The paragraphs that title a table or a figure."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fairhand.manuscript.blocks import Part
from fairhand.model.span import Span

_NUMBERED = re.compile(
    r"[*_]{0,3}(?P<of>Table|Figure|Fig\.|Chart|Graph|Map|Plate|Illustration|Photograph|Diagram)\s{1,3}"
    r"(?:[A-Z]?\d{1,3}(?:[.-]\d{1,3})?[a-z]?|[IVXLC]{1,7})[*_]{0,3}\s{0,3}(?P<rest>\Z|[.:—–|-]|\\?\n)",
    re.IGNORECASE,
)
_LONGEST = 80
"""A caption of more words than this is a paragraph of prose."""


def find_captions(parts: Sequence[Part]) -> dict[int, tuple[int, ...]]:
    """For each position of a table or figure in ``parts``, the positions of the paragraphs that title it, if any.

    A table's caption stands above it (APA 7: the number on a line of its own, then the title), a figure's below it or,
    as APA 7 has it, above; each is looked for on the usual side first. **Source**: APA 7, 7.8–7.28; MLA 9, 1.7.
    """
    captions: dict[int, tuple[int, ...]] = {}
    taken: set[int] = set()
    for index, part in enumerate(parts):
        kind = part.block.kind
        if kind not in ("table", "figure"):
            continue
        above, below = (index - 1,), (index + 1,)
        both = (index - 2, index - 1)
        for places in (above, both, below) if kind == "table" else (below, above, both):
            if not taken.intersection(places) and _titles(parts, places, kind):
                captions[index] = places
                taken.update(places)
                break
    return captions


def caption_span(parts: Sequence[Part], places: tuple[int, ...]) -> Span:
    """The interval from the first to the last of the paragraphs at ``places``."""
    return Span(parts[places[0]].block.span.start, parts[places[-1]].block.span.end)


def _titles(parts: Sequence[Part], places: tuple[int, ...], kind: str) -> bool:
    if places[0] < 0 or places[-1] >= len(parts):
        return False
    texts = [
        part.passage.text
        for part in (parts[place] for place in places)
        if part.passage and part.block.kind == "paragraph"
    ]
    if len(texts) < len(places) or any(len(text.split()) > _LONGEST for text in texts):
        return False
    found = _NUMBERED.match(texts[0])
    if not found or (found["of"].casefold() == "table") != (kind == "table"):
        return False
    return len(places) == 1 or not texts[0][found.end() :].strip("*_ \n")
