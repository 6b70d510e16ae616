"""The paper as it is read aloud."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from fairhand.language.words import words
from fairhand.manuscript.draft import read_manuscript
from fairhand.model.span import Span
from fairhand.proof.aloud import count_spoken, list_spoken, seconds_aloud

DRAFT = """# Tides

The *ebb* scours (Orr 2), [NB: ask her] and it flows.[^1] It falls.

> A bell rang
> twice (Orr 3).

| a | b |
|---|---|
| 1 | 2 |

[^1]: Orr saw it (Orr 9).
"""


def test_it_is_read_as_it_prints() -> None:
    """Markup, asides, tables and numbers of notes are not read; notes come last."""
    citations = [Span(DRAFT.index(one), DRAFT.index(one) + 7) for one in ("(Orr 2)", "(Orr 3)", "(Orr 9)")]
    spoken = list_spoken(read_manuscript(DRAFT), citations)
    assert [(one.kind, one.bare) for one in spoken] == [
        ("heading", "Tides"),
        ("text", "The ebb scours, and it flows."),
        ("text", "It falls."),
        ("text", "A bell rang twice."),
        ("note", "Orr saw it."),
    ]
    assert spoken[1].says == "The ebb scours (Orr 2), and it flows."
    assert [one.opens for one in spoken] == [True, True, False, True, True]
    assert count_spoken(spoken, ()) == 1 + 8 + 2 + 6 + 5
    assert count_spoken(spoken, ("citations", "notes", "headings")) == 6 + 2 + 4


def test_the_pace_is_that_of_reading_aloud() -> None:
    """183 words a minute. **Source**: Brysbaert 2019 [page]."""
    assert seconds_aloud(183 * 7) == 420
    assert seconds_aloud(100, 200) == 30


@given(st.text(max_size=300))
def test_no_draft_crashes_it_and_every_place_is_in_the_draft(text: str) -> None:
    """Whatever stands there."""
    manuscript = read_manuscript(text)
    for one in list_spoken(manuscript):
        assert 0 <= one.span.start <= one.span.end <= len(manuscript.text)
        assert list(words(one.bare)) or one.says
