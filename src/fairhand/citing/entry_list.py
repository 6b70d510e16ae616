"""A list of records changed: others join it, one is put in place of another, one is taken out; all else stands.

The records are those of the file, faulty ones and unknown fields among them.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from fairhand.citing.entries import made_id, name_entry
from fairhand.model.entry import Entry
from fairhand.model.problem import Problem


@dataclass(frozen=True, slots=True)
class Joined:
    """What became of sources that were to join a list."""

    new: tuple[str, ...]
    """Ids under which they now stand in it."""
    there: tuple[str, ...]
    """Ids that were there already; those records stand as they were."""
    problems: tuple[Problem, ...] = ()
    """What could not be read of those that were to join."""


def join_records(
    records: Sequence[object], found: Iterable[Entry], known: Iterable[Entry] = ()
) -> tuple[list[object], Joined]:
    """The list with the entries that it lacks at its end, and what became of each.

    An entry is there already where a record says the same, or has the id that the entry was given elsewhere. An id
    that was made of author and year tells no work from another: where it is taken, the entry gets one of its own.

    Args:
        records: The records of the list.
        found: The entries that are to join it.
        known: Entries that stand elsewhere and count as there, as those of the course.

    >>> salt = Entry("salt", "book", title="Salt", csl={"id": "salt", "type": "book", "title": "Salt"})
    >>> records, joined = join_records(["faulty"], [salt, salt])
    >>> records[-1]["title"], joined.new, joined.there
    ('Salt', ('salt',), ('salt',))
    """
    held = [*(one for one in records if isinstance(one, Mapping)), *(entry.csl for entry in known)]
    taken = {str(one.get("id", "")) for one in held}
    alike = {_said(one): str(one.get("id", "")) for one in reversed(held)}
    joined: list[object] = list(records)
    new, there = [], []
    for entry in found:
        said = _said(entry.csl)
        if said in alike:
            there.append(alike[said] or entry.id)
        elif entry.id in taken and not entry.id.startswith(made_id(entry)):
            there.append(entry.id)
        else:
            name = name_entry(entry, taken)
            joined.append({**entry.csl, "id": name})
            new.append(name)
            taken.add(name)
            alike[said] = name
    return joined, Joined(tuple(new), tuple(there))


def put_record(records: Sequence[object], entry: Entry, record: Mapping[str, object]) -> list[object]:
    """The list with a record in place of the entry's; at its end where the entry does not stand in it."""
    at = _place(records, entry)
    return [*records, record] if at is None else [*records[:at], record, *records[at + 1 :]]


def drop_record(records: Sequence[object], entry: Entry) -> list[object] | None:
    """The list without the entry's record; None where it does not stand in it."""
    at = _place(records, entry)
    return None if at is None else [*records[:at], *records[at + 1 :]]


def _place(records: Sequence[object], entry: Entry) -> int | None:
    """Where the entry's record stands: by its id, or, where the file gives it none, by all else that it says."""
    own = _said(entry.csl)
    alike = [n for n, one in enumerate(records) if isinstance(one, Mapping) and _said(one) == own]
    named = [n for n, one in enumerate(records) if isinstance(one, Mapping) and str(one.get("id", "")) == entry.id]
    both = [n for n in named if n in alike]
    return next(iter((*both, *named, *alike)), None)


def _said(record: Mapping[str, object]) -> str:
    """All that a record says, without its id, in one form."""
    return json.dumps({name: value for name, value in record.items() if name != "id"}, sort_keys=True, default=str)
