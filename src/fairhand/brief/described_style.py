"""The citation style that a sheet describes without naming one."""

from __future__ import annotations

import re

from fairhand.model.span import Span

DESCRIBED: tuple[tuple[str, re.Pattern[str]], ...] = (
    (
        "chicago-notes",
        re.compile(r"\b(?:foot|end)notes?\b(?![^.]{0,40}\b(?:not|don't|avoid|no)\b)", re.IGNORECASE),
    ),
    ("ieee", re.compile(r"\bnumbered\s+(?:references|citations)\b|\bcitations?\s+numbers?\b", re.IGNORECASE)),
    ("mla", re.compile(r"\bworks\s+cited\b|\bauthor[\s–-]+page\b", re.IGNORECASE)),
    (
        "apa",
        re.compile(r"\b(?:author|name)[\s–-]+(?:and[\s–-]+)?(?:date|year)\b|\breference\s+list\b", re.IGNORECASE),
    ),
)
"""What a style is known by where it is not named, the surest first. **Source**: common practice."""


def describe_style(text: str) -> tuple[str, Span] | None:
    """The style nearest to what the sheet says of citing, and where it says so; None where it says nothing.

    >>> describe_style("Cite in footnotes, and end with a bibliography.")[0]
    'chicago-notes'
    """
    for style, pattern in DESCRIBED:
        found = pattern.search(text)
        if found:
            return style, Span(*found.span())
    return None
