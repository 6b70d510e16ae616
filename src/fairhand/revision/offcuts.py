"""``offcuts.jsonl``: passages that were cut from the draft and are kept, one W3C Web Annotation a line.

A line that is no offcut, or that cannot be read, is kept as it stands.

**Source**: W3C Web Annotation Data Model (2017), sections 3.2.4 and 4.2.4: an offcut is selected by its words and by
what stood on either side, here for several passages, since the nearest may be cut as well.
"""

from __future__ import annotations

import hashlib
import json
import re
from collections.abc import Sequence
from dataclasses import dataclass

from fairhand.language.line_files import add_line, drop_lines
from fairhand.model.problem import Problem
from fairhand.model.span import Span
from fairhand.reading.annotation_line import first_said, quote_of, read_annotation, write_annotation

WHERE = "offcuts.jsonl"
OFFCUT = "offcut"
"""The tag that tells an offcut from whatever else may be annotated."""
_LINES = re.compile(r"(?:[ \t]*\n)+")
PASSAGES_AROUND = 6
MOST_AROUND = 6000
"""How many passages on either side are kept, and how many code points of them at the most."""


@dataclass(frozen=True, slots=True)
class Offcut:
    """A passage cut and kept."""

    text: str
    """What was cut, as it stood, with the blanks that went with it."""
    before: str = ""
    """What stood before it, for some passages."""
    after: str = ""
    """What stood after it."""
    reason: str = ""
    when: str = ""
    """The moment, as ISO 8601 has it."""
    section: str = ""
    """The heading that it stood under."""

    @property
    def name(self) -> str:
        """A short name by which it is told from every other.

        >>> Offcut("Rain.").name == Offcut("Rain.", reason="too long").name != Offcut("Snow.").name
        True
        """
        told = json.dumps([self.text, self.before, self.after, self.when])
        return hashlib.sha256(told.encode("utf-8", "replace")).hexdigest()[:12]

    @property
    def words(self) -> str:
        """What was cut, on one line."""
        return " ".join(self.text.split())


def find_cut(text: str, span: Span) -> Span:
    r"""What goes where the words in a place are cut: with whole lines the blank lines below, with a piece one blank.

    Args:
        text: The draft.
        span: What is cut; the blanks at its ends do not count.

    >>> text = "One.\n\nTwo two.\n\nThree.\n"
    >>> [find_cut(text, Span(a, b)).of(text) for a, b in ((6, 14), (6, 9), (16, 22))]
    ['Two two.\n\n', 'Two ', '\n\nThree.']
    """
    start = span.end - len(span.of(text).lstrip())
    end = start + len(text[start : span.end].rstrip())
    at_start, at_end = text[:start].endswith("\n") or not start, text[end : end + 1] in {"", "\n"}
    if at_start and at_end:
        further = _LINES.match(text, end)
        if text[end:].strip() and further:
            end = further.end()
        else:
            start = len(text[:start].rstrip())
    elif at_end:
        start = len(text[:start].rstrip(" \t"))
    elif at_start or text[start - 1].isspace():
        end += len(text[end:]) - len(text[end:].lstrip(" \t"))
    return Span(start, end)


def take_offcut(text: str, cut: Span, passages: Sequence[Span]) -> Offcut:
    r"""What stands in a place, with what stands around it for some passages.

    Args:
        text: The draft, with what was cut earlier where it would stand.
        cut: What is cut.
        passages: The passages of that text, in order.

    >>> take_offcut("One.\n\nTwo.\n\nThree.\n", Span(6, 12), (Span(0, 4), Span(6, 10), Span(12, 18))).after
    'Three.'
    """
    firsts = [one.start for one in passages if one.start < cut.start][-PASSAGES_AROUND:]
    lasts = [one.end for one in passages if one.end > cut.end][:PASSAGES_AROUND]
    first, last = firsts[0] if firsts else 0, lasts[-1] if lasts else len(text)
    before = text[max(first, cut.start - MOST_AROUND) : cut.start]
    return Offcut(cut.of(text), before, text[cut.end : min(last, cut.end + MOST_AROUND)])


def read_offcuts(text: str) -> tuple[tuple[Offcut, ...], tuple[Problem, ...]]:
    """The offcuts that the file's text holds, with a problem for each line that cannot be read.

    >>> kept, problems = read_offcuts(add_offcut("", Offcut("Rain. ", "It was wet. ", "So we left.", "a digression")))
    >>> kept[0].text, kept[0].reason, problems
    ('Rain. ', 'a digression', ())
    """
    found, problems = [], []
    for number, line in enumerate(text.split("\n"), 1):
        if line.strip():
            try:
                one = _read_line(line)
            except (ValueError, RecursionError) as error:
                where = f"{WHERE}, line {number}"
                problems.append(Problem(where, f"it is no annotation ({error})", "mend it; it is kept as it stands"))
                continue
            if one is not None:
                found.append(one)
    return tuple(found), tuple(problems)


def add_offcut(text: str, one: Offcut) -> str:
    """The file's text with one offcut more, at its end."""
    return add_line(text, _tell(one))


def drop_offcut(text: str, name: str) -> str:
    """The file's text without the offcut of that name; every other line stands as it was."""
    return drop_lines(text, lambda line: (one := _read_line(line)) is not None and one.name == name)


def _tell(one: Offcut) -> str:
    said = [("tagging", OFFCUT), ("commenting", one.reason), ("describing", one.section)]
    quote = {"exact": one.text, "prefix": one.before, "suffix": one.after}
    return write_annotation("editing", said, quote, created=one.when)


def _read_line(line: str) -> Offcut | None:
    """The offcut that a line holds; None where it is another annotation."""
    found = read_annotation(line) if line.strip() else {}
    said, quoted = first_said(found), quote_of(found)
    if said.get("tagging") != OFFCUT or not quoted.get("exact"):
        return None
    return Offcut(
        text=str(quoted["exact"]),
        before=str(quoted.get("prefix", "")),
        after=str(quoted.get("suffix", "")),
        reason=said.get("commenting", ""),
        when=str(found.get("created", "")),
        section=said.get("describing", ""),
    )
