"""The lines that a writer types beside the title: name, teacher, course, date."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from fairhand.manuscript.blocks import read_parts
from fairhand.manuscript.parts import Manuscript
from fairhand.manuscript.passages import read_passage
from fairhand.model.span import Span

LineOf = Literal["author", "institution", "course", "instructor", "date", "title", ""]
"""What a line says (``title``: the title once more); nothing where it cannot be told."""

_LONGEST_LINE = 12
"""A line of a title page or heading has no more words than this."""
_ENDS_A_SENTENCE = re.compile(r"[.!?:;…][\"”’')\]]{0,3}\Z")
_ENDS_SHORTENED = re.compile(r"\b(?:[JS]r|Ph\.?D|[BM]\.?(?:A|Sc|Ed|Phil)|Esq|[ap]\.m|[A-Z])\.\Z")
_LABELS: dict[str, LineOf] = {
    **dict.fromkeys(("name", "student", "student name", "author", "written by", "submitted by", "by"), "author"),
    **dict.fromkeys(("course", "module", "class", "unit", "course title", "course name"), "course"),
    **dict.fromkeys(
        ("instructor", "teacher", "tutor", "lecturer", "professor", "supervisor", "submitted to"), "instructor"
    ),
    **dict.fromkeys(("date", "due", "due date", "submitted", "date submitted", "date of submission"), "date"),
    **dict.fromkeys(("institution", "university", "college", "school", "department"), "institution"),
    **dict.fromkeys(("student number", "student id", "candidate number", "word count", "words", "assignment"), ""),
}
_LABELLED = re.compile(r"(?P<label>[A-Za-z ]{2,20}?)\s?(?::|\s[–—-])\s?(?=\S)|(?P<by>[Bb]y|BY)\s(?=[A-Z])")
_MONTHS = r"Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sept?|Oct|Nov|Dec"
_DATE = re.compile(
    rf"\b(?:{_MONTHS})[a-z]{{0,6}}\.?\s?\d|\d(?:st|nd|rd|th)?\s(?:of\s)?(?:{_MONTHS})"
    r"|\b\d{1,4}[/.-]\d{1,2}[/.-]\d{1,4}\b"
    r"|\b(?:Spring|Summer|Autumn|Fall|Winter|Michaelmas|Hilary|Trinity|Lent|Easter|Term)\b.{0,12}\b(?:19|20)\d\d\b",
    re.IGNORECASE,
)
_NAME_WORD = r"(?:[^\W\d_a-z][\w.’'-]{0,30}|de|del|della|der|den|di|du|da|dos|la|le|van|von|ten|ter|bin|al|y)"
_NAME = rf"(?:{_NAME_WORD},?\s(?:and\s|&\s)?){{1,8}}{_NAME_WORD}"
_TELL: tuple[tuple[re.Pattern[str], LineOf], ...] = (
    (re.compile(r"\A(?:Prof(?:essor)?|Dr|Mrs?|Ms|Mx|Miss|Instructor|Tutor)\b\.?\s"), "instructor"),
    (_DATE, "date"),
    (re.compile(r"\b(?:University|College|School|Institute|Academy|Faculty|Department|Dept)\b"), "institution"),
    (re.compile(r"\d|\b(?:Course|Module|Seminar|Class|Composition|Period|Section|Unit|Honou?rs)\b"), "course"),
    (re.compile(rf"\A(?![a-z]){_NAME}\Z"), "author"),
)
_EMPHASISED_NAME = re.compile(rf"([*_]{{1,3}}){_NAME}\1")
_SMALL = frozenset(
    "a an and at by due for in of on the to with de del der den di du da dos la le van von ten ter bin al y".split()
    + "january february march april may june july august september october november december".split()
)
"""Words that may stand in lower case on a title page."""


@dataclass(frozen=True, slots=True)
class FrontLine:
    """One line beside the title."""

    span: Span
    text: str
    """As it reads."""
    what: LineOf
    says: str
    """What it says of that, without the label before it."""


def front_lines(manuscript: Manuscript) -> tuple[FrontLine, ...]:
    r"""The lines of name, teacher, course and date right above and below the title; none where there is no title.

    **Source**: the headings and title pages of MLA 9, APA 7 and Turabian 9; how they are told is our own.

    >>> from fairhand.manuscript.draft import read_manuscript
    >>> draft = read_manuscript("Eva Lind\n\n3 March 2027\n\n# On Tides\n\nThe tide turns.\n")
    >>> [(line.text, line.what) for line in front_lines(draft)]
    [('Eva Lind', 'author'), ('3 March 2027', 'date')]
    """
    front = _Front(manuscript)
    return tuple(_told([line for place in front.places() for line in front.lines(place)]))


def front_places(manuscript: Manuscript) -> tuple[int, ...]:
    """The positions, among the draft's outermost blocks, of the paragraphs that are such lines."""
    return _Front(manuscript).places()


