"""A paper with one of everything."""

from __future__ import annotations

import struct
import zlib
from collections.abc import Callable

import pytest

from fairhand.fair_copy.building import build_fair_copy
from fairhand.fair_copy.document import FairCopy, FrontMatter
from fairhand.fair_copy.layout import layout_for
from fairhand.manuscript.parts import SetBlock
from fairhand.model.inline import Break, Code, Hole, Image, Link, Note, Styled, Text

WORDS = "The tide mills of the estuary ground corn for four centuries, and their millers kept the moon’s hours. "


def _picture() -> bytes:
    """A grey picture of forty points by twenty."""

    def chunk(kind: bytes, data: bytes) -> bytes:
        return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))

    head = struct.pack(">IIBBBBB", 40, 20, 8, 0, 0, 0, 0)
    rows = zlib.compress((b"\0" + b"\x80" * 40) * 20)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", rows) + chunk(b"IEND", b"")


def _paragraph(*inlines: object) -> SetBlock:
    return SetBlock("paragraph", inlines=tuple(Text(i) if isinstance(i, str) else i for i in inlines))  # type: ignore[misc]


def _blocks() -> list[SetBlock]:
    verse = (Text("The water’s in,"), Break(hard=True), Text("the wheel begins to turn."))
    rows = (((Text("Year"),), (Text("Tides"),)), ((Text("1712"),), (Text("598"),)))
    items = tuple(SetBlock("item", children=(_paragraph(words),)) for words in ("lunar days;", "market weeks."))
    return [
        SetBlock("heading", 1, (Text("Keeping the Moon’s Hours"),)),
        _paragraph(WORDS, "One wrote that “the water keeps no Sabbath” ", Hole(0), "."),
        SetBlock("heading", 2, (Text("The Pond"),)),
        _paragraph(WORDS * 3, Note((Text("A note of the writer’s own."),))),
        SetBlock("quote", children=(_paragraph("The miller slept between the tides. ", Hole(1)),)),
        _paragraph("and so the day had no noon. ", Styled("italic", (Text("Ebb"),)), " and ", Code("flow")),
        SetBlock("heading", 3, (Text("Rents"),)),
        SetBlock("table", rows=rows, caption=(Text("Table 1. Tides ground"),)),
        SetBlock("figure", inlines=(Image("A plan", "plan.png"),), caption=(Text("The pond at high water"),)),
        SetBlock("list", 1, children=items),
        SetBlock("quote", children=(SetBlock("paragraph", inlines=verse),)),
        SetBlock("code", code="grind(tide)\n  twice"),
        SetBlock("rule"),
        _paragraph(WORDS, Link((Text("a page"),), "https://example.org/a")),
    ]


FRONT = FrontMatter(
    author="Ruth van der Zee",
    institution="Eastholm College",
    course="HIST 210",
    instructor="Professor Okafor",
    date="3 March 2026",
)


@pytest.fixture(scope="session")
def make_paper() -> Callable[..., FairCopy]:
    """Makes the paper in a style; in a note style its citations are notes."""

    def make(style: str = "mla-9", *, notes: bool = False) -> FairCopy:
        places = ("Ada Lind, Water and Time, 12.", "Lind, 14.") if notes else ("(Lind 12)", "(Lind 14)")
        rendered = [(Note((Text(place),)),) if notes else (Text(place),) for place in places]
        list_entry = (Text("Lind, Ada. "), Styled("italic", (Text("Water and Time"),)), Text(". Weir, 2019."))
        pictures = {"plan.png": _picture()}
        other = (Text("Marsh, Owen. The Miller’s Calendar. Weir, 2020."),)
        return build_fair_copy(_blocks(), rendered, [list_entry, other], FRONT, layout_for(style), pictures=pictures)

    return make
