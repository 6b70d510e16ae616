"""``readers.toml``: each reader once for a version, asked what, due back when.

What the program changes it changes in place: remarks, and keys that it does not know, stay as they stand.
"""

from __future__ import annotations

import datetime as dt
import tomllib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from fairhand.language.toml_text import list_tables, parse_toml, write_toml
from fairhand.model.problem import Problem

WHERE = "readers.toml"
STAGES = ("argument", "language", "whole")
"""What a reader is asked to look at: before the copy-edit, after it, or all at once."""


@dataclass(frozen=True, slots=True)
class Reader:
    """One reader of one version."""

    name: str
    expert: bool = False
    """Whether the reader knows the matter."""
    stage: str = "argument"
    """One of ``STAGES``."""
    draft: str = ""
    """The hash of the draft that was sent, by which the record finds it."""
    sent: dt.date | None = None
    due: dt.date | None = None
    back: dt.date | None = None
    """The day on which it came back; None while it is out."""
    file: str = ""
    """The copy that was sent, in the paper's folder."""
    asked: tuple[str, ...] = ()
    """The questions, in order."""
    not_to_mind: tuple[str, ...] = ()
    """What the reader need not look at."""

    @property
    def is_out(self) -> bool:
        """Whether the copy was sent and is not back yet."""
        return self.sent is not None and self.back is None

    @property
    def key(self) -> str:
        """The name as readers are told apart: in small letters, single blanks."""
        return plain_name(self.name)


def plain_name(name: str) -> str:
    """A name as readers are told apart.

    >>> plain_name(" Ines  MORA ")
    'ines mora'
    """
    return " ".join(name.split()).casefold()


def read_register(text: str) -> tuple[tuple[Reader, ...], tuple[Problem, ...]]:
    r"""The readers in the order of the file, with a problem for each that cannot be read.

    >>> read_register('[[readers]]\nname = "Ines Mora"\nsent = 2027-02-03\n')[0][0].is_out
    True
    """
    try:
        records = tomllib.loads(text).get("readers", [])
    except (tomllib.TOMLDecodeError, RecursionError) as error:
        return (), (Problem(WHERE, f"it is not TOML ({error})", "mend it; until then no reader in it is known"),)
    if not isinstance(records, list):
        return (), (Problem(f"{WHERE}, readers", "they are no list", "head each with [[readers]]"),)
    readers, problems = [], []
    for number, record in enumerate(records, 1):
        name = record.get("name") if isinstance(record, Mapping) else None
        if isinstance(name, str) and name.strip():
            reader, faults = _read(record, f"{WHERE}, reader {number}")
            readers.append(reader)
            problems += faults
        else:
            what, mend = "it names nobody", 'write name = "…"; it is left out now'
            problems.append(Problem(f"{WHERE}, reader {number}", what, mend))
    return tuple(readers), tuple(problems)


def _read(record: Mapping[str, object], where: str) -> tuple[Reader, list[Problem]]:
    problems = []
    days: dict[str, dt.date | None] = {}
    for key in ("sent", "due", "back"):
        value = record.get(key)
        days[key] = value.date() if isinstance(value, dt.datetime) else value if isinstance(value, dt.date) else None
        if value is not None and days[key] is None:
            problems.append(Problem(f"{where}, {key}", f"{str(value)!r} is no day", "write it as 2027-02-14"))
    stage = record.get("stage", "argument")
    if stage not in STAGES:
        problems.append(Problem(f"{where}, stage", f"{str(stage)!r} is no stage", f"write one of {', '.join(STAGES)}"))
    reader = Reader(
        name=" ".join(str(record["name"]).split()),
        expert=record.get("expert") is True,
        stage=str(stage) if stage in STAGES else "argument",
        draft=str(record.get("draft", "")),
        sent=days["sent"],
        due=days["due"],
        back=days["back"],
        file=str(record.get("file", "")),
        asked=_texts(record.get("asked")),
        not_to_mind=_texts(record.get("not_to_mind")),
    )
    return reader, problems


def _texts(value: object) -> tuple[str, ...]:
    listed = value if isinstance(value, Sequence) and not isinstance(value, str) else [value]
    return tuple(one for one in listed if isinstance(one, str) and one.strip())


def put_reader(text: str, reader: Reader) -> str:
    r"""The file's text with the reader; what it said of the same reader and version gives way.

    Raises:
        FileUnreadable: The file is no TOML, or its readers are no list, and must be mended first.

    >>> put_reader("", Reader("Ines Mora", sent=dt.date(2027, 2, 3)))
    '[[readers]]\nname = "Ines Mora"\nstage = "argument"\nsent = 2027-02-03\n'
    """
    import tomlkit

    document = parse_toml(text, WHERE)
    listed = list_tables(document, "readers", WHERE)
    place = next((n for n, one in enumerate(listed) if _is_same(one.unwrap(), reader)), None)
    record = listed[place] if place is not None else tomlkit.table()
    for key, value in _told(reader).items():
        if value:
            record[key] = value
        elif key in record:
            del record[key]
    if place is None:
        listed.append(record)
    return write_toml(document)


def drop_reader(text: str, reader: Reader) -> str:
    """The file's text without that reader of that version.

    Raises:
        FileUnreadable: The file must be mended first.
    """
    document = parse_toml(text, WHERE)
    listed = list_tables(document, "readers", WHERE)
    for number in reversed(range(len(listed))):
        if _is_same(listed[number].unwrap(), reader):
            del listed[number]
    return write_toml(document)


def _told(reader: Reader) -> dict[str, object]:
    return {
        "name": reader.name,
        "expert": reader.expert,
        "stage": reader.stage,
        "draft": reader.draft,
        "sent": reader.sent,
        "due": reader.due,
        "back": reader.back,
        "file": reader.file,
        "asked": list(reader.asked),
        "not_to_mind": list(reader.not_to_mind),
    }


def _is_same(record: object, reader: Reader) -> bool:
    """Whether a record of the file is of that reader and that version."""
    if not isinstance(record, Mapping) or plain_name(str(record.get("name", ""))) != reader.key:
        return False
    return str(record.get("draft", "")) == reader.draft
