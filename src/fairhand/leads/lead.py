"""Leads: the works that the reference lists of a paper's sources point to and that it has not got, each once."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from fairhand.citing.entries import made_id, read_entry
from fairhand.citing.names import name_key
from fairhand.citing.same_work import find_doubles
from fairhand.leads.mining import Mined
from fairhand.model.entry import Entry


@dataclass(frozen=True, slots=True)
class Pointer:
    """One reference that points to a work."""

    source: str
    """The id of the source in whose list it stands."""
    page: str
    """The label of the page, or an empty string."""
    raw: str
    """Its words there."""


@dataclass(frozen=True)
class Lead:
    """A work that is not among the sources, and what points to it."""

    entry: Entry
    """What the fullest of the references says of it, filled in from the others; its id names the lead."""
    pointers: tuple[Pointer, ...]
    """In the order of the sources."""
    guessed: frozenset[str] = frozenset()
    """The fields that no reference says outright."""

    @property
    def sources(self) -> tuple[str, ...]:
        """The ids of the sources that point to it, each once."""
        return tuple(dict.fromkeys(one.source for one in self.pointers))


def gather_leads(mined: Mapping[str, Sequence[Mined]], entries: Sequence[Entry]) -> tuple[Lead, ...]:
    """Each work that the sources' references point to and that is not among the sources, once.

    Args:
        mined: The references of each source, by its id.
        entries: The list of sources.

    >>> salt = {"type": "book", "title": "The Salt Roads", "author": [{"family": "Lind"}], "issued": "2001"}
    >>> one = Mined("Lind. The Salt Roads. 2001.", "9", salt, frozenset())
    >>> [(lead.entry.id, lead.sources) for lead in gather_leads({"a": [one], "b": [one]}, [])]
    [('lind-2001-salt-roads', ('a', 'b'))]
    """
    told: list[tuple[Entry, Mined, Pointer]] = []
    for source, references in mined.items():
        for one in references:
            entry, _ = read_entry({"id": f"lead {len(told)}", **one.csl}, "a reference")
            if entry is not None:
                told.append((entry, one, Pointer(source, one.page, one.raw)))
    groups = _group([entry for entry, _, _ in told], entries)
    leads, taken = [], {entry.id for entry in entries}
    for group in groups:
        members = [told[n] for n in group]
        fullest = max(members, key=lambda one: len(one[0].csl))
        csl = dict(fullest[0].csl)
        for other, _, _ in members:
            csl |= {key: value for key, value in other.csl.items() if key not in csl}
        guessed = frozenset.intersection(*(one.guessed for _, one, _ in members))
        if "type" not in guessed:
            csl["type"] = next(entry.type for entry, one, _ in members if "type" not in one.guessed)
        named, _ = read_entry(csl, "a reference")
        if named is None:
            continue
        id_ = name_lead(named, taken)
        taken.add(id_)
        pointers = dict.fromkeys(pointer for _, _, pointer in members)
        leads.append(Lead(replace(named, id=id_, csl={**csl, "id": id_}), tuple(pointers), guessed))
    return tuple(leads)


def known_from(references: Sequence[Mined], entries: Sequence[Entry]) -> tuple[str, ...]:
    """The ids of the sources that some references point to, which were there before.

    >>> salt = Entry("salt", "book", "The Salt Roads", csl={"DOI": "10.5555/salt"}, doi="10.5555/salt")
    >>> known_from([Mined("", "", {"title": "Salt roads", "DOI": "10.5555/SALT"}, frozenset())], [salt])
    ('salt',)
    """
    told = (read_entry({**one.csl, "id": f"lead {n}"}, "a reference")[0] for n, one in enumerate(references))
    found = [entry for entry in told if entry is not None]
    there = {entry.id for entry in entries}
    pointed = {double.there for double in find_doubles([*entries, *found]) if double.new not in there} & there
    return tuple(entry.id for entry in entries if entry.id in pointed)


def name_lead(entry: Entry, taken: Iterable[str] = ()) -> str:
    """The id of a lead: first author, year, and the first words of its title that say something.

    >>> name_lead(Entry("", "book", title="On the Salt Roads of Hull"))
    'on-the-nd-salt-roads'
    """
    words = re.findall(r"[^\W\d_]{4,}", entry.title.lower())[:2]
    plain = "-".join([made_id(entry), *words])
    number, name = 1, plain
    held = frozenset(taken)
    while name in held:
        number += 1
        name = f"{plain}-{number}"
    return name


def _group(found: Sequence[Entry], entries: Sequence[Entry]) -> list[list[int]]:
    """The references that are of one work together, by their numbers; those of a source that is there left out."""
    at = {entry.id: n for n, entry in enumerate(found)}
    parent = list(range(len(found) + 1))
    there = len(found)

    def root(n: int) -> int:
        while parent[n] != n:
            n = parent[n]
        return n

    def tie(one: int, other: int) -> None:
        parent[min(root(one), root(other))] = max(root(one), root(other))

    for double in find_doubles([*entries, *found]):
        if double.new in at:
            tie(at[double.new], at.get(double.there, there))
    alike: dict[tuple[str, ...], list[int]] = defaultdict(list)
    held = [(n, key) for n, entry in enumerate([*found, *entries]) if (key := _place_key(entry))]
    for n, key in held:
        alike[key].append(min(n, there))
    for same in alike.values():
        for one in same[1:]:
            tie(same[0], one)
    groups: dict[int, list[int]] = defaultdict(list)
    for n in range(len(found)):
        if root(n) != root(there):
            groups[root(n)].append(n)
    return list(groups.values())


def _place_key(entry: Entry) -> tuple[str, ...]:
    """First author, year, volume and first page: no two articles share them, whatever else a reference leaves out."""
    year = entry.issued.year if entry.issued else None
    volume = str(entry.csl.get("volume", ""))
    page = re.match(r"\w+", entry.page)
    if not (entry.authors and year and volume and page):
        return ()
    return (name_key(entry.authors[0].surname), str(year), name_key(volume), page[0].lower())
