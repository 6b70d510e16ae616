"""The answers after final readings, as ``marks.jsonl`` keeps them: each a W3C Web Annotation on the whole draft.

**Source**: W3C Web Annotation Data Model (2017), sections 3.2.4 and 3.3.5.
"""

from __future__ import annotations

from fairhand.language.line_files import add_line, load_record
from fairhand.model.final_reading import FinalReading
from fairhand.reading.annotation_line import said_of, write_annotation

TAG = "final reading"
_FIT, _NOT_FIT = "fit to hand in", "not fit to hand in"


def read_finals(text: str) -> tuple[FinalReading, ...]:
    """The answers that the text holds, the last one last.

    >>> one = FinalReading("urn:f", False, "The third section.", ended="2027-02-08T12:00:00+00:00", draft="ab12")
    >>> read_finals(add_final("", one)) == (one,)
    True
    """
    found = []
    for line in text.split("\n"):
        annotation = load_record(line)
        said = said_of(annotation)
        answer = said.get("assessing", [""])[0]
        if TAG in said.get("tagging", ()) and answer in (_FIT, _NOT_FIT):
            found.append(
                FinalReading(
                    str(annotation.get("id", "")),
                    answer == _FIT,
                    said.get("commenting", [""])[0],
                    said.get("bookmarking", [""])[0],
                    str(annotation.get("created", "")),
                    said.get("identifying", [""])[0],
                )
            )
    return tuple(found)


def add_final(text: str, one: FinalReading) -> str:
    """The file's text with one answer more, at its end."""
    said = [
        ("tagging", TAG),
        ("assessing", _FIT if one.fit else _NOT_FIT),
        ("commenting", one.why),
        ("bookmarking", one.begun),
        ("identifying", one.draft),
    ]
    return add_line(text, write_annotation("assessing", said, id_=one.id, created=one.ended))
