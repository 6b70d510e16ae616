"""Characters that the paper's own faces lack."""

from __future__ import annotations

from dataclasses import replace

import pypdfium2
import pytest

from fairhand.fair_copy.document import FairCopy, FrontMatter
from fairhand.fair_copy.layout import layout_for
from fairhand.fair_copy.typesetting import to_typst
from fairhand.manuscript.parts import SetBlock
from fairhand.model.inline import Text
from fairhand.model.request import Typeset
from fairhand.press.typst_press import typeset

SIGNS = "≤≥≠≈∞√←→‡‰×÷±−·†§¶′″½αβπΣµ°№✓★£€©™"
SPACES = "\u2011\u202f\u200a\u2009\u2007\u2003"


def _set(words: str, font: str = "Times New Roman") -> Typeset:
    paragraph = SetBlock("paragraph", inlines=(Text(words),))
    layout = replace(layout_for("mla"), font=font)
    return typeset(to_typst(FairCopy(FrontMatter((Text("Signs"),)), (paragraph,), (), layout)))


@pytest.mark.parametrize("font", ["Times New Roman", "Arial", "Calibri", "Courier New"])
def test_signs_are_set_in_some_face(font: str) -> None:
    """Signs, arrows and narrow spaces are no empty boxes: PDF/UA refuses a character without a glyph."""
    made = _set(f"{SIGNS} a{'b'.join(SPACES)}c", font)
    assert made.problems == ()
    with pypdfium2.PdfDocument(made.pdf) as document:
        text = document[0].get_textpage().get_text_range()
    assert set(SIGNS) <= set(text)


@pytest.mark.parametrize(("joint", "breaks"), [("-", True), ("\u2011", False), ("\u202f", False), ("\u00a0", False)])
def test_what_does_not_break_does_not_break(joint: str, *, breaks: bool) -> None:
    """A line ends at a hyphen, and never at a non-breaking one or at a narrow space that does not break."""
    with pypdfium2.PdfDocument(_set("salt " * 18 + f"ferry{joint}mantlepieces").pdf) as document:
        text = document[0].get_textpage()
        tops = {
            round(text.get_charbox(text.count_chars() - back, loose=True)[1]) for back in (1, len("mantlepieces") + 3)
        }
    assert (len(tops) == 2) == breaks
