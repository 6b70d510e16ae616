"""The sheet's rule on tools that look through the language: what an answer to it comes to."""

from __future__ import annotations

import pytest

from fairhand.model.requirement import Requirement
from fairhand.model.settings import Answer
from fairhand.model.span import Span
from fairhand.readiness.language_tools import LEAVE, REFUSAL, gives_leave, tell_answer


def rule(word: str) -> Requirement:
    """A rule of the sheet on tools."""
    return Requirement("policy", {"what": "tools", "rule": word}, "On spell-checkers.", Span(0, 18), "must")


@pytest.mark.parametrize("word", ["forbidden", "ask", "disclose"])
@pytest.mark.parametrize(
    "said",
    [
        LEAVE,
        "The instructor allows it.",
        "Dr. Marrow has no objection",
        "yes, she said that it is fine",
        "I have her permission",
        "She doesn't mind",
    ],
)
def test_leave_in_words_opens_it(word: str, said: str) -> None:
    """Whatever the rule, and the denial of an objection is leave."""
    assert gives_leave(rule(word), Answer(note=said))
    assert tell_answer(rule(word), Answer(note=said, by="Dr. Marrow")).endswith(
        " (Dr. Marrow). So the language is looked at."
    )


@pytest.mark.parametrize("word", ["forbidden", "ask", "disclose"])
@pytest.mark.parametrize(
    "said", [REFUSAL, "no", "I have not used any", "She doesn't allow them", "She refused", "never", "Not allowed."]
)
def test_a_refusal_keeps_it_shut(word: str, said: str) -> None:
    """Whatever the rule; it is said that they are not used."""
    assert not gives_leave(rule(word), Answer(note=said))
    assert "are not used on this paper" in tell_answer(rule(word), Answer(note=said))


def test_that_a_rule_is_kept_means_what_the_rule_says() -> None:
    """A bare yes keeps a forbidding rule shut, and opens it where declaring or asking was all that was wanted."""
    assert [gives_leave(rule(word), Answer(note="yes")) for word in ("forbidden", "ask", "disclose")] == [
        False,
        True,
        True,
    ]
    assert "are not used on this paper" in tell_answer(rule("forbidden"), Answer(note="yes"))
    assert gives_leave(rule("disclose"), Answer(note="I shall say so in a note"))


@pytest.mark.parametrize("said", ["only for spelling", "until the second draft", "hm", "I asked in May"])
def test_an_answer_that_says_neither_opens_nothing(said: str) -> None:
    """It is told that it does not say so."""
    assert not gives_leave(rule("forbidden"), Answer(note=said))
    assert "does not say that they may be used" in tell_answer(rule("forbidden"), Answer(note=said))


def test_a_waiver_or_a_correction_opens_it() -> None:
    """What no longer holds shuts nothing, and what the sheet allows needs no answer."""
    assert gives_leave(rule("forbidden"), Answer(waived=True))
    assert gives_leave(rule("allowed"), None)
    assert not gives_leave(rule("disclose"), None)
