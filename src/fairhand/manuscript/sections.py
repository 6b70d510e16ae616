"""The sections of a paper that the trade knows by name."""

from __future__ import annotations

import re
from typing import Literal

from fairhand.manuscript.parts import Manuscript, Section

SectionKind = Literal["abstract", "contents", "references", "appendices", "notes"]
"""A section that is not the argument itself."""

_NUMBER = r"(?:(?:section\s)?(?:\d{1,2}|[ivx]{1,5})[.:)]?\s{1,3})?"
_KINDS: dict[SectionKind, re.Pattern[str]] = {
    "abstract": re.compile(rf"{_NUMBER}(?:abstract|executive summary)", re.IGNORECASE),
    "contents": re.compile(r"(?:table of )?contents", re.IGNORECASE),
    "references": re.compile(
        rf"{_NUMBER}(?:list of )?(?:(?:works?|literature|sources?|references) (?:cited|consulted|used)|references?|"
        r"references? list|(?:select(?:ed)? |annotated |working )?bibliography|reference list)",
        re.IGNORECASE,
    ),
    "appendices": re.compile(rf"{_NUMBER}appendi(?:x|ces)\b.{{0,200}}", re.IGNORECASE),
    "notes": re.compile(rf"{_NUMBER}(?:notes|endnotes|footnotes)", re.IGNORECASE),
}


def section_kind(section: Section) -> SectionKind | None:
    """What a section is by its heading, or None where it belongs to the argument.

    **Source**: the titles that MLA 9, APA 7 and CMOS 17 give these parts.

    >>> from fairhand.model.span import Span
    >>> section_kind(Section(None, "6. Works Cited", 2, Span(0, 0)))
    'references'
    """
    title = section.title.strip().rstrip(":.")
    return next((kind for kind, pattern in _KINDS.items() if pattern.fullmatch(title)), None)


def named_sections(manuscript: Manuscript) -> tuple[tuple[SectionKind, Section], ...]:
    """The sections that are not the argument itself, in order; what stands under one of them is part of it."""
    found: list[tuple[SectionKind, Section]] = []
    for section in manuscript.sections:
        kind = section_kind(section)
        if kind and not (found and found[-1][1].span.contains(section.span)):
            found.append((kind, section))
    return tuple(found)
