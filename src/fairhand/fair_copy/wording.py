"""The words that the page itself adds: heading lines, title page, running head, the list's title."""

from __future__ import annotations

from dataclasses import dataclass

from fairhand.fair_copy.document import FairCopy
from fairhand.model.inline import plain

RUNNING_HEAD_LENGTH = 50
"""Longest running head, in characters. **Source**: APA 7, section 2.8."""

_PARTICLES = frozenset(
    {"de", "del", "della", "den", "der", "di", "du", "la", "le", "van", "von", "ter", "da", "dos", "el"}
)
_SUFFIXES = frozenset({"jr", "jr.", "sr", "sr.", "ii", "iii", "iv"})


def heading_lines(copy: FairCopy) -> tuple[str, ...]:
    """The lines at the head of the first page. **Source**: MLA Handbook, 9th ed., section 1.3."""
    front = copy.front
    return front.lines or tuple(line for line in (front.author, front.instructor, front.course, front.date) if line)


def title_page_lines(copy: FairCopy) -> tuple[str, ...]:
    """The lines under the title on a title page. **Source**: APA 7, section 2.3; Turabian 9, appendix."""
    front = copy.front
    if copy.layout.title_page_form == "upper half":
        lines = (front.author, front.institution, front.course, front.instructor, front.date)
    else:
        lines = (front.author, front.course, front.instructor, front.institution, front.date)
    return front.lines or tuple(line for line in lines if line)


@dataclass(frozen=True, slots=True)
class Furniture:
    """The line in a page's top or bottom margin."""

    head: str = ""
    numbered: bool = False
    """Whether it shows the page's number, after the head."""
    side: str = "right"
    """``left``, ``centre`` or ``right``."""
    parted: bool = False
    """Whether the head stands at the left margin and the number at the right."""

    def __bool__(self) -> bool:
        """Whether there is anything in the line."""
        return bool(self.head) or self.numbered


def furniture(copy: FairCopy) -> tuple[Furniture, Furniture]:
    """What stands in the top margin and in the bottom margin of each page."""
    layout = copy.layout
    height, _, side = layout.page_number.partition(" ")
    head = {"surname": surname(copy.front.author), "title": _shortened(plain(copy.front.title)).upper()}.get(
        layout.running_head, ""
    )
    if height != "top":
        return Furniture(head), Furniture("", height == "bottom", side)
    parted = layout.running_head == "title" and side == "right" and bool(head)
    return Furniture(head, numbered=True, side="left" if parted else side, parted=parted), Furniture()


def list_title(copy: FairCopy) -> str:
    """The title of the reference list; MLA's is singular over a single work. **Source**: MLA Handbook, 9th ed., 5."""
    title = copy.layout.list_title
    return "Work Cited" if title == "Works Cited" and len(copy.references) == 1 else title


def surname(author: str) -> str:
    """The surname with its particles; of several authors, each one's.

    >>> surname("Ada van der Berg"), surname("Lind, Ada"), surname("Ada Lind and Omar Reyes")
    ('van der Berg', 'Lind', 'Lind and Reyes')
    """
    if " and " in author:
        return " and ".join(filter(None, map(surname, author.split(" and "))))
    if "," in author and author.split(",")[1].strip().casefold() not in _SUFFIXES:
        return author.split(",", maxsplit=1)[0].strip()
    words = author.replace(",", " ").split()
    while len(words) > 1 and words[-1].casefold() in _SUFFIXES:
        words.pop()
    start = len(words) - 1
    while start > 1 and words[start - 1].casefold() in _PARTICLES:
        start -= 1
    return " ".join(words[max(0, start) :])


def _shortened(title: str) -> str:
    """The title, or what stands before its colon, cut at a word's end to the length of a running head.

    >>> _shortened("Keeping the Hours: Tide Mills and Their Books on the Estuary")
    'Keeping the Hours'
    """
    if len(title) > RUNNING_HEAD_LENGTH:
        title = title.partition(":")[0]
    if len(title) <= RUNNING_HEAD_LENGTH:
        return title
    return title[: RUNNING_HEAD_LENGTH + 1].rpartition(" ")[0].rstrip(" ,;–—-") or title[:RUNNING_HEAD_LENGTH]
