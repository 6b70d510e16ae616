"""The printed record as values: the sittings, the chain of hashes, and the seal over both."""

from __future__ import annotations

import dataclasses
import datetime as dt
import hashlib
import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from fairhand.errors import FileUnreadable
from fairhand.record.sittings import Sitting, Words

FORMAT = "fairhand record 1"
Link = tuple[int, str, str, str, int, str, int, int | None, str, str]
"""One state: number, file, moment, how, bytes, their SHA-256, place, base, chained hash, SHA-256 as it is packed."""


@dataclass(frozen=True)
class Document:
    """A record as it is printed."""

    title: str
    made: str
    """When it was printed, as ISO 8601 has it."""
    sittings: tuple[Sitting, ...]
    links: tuple[Link, ...]
    page: str = ""
    """The hash of the words on its page, by which a page that was changed is told; see ``hash_page``."""

    @property
    def last_hash(self) -> str:
        """The chained hash of the last state, which binds all."""
        return self.links[-1][8] if self.links else ""

    @property
    def seal(self) -> str:
        """The SHA-256 of all that the record tells."""
        return hashlib.sha256(_canonical(_tell(self)).encode()).hexdigest()


def write_document(document: Document) -> str:
    """The document as JSON, with its seal; the same document always gives the same letters."""
    return _canonical(_tell(document) | {"seal": document.seal})


def read_document(text: str, file: str) -> tuple[Document, bool]:
    """A document from its JSON, and whether its seal is that of what it tells.

    Args:
        text: The JSON.
        file: What the file is called in messages.

    Raises:
        FileUnreadable: It is no printed record.

    >>> document = Document("Tides", "2027-02-19T15:20:00+01:00", (), ())
    >>> read_document(write_document(document), "record.html") == (document, True)
    True
    """
    try:
        told = json.loads(text)
        {FORMAT: None}[told["format"]]  # a later form is none that can be read here
        sittings = tuple(_read_sitting(one) for one in told["sittings"])
        links = tuple(_read_link(one) for one in told["states"])
        document = Document(str(told["title"]), str(told["made"]), sittings, links, str(told["page"]))
    except (ValueError, LookupError, TypeError, AttributeError, ArithmeticError, RecursionError) as error:
        message = f"{file}: no record is in it that can be read; print it anew with `fairhand record --print`"
        raise FileUnreadable(message) from error
    rest = {key: value for key, value in told.items() if key != "seal"}
    return document, hashlib.sha256(_canonical(rest).encode()).hexdigest() == told.get("seal")


def hash_page(text: str, seal: str) -> str:
    """The SHA-256 of the words on a page, without blanks, and without the seal, which it goes into.

    >>> hash_page("The seal: ab12.", "ab12") == hash_page("The  seal: .", "")
    True
    """
    return hashlib.sha256(
        "".join((text.replace(seal, "") if seal else text).split()).encode("utf-8", "replace")
    ).hexdigest()


def find_disorder(document: Document) -> tuple[str, ...]:
    """Where the list of sittings does not agree with its states: in numbers, hours, or files changed outside."""
    faults = []
    links = {link[0]: link for link in document.links}
    told = [seq for one in document.sittings for seq in one.states]
    if told != [link[0] for link in document.links]:
        faults.append("the sittings do not name each state once, in order")
    for number, one in enumerate(document.sittings, 1):
        these = [links[seq] for seq in one.states if seq in links]
        if not these:
            faults.append(f"sitting {number} has no state that is there")
            continue
        hours = [dt.datetime.fromisoformat(link[2]) for link in these]
        if (hours[0], hours[-1]) != (one.start, one.end):
            faults.append(f"sitting {number} is told at other hours than its states have")
        if {link[1] for link in these if link[3] == "changed outside"} != set(one.outside):
            faults.append(f"sitting {number} tells of other files changed outside than its states do")
    return tuple(faults)


def _tell(document: Document) -> dict[str, Any]:
    return {
        "format": FORMAT,
        "title": document.title,
        "made": document.made,
        "sittings": [_tell_sitting(one) for one in document.sittings],
        "states": [list(link) for link in document.links],
        "page": document.page,
    }


def _tell_sitting(sitting: Sitting) -> dict[str, Any]:
    told = dataclasses.asdict(sitting)
    return told | {"start": sitting.start.isoformat(), "end": sitting.end.isoformat()}


def _read_sitting(told: Mapping[str, Any]) -> Sitting:
    start, end = (dt.datetime.fromisoformat(told[key]) for key in ("start", "end"))
    draft, beside = (tuple(_read_words(one) for one in told[key]) for key in ("draft", "beside"))
    sources, readers, outside, others = (
        tuple(map(str, told[key])) for key in ("sources", "readers", "outside", "others")
    )
    states, notes, points = tuple(map(int, told["states"])), int(told["notes"]), int(told["points"])
    return Sitting(start, end, states, draft, beside, sources, notes, points, readers, outside, others)


def _read_words(told: Mapping[str, Any]) -> Words:
    return Words(str(told["part"]), int(told["came"]), int(told["went"]))


def _read_link(told: Sequence[Any]) -> Link:
    seq, name, at, how, size, sha256, place, base, chained, packed = told
    dt.datetime.fromisoformat(at)
    return (
        int(seq),
        str(name),
        str(at),
        str(how),
        int(size),
        str(sha256),
        int(place),
        None if base is None else int(base),
        str(chained),
        str(packed),
    )


def _canonical(told: Mapping[str, Any]) -> str:
    return json.dumps(told, ensure_ascii=True, sort_keys=True, separators=(",", ":"))
