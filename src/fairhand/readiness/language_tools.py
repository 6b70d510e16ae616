"""The sheet's rule on tools that look through the language, and the writer's answer to it.

The language is not looked at until the writer has answered, and after that only where the answer lets it be: a rule
that forbids, kept to, keeps it shut.
"""

from __future__ import annotations

import re

from fairhand.model.requirement import Requirement
from fairhand.model.settings import Answer
from fairhand.readiness.analysis import Analysis

_OF_LANGUAGE = re.compile(
    r"\b(?:spell\w*|grammar|grammatical|proof-?read\w*|edit(?:s|ed|ing)?|polish\w*)\b", re.IGNORECASE
)
"""Marks of a rule on artificial intelligence that speaks of the language too."""
LEAVE, REFUSAL = "They may be used", "They may not be used"
"""The two answers that are offered."""
_NOT_AGAINST = re.compile(
    r"\bno(?:t|thing)? (?:(?:a|any|the) )?(?:problem|objections?|against|forbidden|prohibited|banned|disallowed)\b"
    r"|\b(?:not|\w+n[’']t) mind\b",
    re.IGNORECASE,
)
"""Refusals denied."""
_REFUSED = re.compile(
    r"\b(?:no|not|never|none|nothing|neither|nor|without|cannot|refus\w*|den(?:y|ied|ies)|declin\w*|forb\w+"
    r"|prohibit\w*|bann\w*|barr\w*|disallow\w*|ruled out|off limits)\b|n[’']t\b",
    re.IGNORECASE,
)
_IN_PART = re.compile(
    r"\b(?:unless|until|except|waiting|pending|only (?:for|to|the|spelling|grammar))\b", re.IGNORECASE
)
_ALLOWED = re.compile(
    r"\b(?:allow\w*|permit\w*|permission|(?:gave|given|gives|has|have|had|got|with) (?:\w+ )?leave|(?-i:may)|can|fine"
    r"|okay|ok|approv\w*|agree[ds]?|welcome|granted?|consent\w*|all right|said yes|encourag\w*)\b",
    re.IGNORECASE,
)
_YES = re.compile(r"\W*(?:yes|yea|yep|sure|certainly|asked)\b", re.IGNORECASE)


def rules_on_tools(analysis: Analysis) -> tuple[Requirement, ...]:
    """What the sheet says of tools that look through the language, the writer's corrections in it."""
    return tuple(
        one
        for one in analysis.paper.requirements
        if one.kind == "policy"
        and (
            one.values.get("what") == "tools"
            or (one.values.get("what") == "ai" and _OF_LANGUAGE.search(one.evidence) is not None)
        )
    )


def shut_by(analysis: Analysis) -> Requirement | None:
    """The rule that keeps the language from being looked at; None where none does."""
    answers = analysis.paper.answers
    return next((one for one in rules_on_tools(analysis) if not gives_leave(one, answers.get(one.id))), None)


def gives_leave(rule: Requirement, answer: Answer | None) -> bool:
    """Whether a rule of the sheet, with the writer's answer to it, lets the language be looked at.

    A rule that wants tools declared lets them be used by whoever does not refuse; one that wants leave asked for, by
    whoever says that it was given; one that forbids them only where the answer says in words that they may be used all
    the same: that the rule is kept means that they are not.

    >>> from fairhand.model.span import Span
    >>> rule = Requirement("policy", {"what": "tools", "rule": "forbidden"}, "No spell-checkers.", Span(0, 18), "must")
    >>> said = ("yes", "Kept.", "Dr. Marrow allows them", "They may not be used")
    >>> [gives_leave(rule, Answer(note=one)) for one in said], gives_leave(rule, None)
    ([False, False, True, False], False)
    """
    word = rule.values.get("rule")
    if word == "allowed":
        return True
    if answer is None:
        return False
    if answer.waived:
        return True
    said = _NOT_AGAINST.sub("allowed", answer.note)
    if _REFUSED.search(said) or _IN_PART.search(said):
        return False
    if word == "disclose":
        return True
    return _ALLOWED.search(said) is not None or (word == "ask" and _YES.match(said) is not None)


def tell_answer(rule: Requirement, answer: Answer | None) -> str:
    """What the writer's answer comes to, in a sentence.

    >>> from fairhand.model.span import Span
    >>> rule = Requirement("policy", {"what": "tools", "rule": "ask"}, "Ask first.", Span(0, 10), "must")
    >>> tell_answer(rule, Answer(note="They may not be used"))
    'You answered: They may not be used. So they are not used on this paper, and the language is not looked at.'
    """
    if answer is None:
        if rule.values.get("rule") == "allowed":
            return "The sheet gives leave, and the language is looked at."
        return "The language is not looked at until you have answered it."
    note = answer.note.strip().rstrip(".")
    said = "You waived it" if answer.waived else f"You answered: {note}" if note else "You corrected it"
    by = f" ({answer.by})" if answer.by else ""
    if gives_leave(rule, answer):
        return f"{said}{by}. So the language is looked at."
    kept = rule.values.get("rule") == "forbidden" and _YES.match(note)
    if kept or _REFUSED.search(_NOT_AGAINST.sub("", note)):
        return f"{said}{by}. So they are not used on this paper, and the language is not looked at."
    return f"{said}{by}. That does not say that they may be used, and the language is not looked at."
