"""The references of a source, each with its fields, its page and its words as they stand there."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from fairhand.leads.fields import read_reference
from fairhand.leads.list_found import find_lists
from fairhand.leads.numbers import take_numbers
from fairhand.leads.record import LeadRecord, record_of
from fairhand.leads.splitting import split_list
from fairhand.model.source import SourceText

MINED_BY = "2"
"""Raised when references are found or read otherwise than before, so that what was kept is mined again."""
_DASH = re.compile(r"(?:[-–—―_⸺⸻]\s?){2,}|[—―⸺⸻]")
"""What stands for the authors of the entry before."""
_MOST = 3000
"""References of one source that are read."""


@dataclass(frozen=True)
class Mined:
    """One reference of a source."""

    raw: str
    """Its words as they stand in the list."""
    page: str
    """The label of the page that it begins on, or an empty string where the source has none."""
    csl: Mapping[str, object]
    """What it says, as CSL-JSON without an id."""
    guessed: frozenset[str]
    """The fields of it that it does not say outright."""


def mine_references(source: SourceText) -> tuple[Mined, ...]:
    r"""Every reference in the lists of a source, in order; a dash in place of authors has them from the entry before.

    >>> from fairhand.model.source import Page
    >>> listed = "References\nLind, A. (2001). Salt. Hull: Marsh Press.\n\nOkafor, B. (1999). Ebb. Leeds: Marsh Press."
    >>> [one.csl["title"] for one in mine_references(SourceText("x", (Page("9", listed),), True))]
    ['Salt', 'Ebb']
    """
    return tuple(_told(_mine(source)))


def _mine(source: SourceText) -> Iterator[tuple[str, str, LeadRecord]]:
    count = 0
    for found in find_lists(source.pages):
        authors = ""
        for entry in split_list(found):
            count += 1
            if count > _MOST:
                return
            text, numbers = take_numbers(entry.text)
            dash = _DASH.match(text)
            reference = read_reference(f"{authors}{text[dash.end() :]}" if dash and authors else text)
            authors = reference.text("author") or authors
            record = record_of(reference)
            yield " ".join(entry.text.split()), entry.page, replace(record, csl={**record.csl, **numbers})


def _told(found: Iterator[tuple[str, str, LeadRecord]]) -> Iterator[Mined]:
    """Those that say enough to be looked for."""
    for raw, page, record in found:
        if can_be_looked_for(record.csl):
            yield Mined(raw, page, record.csl, record.guessed)


def can_be_looked_for(csl: Mapping[str, object]) -> bool:
    """Whether a record says enough of a work to look for it: two of who, what, when and where; or its DOI.

    >>> can_be_looked_for({"title": "Salt", "issued": {}}), can_be_looked_for({"title": "Salt"})
    (True, False)
    """
    told: Sequence[bool] = (
        bool(csl.get("author") or csl.get("editor")),
        bool(csl.get("title")),
        "issued" in csl,
        bool(csl.get("container-title") or csl.get("publisher") or csl.get("URL")),
    )
    return "DOI" in csl or (sum(told) >= 2 and any(told[:2])) or sum(told) >= 3
