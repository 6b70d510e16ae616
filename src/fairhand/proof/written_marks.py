r"""Marks from a printed proof, written down one a line by page and line number.

A line gives where, the words in quotation marks, and what is asked: ``3.12 "recieve" / receive``, a stroke and the new
matter as in the margin; or a sign's name, ``3.14 "very" delete``, ``3.15 "note" insert of it``. The page holds for the
lines that follow until another is given.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import get_args

from fairhand.errors import FairhandError
from fairhand.model.problem import Problem
from fairhand.model.proof_mark import ProofSign

NEEDS_MATTER: frozenset[ProofSign] = frozenset({"substitute", "insert"})
"""Signs that say nothing without new matter."""
TAKES_MATTER: frozenset[ProofSign] = NEEDS_MATTER | {"query", "transpose", "stet"}
"""Signs after which something may be written: new matter, what is asked, or why it stands."""
OTHER_NAMES: Mapping[str, ProofSign] = {
    "/": "substitute",
    "close-up": "close up",
    "paragraph": "new paragraph",
    "run-on": "run on",
    "caps": "capitals",
    "lower-case": "lower case",
    "lowercase": "lower case",
    "roman": "upright",
    "?": "query",
}
"""What else a sign may be called."""

_NAMES = sorted({*get_args(ProofSign), *OTHER_NAMES}, key=len, reverse=True)
_LINE = re.compile(
    r"\s*(?:(?:p(?:age)?\.?\s*)?(?P<page>\d{1,4})\s*[.,]\s*)?(?:l(?:ine)?\.?\s*)?(?P<line>\d{1,4})\s*"
    r"(?:“(?P<curly>[^”]*)”|\"(?P<straight>[^\"]*)\")(?:\s*\((?P<nth>\d{1,2})\))?\s*"
    rf"(?P<sign>{'|'.join(map(re.escape, _NAMES))})(?P<matter>(?:[\s:]|(?<=[/?])).*)?",
    re.IGNORECASE,
)
_EXAMPLE = 'write it as 3.12 "recieve" / receive (page, line, the words, and what is asked)'


@dataclass(frozen=True, slots=True)
class WrittenMark:
    """One mark as it was written down."""

    page: int
    line: int
    exact: str
    """The words that are marked."""
    sign: ProofSign
    words: str = ""
    """The new matter, or what is asked."""
    nth: int = 0
    """Which of the places in its line where the words stand, from 1; 0 where it is not said."""


def read_written(text: str) -> tuple[tuple[WrittenMark, ...], tuple[Problem, ...]]:
    r"""The marks of a list, and what is wrong with each line that is none.

    >>> marks, faults = read_written('3.12 "recieve" / receive\n14 "very" delete\n15 "a fact" upside down')
    >>> [(one.page, one.line, one.exact, one.sign, one.words) for one in marks]
    [(3, 12, 'recieve', 'substitute', 'receive'), (3, 14, 'very', 'delete', '')]
    >>> [fault.where for fault in faults]
    ['mark 3']
    """
    marks, faults, page = [], [], 1
    for number, line in enumerate(text.split("\n"), 1):
        if not line.strip():
            continue
        found = _LINE.fullmatch(line)
        where = f"mark {number}"
        if found is None:
            faults.append(Problem(where, f"“{line.strip()[:60]}” is not understood", _EXAMPLE))
            continue
        page = int(found["page"] or page)
        sign, matter = name_sign(found["sign"]), " ".join((found["matter"] or "").lstrip(": ").split())
        exact = (found["curly"] or found["straight"] or "").strip()
        fault = find_fault(sign, exact, matter)
        if fault:
            faults.append(Problem(where, fault, _EXAMPLE))
            continue
        marks.append(WrittenMark(page, int(found["line"]), exact, sign, matter, int(found["nth"] or 0)))
    return tuple(marks), tuple(faults)


def read_place(said: str) -> tuple[int, int]:
    """Page and line of the proof, as they are written: 3.12.

    Raises:
        FairhandError: They are not written so.

    >>> read_place("3.12")
    (3, 12)
    """
    page, _, line = said.strip().partition(".")
    if not (page.isdecimal() and line.isdecimal() and len(said) < 12):
        message = f"“{said[:20]}” is no page and line of the proof; write it as 3.12"
        raise FairhandError(message)
    return int(page), int(line)


def name_sign(said: str) -> ProofSign:
    """The sign of a name that is one.

    >>> name_sign("Close-up"), name_sign("/")
    ('close up', 'substitute')
    """
    said = " ".join(said.casefold().split())
    sign: ProofSign = OTHER_NAMES[said] if said in OTHER_NAMES else next(s for s in get_args(ProofSign) if s == said)
    return sign


def find_fault(sign: ProofSign, exact: str, matter: str) -> str:
    """Why a mark cannot be, in a few words; nothing where it can.

    >>> find_fault("insert", "the tide", ""), find_fault("delete", "very", "")
    ('insert needs its new matter', '')
    """
    if not exact.strip():
        return "it marks no words; for an insertion, give those before it"
    if sign in NEEDS_MATTER and not matter:
        return f"{sign} needs its new matter"
    if matter and sign not in TAKES_MATTER:
        return f"after {sign} nothing is written: “{matter[:40]}”"
    return ""
