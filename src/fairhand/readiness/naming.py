"""How sources, pages and numbers are named to the writer."""

from __future__ import annotations

from collections.abc import Sequence

from fairhand.model.entry import Entry


def name_entry(entry: Entry) -> str:
    """A source as one says it: its author and year, or its title.

    >>> from fairhand.model.entry import Issued, Name
    >>> name_entry(Entry("x", "book", authors=(Name("Lind"), Name("Marsh")), issued=Issued(2019)))
    'Lind and Marsh (2019)'
    """
    names = [name.surname for name in entry.authors or entry.editors if name.surname]
    year = f" ({entry.issued.year})" if entry.issued and entry.issued.year else ""
    if not names:
        title = entry.title_short or entry.title
        return f"“{title}”{year}" if title else entry.id
    if len(names) > 2:
        return f"{names[0]} et al.{year}"
    return " and ".join(names) + year


def name_pages(labels: Sequence[str]) -> str:
    """Page labels as they are cited.

    >>> name_pages(("102", "103"))
    'pp. 102–103'
    """
    if len(labels) == 1:
        return f"p. {labels[0]}"
    return f"pp. {labels[0]}–{labels[-1]}"


def name_place(entry: Entry, labels: Sequence[str]) -> str:
    """A source and the pages in it.

    >>> name_place(Entry("x", "book", title="Tide Tables"), ("7",))
    '“Tide Tables”, p. 7'
    """
    return f"{name_entry(entry)}, {name_pages(labels)}" if labels else name_entry(entry)


def count_of(number: int, singular: str, plural: str = "") -> str:
    """A number with its noun.

    >>> count_of(1, "source"), count_of(1200, "word")
    ('1 source', '1,200 words')
    """
    return f"{number:,} {singular if number == 1 else plural or singular + 's'}"
