"""What one reader wrote into a copy, gathered: pieces of one change are one, and each remark keeps its surroundings."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Literal

from fairhand.model.remark import Remark, Returned
from fairhand.model.span import Span

Kind = Literal["comment", "insertion", "deletion", "substitution"]
Ruling = Literal["", "taken", "left", "kept"]
"""The writer's word: followed; not followed, and why; kept for later; or none yet."""
RULINGS: tuple[Ruling, ...] = ("taken", "left", "kept")
AROUND = 64
"""Code points that are kept on either side. **Source**: the selector of the W3C Web Annotation Data Model, 4.2.4."""
_NEAR = 24
"""Of what is put in, so many code points of the words beside it are what it is found again by."""


@dataclass(frozen=True, slots=True)
class ReaderRemark:
    """One remark or change of a reader, with what it is found again by."""

    kind: Kind
    said: str = ""
    """Of a comment, its words; of a change, the words put in."""
    exact: str = ""
    """The words it is about, as they were sent; of an insertion, those around its place."""
    before: str = ""
    after: str = ""
    """What stood before and after them."""
    at: int = -1
    """Of an insertion, the place within ``exact``."""
    reader: str = ""
    """The reader's name in the register."""
    by: str = ""
    """Whose it is, as the file has it."""
    when: str = ""
    """The moment, as the file has it."""
    file: str = ""
    """The file that it came in."""
    answers: str = ""
    """What the comment that it answers says."""
    ruling: Ruling = ""
    why: str = ""
    """The writer's reason."""

    @property
    def id(self) -> str:
        """A short name, the same however often the file comes in."""
        told = [self.kind, self.said, self.exact, self.before, self.after, self.by, self.when]
        return hashlib.sha256(json.dumps(told).encode()).hexdigest()[:12]


def gather_remarks(returned: Returned, reader: str = "", file: str = "") -> tuple[ReaderRemark, ...]:
    """The comments and changes of a copy, in order; changes of form alone are not among them, see ``count_forms``.

    A word processor cuts one change into several where the type changes within it, and writes a word replaced as one
    taken out and another put in: here each is one, and a word that is changed within is replaced.

    >>> from fairhand.model.remark import Remark
    >>> changed = (Remark("deletion", Span(4, 7), "ran"), Remark("insertion", Span(7, 7), "fell"))
    >>> [(one.kind, one.exact, one.said) for one in gather_remarks(Returned("It: ran.", changed))]
    [('substitution', 'ran', 'fell')]
    """
    text = returned.text
    by_id = {one.id: one.said for one in returned.remarks if one.kind == "comment"}
    gone = {at for one in returned.remarks if one.kind == "deletion" for at in range(one.span.start, one.span.end)}
    out = []
    for told, one in _joined([each for each in returned.remarks if each.kind != "form"]):
        kind, span, said = _whole_words(text, told, one, gone - set(range(one.span.start, one.span.end)))
        if not span.of(text).strip():
            span = _around(text, span)
        at = one.span.start - span.start if kind == "insertion" else -1
        out.append(
            ReaderRemark(
                kind=kind,
                said=said,
                exact=span.of(text),
                before=text[max(0, span.start - AROUND) : span.start],
                after=text[span.end : span.end + AROUND],
                at=at,
                reader=reader or one.by,
                by=one.by,
                when=one.when,
                file=file,
                answers=by_id.get(one.answers, "") if one.answers else "",
            )
        )
    return tuple(dict.fromkeys(out))


def count_forms(returned: Returned) -> int:
    """How many changes are of type or layout alone, which the sheet sets and not a reader."""
    return sum(one.kind == "form" for one in returned.remarks)


def _joined(remarks: Sequence[Remark]) -> Iterator[tuple[Kind, Remark]]:
    """Changes that touch, of one kind and one person, as one; a deletion that an insertion touches as both."""
    changes: list[tuple[Kind, Remark]] = []
    for one in remarks:
        if one.kind == "comment":
            yield "comment", one
            continue
        kind: Kind = "insertion" if one.kind == "insertion" else "deletion"
        last_kind, last = changes[-1] if changes else (kind, None)
        if last is None or last.by != one.by or one.span.start != last.span.end:
            changes.append((kind, one))
            continue
        span = Span(last.span.start, one.span.end)
        if kind == last_kind and (kind == "deletion" or not len(span)):
            changes[-1] = (kind, replace(last, span=span, said=last.said + one.said))
        elif last_kind == "deletion":
            changes[-1] = ("substitution", replace(last, span=span, said=one.said))
        elif last_kind == "insertion":
            changes[-1] = ("substitution", replace(last, span=span))
        elif kind == "insertion":
            changes[-1] = (last_kind, replace(last, said=last.said + one.said))
        else:
            changes[-1] = (last_kind, replace(last, span=span))
    yield from changes


def _whole_words(text: str, kind: Kind, one: Remark, gone: set[int]) -> tuple[Kind, Span, str]:
    """The remark with the words whole that it cuts into: a letter changed is a word replaced by another.

    Letters that another change takes out are no part of the word.
    """
    start, end = one.span.start, one.span.end
    said = "" if kind == "deletion" else one.said
    inner = text[start:end] or ("" if kind == "comment" else said)
    while inner[:1].isalnum() and start and text[start - 1].isalnum() and start - 1 not in gone:
        start -= 1
    while inner[-1:].isalnum() and end < len(text) and text[end].isalnum() and end not in gone:
        end += 1
    if kind == "comment" or (start, end) == (one.span.start, one.span.end):
        return kind, Span(start, end), said
    return "substitution", Span(start, end), text[start : one.span.start] + said + text[one.span.end : end]


def _around(text: str, span: Span) -> Span:
    """The words on either side of a place, in its own paragraph; the nearest ones where that is empty."""
    start = max(text.rfind("\n", 0, span.start) + 1, span.start - _NEAR)
    line_end = text.find("\n", span.end)
    end = min(line_end if line_end >= 0 else len(text), span.end + _NEAR)
    while 0 < start < span.start and not text[start - 1].isspace():
        start += 1
    while span.end < end < len(text) and not text[end].isspace():
        end -= 1
    while start < end and text[start].isspace():
        start += 1
    while end > start and text[end - 1].isspace():
        end -= 1
    if start < end:
        return Span(start, end)
    return Span(max(0, span.start - _NEAR), min(len(text), span.end + _NEAR))
