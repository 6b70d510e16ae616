"""Two states of a text held side by side."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from fairhand.language.words import words
from fairhand.proof.comparison import Change, compare_states, measure_change
from fairhand.proof.revised import list_sentences, tell_revisions

THEN = "# Lamps\n\nThe town bought forty lamps.\n\nNobody lit them before the winter came.\n\nThe rest is silence."
NOW = "# Lanterns\n\nThe town bought fifty lamps, then.\n\nThe rest is silence.\n\nA new end."


def test_what_differs_is_told_by_passage() -> None:
    """Headings too; the words that differ are marked; what is gone stands last."""
    told = [(one.fate, one.then, one.now) for one in compare_states("draft.md", THEN, NOW)]
    assert ("edited", "The town bought forty lamps.", "The town bought fifty lamps, then.") in told
    assert ("new", "", "A new end.") in told
    assert told[-1] == ("gone", "Nobody lit them before the winter came.", "")
    assert not any("silence" in then for _, then, _ in told)
    edited = next(one for one in compare_states("draft.md", THEN, NOW) if "forty" in one.then)
    assert [span.of(edited.then) for span in edited.then_differs] == ["forty lamps."]
    assert [span.of(edited.now) for span in edited.now_differs] == ["fifty lamps, then."]


def test_sentences_are_told_by_what_was_revised() -> None:
    """Each passage has its own; together they are counted once each."""
    found = compare_states("draft.md", THEN, NOW)
    assert [one.kind for each in found if "fifty" in each.now for one in each.revisions] == ["argument"]
    assert tell_revisions(list_sentences(found)) == (
        "in argument: 1 sentence new, 1 sentence gone, 1 sentence changed, it may be"
    )
    assert tell_revisions(list_sentences(compare_states("a.toml", "a = 1", "a = 2"))) == ""


def test_a_comma_is_a_difference() -> None:
    """A passage with the same words and other points is shown; one with other blanks is not."""
    assert [one.fate for one in compare_states("draft.md", "So it was said.", "So, it was said.")] == ["edited"]
    assert compare_states("draft.md", "So it\nwas said.", "So it was said.") == ()


def test_a_list_of_records_is_held_by_lines() -> None:
    """What is no prose is neither read as a draft nor counted in words."""
    assert [one.fate for one in compare_states("paper.toml", 'title = "A"\nstyle = "mla"', 'title = "A"')] == ["gone"]
    assert measure_change("paper.toml", "a = 1\nb = 2", "a = 1\nc = 3\nd = 4") == Change(2, 1, "line")


@given(st.text("ab, \n#>", max_size=80), st.text("ab, \n#>", max_size=80))
def test_every_state_is_held_against_every_other(then: str, now: str) -> None:
    """Nothing differs from itself; what is marked lies within its passage."""
    assert compare_states("draft.md", then, then) == ()
    assert measure_change("draft.md", then, then) == Change(0, 0, "word")
    change = measure_change("draft.md", then, now)
    assert change.came - change.went == len(words(now)) - len(words(then))
    for one in compare_states("draft.md", then, now):
        assert all(0 <= span.start < span.end <= len(one.then) for span in one.then_differs)
        assert all(0 <= span.start < span.end <= len(one.now) for span in one.now_differs)
