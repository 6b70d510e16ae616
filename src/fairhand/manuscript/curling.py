"""Typewriter marks as printers set them: curly quotation marks, apostrophes and dashes."""

from __future__ import annotations

import re

from fairhand.manuscript.passages import read_passage

_CURLY = {'"': ("“", "”"), "'": ("‘", "’")}
_HYPHENS = re.compile(r"(?<!-)-{2,3}(?!-)")


def curl_marks(text: str) -> list[tuple[int, int, str]]:
    r"""What to put in place of the typewriter marks of a passage, as half-open intervals of it.

    Foot and inch marks after a figure stay. Two hyphens are an en rule between figures and an em rule elsewhere.
    **Source**: common practice of typesetting from typescript.

    >>> [new for _, _, new in curl_marks("\"It's 5'10\"--no,\" he said.")]
    ['“', '’', '—', '”']
    """
    reading = read_passage(text)
    said, scan = reading.bare.text, reading.bare.scan
    curled: dict[int, str] = {}
    for pair in reading.pairs:
        if pair.mark in _CURLY:
            curled[pair.start] = _CURLY[pair.mark][0]
        if pair.closed and pair.quoted and scan[pair.end - 1] in _CURLY:
            curled[pair.end - 1] = _CURLY[scan[pair.end - 1]][1]
    for at, char in enumerate(scan):
        if char in _CURLY and at not in curled and not scan[at - 1 : at].isdigit():
            begins = not at or scan[at - 1].isspace()
            curled[at] = _CURLY[char][0] if begins and char == '"' else _CURLY[char][1]
    changes = [(reading.bare.starts[at], reading.bare.ends[at], new) for at, new in curled.items()]
    for found in _HYPHENS.finditer(scan):
        figures = said[found.start() - 1 : found.start()].isdigit() and said[found.end() : found.end() + 1].isdigit()
        dash = "–" if figures and len(found.group()) == 2 else "—"
        span = reading.span(found.start(), found.end())
        changes.append((span.start, span.end, dash))
    return sorted(changes)
