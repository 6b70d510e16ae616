"""A passage as it reads: inline markup gone, with the way back to each character's place.

Quotations, brackets, asides and sentences are looked for in what reads, so that emphasis, escapes, footnote numbers and
the addresses of links cannot hide them, and so that nothing within code or an address is taken for one.
"""

from __future__ import annotations

import html
import re
import unicodedata
from bisect import bisect_right
from dataclasses import dataclass, field

from fairhand.manuscript.asides import LABEL

LINE_END = "\u2028"
"""Stands in a bare text for a line end that is kept when the paper is printed."""
OPAQUE = "\ufffc"
"""Stands in a scanned text for each character of code and addresses."""

_SPECIAL = re.compile(
    r"""
    (?P<escape>\\[!-/:-@\[-`{-~])
    |(?P<hard>(?:\\|[ ]{2,})\n[ \t]*)
    |(?P<line>[ \t]?\n[ \t]*)
    |(?P<code>`+)
    |(?P<auto><(?:[A-Za-z][A-Za-z0-9+.-]{1,31}:[^<>\s]{1,2000}|[^<>\s@]{1,200}@[^<>\s@]{1,200})>)
    |(?P<html></?[A-Za-z][^<>]{0,1000}>|<!--(?:[^-]|-(?!->)){0,2000}-->)
    |(?P<entity>&(?:\#[0-9]{1,7}|\#[xX][0-9A-Fa-f]{1,6}|[A-Za-z][A-Za-z0-9]{1,31});)
    |(?P<note>\[\^[^\s\]]{1,100}\])
    |(?P<url>(?:https?://|www\.)[^\s<>"“”]+)
    |(?P<image>!(?=\[))
    |(?P<open>\[)
    |(?P<shut>\])
    |(?P<run>\*+|_+)
    """,
    re.VERBOSE,
)
_DESTINATION = re.compile(
    r"""\(\s{0,9}(?P<to><[^<>\n]{0,2000}>|[^\s()<>]{1,2000}(?:\([^\s()]{0,500}\)[^\s()]{0,500}){0,5})"""
    r"""(?:\s{1,9}(?:"[^"]{0,500}"|'[^']{0,500}'))?\s{0,9}\)"""
)
_ADDRESS = re.compile(r"<|[A-Za-z][A-Za-z0-9+.-]*:|.*[/#]|.*\.[A-Za-z]{2,5}\Z")
_ESCAPE = re.compile(r"\\([!-/:-@\[-`{-~])")


@dataclass(frozen=True, slots=True)
class Bare:
    """What a passage says, character by character."""

    text: str
    """As it reads; a line end is a line feed, or ``LINE_END`` where it is kept in print."""
    scan: str
    """The same, of the same length, with code and addresses opaque."""
    starts: tuple[int, ...]
    """Where each character begins in the passage."""
    ends: tuple[int, ...]
    """Where each character ends in the passage: an escape or an entity is longer than one."""


@dataclass(slots=True)
class _Run:
    """A run of emphasis marks that is still to be matched."""

    at: int
    left: int
    opens: bool
    closes: bool


@dataclass(slots=True)
class _Page:
    """The bare text under construction."""

    chars: list[str] = field(default_factory=list)
    scan: list[str] = field(default_factory=list)
    starts: list[int] = field(default_factory=list)
    ends: list[int] = field(default_factory=list)
    dropped: set[int] = field(default_factory=set)

    def keep(self, text: str, start: int, end: int, *, opaque: bool = False) -> None:
        """Take over ``text[start:end]``."""
        piece = text[start:end]
        self.chars.extend(piece)
        self.scan.extend(OPAQUE * len(piece) if opaque else piece)
        self.starts.extend(range(start, end))
        self.ends.extend(range(start + 1, end + 1))

    def put(self, char: str, start: int, end: int) -> None:
        """Take over one character that is written with several."""
        self.chars.append(char)
        self.scan.append(char)
        self.starts.append(start)
        self.ends.append(end)

    def finish(self) -> Bare:
        """What was kept."""
        kept = [index for index in range(len(self.chars)) if index not in self.dropped]
        return Bare(
            "".join(self.chars[index] for index in kept),
            "".join(self.scan[index] for index in kept),
            tuple(self.starts[index] for index in kept),
            tuple(self.ends[index] for index in kept),
        )


