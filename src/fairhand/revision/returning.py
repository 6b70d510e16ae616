"""Where an offcut goes back, whatever became of the draft around it.

**Source**: W3C Web Annotation Data Model (2017), section 4.2.4, for the words on either side; the paragraphs that stood
there are found again by the matcher of ``manuscript``.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from fairhand.language.sentences import split_sentences
from fairhand.manuscript.matching import match_texts
from fairhand.model.span import Span
from fairhand.reading.found_again import count_shared, find_surely
from fairhand.revision.offcuts import Offcut

_ENDED = re.compile(r"[.!?…][\"'”’)\]*_]*$")
How = Literal["as it was", "beside what stood there", "under its heading", "at the end"]
AROUND = 32
"""Code points on either side that must stand together for a place to be as it was."""
WORDS = (6, 3)
"""How many words in a row are looked for beside a piece of a line, to find its place in a paragraph that was edited."""


@dataclass(frozen=True, slots=True)
class Return:
    """Where an offcut goes, and as what."""

    at: int
    """The code point of the draft before which it is put in."""
    words: str
    """What is put in, blanks included."""
    how: How


def find_return(text: str, one: Offcut, passages: Sequence[Span]) -> Return:
    r"""The place of an offcut in the draft as it now stands.

    Args:
        text: The draft.
        one: The offcut.
        passages: The draft's passages in order.

    >>> draft = "First it rained hard.\n\nThen it stopped at last."
    >>> one = Offcut("It snowed.\n\n", "It rained hard.\n\n", "Then it stopped.")
    >>> found = find_return(draft, one, (Span(0, 21), Span(23, 47)))
    >>> draft[:found.at] + found.words + draft[found.at:]
    'First it rained hard.\n\nIt snowed.\n\nThen it stopped at last.'
    """
    if (at := _find_join(text, one)) is not None:
        return Return(at, one.text, "as it was")
    present = [passage.of(text) for passage in passages]
    if not _is_whole(one):
        sentence = _beside_sentence(text, one, passages)
        if sentence is not None:
            return sentence
        left, right = one.before.split("\n\n")[-1], one.after.split("\n\n")[0]
        host = _find_passages([f"{left} {right}"], present)[0]
        if host:
            return _into(text, max((passages[number] for number in host), key=len), one, left, right)
    tight = "\n\n" not in one.text and "\n" in one.text
    gap = "\n" if tight else "\n\n"
    body = one.text.strip("\n")
    beside = _find_beside(one, present)
    if beside is not None:
        number, comes_after = beside
        if comes_after:
            return Return(passages[number].end, f"{gap}{body}", "beside what stood there")
        return Return(passages[number].start, f"{body}{gap}", "beside what stood there")
    heading = next((span for span in passages if one.section and _title(span.of(text)) == one.section), None)
    if heading is not None:
        return Return(heading.end, f"\n\n{body}", "under its heading")
    end = len(text.rstrip())
    return Return(end, f"\n\n{body}" if end else body, "at the end")


def is_there(text: str, one: Offcut) -> bool:
    """Whether the draft has the offcut's words at its place already."""
    around = one.before[-AROUND:] + one.text + one.after[:AROUND]
    return bool(one.text.strip()) and around in text


def _find_join(text: str, one: Offcut) -> int | None:
    """Where what stood before it and what stood after it now meet; of several places, where most agrees."""
    tail, head = one.before[-AROUND:], one.after[:AROUND]
    best: tuple[int, int] | None = None
    at = text.find(tail + head) if tail or head else -1
    while at >= 0:
        place = at + len(tail)
        agree = count_shared(text[:place][::-1], one.before[::-1]) + count_shared(text[place:], one.after)
        if best is None or agree > best[0]:
            best = agree, place
        at = text.find(tail + head, at + 1)
    if best is None:
        return 0 if not text and not tail and not head else None
    # Where nothing stood on one side, the place is the draft's own end.
    if (not tail and best[1]) or (not head and best[1] != len(text)):
        return None
    return best[1]


def _beside_sentence(text: str, one: Offcut, passages: Sequence[Span]) -> Return | None:
    """Whole sentences beside the nearest of those of their paragraph that is there; None for a part of a sentence."""
    left, right = one.before.split("\n\n")[-1], one.after.split("\n\n")[0]
    if not _ENDED.search(one.text.rstrip()) or (left.strip() and not _ENDED.search(left.rstrip())):
        return None
    before = [span.of(left) for span in split_sentences(left)][::-1]
    after = [span.of(right) for span in split_sentences(right)]
    there = [span.shifted(passage.start) for passage in passages for span in split_sentences(passage.of(text))]
    nearest = _nearest(before, after, [span.of(text).strip() for span in there])
    if nearest is None:
        return None
    number, comes_after = nearest
    if comes_after:
        end = there[number].start + len(there[number].of(text).rstrip())
        return Return(end, f" {one.text.strip()}", "beside what stood there")
    return Return(there[number].start, f"{one.text.strip()} ", "beside what stood there")


def _into(text: str, host: Span, one: Offcut, left: str, right: str) -> Return:
    """A piece of a line put into its paragraph, beside the nearest words of those around it that are still there."""
    own, body = host.of(text), one.text.strip()
    before, after = left.split(), right.split()
    for away in range(max(len(before), len(after))):
        for many in WORDS:
            found = _find_row(own, before[-away - many : len(before) - away], many)
            if found is not None:
                return Return(host.start + found.end, f" {body}", "beside what stood there")
            found = _find_row(own, after[away : away + many], many)
            if found is not None:
                return Return(host.start + found.start, f"{body} ", "beside what stood there")
    return Return(host.end, f" {body}", "beside what stood there")


def _find_row(text: str, words: Sequence[str], many: int) -> Span | None:
    """Where so many words in a row stand, and no part of a longer word with them."""
    found = find_surely(text, " ".join(words)) if len(words) == many else None
    return found.span if found else None


def _find_beside(one: Offcut, present: Sequence[str]) -> tuple[int, bool] | None:
    """The nearest of the passages that stood around it that is there, and whether the offcut comes after it."""
    before = [each for each in one.before.split("\n\n") if each.strip()][::-1]
    after = [each for each in one.after.split("\n\n") if each.strip()]
    return _nearest(before, after, present)


def _nearest(before: Sequence[str], after: Sequence[str], present: Sequence[str]) -> tuple[int, bool] | None:
    """The nearest of what stood before, the nearest first, and after that is there, and whether to come after it."""
    found = _find_passages([*before, *after], present)
    nearest: tuple[int, bool, int] | None = None
    for at, places in enumerate(found):
        if places:
            comes_after = at < len(before)
            away = at if comes_after else at - len(before)
            if nearest is None or away < nearest[0]:
                nearest = away, comes_after, places[-1] if comes_after else places[0]
    return None if nearest is None else (nearest[2], nearest[1])


def _find_passages(former: Sequence[str], present: Sequence[str]) -> list[tuple[int, ...]]:
    """Which of the present passages each former one is; several, where it was split; none, where it is gone."""
    found: list[tuple[int, ...]] = [() for _ in former]
    for match in match_texts(former, present):
        for old in match.old if match.new else ():
            found[old] = match.new
    return found


def _is_whole(one: Offcut) -> bool:
    """Whether whole lines were cut."""
    starts = not one.before or one.before.endswith("\n") or one.text.startswith("\n")
    return starts and (not one.after or one.after.startswith("\n") or one.text.endswith("\n"))


def _title(passage: str) -> str:
    """What a heading says; empty for anything else."""
    return passage.strip("# \t") if passage.startswith("#") else ""
