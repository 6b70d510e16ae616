"""Footnotes at the foot of a page, told from the text that they interrupt.

Common practice of printing: notes stand last on the page, each begins a line with its number, and the number is called
by the same figure, raised, close behind a word of the text above. Only a note that is so called is taken for one.
"""

from __future__ import annotations

import re

_NOTE = re.compile(r"^[ \t]{0,8}(\d{1,3})[.)]?[ \t]{0,4}(?=[^\W\d_]|[“‘\"'(])", re.MULTILINE)
_MOST_NOTES = 60
"""No page has more."""


def part_footnotes(text: str) -> tuple[str, int | None]:
    r"""A page's text without the figures that call its footnotes, and where in it the footnotes begin.

    >>> text, notes_from = part_footnotes("The quay was sold.7 It stood\n7 See the ledger.")
    >>> text[:notes_from], text[notes_from:]
    ('The quay was sold. It stood\n', '7 See the ledger.')
    """
    notes = list(_NOTE.finditer(text))[-_MOST_NOTES:]
    for number, note in enumerate(notes):
        called = _calls(text[: note.start()], [later[1] for later in notes[number:]])
        if called:
            kept = text[: note.start()]
            for start, end in reversed(called):
                kept = kept[:start] + kept[end:]
            return kept + text[note.start() :], len(kept)
    return text, None


def _calls(text: str, figures: list[str]) -> list[tuple[int, int]]:
    """Where the text calls the notes of these figures, in order; empty unless the first and most are called."""
    out: list[tuple[int, int]] = []
    at = 0
    for figure in figures:
        found = re.compile(rf"(?:(?<=[^\W\d])|(?<=[^\s\d][.,;:!?”’\"')\]])){figure}(?![\w.,]\d|\w)").search(text, at)
        if found is not None:
            out.append(found.span())
            at = found.end()
        elif not out:
            return []
    return out if 2 * len(out) >= len(figures) else []
