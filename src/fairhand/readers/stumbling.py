"""What readers wrote, in the order of the draft: each passage once, with everything that was written to it.

Where two readers stumble at one place it is the place, and not the reader.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from fairhand.model.span import Span
from fairhand.readers.gathering import ReaderRemark
from fairhand.readers.register import plain_name
from fairhand.reading.found_again import Place


@dataclass(frozen=True, slots=True)
class Placed:
    """A remark at its place in the present draft."""

    remark: ReaderRemark
    span: Span
    sure: bool


@dataclass(frozen=True, slots=True)
class Passage:
    """A sentence of the draft, and what was written to it."""

    span: Span
    placed: tuple[Placed, ...]

    @property
    def readers(self) -> tuple[str, ...]:
        """Who wrote to it, each once."""
        return tuple(dict.fromkeys(one.remark.reader or one.remark.by for one in self.placed))

    @property
    def open(self) -> bool:
        """Whether something written to it waits for the writer's word."""
        return any(not one.remark.ruling for one in self.placed)

    @property
    def stumbled(self) -> bool:
        """Whether two readers or more wrote to it."""
        return len({plain_name(name) for name in self.readers}) > 1


def group_by_passage(
    remarks: Sequence[ReaderRemark], places: Sequence[Place | None], sentences: Iterable[Span]
) -> tuple[tuple[Passage, ...], tuple[ReaderRemark, ...]]:
    """The passages in order, and the remarks that have no place.

    Args:
        remarks: The remarks.
        places: Where each belongs, in the draft.
        sentences: The draft's sentences, and what else may be remarked on, in order.

    >>> two = [ReaderRemark("comment", "Why?", reader="Ines"), ReaderRemark("comment", "How?", reader="Tom")]
    >>> found, lost = group_by_passage(two, [Place(Span(2, 4), sure=True), Place(Span(5, 9), sure=False)], [Span(0, 9)])
    >>> found[0].stumbled, lost
    (True, ())
    """
    listed = sorted(sentences)
    grouped: dict[Span, list[Placed]] = {}
    lost = []
    for remark, place in zip(remarks, places, strict=True):
        if place is None:
            lost.append(remark)
            continue
        home = next((one for one in listed if one.start <= place.span.start < one.end), place.span)
        grouped.setdefault(home, []).append(Placed(remark, place.span, place.sure))
    passages = (Passage(span, tuple(sorted(these, key=_order))) for span, these in sorted(grouped.items()))
    return tuple(passages), tuple(lost)


def _order(placed: Placed) -> tuple[int, int]:
    return placed.span.start, placed.span.end
