"""Task, rubric, lateness, policies and submission. Wordings: common practice of assignment sheets."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable

import pytest

from fairhand.model.requirement import Value

Reading = Callable[..., list[dict[str, Value]]]


@pytest.mark.parametrize(
    ("text", "verbs"),
    [
        ("Compare two strikes and assess how far prices explain each.", {"compare", "assess"}),
        ('"An elegy is a quarrel." Discuss.', {"discuss"}),
        ("Critically evaluate the evidence for the claim.", {"evaluate"}),
        ("Write a report which analyses the case and proposes a remedy.", {"analyse", "propose"}),
        ("You will trace the river's course, then explain why it moved.", {"trace", "explain"}),
        ("Using the data we gathered, assess the change.", {"assess"}),
        ("Tutors will discuss plans but cannot read drafts.", set()),
        ("You may discuss your ideas with anyone.", set()),
        (
            "Tips for success\nDon't just describe: you must explain how and why, on every page.",
            set(),
        ),
    ],
)
def test_the_questions_verbs_are_read(values_of: Reading, text: str, verbs: set[str]) -> None:
    """Verbs that set the task, in their base form; what others do, or may be done, sets none."""
    assert {str(v["verb"]) for v in values_of("task", text)} == verbs


@pytest.mark.parametrize(
    ("text", "unit"),
    [
        ("Criterion      Weight\nArgument        60%\nEvidence        40%\n", "percent"),
        ("Grading\n  Argument ..... 60 points\n  Evidence ..... 40 points\n", "points"),
        ("Marks are given for argument (60), and evidence (40).", "points"),
        ("Grading\nArgument: 60%\nEvidence: 40%\n", "percent"),
        ("Rubric\n| Argument | 60 |\n| Evidence | 40 |\n| Style | 0 |\n", "points"),
    ],
)
def test_a_rubric_is_read(values_of: Reading, text: str, unit: str) -> None:
    """Tables, leaders, brackets and labels give criterion, weight and unit."""
    rows = values_of("rubric", text)[:2]
    assert [(str(v["criterion"]).lower(), v["weight"], v["unit"]) for v in rows] == [
        ("argument", 60, unit),
        ("evidence", 40, unit),
    ]


def test_one_weight_alone_is_no_rubric(values_of: Reading) -> None:
    """What the paper counts for in the course is no criterion."""
    assert values_of("rubric", "The essay (40%) counts toward the module.") == []


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Late papers lose 10% per day and are not accepted after five days.", (10, "percent", "day", 5)),
        ("A late paper loses 5 points a day.", (5, "points", "day", None)),
        ("Late essays: 2 points per hour.", (2, "points", "hour", None)),
        ("Late essays drop by one third of a letter grade per day.", (1, "grade-step", "day", None)),
        ("Late work drops a full letter grade each day.", (3, "grade-step", "day", None)),
        ("Late is 15% off, once.", (15, "percent", "once", None)),
        ("Lateness\nFive marks for each day; essays more than two weeks late get zero.", (5, "points", "day", 14)),
        ("If it is late\nEach day costs 5% of the grade.", (5, "percent", "day", None)),
        ("No late papers.", (None, None, None, 0)),
        (
            "Work up to five days late is reduced by 5 marks per day. Thereafter zero will be recorded.",
            (5, "points", "day", 5),
        ),
    ],
)
def test_a_late_rule_is_read(values_of: Reading, text: str, expected: tuple[Value, ...]) -> None:
    """Penalty, unit, per what, and after how many days the paper is refused."""
    (late,) = values_of("late", text)
    assert (late["penalty"], late["unit"], late["per"], late["refused_after_days"]) == expected


def test_a_last_day_is_counted_from_the_due_date(values_of: Reading) -> None:
    """A date after which nothing is taken becomes a number of days."""
    text = "Final paper due Friday, December 4.\n\nLate: 10% per day. Nothing is accepted after December 9."
    assert values_of("late", text)[0]["refused_after_days"] == 5


@pytest.mark.parametrize(
    ("text", "what", "rule"),
    [
        ("AI tools are not permitted at any stage.", "ai", "forbidden"),
        ("You may use AI for spelling, provided that you disclose it.", "ai", "disclose"),
        ("If you want to use an AI program, ask me first.", "ai", "ask"),
        ("Generative AI is welcome here.", "ai", "allowed"),
        ("Each paper must be written individually.", "collaboration", "forbidden"),
        ("You are encouraged to discuss your ideas with classmates.", "collaboration", "allowed"),
        ("You may not reuse a paper written for another class.", "reuse", "forbidden"),
        ("Work from another class may be used only with my permission.", "reuse", "ask"),
        ("Plagiarism is not tolerated.", "integrity", "forbidden"),
    ],
)
def test_a_policy_is_read(values_of: Reading, text: str, what: str, rule: str) -> None:
    """What the policy is about, and its rule."""
    assert {"what": what, "rule": rule} in values_of("policy", text)


def test_a_banned_source_is_no_policy(values_of: Reading) -> None:
    """That generated text may not be cited says nothing of using a program."""
    assert values_of("policy", "Blogs, and anything generated by an AI system, may not be cited.") == []


@pytest.mark.parametrize(
    ("text", "by", "where"),
    [
        ("Upload it to the course page.", "upload", "course page"),
        ("Submit as a Word file (.docx) through the coursework portal.", "upload", "coursework portal"),
        ("Deadline: noon on 4 December via the assessment portal.", "upload", "assessment portal"),
        ("Email it to me at h.lund@westerby.example by Friday.", "email", "h.lund@westerby.example"),
        ("Hand in a printed copy at the History Office.", "print", "History Office"),
        ("Bring a printed copy to class on Friday.", "in-class", None),
    ],
)
def test_the_way_of_handing_in_is_read(values_of: Reading, text: str, by: str, where: str | None) -> None:
    """The way and the place, without its article."""
    assert {"by": by, "where": where} in values_of("submit", text)


@pytest.mark.parametrize("text", ["Not on e-mail.", "Please email me anytime with questions."])
def test_mail_that_is_not_the_paper_is_left_alone(values_of: Reading, text: str) -> None:
    """Denials and invitations to write are no way of handing in."""
    assert values_of("submit", text, dt.date(2026, 1, 1)) == []


@pytest.mark.parametrize(
    ("text", "rule"),
    [
        ("Grammar checkers may not be used.", "forbidden"),
        ("No spell-checkers, please.", "forbidden"),
        ("If you use editing software, declare it in a note.", "disclose"),
        ("You may use a spell-checker.", "allowed"),
    ],
)
def test_tools_that_check_the_language(values_of: Reading, text: str, rule: str) -> None:
    """A rule on them is told from one on programs that write."""
    assert values_of("policy", f"Write an essay of 900 words. {text}") == [{"what": "tools", "rule": rule}]
