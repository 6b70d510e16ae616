"""The passes over the proof and their marks, as ``marks.jsonl`` keeps them: one W3C Web Annotation a line.

The file holds stets too, and whatever else was annotated; every line that is not changed stands as it was.

**Source**: W3C Web Annotation Data Model (2017), sections 3.2.4, 3.3.1, 3.3.5 and 4.2.4.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from typing import get_args

from fairhand.language.line_files import add_line, load_record
from fairhand.model.proof_mark import Fate, Medium, ProofMark, ProofPass, ProofSign
from fairhand.reading.annotation_line import DRAFT, first_said, maker_of, quote_of, said_of, write_annotation

IN_PRINT = "fair/"
"""The address of what only the printed paper has: the folder in which it is printed."""
PASS, MARK = "pass", "mark"
"""The tags that tell a pass and a mark from whatever else is annotated."""
_PLACE = re.compile(r"(\d{1,5})\.(\d{1,5})")


def read_passes(text: str) -> tuple[tuple[ProofPass, ...], tuple[ProofMark, ...]]:
    """The passes that the text holds, and the marks, each in the order in which they were made.

    >>> one = ProofMark("urn:m1", "urn:p1", "substitute", "recieve", "They ", " it.", words="receive", page=3, line=12)
    >>> read_passes(put_line("", one))[1] == (one,)
    True
    """
    found = [one for line in text.split("\n") if (one := _read_line(line)) is not None]
    return (
        tuple(one for one in found if isinstance(one, ProofPass)),
        tuple(one for one in found if isinstance(one, ProofMark)),
    )


def put_line(text: str, one: ProofPass | ProofMark) -> str:
    """The file's text with a pass or a mark, in the place of the one of the same id where there is one."""
    lines, told = text.split("\n"), _tell(one)
    places = [at for at, line in enumerate(lines) if _id_of(line) == one.id]
    if places:
        lines[places[0]] = told
        return "\n".join(lines)
    return add_line(text, told)


def drop_line(text: str, gone: str) -> str:
    """The file's text without the pass or the mark of that id; every other line stands as it was."""
    return "\n".join(line for line in text.split("\n") if _id_of(line) != gone)


def _tell(one: ProofPass | ProofMark) -> str:
    """A pass or a mark as an annotation."""
    if isinstance(one, ProofMark):
        said = [
            ("tagging", MARK),
            ("classifying", one.sign),
            ("editing", one.words),
            ("linking", one.in_pass),
            ("bookmarking", f"{one.page}.{one.line}" if one.page else ""),
            ("moderating", "" if one.fate == "open" else one.fate),
            ("commenting", one.why),
        ]
        quote = {"exact": one.exact, "prefix": one.before, "suffix": one.after}
        source = DRAFT if one.where == DRAFT else IN_PRINT
        return write_annotation("editing", said, quote, id_=one.id, created=one.when, source=source)
    said = [
        ("tagging", PASS),
        ("classifying", one.medium),
        ("describing", one.lapse),
        ("identifying", one.draft),
        ("bookmarking", f"{one.read_to[0]}.{one.read_to[1]}" if one.read_to[0] else ""),
        ("commenting", one.unread),
    ]
    return write_annotation("assessing", said, id_=one.id, by=one.by, created=one.begun, modified=one.closed)


def _read_line(line: str) -> ProofPass | ProofMark | None:
    """The pass or the mark that a line holds; None where it holds neither."""
    found = load_record(line)
    said = said_of(found)
    first = first_said(found)
    name, kind = str(found.get("id", "")), first.get("classifying", "")
    page, line_number = next(_places(first.get("bookmarking", "")), (0, 0))
    if not name:
        return None
    if MARK in said.get("tagging", ()) and kind in get_args(ProofSign):
        quote, fate = quote_of(found), first.get("moderating", "open")
        target = found.get("target")
        source = target.get("source") if isinstance(target, Mapping) else ""
        return ProofMark(
            name,
            first.get("linking", ""),
            _sign(kind),
            str(quote.get("exact", "")),
            str(quote.get("prefix", "")),
            str(quote.get("suffix", "")),
            "fair copy" if source == IN_PRINT else "draft.md",
            first.get("editing", ""),
            page,
            line_number,
            str(found.get("created", "")),
            next((one for one in get_args(Fate) if one == fate), "open"),
            first.get("commenting", ""),
        )
    if PASS in said.get("tagging", ()) and kind in get_args(Medium):
        return ProofPass(
            name,
            next(one for one in get_args(Medium) if one == kind),
            maker_of(found),
            first.get("describing", ""),
            str(found.get("created", "")),
            str(found.get("modified", "")),
            (page, line_number),
            first.get("commenting", ""),
            first.get("identifying", ""),
        )
    return None


def _sign(kind: str) -> ProofSign:
    sign: ProofSign = next(one for one in get_args(ProofSign) if one == kind)
    return sign


def _places(said: str) -> Iterator[tuple[int, int]]:
    found = _PLACE.fullmatch(said)
    if found:
        yield int(found[1]), int(found[2])


def _id_of(line: str) -> str:
    """The id of the pass or the mark that a line holds; empty where it holds neither."""
    one = _read_line(line)
    return one.id if one else ""
