"""The citation style that a sheet describes without naming one."""

from __future__ import annotations

import pytest

from fairhand.brief.described_style import describe_style


@pytest.mark.parametrize(
    ("text", "style"),
    [
        ("Give your references in footnotes.", "chicago-notes"),
        ("Use author-date references throughout.", "apa"),
        ("Any name-year system will do.", "apa"),
        ("End with a list headed Works Cited.", "mla"),
        ("Use numbered references.", "ieee"),
        ("Footnotes are not wanted; use the author and date system with a reference list.", "apa"),
        ("Write two pages on tides.", None),
    ],
)
def test_a_style_is_known_by_its_marks(text: str, style: str | None) -> None:
    """Common practice: what each system is known by; what the sheet does not want is none."""
    found = describe_style(text)
    assert (found[0] if found else None) == style
