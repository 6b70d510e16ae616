"""The small print of lateness, read off sheets. Wordings: of our own, after the rules that check-values lists."""

from __future__ import annotations

import datetime as dt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.brief.late_rule import late_rule_of, read_tier, write_tier
from fairhand.brief.read import read_brief
from fairhand.model.late_rule import LateRule, Tier
from fairhand.model.requirement import Value


def _rule(text: str) -> LateRule | None:
    late = [r for r in read_brief([("a.txt", text)], dt.date(2027, 1, 11)).requirements if r.kind == "late"]
    return late_rule_of(late[0].values) if late else None


@pytest.mark.parametrize(
    ("text", "rule"),
    [
        (
            "Late work loses 5% of the mark for each working day, and gets zero after 5 working days.",
            LateRule((Tier(5),), per="working day", refused_after=5, refused_in="working day"),
        ),
        (
            "Late essays: the mark is multiplied by 0.9, 0.8, 0.7, 0.6, 0.5 for the first five days, then zero.",
            LateRule((Tier(10),), refused_after=5),
        ),
        ("Late papers lose 5 marks per working day.", LateRule((Tier(5),), "points", "working day")),
        (
            "Late items lose 5% of the total mark per calendar day. Items more than 7 days late receive zero.",
            LateRule((Tier(5),), "percent of the total", refused_after=7),
        ),
        ("A late paper drops half a grade a day.", LateRule((Tier(1.5),), "grade steps")),
        (
            "Late papers lose 4 points a day. A day late runs from 1:00 pm to 12:59 pm.",
            LateRule((Tier(4),), "points", day_starts=dt.time(13)),
        ),
        (
            "Late reports lose 10% of the mark for the first day and 5% for each further day.",
            LateRule((Tier(10, to=1), Tier(5))),
        ),
        (
            "Lateness\nUp to 3 days late: 10 marks. 4 to 7 days late: 25 marks. After 7 days: 0.",
            LateRule((Tier(10, 3, in_all=True), Tier(25, 7, in_all=True)), "points", refused_after=7),
        ),
        ("The mark of a late paper is multiplied by 0.9 for each day.", LateRule((Tier(10),), compound=True)),
        ("Late papers lose 2 points per hour.", LateRule((Tier(2),), "points", "hour")),
        ("Late papers lose a letter grade per week.", LateRule((Tier(3),), "grade steps", "week")),
        (
            "Late papers lose 3 points a day, after a grace period of two hours.",
            LateRule((Tier(3),), "points", grace_minutes=120),
        ),
        (
            "Late work loses 10 marks a day but will not be taken below the pass mark of 40.",
            LateRule((Tier(10),), "points", floor=40),
        ),
        ("Late work is capped at 40%.", LateRule(unit="percent of the total", cap=40)),
        (
            "For every 24 hours (or part) after the deadline the paper loses 5 points, to a maximum of 20 points.",
            LateRule((Tier(5, to=4), Tier(20, in_all=True)), "points"),
        ),
        ("No late work is accepted.", LateRule(unit="percent of the total", refused_after=0)),
        (
            "Late work loses 1 mark an hour and is not accepted after 12 hours.",
            LateRule((Tier(1),), "points", "hour", refused_after=12, refused_in="hour"),
        ),
        ("Write 900 words.", None),
    ],
)
def test_rules_on_lateness_are_read_whole(text: str, rule: LateRule | None) -> None:
    """What is lost, of what, for each of what, until when: as the sheet has it."""
    assert _rule(text) == rule


def test_a_corrected_penalty_is_the_rule() -> None:
    """Values that the writer corrected make another rule; what cannot be read of them says nothing."""
    read: dict[str, Value] = {"penalty": 10, "unit": "percent", "per": "day", "of": "mark"}
    assert late_rule_of({**read, "penalty": 8}) == LateRule((Tier(8),))
    assert late_rule_of({**read, "day_from": "lunch", "tiers": ("much", "more"), "floor": "some"}) == LateRule(
        (Tier(10),)
    )


@given(st.floats(0, 100).map(lambda n: round(n, 1)), st.one_of(st.none(), st.integers(1, 400)), st.booleans())
def test_a_tier_is_written_and_read_back(amount: float, to: int | None, in_all: bool) -> None:
    """What is written of a tier says all of it."""
    assert read_tier(write_tier(Tier(amount, to, in_all))) == Tier(amount, to, in_all)


WORDS = (
    "late work loses 10 % 5 marks per day for the first hour up to 3 weeks then × 0.9 . ; not below capped at after"
    " midnight zero"
).split()


@given(st.lists(st.sampled_from(WORDS), max_size=30).map(" ".join))
def test_any_wording_makes_some_rule_or_none(text: str) -> None:
    """Nothing that a sheet may say of lateness stops the reader."""
    _rule(f"Lateness\n{text}.")
