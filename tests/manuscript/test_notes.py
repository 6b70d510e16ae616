"""Notes that only cite."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.manuscript.notes import is_bibliographic


@pytest.mark.parametrize(
    ("note", "only_cites"),
    [
        ("Ada Orr, *Bells of the Coast* (Hull: Tern Press, 1998), 65.", True),
        ("Orr, *Bells*, 66–67.", True),
        ("Ibid., 12.", True),
        ("Ibid.", True),
        ('See Lena Marsh, "What the Tide Kept," *Harbour Studies* 78, no. 7 (2017): 973.', True),
        ("Orr, *Bells*, 3; cf. Marsh, *This Is the Tide* (Hull: Tern, 2001), 4.", True),
        ("(Orr 12)", True),
        ("Lena Marsh, “The Tide That Was,” *The Quay*, 3 May 2019, https://example.org/tide.", True),
        ("The ledger does not say so.", False),
        ("Orr (1998) argues the reverse; see Orr, *Bells*, 12.", False),
        ("My thanks to the keeper for this.", False),
        ("A tower stood here until 1911.", False),
        ("", False),
    ],
)
def test_a_note_that_only_cites_is_told_from_one_that_speaks(note: str, only_cites: bool) -> None:
    """References, full or short, with the usual signals, are one; a remark makes it the other."""
    assert is_bibliographic(note) is only_cites


@given(st.text(max_size=300))
def test_any_note_is_one_or_the_other(note: str) -> None:
    """No text stops the judgement."""
    assert is_bibliographic(note) in {True, False}
