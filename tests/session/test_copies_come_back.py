"""Whatever a reader marks in a copy, in any of its forms, is found in the draft that it was made from."""

from __future__ import annotations

import random
import re
from collections.abc import Callable
from pathlib import Path

import pytest

from fairhand.fair_copy.reading_copy import Request, make_reading_copy
from fairhand.fair_copy.typesetting import to_typst
from fairhand.model.remark import Remark, Returned
from fairhand.model.span import Span
from fairhand.proof.placing import read_type
from fairhand.readers.gathering import gather_remarks
from fairhand.readers.placing import place_remarks
from fairhand.reading.returned_docx import read_returned_docx
from fairhand.reading.returned_odt import read_returned_odt
from fairhand.reading.returned_pdf import read_returned_pdf
from fairhand.session.hand_in.printing import FORMS
from fairhand.session.opened import OpenPaper

MARKS = 150


@pytest.mark.parametrize(
    ("kind", "read"), [("docx", read_returned_docx), ("odt", read_returned_odt), ("pdf", read_returned_pdf)]
)
def test_marks_on_a_copy_are_found_in_the_draft(
    demo_paper: Path, kind: str, read: Callable[[bytes, str], Returned]
) -> None:
    """By chance set on words of the body; curled quotation marks, rendered citations and line numbers hide none."""
    opened = OpenPaper(demo_paper)
    present = read_type(opened.look().manuscript)
    copy = make_reading_copy(opened.fair_copy(), Request("Ines Mora", questions=("Why?",)))
    data = opened.engines.typeset(to_typst(copy, None)).pdf if kind == "pdf" else FORMS[kind](copy)
    returned = read(data, f"x.{kind}")
    begins, ends = returned.text.index("Between 1926"), returned.text.rindex("Works Cited")
    words = [found.span() for found in re.finditer(r"\S+", returned.text) if begins <= found.start() < ends - 40]
    chance = random.Random(2)  # noqa: S311 - the same marks each time
    sure = 0
    for _ in range(MARKS):
        first = chance.randrange(len(words) - 5)
        span = Span(words[first][0], words[first + chance.randrange(5)][1])
        marked = Returned(returned.text, (Remark("comment", span, "?", "Ines Mora"),))
        remarks = gather_remarks(marked)
        (place,) = place_remarks(remarks, present.text, present.text)
        assert place is not None, remarks
        sure += place.sure
    print(f"\n{kind}: {sure} of {MARKS} marks on a copy sure in its draft, the others uncertain, none lost")
    assert sure >= 0.95 * MARKS