class _Front:
    """The first blocks of one draft."""

    def __init__(self, manuscript: Manuscript) -> None:
        self.text = manuscript.text
        self.parts, _ = read_parts(manuscript.text)
        titles = (k for k, part in enumerate(self.parts) if part.block.content == manuscript.title)
        self.at = next(titles, None) if manuscript.title else None
        self.title = self._said(self.at) if self.at is not None else ""

    def places(self) -> tuple[int, ...]:
        """Where the lines stand, above and below the title."""
        if self.at is None:
            return ()
        below = self._run(range(self.at + 1, len(self.parts)))
        return tuple(sorted([*self._run(range(self.at - 1, -1, -1)), *self._sure(below)]))

    def _run(self, places: range) -> list[int]:
        """The places, one after another, whose paragraphs hold short lines alone, or the title once more."""
        found = []
        for place in places:
            short = all(line.what == "title" or _is_short(line) for line in self.lines(place))
            if self.parts[place].block.kind != "paragraph" or not short:
                break
            found.append(place)
        return found

    def _sure(self, places: Sequence[int]) -> Sequence[int]:
        """Those below the title, as far as each line says what it is; a lone name in bold is a heading.

        A draft's first words, or a heading that was only set bold, are short lines too.
        """
        if len(places) == 1 and _EMPHASISED_NAME.fullmatch(self.parts[places[0]].block.content.of(self.text).strip()):
            return ()
        sure = (all(line.what or _what(line.text) for line in self.lines(place)) for place in places)
        return places[: next((count for count, told in enumerate(sure) if not told), len(places))]

    def lines(self, place: int) -> list[FrontLine]:
        """The lines of a block that hold anything but remarks to oneself; of these only the title is told."""
        content = self.parts[place].block.content
        if place != self.at and self._said(place) == self.title:
            return [FrontLine(content, self.title, "title", self.title)]
        found = []
        start = content.start
        for line in content.of(self.text).split("\n"):
            said = line.strip()
            at = start + len(line) - len(line.lstrip())
            start += len(line) + 1
            if words := _printed(said.rstrip("\\")):
                found.append(FrontLine(Span(at, at + len(said)), words, "", words))
        return found

    def _said(self, place: int) -> str:
        return _printed(self.parts[place].block.content.of(self.text))


def _printed(text: str) -> str:
    """The words that are printed of a passage."""
    reading = read_passage(text)
    shown = list(reading.bare.text)
    for left in reversed(reading.left):
        del shown[left.start : left.end]
    return " ".join("".join(shown).split())


def _is_short(line: FrontLine) -> bool:
    ends = _ENDS_A_SENTENCE.search(line.text) and not _ENDS_SHORTENED.search(line.text)
    return len(line.text.split()) <= _LONGEST_LINE and not ends


def _told(lines: Sequence[FrontLine]) -> Iterator[FrontLine]:
    """The lines, each with what it says; of two that say the same only the one before counts."""
    seen: set[str] = set()
    for line in lines:
        if line.what:
            yield line
            continue
        what, says = _what(line.text) or ("", line.text)
        yield FrontLine(line.span, line.text, "" if what in seen else what, says)
        seen.add(what)


def _what(line: str) -> tuple[LineOf, str] | None:
    """What a line says by itself, and the words that say it; None where it may be anything."""
    labelled = _LABELLED.match(line)
    label = labelled["by"] or labelled["label"] if labelled else ""
    if labelled and label.casefold() in _LABELS:
        return _LABELS[label.casefold()], line[labelled.end() :]
    if any(word[:1].islower() and word not in _SMALL for word in line.split()):
        return None
    return next(((what, line) for pattern, what in _TELL if pattern.search(line)), None)
