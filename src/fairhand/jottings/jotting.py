"""What stands in ``jottings.md``: one thought after another, in whatever form it came."""

from __future__ import annotations

import re
from dataclasses import dataclass

from fairhand.language.sentences import split_sentences

WHERE = "jottings.md"
LONG = 40
"""Words of a line beyond which its sentences are taken for thoughts of their own."""
_MARK = re.compile(r"[ \t]{0,40}(?:[-*+•–—]|\d{1,3}[.)])[ \t]+")
_RULE = re.compile(r"[\W_]*")
_HEADING = re.compile(r" {0,3}#{1,6}(?:[ \t]|$)")


@dataclass(frozen=True, slots=True)
class Jotting:
    """One thought, word for word."""

    text: str
    """Its words, without the mark of a list before them; never changed by the program."""
    line: int
    """The line that it begins on, from 1."""

    @property
    def words(self) -> str:
        """Its words, however its lines are broken: by these it is known again."""
        return " ".join(self.text.split())


def read_jottings(text: str) -> tuple[Jotting, ...]:
    r"""The thoughts in their order: a line each, a long line by its sentences; an indented line carries on.

    Headings and lines without a word are none.

    >>> [(one.text, one.line) for one in read_jottings("# Trams\n- who counted?\n- slips!\n  can one trust them\n")]
    [('who counted?', 2), ('slips!\n  can one trust them', 3)]
    """
    found: list[tuple[str, int]] = []
    ended = True
    for number, line in enumerate(text.splitlines(), 1):
        if _RULE.fullmatch(line) or _HEADING.match(line):
            ended = True
            continue
        mark = _MARK.match(line)
        if not mark and not ended and line[0] in " \t":
            before, at = found[-1]
            found[-1] = (f"{before}\n{line.rstrip()}", at)
            continue
        ended = False
        found.append((line[mark.end() if mark else 0 :].strip(), number))
    return tuple(jotting for thought, at in found for jotting in _part(thought, at))


def _part(thought: str, at: int) -> tuple[Jotting, ...]:
    if len(thought.split()) <= LONG:
        return (Jotting(thought, at),)
    spans = split_sentences(thought)
    return tuple(Jotting(span.of(thought), at + thought.count("\n", 0, span.start)) for span in spans)
