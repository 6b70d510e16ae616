"""CSL-JSON: the format of ``sources.json``."""

from __future__ import annotations

import json
import re
from collections.abc import Iterable, Iterator

from fairhand.citing.entries import read_records
from fairhand.errors import FileUnreadable
from fairhand.language.json_text import write_json
from fairhand.model.entry import Entry
from fairhand.model.problem import Problem
from fairhand.model.span import line_at

OBJECT = re.compile(r'\{\s*"')
RECORD_START = re.compile(r'\{\s*"(?:id|type)"\s*:')
TOLD_BY = frozenset({"id", "type", "title"})
"""What tells a record from a name or a date within one."""


def read_csl_json(text: str, where: str = "sources.json") -> tuple[tuple[Entry, ...], tuple[Problem, ...]]:
    """The entries of a CSL-JSON file, and what is wrong in it.

    A file that is no JSON as a whole is read record by record, so that one missing comma costs one record.

    Args:
        text: the file's text.
        where: its name, for the problems.

    **Source**: the CSL-JSON schema of CSL 1.0.2.

    >>> entries, problems = read_csl_json('[{"id": "ame-2001", "type": "book", "title": "Salt"}]')
    >>> entries[0].title, problems
    ('Salt', ())
    """
    text = text.removeprefix("\ufeff")
    if not text.strip():
        return (), ()
    try:
        records = _listed(json.loads(text, parse_constant=str))
    except RecursionError:
        return (), (Problem(where, "its brackets are nested too deep to be records", "make it a list of records"),)
    except ValueError as fault:
        return _read_piecemeal(text, where, fault)
    places = ((record, f"{where}, record {number}") for number, record in enumerate(records, 1))
    return read_records(places)


def list_records(text: str, where: str = "sources.json") -> list[object]:
    """The records of a CSL-JSON file as they stand, faulty ones too, so that none is lost when the list is changed.

    Raises:
        FileUnreadable: It is no list of records, and nothing can be changed in it before it is mended.
    """
    text = text.removeprefix("\ufeff")
    if not text.strip():
        return []
    try:
        records = json.loads(text)
    except RecursionError:
        fault = "its brackets are nested too deep"
    except ValueError as error:
        fault = _told(error)
    else:
        if isinstance(records, list):
            return records
        fault = "the whole is not in square brackets"
    message = f"{where}: it is no list of records ({fault}); mend it first, nothing was written to it"
    raise FileUnreadable(message)


def write_csl_json(records: Iterable[object]) -> str:
    """The text of a CSL-JSON file of these records, each field of each record kept.

    >>> print(write_csl_json([{"id": "a", "title": "Salt"}]), end="")
    [
      {
        "id": "a",
        "title": "Salt"
      }
    ]
    """
    return write_json(list(records), indent=2) + "\n"


def _listed(value: object) -> list[object]:
    """The records of a file: a list of them, one alone, or a list under ``items`` or ``references``."""
    if isinstance(value, dict):
        for key in ("items", "references"):
            if isinstance(value.get(key), list):
                return list(value[key])
    return value if isinstance(value, list) else [value]


def _read_piecemeal(text: str, where: str, fault: ValueError) -> tuple[tuple[Entry, ...], tuple[Problem, ...]]:
    found: list[tuple[object, str]] = []
    faults: list[Problem] = []
    for number, (start, record) in enumerate(_pieces(text), 1):
        place = f"{where}, record {number} (line {line_at(text, start)})"
        if isinstance(record, ValueError):
            faults.append(Problem(place, _told(record), "mend it there; the other records were read"))
        else:
            found.append((record, place))
    if not faults or not found:
        faults = [Problem(where, f"it is not JSON: {_told(fault)}", "mend it there; records that stand whole are read")]
    entries, problems = read_records(found)
    return entries, (*faults, *problems)


def _pieces(text: str) -> Iterator[tuple[int, object]]:
    """Each record that the text seems to hold, with its start; a faulty one is given as its fault.

    After a fault the names and dates that were left of its record are passed over.
    """
    decoder = json.JSONDecoder(parse_constant=str)
    found, lost = OBJECT.search(text), False
    while found:
        at = found.start()
        try:
            record, end = decoder.raw_decode(text, at)
        except RecursionError:
            return
        except ValueError as fault:
            end = max(at + 1, fault.pos if isinstance(fault, json.JSONDecodeError) else 0)
            if not lost or RECORD_START.match(text, at):
                yield at, fault
            lost = True
        else:
            if not lost or TOLD_BY & record.keys():
                yield at, record
                lost = False
        found = OBJECT.search(text, end)


def _told(fault: ValueError) -> str:
    if isinstance(fault, json.JSONDecodeError):
        return f"line {fault.lineno}, column {fault.colno}: {fault.msg[:1].lower()}{fault.msg[1:]}"
    return "a number in it has too many digits"
