"""The faces of the fair copy against the published widths of the faces that they stand in for.

Source: the AFM files of the core fourteen PostScript fonts (Adobe, 1985–1997), whose Times-Roman, Helvetica and Courier
give the widths that Times New Roman, Arial and Courier New keep, in thousandths of the type size; from memory.
"""

from __future__ import annotations

import io
import string
from importlib.resources import files

import pytest
from fontTools.ttLib import TTFont

FACES = files("fairhand") / "built" / "fonts"
FAMILIES = ("tinos", "arimo", "cousine", "carlito")
CUTS = ("regular", "italic", "bold", "bold-italic")
LETTERS = string.ascii_uppercase + string.ascii_lowercase
WIDTHS = {
    "tinos": (
        "722 667 667 722 611 556 722 722 333 389 722 611 889 722 722 556 722 667 556 611 722 722 944 722 722 611 "
        "444 500 444 500 444 333 500 500 278 278 500 278 778 500 500 500 500 333 389 278 500 500 722 500 500 444"
    ),
    "arimo": (
        "667 667 722 722 667 611 778 722 278 500 667 556 833 722 778 667 778 722 667 611 722 667 944 667 667 611 "
        "556 556 500 556 556 278 556 556 222 222 500 222 833 556 556 556 556 333 500 278 556 500 722 500 500 500"
    ),
    "cousine": " ".join(["600"] * 52),
}


def open_face(family: str, cut: str) -> TTFont:
    """One face, as the build made it."""
    return TTFont(io.BytesIO((FACES / f"{family}-{cut}.ttf").read_bytes()))


@pytest.mark.parametrize("family", WIDTHS)
def test_letters_are_as_wide_as_in_the_face_stood_in_for(family: str) -> None:
    """Every basic letter has the published width, to the rounding of the units, so that lines break alike."""
    face = open_face(family, "regular")
    units, cmap = face["head"].unitsPerEm, face.getBestCmap()
    widths = [face["hmtx"][cmap[ord(letter)]][0] * 1000 / units for letter in LETTERS]
    published = [int(width) for width in WIDTHS[family].split()]
    assert [letter for letter, a, b in zip(LETTERS, widths, published, strict=True) if abs(a - b) > 0.6] == []


@pytest.mark.parametrize("family", FAMILIES)
@pytest.mark.parametrize("cut", CUTS)
def test_one_file_holds_every_script(family: str, cut: str) -> None:
    """A cut is one file that sets names from all over Europe, Greek and Cyrillic, and every mark of a manuscript."""
    face = open_face(family, cut)
    assert [
        mark for mark in "aZőŁñčßẽαΩжЯ‘’“”–—…§¶†×÷€£•\N{NO-BREAK SPACE}" if ord(mark) not in face.getBestCmap()
    ] == []


@pytest.mark.parametrize("family", FAMILIES)
def test_the_licence_stands_beside_the_face(family: str) -> None:
    """Each family is shipped with its copyright notice and the text of its licence."""
    licence = (FACES / f"{family}-LICENSE.txt").read_text(encoding="utf-8")
    assert "Copyright" in licence
    assert "SIL OPEN FONT LICENSE Version 1.1" in licence