def read_bare(text: str) -> Bare:
    r"""What a passage of CommonMark says, its inline markup taken away.

    A link is one only where its destination looks like an address: ``[his](102)`` in a paper is a bracket and a page.

    >>> read_bare(r"*The* Mercury \[sic\] `x` [site](http://a.org)[^1]").text
    'The Mercury [sic] x site'
    """
    page = _Page()
    fences: dict[int, list[int]] = {}
    for fence in re.finditer(r"`+", text):
        fences.setdefault(len(fence.group()), []).append(fence.start())
    runs: dict[str, list[_Run]] = {"*": [], "_": []}
    opened: list[tuple[int, int, bool]] = []
    at = 0
    image = False
    while found := _SPECIAL.search(text, at):
        start, end = found.span()
        page.keep(text, at, start)
        at = end
        was_image, image = image, False
        match found.lastgroup:
            case "escape":
                page.put(text[start + 1], start, end)
            case "hard":
                page.put(LINE_END, start, end)
            case "line":
                page.put("\n", start, end)
            case "code":
                later = fences.get(end - start, [])
                index = bisect_right(later, start)
                if index < len(later):
                    page.keep(text, end, later[index], opaque=True)
                    at = later[index] + end - start
                else:
                    page.keep(text, start, end)
            case "auto":
                page.keep(text, start + 1, end - 1, opaque=True)
            case "entity":
                said = html.unescape(found.group())
                if len(said) == 1:
                    page.put(said, start, end)
                else:
                    page.keep(text, start, end)
            case "url":
                at = _url_end(text, start, end)
                page.keep(text, start, at, opaque=True)
            case "image":
                page.keep(text, start, end)
                image = True
            case "open":
                opened.append((len(page.chars), start, was_image))
                page.keep(text, start, end)
            case "shut":
                to = _DESTINATION.match(text, end) if opened else None
                index, place, is_image = opened.pop() if opened else (0, 0, False)
                if to and (is_image or is_address(to["to"])) and not LABEL.match(text, place):
                    page.dropped.update(range(index - 1, len(page.chars)) if is_image else (index,))
                    at = to.end()
                else:
                    page.keep(text, start, end)
            case "run":
                runs[text[start]].append(_flank(text, start, end, len(page.chars)))
                page.keep(text, start, end)
            case _:
                pass
    page.keep(text, at, len(text))
    for family in runs.values():
        page.dropped.update(_match_runs(family))
    return page.finish()


def is_address(destination: str) -> bool:
    """Whether what stands in the parenthesis after a bracket looks like an address, and not like a page.

    >>> [is_address(said) for said in ("https://a.org", "map.png", "102", "p.102")]
    [True, True, False, False]
    """
    return _ADDRESS.match(destination) is not None


def _url_end(text: str, start: int, end: int) -> int:
    """The end of an address in running text: points and brackets that close the sentence are not its own."""
    while end > start and (text[end - 1] in ".,;:!?'’*_]" or (text[end - 1] == ")" and "(" not in text[start:end])):
        end -= 1
    return end


def _flank(text: str, start: int, end: int, at: int) -> _Run:
    """Whether a run of ``*`` or ``_`` may open or close emphasis. **Source**: CommonMark 0.31.2, section 6.2."""
    before = text[start - 1] if start else " "
    after = text[end] if end < len(text) else " "
    before_space, after_space = before.isspace(), after.isspace()
    before_point, after_point = (unicodedata.category(char)[0] in "PS" for char in (before, after))
    left = not after_space and (not after_point or before_space or before_point)
    right = not before_space and (not before_point or after_space or after_point)
    if text[start] == "_":
        return _Run(at, end - start, left and (not right or before_point), right and (not left or after_point))
    return _Run(at, end - start, left, right)


def _match_runs(runs: list[_Run]) -> set[int]:
    """The positions of the marks that are emphasis, each closing run matched with the nearest opening one."""
    emphasis: set[int] = set()
    waiting: list[_Run] = []
    for run in runs:
        if run.closes:
            while run.left and waiting:
                opener = waiting[-1]
                used = min(opener.left, run.left)
                emphasis.update(range(opener.at + opener.left - used, opener.at + opener.left))
                emphasis.update(range(run.at, run.at + used))
                opener.left -= used
                run.at += used
                run.left -= used
                if not opener.left:
                    waiting.pop()
        if run.opens and run.left:
            waiting.append(run)
    return emphasis
