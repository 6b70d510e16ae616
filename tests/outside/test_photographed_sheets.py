"""Sheets that we set, photograph in numbers and read again by OCR: words and requirements against the sheet as set.

Source: the sheets are our own, and so is the damage: a page askew, out of focus, in uneven light, grained and saved as
a JPEG of low quality (common practice in measuring OCR). The measure is the word error rate: insertions, deletions and
substitutions over the words of the sheet.
"""

from __future__ import annotations

import io
from itertools import chain

import pytest
import typst

from fairhand.brief.read import read_brief
from fairhand.model.requirement import Brief
from fairhand.outside.printed_page import read_printed

pytest.importorskip("rapidocr", reason="the extra for OCR is not installed: pip install 'fairhand[ocr]'")

PAGE = '#set page(width: 21cm, height: 29.7cm, margin: 2.3cm)\n#set text(font: "Libertinus Serif", size: 11pt)\n'
PROSE = (
    "GEOG 214: Rivers and People",
    "Write a paper of 1,800 to 2,200 words on a river whose course people have changed.",
    "Use at least six sources, of which four must be peer-reviewed articles published since 2012.",
    "Cite them in APA style (7th edition).",
    "Form. Double-spaced, 12-point Times New Roman, one-inch margins on all sides. Number the pages.",
    "Due: Friday 12 March 2027, 17:00, as a PDF through the course site. Late papers lose 5 percent per day.",
)
ROWS = (
    ("Length", "1,500 words, give or take 10 per cent"),
    ("Due", "Monday 3 May 2027 at noon"),
    ("Sources", "at least five, two of them books"),
    ("Style", "MLA, 9th edition"),
    ("Argument", "40 marks"),
    ("Writing", "20 marks"),
)
SHEETS = {
    "prose": (PAGE + "\n\n".join(PROSE), "\n\n".join(PROSE)),
    "rows": (
        PAGE + "#table(columns: (4cm, 1fr), stroke: none, " + ", ".join(f"[{cell}]" for cell in chain(*ROWS)) + ")",
        "\n".join(f"{name} | {says}" for name, says in ROWS),
    ),
}
DAMAGE = {"scan": (0.0, 0.0, 0.0, 0.0), "photograph": (1.6, 1.0, 0.45, 7.0), "poor": (-3.0, 1.4, 0.6, 12.0)}
"""Degrees askew, blur in pixels, share of the light lost across the page, grain in levels of grey."""
FLOORS = {"scan": (0.01, 1.0), "photograph": (0.02, 1.0), "poor": (0.05, 0.8)}
"""The most words that may be wrong, and the least share of the requirements that must be right."""


def photograph(sheet: str, askew: float, blur: float, shade: float, grain: float) -> bytes:
    """A JPEG of the set page, damaged as said."""
    import numpy as np
    from PIL import Image, ImageFilter

    with Image.open(io.BytesIO(typst.compile(sheet.encode(), format="png", ppi=150))) as page:
        paper = page.convert("L").rotate(askew, fillcolor=255, resample=Image.Resampling.BICUBIC)
    dots = np.asarray(paper.filter(ImageFilter.GaussianBlur(blur)), dtype=float)
    dots = dots * np.linspace(1, 1 - shade, dots.shape[1]) + np.random.default_rng(7).normal(0, grain, dots.shape)
    kept = io.BytesIO()
    Image.fromarray(np.clip(dots, 0, 255).astype("uint8")).save(kept, "JPEG", quality=70)
    return kept.getvalue()


def wrong_words(read: str, is_there: str) -> float:
    """The word error rate of what was read."""
    from rapidfuzz.distance import Levenshtein

    words = is_there.split()
    return Levenshtein.distance(read.split(), words) / len(words)


def ask(text: str) -> Brief:
    """What a sheet of that text asks."""
    return read_brief([("brief.jpg", text)], None, "")


@pytest.mark.parametrize("damage", DAMAGE)
@pytest.mark.parametrize("sheet", SHEETS)
def test_a_photographed_sheet_asks_what_the_sheet_asks(sheet: str, damage: str) -> None:
    """Few words are misread, and the requirements are found with their values."""
    source, is_there = SHEETS[sheet]
    read = read_printed(photograph(source, *DAMAGE[damage]))
    rate = wrong_words(read, is_there)
    expected = {one.id: one.values for one in ask(is_there).requirements}
    found = {one.id: one.values for one in ask(read).requirements}
    right = sum(found.get(name) == values for name, values in expected.items())
    print(f"OCR of {sheet}, {damage}: {rate:.1%} of words wrong, {right} of {len(expected)} requirements right")
    most_wrong, least_right = FLOORS[damage]
    assert rate <= most_wrong
    assert right >= least_right * len(expected)


@pytest.mark.parametrize(("quarters", "told"), [(1, True), (1, False), (2, False), (3, False)])
def test_a_page_that_does_not_stand_on_its_feet_is_read(quarters: int, told: bool) -> None:
    """Whether the camera tells how it was held (EXIF 2.3, tag 274), or not."""
    from PIL import Image

    source, is_there = SHEETS["rows"]
    kept = io.BytesIO()
    with Image.open(io.BytesIO(photograph(source, *DAMAGE["photograph"]))) as upright:
        tags = Image.Exif()
        tags[274] = {1: 6, 2: 3, 3: 8}[quarters] if told else 1
        upright.rotate(90 * quarters, expand=True).save(kept, "JPEG", exif=tags)
    rate = wrong_words(read_printed(kept.getvalue()), is_there)
    print(f"OCR turned by {quarters} quarters, {'told' if told else 'not told'}: {rate:.1%} of words wrong")
    assert rate <= FLOORS["photograph"][0]
