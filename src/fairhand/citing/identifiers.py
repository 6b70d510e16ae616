"""The numbers by which works are known to public registries: DOI, ISBN, PMID.

**Source**: the DOI Handbook, 2.2; ISO 2108; PMIDs are whole numbers of at most eight digits (NLM).
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Literal

from fairhand.model.entry import Entry
from fairhand.reading.first_pages import is_isbn

_DOI = re.compile(r"(?:https?://(?:dx\.)?doi\.org/|doi:?\s{0,3})?(10\.\d{4,9}/\S{1,250})", re.IGNORECASE)
_PMID = re.compile(r"(?:PMID:?\s{0,3}|https?://pubmed\.ncbi\.nlm\.nih\.gov/)?(\d{1,8})/?", re.IGNORECASE)
_ISBN = re.compile(r"(?:ISBN(?:-1[03])?:?\s{0,3})?([\d -]{9,20}[\dXx])", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Identifier:
    """One such number."""

    kind: Literal["DOI", "ISBN", "PMID"]
    value: str
    """Without anything around it; an ISBN without hyphens, a DOI in small letters (its case tells nothing)."""

    def __str__(self) -> str:
        """As it is said."""
        return f"{self.kind} {self.value}"


def find_identifier(text: str) -> Identifier | None:
    """The identifier that a text is, or None.

    >>> str(find_identifier("https://doi.org/10.5555/Tide.7")), str(find_identifier("978-0-306-40615-7"))
    ('DOI 10.5555/tide.7', 'ISBN 9780306406157')
    >>> str(find_identifier("PMID: 123456")), find_identifier("tides.pdf"), find_identifier("978-0-306-40615-8")
    ('PMID 123456', None, None)
    """
    text = text.strip()
    if found := _DOI.fullmatch(text):
        return Identifier("DOI", found[1].rstrip(".,;").lower())
    if found := _ISBN.fullmatch(text):
        digits = plain_isbn(found[1])
        if digits:
            return Identifier("ISBN", digits)
    if found := _PMID.fullmatch(text):
        return Identifier("PMID", found[1].lstrip("0") or "0")
    return None


def plain_isbn(text: str) -> str:
    """An ISBN in its thirteen digits; nothing where it is none.

    >>> plain_isbn("0-8044-2957-X"), plain_isbn("12")
    ('9780804429573', '')
    """
    digits = re.sub(r"[ -]", "", text).upper()
    if not is_isbn(digits):
        return ""
    if len(digits) == 13:
        return digits
    front = f"978{digits[:9]}"
    check = -sum(int(digit) * (1 + 2 * (place % 2)) for place, digit in enumerate(front)) % 10
    return f"{front}{check}"


def plain_doi(entry: Entry) -> str:
    """The DOI of an entry, from its field or its address; nothing where it has none."""
    for text in (entry.doi, entry.url):
        found = _DOI.fullmatch(text.strip()) if text else None
        if found:
            return found[1].rstrip(".,;").lower()
    return ""
