"""Typefaces: which free face stands for the one that is asked for, and how tall its lines are."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal


@dataclass(frozen=True, slots=True)
class Face:
    """A typeface that the program embeds; heights are in ems.

    **Source**: the faces' own ``hhea`` tables, from which word processors take the height of a line.
    """

    name: str
    ascent: float
    descent: float
    line: float
    """Height of a single-spaced line: ascent, descent and line gap."""
    kind: Literal["serif", "sans", "mono"]


TINOS = Face("Tinos", 1825 / 2048, 443 / 2048, 2355 / 2048, "serif")
ARIMO = Face("Arimo", 1854 / 2048, 434 / 2048, 2355 / 2048, "sans")
CARLITO = Face("Carlito", 1950 / 2048, 550 / 2048, 2500 / 2048, "sans")
COUSINE = Face("Cousine", 1705 / 2048, 615 / 2048, 2320 / 2048, "mono")

TWINS = {
    "times new roman": TINOS,
    "times": TINOS,
    "liberation serif": TINOS,
    "tinos": TINOS,
    "arial": ARIMO,
    "helvetica": ARIMO,
    "liberation sans": ARIMO,
    "arimo": ARIMO,
    "calibri": CARLITO,
    "carlito": CARLITO,
    "courier new": COUSINE,
    "courier": COUSINE,
    "liberation mono": COUSINE,
    "cousine": COUSINE,
}
"""Faces with the same widths, by the name that sheets and word processors use."""

NEAREST = {
    "calibri light": CARLITO,
    "verdana": ARIMO,
    "tahoma": ARIMO,
    "trebuchet": ARIMO,
    "aptos": CARLITO,
    "lucida sans": ARIMO,
    "century gothic": ARIMO,
    "gill sans": CARLITO,
    "segoe": ARIMO,
    "open sans": ARIMO,
    "roboto": ARIMO,
    "consolas": COUSINE,
    "monaco": COUSINE,
    "menlo": COUSINE,
}
"""Faces of the same kind, where there is no free face of the same widths; every other name gets a serif."""


def face_for(font: str) -> tuple[Face, bool]:
    """The embedded face that stands for ``font``, and whether it has the same widths.

    >>> [(face_for(font)[0].name, face_for(font)[1]) for font in ("Times New Roman", "Georgia", "Verdana")]
    [('Tinos', True), ('Tinos', False), ('Arimo', False)]
    """
    asked = " ".join(font.casefold().split())
    if asked in TWINS:
        return TWINS[asked], True
    for name, face in NEAREST.items():
        if name in asked:
            return face, False
    if "sans" in asked:
        return ARIMO, False
    return (COUSINE, False) if "mono" in asked or "typewriter" in asked else (TINOS, False)


def named_face(text: str) -> str:
    """The first face that ``text`` names, or ``text`` itself: a sheet may offer several.

    >>> named_face("Times New Roman or Arial")
    'Times New Roman'
    """
    lower = text.casefold()
    found = [(lower.index(name), -len(name), name) for name in (*TWINS, *NEAREST) if name in lower]
    if not found:
        return text.strip()
    start, length, _ = min(found)
    return text[start : start - length]
