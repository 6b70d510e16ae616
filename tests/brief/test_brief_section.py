"""Sections that a sheet names."""

from __future__ import annotations

import pytest

from fairhand.brief.read import read_brief


@pytest.mark.parametrize(
    ("sentence", "name"),
    [
        ("Your essay should contain a section headed Limitations.", "limitations"),
        ("Include a section entitled 'The Inquiry' or similar.", "the inquiry"),
        ('End with a section called "What Comes Next", please.', "what comes next"),
        ("Add a part named Sources and Methods before the end.", "sources and methods"),
    ],
)
def test_a_section_is_named_on_its_own(sentence: str, name: str) -> None:
    """In quotation marks, or by its capitals."""
    found = [r.values["name"] for r in read_brief([("a.txt", sentence)]).requirements if r.kind == "section"]
    assert found == [name]
