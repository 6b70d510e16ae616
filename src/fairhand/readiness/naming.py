"""How sources, pages and numbers are named to the writer."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence

from fairhand.citing.known import know
from fairhand.evidence.independence import Dependence
from fairhand.evidence.passage import Passage
from fairhand.model.entry import Entry, Name


def name_entries(entries: Sequence[Entry]) -> Mapping[str, str]:
    """Each source as one says it, by id: told from its namesakes by an initial, from works of its year by a letter.

    >>> from fairhand.model.entry import Issued, Name
    >>> both = [Entry(g, "book", title=g, authors=(Name("Lind", g),), issued=Issued(2019)) for g in ("Ada", "Bo")]
    >>> name_entries(both)
    {'Ada': 'A. Lind (2019)', 'Bo': 'B. Lind (2019)'}
    """
    people = {(name.surname, name.given) for entry in entries for name in _creators(entry)[:1]}
    namesakes = Counter(surname for surname, _ in people)
    out = {}
    for work in know(tuple(entries)).works:
        first = next(iter(_creators(work.entry)), None)
        shared = first is not None and first.given and namesakes[first.surname] > 1
        initial = f"{first.given[0]}. " if first and shared else ""
        out[work.entry.id] = initial + name_entry(work.entry, work.suffix)
    return out


def _creators(entry: Entry) -> Sequence[Name]:
    """Those whom a source is cited by."""
    return [name for name in entry.authors or entry.editors if name.surname]


def name_entry(entry: Entry, letter: str = "") -> str:
    """A source as one says it: its author and year, or its title.

    >>> from fairhand.model.entry import Issued, Name
    >>> name_entry(Entry("x", "book", authors=(Name("Lind"), Name("Marsh")), issued=Issued(2019)))
    'Lind and Marsh (2019)'
    """
    names = [name.surname for name in _creators(entry)]
    year = f" ({entry.issued.year}{letter})" if entry.issued and entry.issued.year else ""
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


def name_place(source: str, labels: Sequence[str]) -> str:
    """A source, named, and the pages in it.

    >>> name_place("Lind (2019)", ("7",))
    'Lind (2019), p. 7'
    """
    return f"{source}, {name_pages(labels)}" if labels else source


def name_tie(tie: Dependence, names: Mapping[str, str]) -> str:
    """What makes two sources one witness, it may be, with the words that show it.

    >>> name_tie(Dependence("a", "b", "shared-author", "Ada Lind"), {"a": "Lind (2018)", "b": "Lind (2019)"})
    'Lind (2018) and Lind (2019) are both by Ada Lind'
    """
    claim = claim_tie(tie, names)
    if tie.kind not in {"rests", "cites"}:
        return f"{claim}: {_quote_all(tie)}" if tie.shown else claim
    cites = f"{names[tie.first]} cites {names[tie.second]} ({_quote(tie.shown[0][1])})"
    return f"{cites}, and in both stands: {_quote_all(tie, 1)}" if tie.there else cites


def claim_tie(tie: Dependence, names: Mapping[str, str]) -> str:
    """What makes two sources one witness, it may be, without the words that show it.

    >>> claim_tie(Dependence("a", "b", "reprint", ""), {"a": "The Courier (1924)", "b": "The Mercury (1924)"})
    'The Courier (1924) and The Mercury (1924) print one text'
    """
    first, second = names[tie.first], names[tie.second]
    match tie.kind:
        case "rests":
            how = "the same stands in both" if tie.there else "says that it rests on it"
            return f"{first} cites {second}, and {how}"
        case "cites":
            return f"{first} cites {second}"
        case "reprint":
            return f"{first} and {second} print one text"
        case "same-study":
            return f"{first} and {second} report one study, {tie.why}"
        case "writer":
            return f"{first} and {second} are one witness, as you hold" + (f" ({tie.why})" if tie.why else "")
    return f"{first} and {second} are both by {tie.why}"


def _quote(passage: Passage) -> str:
    return f"“{passage.words}”{f', p. {passage.page}' if passage.page else ''}"


def _quote_all(tie: Dependence, start: int = 0) -> str:
    """What shows it in each of the two, with its page."""
    return "; ".join(_quote(passage) for _, passage in tie.shown[start:])
