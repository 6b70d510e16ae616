"""The order of a list of references, which also settles which of two works of one year is *a*."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from typing import Literal

from fairhand.citing.entries import MARKUP, text_of
from fairhand.citing.records import Item
from fairhand.language.folding import fold

ListOrder = Literal["", "name-date", "name-year", "name-title"]
"""What a list is ordered by: names, then day, year or nothing, then titles; empty where the CSL file says it."""

NEVER_FIRST = re.compile(r"^(?:the|an?)\s+(?=\S)")
UNDATED, IN_PRESS = (-9999, 0, 0), (9999, 0, 0)

Names = tuple[tuple[str, str], ...]
Key = tuple[Names, tuple[int, int, int], str]


def order_items(
    items: Iterable[Item], order: ListOrder, *, particle_first: bool = False, paper_first: bool = False
) -> list[Item]:
    """The records in the order of the list.

    Letters count without accents, case and marks; a first *A*, *An* or *The* of a title does not count; one author
    alone comes before the same with others; an undated work comes first, one in press last.

    Args:
        items: cleaned records.
        order: the list's order.
        particle_first: whether *van Dam* stands under *v*.
        paper_first: whether an unsigned article stands under its newspaper or magazine.

    **Source**: APA 7, 9.44–9.49; CMOS 17, 14.61–14.71 and 15.11; MLA 9, 5.123–5.130.
    """
    date: Callable[[Item], tuple[int, int, int]] = {"name-date": _day, "name-year": _year}.get(order, _no_date)

    def key(item: Item) -> Key:
        """What the record is ordered by."""
        unsigned = _first_words(item, paper_first=paper_first)
        return (
            _people(item, particle_first=particle_first) or ((unsigned, ""),),
            date(item),
            title_key(text_of(item, "title")),
        )

    return sorted(items, key=key)


def title_key(title: str) -> str:
    """A title as it is put in order.

    >>> title_key("<i>The</i> Aardvark’s Year")
    'aardvarks year'
    """
    return _letters(NEVER_FIRST.sub("", fold(MARKUP.sub("", title)).strip()))


def _day(item: Item) -> tuple[int, int, int]:
    issued = item.get("issued")
    if not isinstance(issued, dict):
        return UNDATED
    parts = issued.get("date-parts")
    year, month, day = (*parts[0], 0, 0)[:3] if parts else IN_PRESS
    return year, month, day


def _year(item: Item) -> tuple[int, int, int]:
    return _day(item)[0], 0, 0


def _no_date(_item: Item) -> tuple[int, int, int]:
    return 0, 0, 0


def _people(item: Item, *, particle_first: bool) -> Names:
    for role in ("author", "editor", "translator", "director", "composer"):
        people = item.get(role)
        if isinstance(people, list) and people:
            return tuple(_name_key(person, particle_first=particle_first) for person in people)
    return ()


def _first_words(item: Item, *, paper_first: bool) -> str:
    """What an unsigned work begins with in the list."""
    paper = text_of(item, "container-title")
    from_paper = paper_first and item["type"] in {"article-newspaper", "article-magazine"}
    return title_key(paper if from_paper and paper else text_of(item, "title") or paper)


def _name_key(name: dict[str, str], *, particle_first: bool) -> tuple[str, str]:
    if name.get("literal"):
        return title_key(name["literal"]), ""
    particle = name.get("non-dropping-particle", "") if particle_first else ""
    surname = _letters(fold(f"{particle} {name['family']}"))
    return surname.replace(" ", ""), _letters(fold(f"{name.get('given', '')} {name.get('suffix', '')}"))


def _letters(text: str) -> str:
    return " ".join(re.sub(r"[^\w\s]", "", text.replace("-", " ")).split())
