"""The forms of the marks in the margin, each as the paths of its strokes on a square of twenty-four.

**Source**: BS 5261-2 and ISO 5776, forms from memory; drawn here as by hand.
"""

from __future__ import annotations

from collections.abc import Mapping

_LOOP = (
    "M19.4 3.4 C15.2 1.6 10.2 3.4 10.2 7 C10.2 11.4 17 12.6 16.8 17"
    " C16.6 20.4 13.6 22 10.4 21.8 C6.2 21.5 3.8 18.2 4.8 14.9 C5.8 11.8 9.6 10.4 13 12"
)
_RING = (
    "M12.6 1.7 C6 1.2 1.6 6 1.9 12.2 C2.2 18.4 6.9 22.6 12.4 22.2 "
    "C18.2 21.8 22.3 17.4 22.1 11.6 C21.9 5.9 18 2.2 11.2 1.9"
)
SIGN_FORMS: Mapping[str, tuple[str, ...]] = {
    "insert": ("M4.5 21.5 C7 16 9.8 9.5 12 4.2 C14 9.6 16.6 15.6 19.6 21",),
    "delete": (_LOOP,),
    "query": (
        _RING,
        "M8.6 9.2 C8.6 6.6 10.4 5.3 12.3 5.4 C14.4 5.5 15.7 7 15.4 8.9 C15 11.2 12 11.6 12 14.6",
        "M12 18 L12.1 18.2",
    ),
    "stet": (
        _RING,
        "M7 12.4 C8.4 13.8 9.6 15.4 10.4 17.2 C12 12.8 14 9.6 17.2 6.8",
    ),
    "stroke": ("M15.4 1.5 C13 8.4 10.8 15.4 8.6 22.6",),
    "transpose": ("M1.5 17.5 L1.5 7.4 L12 7.2 L12 16.8 L22.5 16.6 L22.5 6.6",),
    "close-up": (
        "M4.4 9.6 C7.4 4.4 16.4 4.2 19.6 9.4",
        "M4.4 14.6 C7.6 19.8 16.6 19.6 19.6 14.4",
    ),
    "space": (
        "M4.4 3.6 C7 6.6 9.6 9.4 12 12.2 C14.4 9.2 17 6.4 19.8 3.4",
        "M12 12.2 L11.8 21.6",
    ),
    "new-paragraph": ("M20.4 6 L6.4 6.2 L6.2 19.6 L2 19.7",),
    "run-on": ("M21.4 5.4 C21.6 13.6 18 11.6 12 12 C5.6 12.2 2.4 11.4 2.6 18.8",),
    "italic": ("M3.4 9.2 L3.4 17.4 L20.6 17.2 L20.6 9",),
    "upright": (
        "M3.4 9.2 L3.4 17.4 L20.6 17.2 L20.6 9",
        "M15.8 4.4 L8.6 21.4",
    ),
    "bold": ("M2 12.6 C4.2 7 6.6 7.2 8.6 12.4 C10.6 17.4 13 17.2 15.2 12.2 C17.2 7.4 19.6 7.4 21.8 12.2",),
    "capitals": (
        "M3.6 7.2 L20.6 7",
        "M3.6 12.2 L20.4 12",
        "M3.6 17.2 L20.6 17",
    ),
    "lower-case": (
        "M3.6 7.2 L20.6 7",
        "M3.6 12.2 L20.4 12",
        "M3.6 17.2 L20.6 17",
        "M16.4 2.6 L7.8 21.4",
    ),
}
"""The strokes of each sign by its name, its blanks as hyphens; ``stroke`` ends every mark in the margin."""
