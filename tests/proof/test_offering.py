"""What a finding offers, put in its place."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.model.finding import Finding, Instead
from fairhand.model.span import Span
from fairhand.proof.offering import offers, put_offered, tell_offer


def finding(check: str, *instead: Instead) -> Finding:
    """A finding that offers something."""
    return Finding(check, "copy-edit", "should", Span(0, 1), "", "", instead=instead)


@pytest.mark.parametrize(
    ("draft", "one", "now", "told"),
    [
        ("The tyde ebbs.", finding("spelling", Instead(Span(4, 8), "tide")), "The tide ebbs.", "put “tide”"),
        ("It ebbed, it ran.", finding("comma-splice", Instead(Span(8, 9), ";")), "It ebbed; it ran.", "put “;”"),
        ("Part of water.", finding("missing-word", Instead(Span(7, 7), "the")), "Part of the water.", "put “the”"),
        ("Part of water.", finding("missing-word", Instead(Span(8, 8), "the")), "Part of the water.", "put “the”"),
        ("However it ran.", finding("opening", Instead(Span(7, 7), ",")), "However, it ran.", "put “,”"),
        ("We did did it.", finding("doubled-word", Instead(Span(7, 10))), "We did it.", "strike “did”"),
        ("We did , then.", finding("mark-spacing", Instead(Span(6, 7))), "We did, then.", "strike the blank"),
    ],
)
def test_a_word_or_a_mark_is_put_in(draft: str, one: Finding, now: str, told: str) -> None:
    """In the place of another, between two, or taken out; what is around it stands as it was."""
    assert put_offered(draft, [one]) == now
    assert tell_offer(one, draft) == told


def test_what_offers_nothing_is_left() -> None:
    """A place for which only the writer knows, and of two offers on one place the second."""
    assert not offers(finding("fragment", Instead(Span(0, 1))))
    assert not offers(finding("fragment"))
    both = [finding("spelling", Instead(Span(0, 3), word)) for word in ("ebb", "web")]
    assert put_offered("eb ran", both[:1], Span(0, 6)) == "ebbran"
    assert put_offered("ebx ran", both) == "ebb ran"


@given(
    st.text(max_size=30), st.lists(st.tuples(st.integers(0, 30), st.integers(0, 30), st.text(max_size=4)), max_size=4)
)
def test_no_offer_stops_it(draft: str, places: list[tuple[int, int, str]]) -> None:
    """Wherever the places are within the draft; where none offers anything, it stands as it was."""
    spans = [(Span(min(a, b, len(draft)), min(max(a, b), len(draft))), words) for a, b, words in places]
    found = [finding("spelling", Instead(span, words)) for span, words in spans]
    now = put_offered(draft, found)
    assert now == draft or any(offers(one) for one in found)
