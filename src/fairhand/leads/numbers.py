"""The numbers of registries that stand in a reference, taken out before it is read: ISBN, ISSN, PMID and the like.

So the model need not know them, and their digits are taken for no pages.
"""

from __future__ import annotations

import re

from fairhand.citing.identifiers import plain_isbn

_BACK = re.compile(r"\s*\^\s*(?:(?:[a-z]{1,2}|[\d.,]{1,4})\s+)*(?:Jump up(?: to)?:?\s*)?(?:[a-z]\s+)*")
"""What leads back from a note of an encyclopedia to its places in the text."""
_FORMS = (
    ("ISBN", re.compile(r"\bISBN(?:-1[03])?\s*[:#]?\s*((?:97[89][\s-]?)?(?:\d[\s-]?){9}[\dXx])\b")),
    ("ISSN", re.compile(r"\be?ISSN\s*:?\s*(\d{4}-\d{3}[\dXx])\b")),
    ("PMID", re.compile(r"\bPMID\s*:?\s*(\d{1,8})\b")),
    ("PMCID", re.compile(r"\b(?:PMCID\s*:?\s*)?(PMC\s?\d{5,8})\b")),
    ("", re.compile(r"\b(?:OCLC|JSTOR|S2CID|Bibcode|LCCN|SSRN|MR|Zbl)\s*:?\s*(\d[\d.]{3,12})\b")),
)
_LEFT = re.compile(r"\s*[\[(]\s*[\])]|(?<=[.,;])\s+[.,;](?=\s|$)")


def take_numbers(text: str) -> tuple[str, dict[str, str]]:
    """The reference without such numbers, and the numbers by their CSL variables.

    >>> take_numbers("^ a b Lind, Ada (2001). Tide Mills. Hull: Quay Press. ISBN 0-306-40615-2.")
    ('Lind, Ada (2001). Tide Mills. Hull: Quay Press.', {'ISBN': '9780306406157'})
    """
    found: dict[str, str] = {}
    back = _BACK.match(text)
    text = text[back.end() :] if back else text
    for name, form in _FORMS:
        for number in form.finditer(text):
            said = plain_isbn(number[1]) or number[1] if name == "ISBN" else number[1]
            if name:
                found.setdefault(name, said)
        text = form.sub("", text)
    return " ".join(_LEFT.sub("", text).split()), found
