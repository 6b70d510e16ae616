"""What the first pages of a text say of it: its DOI, its ISBN, the day that it appeared.

**Source**: the DOI Handbook, 2.2 (``10.`` prefix ``/`` suffix); ISO 2108 (ISBN, with its check digit); where on the
page they stand is common practice.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from fairhand.model.description import Said

FIRST_PAGE = "the first page"
_FRONT_PAGES = 6
"""Pages among which a book's imprint stands."""
_MOST_OF_A_PAGE = 20_000
_DOI = re.compile(r"\b10\.\d{4,9}/[^\s\"<>{}|\\^`\u201c\u201d]{1,200}")
_LED_DOI = re.compile(r"doi(?:\.org/|\s{0,3}[:.]?\s{0,3})$", re.IGNORECASE)
_ISBN = re.compile(r"ISBN(?:-1[03])?(?:\s{0,3}\([^)\n]{1,40}\))?\s{0,3}:?\s{0,3}((?:97[89][ -]?)?\d[\d -]{7,14}[\dXx])")
_APPEARED = re.compile(
    r"(?:Published(?: online)?|First published(?: online)?|Publication date|Date published)\s{0,3}:?\s{0,3}"
    r"(\d{1,2} [A-Z][a-z]{2,8}\.? \d{4}|[A-Z][a-z]{2,8}\.? \d{1,2}, \d{4}|\d{4}-\d{2}-\d{2}|(?:in )?\d{4}\b)"
)
_RIGHTS = re.compile(r"(?:©|\(c\)|Copyright)\s{0,3}(?:©\s{0,3})?((?:1[89]|20)\d\d)\b", re.IGNORECASE)


def say_of_first_pages(texts: Sequence[str]) -> Iterator[Said]:
    r"""What the first pages say; of several DOIs the one that is called so, and none where that is in doubt.

    >>> list(say_of_first_pages(["Tides\\nhttps://doi.org/10.5555/tide.7.\\nPublished: 3 May 2019"]))
    [('DOI', '10.5555/tide.7', 'the first page'), ('issued', '3 May 2019', 'the first page')]
    """
    first = texts[0][:_MOST_OF_A_PAGE] if texts else ""
    doi = _find_doi(first)
    if doi:
        yield "DOI", doi, FIRST_PAGE
    if found := _APPEARED.search(first):
        yield "issued", found[1].removeprefix("in "), FIRST_PAGE
    for number, text in enumerate(texts[:_FRONT_PAGES], 1):
        where = FIRST_PAGE if number == 1 else f"page {number} of the file"
        page = text[:_MOST_OF_A_PAGE]
        for found in _ISBN.finditer(page):
            digits = found[1].replace(" ", "").replace("-", "").upper()
            if is_isbn(digits):
                yield "ISBN", digits, where
                yield "type", "book", f"the ISBN on {where}"
                break
        if found := _RIGHTS.search(page):
            yield "issued", found[1], f"the copyright line on {where}"


def _find_doi(text: str) -> str:
    found = {_trim(one[0]): one.start() for one in _DOI.finditer(text)}
    led = [doi for doi, start in found.items() if _LED_DOI.search(text[max(0, start - 12) : start])]
    return led[0] if led else next(iter(found)) if len(found) == 1 else ""


def _trim(doi: str) -> str:
    """A DOI without the punctuation of the sentence around it."""
    doi = doi.rstrip(".,;:'’")
    while doi.endswith((")", "]")) and doi.count(doi[-1]) > doi.count({")": "(", "]": "["}[doi[-1]]):
        doi = doi[:-1].rstrip(".,;:")
    return doi


def is_isbn(digits: str) -> bool:
    """Whether digits are an ISBN whose check digit is right (ISO 2108).

    >>> is_isbn("9780306406157"), is_isbn("080442957X"), is_isbn("9780306406158")
    (True, True, False)
    """
    if re.fullmatch(r"97[89]\d{10}", digits):
        return sum(int(digit) * (1 + 2 * (place % 2)) for place, digit in enumerate(digits)) % 10 == 0
    if re.fullmatch(r"\d{9}[\dX]", digits):
        values = [10 if digit == "X" else int(digit) for digit in digits]
        return sum(value * (10 - place) for place, value in enumerate(values)) % 11 == 0
    return False
